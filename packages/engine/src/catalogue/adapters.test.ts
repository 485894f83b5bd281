import { describe, expect, it } from 'vitest';
import { jointFinder } from './adapters.ts';
import { readCatalogue } from './catalogue.ts';
import { mates, type Port } from './port.ts';

const IN = 0.0254;
const port = (joint: Port['joint'], size: number, gender: Port['gender']): Port => ({
  id: 'p',
  joint,
  size: size * IN,
  gender,
});

/** A fitting as a catalogue file has it; ports as [joint, size, gender]. */
function fitting(
  id: string,
  priceCents: number,
  a: [string, string, string],
  b: [string, string, string],
  maxPressure = '300 psi',
): unknown {
  const end = ([joint, size, gender]: [string, string, string], name: string) => ({
    id: name,
    joint,
    size,
    gender,
  });
  return {
    id,
    name: `Fitting ${id}`,
    mass: '0.1 lb',
    size: { length: '2 in', width: '1 in', height: '1 in' },
    costCents: 0,
    priceCents,
    leadTimeDays: 0,
    stock: 5,
    ports: [end(a, 'in'), end(b, 'out')],
    wetted: [],
    form: 'straight',
    bore: '0.5 in',
    maxPressure,
  };
}

function finder(...parts: unknown[]) {
  const result = readCatalogue({ file: 'catalogue.json', raw: { name: 'test', version: 1 } }, [
    { file: 'fitting.json', raw: { kind: 'fitting', parts } },
  ]);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return jointFinder(result.catalogue);
}

describe('ports', () => {
  it('mate when joint and size agree and one is male, the other female', () => {
    expect(mates(port('npt', 0.75, 'male'), port('npt', 0.75, 'female'))).toBe(true);
    expect(mates(port('npt', 0.75, 'male'), port('npt', 0.75, 'male'))).toBe(false);
    expect(mates(port('npt', 0.75, 'male'), port('npt', 1, 'female'))).toBe(false);
    expect(mates(port('npt', 0.75, 'male'), port('garden-hose', 0.75, 'female'))).toBe(false);
    expect(mates(port('flange', 2, 'none'), port('flange', 2, 'none'))).toBe(true);
  });
});

describe('the joint between two ports', () => {
  const nipple = fitting('nipple', 300, ['npt', '3/4 in', 'male'], ['npt', '3/4 in', 'male']);
  const barb = fitting('barb', 250, ['npt', '3/4 in', 'male'], ['hose', '3/4 in', 'male']);
  const reducer = fitting('reducer', 400, ['npt', '3/4 in', 'male'], ['npt', '1/2 in', 'female']);
  const smallBarb = fitting('small-barb', 200, ['npt', '1/2 in', 'male'], ['hose', '1/2 in', 'male']);

  it('is nothing when the ports mate by themselves', () => {
    const joint = finder(nipple)(port('npt', 0.75, 'male'), port('npt', 0.75, 'female'), 0);
    expect(joint).toEqual({ ok: true, pieces: [] });
  });

  it('is the chain of pieces that leads from one to the other, in order', () => {
    const joint = finder(
      nipple,
      barb,
      reducer,
      smallBarb,
    )(port('npt', 0.75, 'female'), port('hose', 0.5, 'female'), 0);
    expect(joint.ok && joint.pieces.map((p) => p.id)).toEqual(['reducer', 'small-barb']);
  });

  it('is the cheapest, even when it has more pieces', () => {
    const dear = fitting('dear', 5000, ['npt', '3/4 in', 'male'], ['hose', '1/2 in', 'male']);
    const joint = finder(dear, reducer, smallBarb)(
      port('npt', 0.75, 'female'),
      port('hose', 0.5, 'female'),
      0,
    );
    expect(joint.ok && joint.pieces.map((p) => p.id)).toEqual(['reducer', 'small-barb']);
  });

  it('has fewest pieces at equal price, since every joint can leak', () => {
    const direct = fitting('direct', 600, ['npt', '3/4 in', 'male'], ['hose', '1/2 in', 'male']);
    const joint = finder(reducer, smallBarb, direct)(
      port('npt', 0.75, 'female'),
      port('hose', 0.5, 'female'),
      0,
    );
    expect(joint.ok && joint.pieces.map((p) => p.id)).toEqual(['direct']);
  });

  it('is made only of pieces that stand the pressure', () => {
    const strong = fitting('strong', 900, ['npt', '3/4 in', 'male'], ['hose', '3/4 in', 'male'], '800 psi');
    const find = finder(barb, strong);
    const at = (psi: number) =>
      find(port('npt', 0.75, 'female'), port('hose', 0.75, 'female'), psi * 6894.757);
    const low = at(100);
    const high = at(600);
    expect(low.ok && low.pieces[0]?.id).toBe('barb');
    expect(high.ok && high.pieces[0]?.id).toBe('strong');
    expect(at(900).ok).toBe(false);
  });

  it('is a gap with both ports named when nothing joins them', () => {
    const joint = finder(nipple)(port('npt', 0.75, 'female'), port('cam-lock', 2, 'male'), 0);
    expect(joint).toMatchObject({ ok: false });
    expect(!joint.ok && joint.gap).toMatch(/3\/4 in npt, female to 2 in cam-lock, male/);
  });
});
