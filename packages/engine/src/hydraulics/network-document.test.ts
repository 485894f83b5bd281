import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatPath, type ShapeDescription } from '../quantity/index.ts';
import { FITTING_FORMS } from '../physics/index.ts';
import { readNetwork, solveNetwork } from './index.ts';
import { networkShape } from './network-shapes.ts';

const root = new URL('../../../../', import.meta.url);
const text = (file: string): string => readFileSync(new URL(file, root), 'utf8');
const parsed = (file: string): unknown => JSON.parse(text(file));

type Json = Record<string, unknown>;
interface Draft {
  liquid: Json;
  nodes: Json[];
  elements: Json[];
}

/** A sound small network, to be spoilt. */
function draft(): Draft & Json {
  return {
    format: 'spraywright-network',
    liquid: { density: '1000 kg/m3', viscosity: '1 cP' },
    nodes: [
      { id: 'tank', elevation: '0 m', surface: '1 m' },
      { id: 'out', elevation: '0 m' },
      { id: 'air', elevation: '0 m', atmosphere: true },
    ],
    elements: [
      {
        id: 'pump',
        kind: 'positive-displacement-pump',
        from: 'tank',
        to: 'out',
        displacement: '20 cm3/rev',
        speed: '1000 rpm',
        slip: { flow: '1 l/min', pressure: '20 bar' },
      },
      { id: 'tip', kind: 'orifice', from: 'out', to: 'air', flowAtOneBar: '5 l/min' },
    ],
  };
}

function problemsOf(raw: unknown): string[] {
  const reading = readNetwork(raw);
  return reading.ok ? [] : reading.problems.map((p) => `${formatPath(p.path)} ${p.code}: ${p.message}`);
}

function spoilt(change: (d: Draft & Json) => void): string[] {
  const d = draft();
  change(d);
  return problemsOf(d);
}

describe('A network document', () => {
  it('reads every kind of element, quantities in SI', () => {
    const raw = draft();
    const place = { from: 'out', to: 'air' };
    const points = [
      { flow: '0 l/min', head: '10 m' },
      { flow: '60 l/min', head: '4 m' },
    ];
    const falling = [
      { flow: '0 l/min', pressure: '4 bar' },
      { flow: '6 l/min', pressure: '1 bar' },
    ];
    const rising = [
      { flow: '6 l/min', pressure: '1 bar' },
      { flow: '12 l/min', pressure: '4 bar' },
    ];
    const regulator = { flowAtOneBar: '60 l/min', setPressure: '10 bar' };
    const laws: Json[] = [
      { kind: 'pipe', length: '60 ft', bore: '1/2 in', roughness: '0.01 mm', coilDiameter: '16 in' },
      { kind: 'fitting', bore: '1 in', lossCoefficient: 0.8, laminarCoefficient: 800 },
      { kind: 'flow-factor', flowAtOneBar: '60 l/min' },
      { kind: 'strainer', flowAtOneBar: '60 l/min', blinded: '50 %' },
      { kind: 'orifice', flowAtOneBar: '60 l/min', count: 4, open: false },
      { kind: 'jet-agitator', flowAtOneBar: '60 l/min' },
      { kind: 'sparger', flowAtOneBar: '6 l/min', orifices: 12 },
      { kind: 'check-valve', bore: '1 in', lossCoefficient: 2, crackingPressure: '2 psi' },
      { kind: 'centrifugal-pump', curve: points, interpolation: 'smooth', speed: '92 %' },
      {
        kind: 'centrifugal-pump',
        powerCurve: { shutOffHead: '10 m', point: { flow: '60 l/min', head: '4 m' } },
      },
      { kind: 'demand-pump', curve: falling, switchOff: '3.5 bar', switchOn: '2.5 bar' },
      { kind: 'curve', curve: [...points].reverse().map((p, i) => ({ ...p, flow: `${60 + i} l/min` })) },
      { kind: 'back-pressure-regulator', ...regulator },
      { kind: 'unloader', ...regulator, gradient: { pressure: '2 bar', flow: '60 l/min' } },
      { kind: 'relief-valve', ...regulator, reference: 'outlet' },
      { kind: 'reducing-regulator', ...regulator },
      { kind: 'eductor', curve: rising, suction: rising },
    ];
    raw.elements.push(...laws.map((law, i) => ({ ...law, ...place, id: `e${i}` })));
    const reading = readNetwork(raw);
    expect(problemsOf(raw)).toEqual([]);
    if (!reading.ok) return;
    const kinds = new Set(networkShape.fields.elements.describe.of!.choices);
    for (const { law } of reading.model.elements) kinds.delete(law.kind);
    expect([...kinds], 'kinds this test leaves out').toEqual([]);

    const law = (id: string) => reading.model.elements.find((e) => e.id === id)!.law as unknown as Json;
    const k = 1e-3 / Math.sqrt(1e5);
    expect(law('e0')).toMatchObject({ length: 60 * 0.3048, bore: 0.0127, coilDiameter: 16 * 0.0254 });
    for (const id of ['e2', 'e4', 'e5', 'e12']) expect(law(id)['k'], id).toBeCloseTo(k, 15);
    // Half the openings blocked takes 5.5 times the loss (gauze formula, Idelchik from memory).
    expect((k / (law('e3')['k'] as number)) ** 2).toBeCloseTo(5.5, 1);
    expect(law('e6')['k']).toBeCloseTo(k / 10, 15);
    expect(law('e8')['speed']).toBeCloseTo(0.92, 12);
    expect((law('e9')['curve'] as Json)['coefficient']).toBeCloseTo(6 / 1e-6, -1);
    expect(law('e13')['gradient']).toBeCloseTo(2e5 / 1e-3, 3);
    expect(law('pump')['slip']).toBeCloseTo(1 / 60000 / 2e6, 20);
    expect(law('pump')['displacement']).toBeCloseTo(20e-6 / (2 * Math.PI), 15);
    expect(reading.model.elements.find((e) => e.id === 'e4')).toMatchObject({ count: 4, open: false });
  });

  it('names what is wrong, with its place', () => {
    expect(spoilt((d) => (d.elements[1]!['to'] = 'aire'))).toEqual([
      "elements[1].to unknown-reference: to is 'aire'; no node of that id is there",
    ]);
    expect(spoilt((d) => (d.elements[1]!['to'] = 'out'))[0]).toMatch(/^elements\[1\]\.to self-loop: /);
    expect(spoilt((d) => (d.elements[1]!['id'] = 'pump'))[0]).toMatch(
      /^elements\[1\]\.id duplicate: .*elements\[0\]/,
    );
    expect(spoilt((d) => (d.nodes[2]!['id'] = 'out'))[0]).toMatch(/^nodes\[2\]\.id duplicate: /);
    expect(spoilt((d) => (d.nodes[0]!['atmosphere'] = true))[0]).toMatch(/^nodes\[0\] two-kinds-of-node: /);
    expect(spoilt((d) => (d.elements[1]!['flowAtOneBar'] = '12 psi'))[0]).toMatch(
      /^elements\[1\]\.flowAtOneBar bad-quantity: .*12 psi/,
    );
    expect(spoilt((d) => (d.elements[1]!['flowAtOneBar'] = '-1 gpm'))[0]).toMatch(
      /^elements\[1\]\.flowAtOneBar out-of-range: .*at least/,
    );
    expect(spoilt((d) => (d.elements[1]!['flow'] = '1 gpm'))[0]).toMatch(
      /^elements\[1\]\.flow unknown-field: /,
    );
    expect(spoilt((d) => (d.elements[1]!['kind'] = 'nozle'))[0]).toMatch(
      /^elements\[1\]\.kind not-a-choice: /,
    );
    expect(spoilt((d) => (d.liquid['viscosity'] = '0 cP'))[0]).toMatch(/^liquid\.viscosity out-of-range: /);
    expect(spoilt((d) => (d.nodes[1]!['elevation'] = '20 mi'))[0]).toMatch(
      /^nodes\[1\]\.elevation out-of-range: /,
    );
    expect(
      spoilt((d) => {
        delete d.nodes[0]!['surface'];
        delete d.nodes[2]!['atmosphere'];
      })[0],
    ).toMatch(/no-path-to-tank-or-atmosphere: /);
  });

  it('knows fittings by name: the loss is that of the coefficient the tables give', () => {
    const place = { from: 'out', to: 'tip-in' };
    const solved = (fitting: Json) => {
      const raw = draft();
      raw.nodes.push({ id: 'tip-in', elevation: '0 m' });
      raw.elements[1]!['from'] = 'tip-in';
      raw.elements.push({ ...place, id: 'part', bore: '3/4 in', ...fitting });
      const reading = readNetwork(raw);
      if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
      const result = solveNetwork(reading.model);
      return { drop: result.elements[2]!.pressureDrop, notes: result.notes.map((n) => n.code) };
    };
    // Crane TP-410, fully turbulent friction factor of clean steel pipe, 3/4 in; multiples of it.
    const fT = 0.25 / Math.log10((0.00015 * 0.3048) / (3.7 * 0.01905)) ** 2;
    for (const [form, times] of [
      ['ball-valve-full-port', 3],
      ['gate-valve', 8],
      ['elbow-45', 16],
      ['tee-run', 20],
      ['elbow-90', 30],
      ['three-way-valve-straight', 30],
      ['tee-branch', 60],
      ['three-way-valve-turned', 90],
    ] as const) {
      const byForm = solved({ kind: 'fitting', form });
      const byNumber = solved({ kind: 'fitting', lossCoefficient: times * fT });
      expect(byForm.drop! / byNumber.drop!, form).toBeCloseTo(1, 2);
      expect(byForm.notes).toEqual([]);
    }
    for (const [form, K] of [
      ['bulkhead-flush', 0.57],
      ['bulkhead-projecting', 0.78],
      ['open-end', 1],
      ['ball-valve-standard-port', 0.92],
    ] as const)
      expect(
        solved({ kind: 'fitting', form }).drop! / solved({ kind: 'fitting', lossCoefficient: K }).drop!,
        form,
      ).toBeCloseTo(1, form === 'ball-valve-standard-port' ? 0 : 9);
    for (const form of ['cam-lock', 'quick-coupling-open', 'quick-coupling-valved', 'hose-swivel'])
      expect(solved({ kind: 'fitting', form }).notes, form).toEqual(['guessed-loss']);
    for (const [form, times] of [
      ['swing', 100],
      ['lift', 600],
    ] as const)
      expect(
        solved({ kind: 'check-valve', form }).drop! /
          solved({ kind: 'check-valve', lossCoefficient: times * fT }).drop!,
        form,
      ).toBeCloseTo(1, 2);
  });

  it('refuses a fitting that is told twice, not at all, or in a bore that no table has', () => {
    const part = { id: 'part', from: 'out', to: 'air', kind: 'fitting', bore: '1 in' };
    expect(spoilt((d) => d.elements.push(part))[0]).toMatch(/^elements\[2\]\.form missing: /);
    expect(spoilt((d) => d.elements.push({ ...part, form: 'elbow-90', lossCoefficient: 1 }))[0]).toMatch(
      /^elements\[2\]\.form two-losses: /,
    );
    expect(spoilt((d) => d.elements.push({ ...part, form: 'elbow-90', bore: '1 m' }))[0]).toMatch(
      /^elements\[2\]\.bore out-of-range: .*0\.5 m/,
    );
    expect(spoilt((d) => d.elements.push({ ...part, form: 'elbow' }))[0]).toMatch(
      /^elements\[2\]\.form not-a-choice: /,
    );
    expect(spoilt((d) => d.elements.push({ ...part, kind: 'check-valve' }))[0]).toMatch(/form missing/);
    expect(
      spoilt((d) =>
        d.elements.push({ ...part, kind: 'strainer', flowAtOneBar: '9 gpm', blinded: '95 %' }),
      )[0],
    ).toMatch(/out-of-range|unknown-field/);
  });

  it('refuses a roughness that fills the bore and a pump curve that turns back', () => {
    const place = { from: 'out', to: 'air' };
    expect(
      spoilt((d) =>
        d.elements.push({
          ...place,
          id: 'hose',
          kind: 'pipe',
          length: '1 m',
          bore: '2 mm',
          roughness: '1 mm',
        }),
      )[0],
    ).toMatch(/^elements\[2\] out-of-range: .*roughness/);
    const curve = [
      { flow: '0 gpm', head: '50 ft' },
      { flow: '10 gpm', head: '55 ft' },
      { flow: '20 gpm', head: '30 ft' },
    ];
    const pump = { ...place, id: 'second', kind: 'centrifugal-pump' };
    expect(spoilt((d) => d.elements.push({ ...pump, curve }))[0]).toMatch(/^elements\[2\] drooping-curve: /);
    expect(spoilt((d) => d.elements.push({ ...pump, curve, drooping: 'level' }))).toEqual([]);
    expect(spoilt((d) => d.elements.push(pump))[0]).toMatch(/^elements\[2\]\.curve missing: /);
    const powerCurve = { shutOffHead: '50 ft', point: { flow: '10 gpm', head: '60 ft' } };
    expect(spoilt((d) => d.elements.push({ ...pump, powerCurve }))[0]).toMatch(
      /^elements\[2\]\.powerCurve\.point\.head out-of-range: /,
    );
    expect(spoilt((d) => d.elements.push({ ...pump, powerCurve, curve }))[0]).toMatch(/two-curves/);
  });

  it('never throws and gives no NaN, whatever it is fed', () => {
    fc.assert(
      fc.property(fc.anything(), (raw) => {
        expect(readNetwork(raw).ok).toBe(false);
      }),
      { numRuns: 200 },
    );
    fc.assert(
      fc.property(
        fc.constantFrom('flowAtOneBar', 'id', 'count', 'open', 'from', 'kind'),
        fc.oneof(fc.anything(), fc.string(), fc.double()),
        (field, value) => {
          const raw = draft();
          raw.elements[1]![field] = value;
          const reading = readNetwork(raw);
          if (!reading.ok) return;
          const result = solveNetwork(reading.model);
          expect(JSON.stringify(result)).not.toMatch(/NaN|Infinity/);
          for (const e of result.elements) expect(Number.isFinite(e.flow)).toBe(true);
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe('The demo networks', () => {
  it.each(['reel-and-return', 'boom-loop', 'trade-fittings'])('%s is read and solved', (name) => {
    const reading = readNetwork(parsed(`demo/networks/${name}.json`));
    expect(reading.ok ? [] : reading.problems).toEqual([]);
    if (!reading.ok) return;
    const result = solveNetwork(reading.model);
    expect(result.status).toBe('converged');
    expect(result.residual).toBeLessThan(1e-9);
    // The regulators of both hold, and what the pump gives comes out of the outlets and the return.
    expect(result.elements.filter((e) => e.state === 'holding')).toHaveLength(1);
    const out = result.elements
      .filter((e) =>
        ['orifice', 'jet-agitator', 'unloader', 'back-pressure-regulator', 'eductor'].includes(e.kind),
      )
      .reduce((sum, e) => sum + e.flow, 0);
    const pump = result.elements.find((e) => e.id === 'pump')!;
    expect(out / pump.flow).toBeCloseTo(1, 9);
  });
});

describe('The demo network of trade fittings', () => {
  const raw = parsed('demo/networks/trade-fittings.json') as { elements: Json[] };
  const result = () => {
    const reading = readNetwork(raw);
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
    return solveNetwork(reading.model);
  };

  it('has every form of fitting that a rig joins its lines with, and the page names each', () => {
    const forms = new Set(raw.elements.flatMap((e) => (e['form'] === undefined ? [] : [e['form']])));
    for (const form of ['three-way-valve-straight', 'three-way-valve-turned', 'tee-run', 'tee-branch'])
      expect(forms).toContain(form);
    for (const form of ['cam-lock', 'quick-coupling-valved', 'bulkhead-flush', 'elbow-90', 'lift'])
      expect(forms).toContain(form);
    const page = text('docs/network-format.md');
    for (const form of FITTING_FORMS) expect(page).toContain(`\`${form}\``);
  });

  it('says what it had to guess, and that no law knows a thickened mix in a wound hose', () => {
    const { notes, elements } = result();
    expect(notes.map((n) => n.code)).toEqual(['guessed-loss', 'no-coil-law', 'guessed-loss', 'guessed-loss']);
    expect(elements.find((e) => e.id === 'eductor')!.suctionFlow).toBeGreaterThan(0);
    expect(elements.find((e) => e.id === 'to-flush')!.state).toBe('shut');
  });
});

describe('docs/network-format.md', () => {
  const page = text('docs/network-format.md');

  it('names every field of the format', () => {
    const absent = new Set<string>();
    const walk = (shape: ShapeDescription): void => {
      if (shape.of) walk(shape.of);
      for (const field of shape.fields ?? []) {
        if (!new RegExp(`[\`".]${field.name}[\`"]`).test(page)) absent.add(field.name);
        walk(field.shape);
      }
      for (const [kind, fields] of Object.entries(shape.cases ?? {})) {
        if (!page.includes(`\`${kind}\``)) absent.add(kind);
        walk(fields);
      }
    };
    walk(networkShape.describe);
    expect([...absent]).toEqual([]);
  });

  it('shows an example that is read, and solved by the two balances it states', () => {
    const reading = readNetwork(JSON.parse(/```json\n([\s\S]*?)```/.exec(page)![1]!));
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
    const result = solveNetwork(reading.model);
    const [pump, hose, tip] = result.elements;
    // To the 1e-9 the solver accepts.
    const bar = (pascal: number | null): number => pascal! / 1e5;
    expect(pump!.flow * 60000).toBeCloseTo(20 + 0.05 * bar(pump!.pressureDrop), 7);
    expect(tip!.flow * 60000).toBeCloseTo(5 * Math.sqrt(bar(tip!.pressureIn) / 0.9982), 7);
    expect((tip!.flow * 60000).toFixed(2)).toBe('19.23');
    expect(bar(hose!.pressureDrop).toFixed(1)).toBe('0.6');
    expect(page).toContain('19.23 l/min');
  });
});
