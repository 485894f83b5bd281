import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { METHODS, methodNamed, methodsAbout, runCalculation } from './registry.ts';

function value(name: string, inputs: Record<string, unknown>): unknown {
  const run = runCalculation(name, inputs);
  if (!run.ok) throw new Error(run.problems.map((p) => p.message).join('\n'));
  return run.results[0]?.value;
}
function messages(name: string, inputs: Record<string, unknown>): string[] {
  const run = runCalculation(name, inputs);
  return run.ok ? [] : run.problems.map((p) => p.message);
}

describe('running a method by name', () => {
  it('takes quantities as people type them', () => {
    // Trade formula hp = gpm × psi / 1714, common practice.
    const watts = value('fluidPower', { flow: '12 gpm', pressureRise: '500 psi' }) as number;
    expect(watts / 745.69987 / ((12 * 500) / 1714)).toBeCloseTo(1, 3);
    expect(value('fluidPower', { flow: '1e-3 m3/s', pressureRise: '10 bar' })).toBeCloseTo(1000, 9);
  });

  it('reads the same input in any unit of its kind', () => {
    const inCelsius = value('waterDensity', { temperatureC: '20 °C' });
    expect(value('waterDensity', { temperatureC: '68 F' })).toBeCloseTo(inCelsius as number, 9);
    expect(value('waterDensity', { temperatureC: '293.15 K' })).toBeCloseTo(inCelsius as number, 9);
    // IAPWS SR6-08(2011) gives 998.2 kg/m3 at 20 °C (four digits, from memory).
    expect(inCelsius).toBeCloseTo(998.2, 1);
  });

  it('shows its working: formula, source, and each input as typed and as taken', () => {
    const run = runCalculation('fluidPower', { flow: '12 gpm', pressureRise: '500 psi' });
    if (!run.ok) throw new Error('refused');
    expect(run.working.formula).toBe('P = Q Δp');
    expect(run.working.source.length).toBeGreaterThan(5);
    expect(run.working.inputs[0]).toMatchObject({ name: 'flow', typed: '12 gpm', unit: 'm3/s' });
    expect(run.results[0]).toMatchObject({ name: '', unit: 'W' });
  });

  it('names every bad input', () => {
    expect(messages('fluidPower', { flow: '70 F', presureRise: '500 psi' })).toEqual([
      "flow: '70 F' is a temperature; a flow was expected, such as 12 gpm",
      'pressureRise is missing: pressure rise across the pump',
      "'presureRise' is not an input of fluidPower; did you mean 'pressureRise'?",
    ]);
    expect(messages('waterDensity', { temperatureC: '300 F' })).toEqual([
      'temperatureC is 300 F; it must be at most 100 degC (212 °F)',
    ]);
    expect(messages('waterDensity', { temperatureC: 20 })).toEqual([
      "temperatureC is 20; a quantity such as '70 F' was expected",
    ]);
    expect(messages('waterDensty', {})).toEqual([
      "there is no calculation 'waterDensty'; did you mean 'waterDensity'?",
    ]);
    expect(messages('constructor', {})).toEqual(["there is no calculation 'constructor'"]);
  });

  it('takes numbers where there is no unit, words where there is a choice, and yes or no', () => {
    expect(value('meshOpening', { mesh: 50 })).toBe(0.0003);
    expect(value('meshOpening', { mesh: '50' })).toBe(0.0003);
    expect(messages('meshOpening', { mesh: 51 })[0]).toContain('mesh is 51; it must be one of 12, 16');
    expect(value('strainerArea', { flow: '10 gpm', side: 'suction' })).toBeCloseTo(20 * 0.0254 ** 2, 12);
    expect(messages('strainerArea', { flow: '10 gpm', side: 'left' })[0]).toContain(
      'must be one of suction, pressure',
    );
  });

  it('passes on what the method itself refuses', () => {
    const run = runCalculation('settlingSpeedStokes', {
      diameter: '1 mm',
      particleDensity: '2650 kg/m3',
      density: '1000 kg/m3',
      viscosity: '1 cP',
    });
    expect(run.ok).toBe(false);
    if (!run.ok) expect(run.problems[0]?.message).toContain('Reynolds number of the particle');
  });

  it('takes lists, apart by semicolons where they are typed', () => {
    const typed = { massFractions: '50 %; 0.5', densities: '1000 kg/m3; 8 lb/gal' };
    const listed = { massFractions: [0.5, '50 %'], densities: ['1 kg/L', '8 lb/gal'] };
    expect(value('idealMixDensity', typed)).toBe(value('idealMixDensity', listed));
    expect(messages('idealMixDensity', { ...listed, densities: ['1 kg/L', '8 psi'] })[0]).toContain(
      'densities[1]',
    );
  });

  it('never throws and never gives a number that is not finite', () => {
    const inputs = fc.dictionary(fc.string(), fc.anything());
    const typed = fc.oneof(
      fc.anything(),
      fc
        .tuple(fc.double(), fc.constantFrom('m', 'Pa', 'gpm', 'kg', 'F', '%', '', 'lb/gal'))
        .map((q) => q.join(' ')),
      fc.double(),
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...METHODS),
        inputs,
        fc.array(typed, { minLength: 12, maxLength: 12 }),
        (method, extra, values) => {
          const named = Object.fromEntries(method.params.map((p, i) => [p.name, values[i % values.length]]));
          const run = runCalculation(method.name, { ...extra, ...named });
          return run.ok
            ? run.results.every(({ value: v }) =>
                [v].flat().every((x) => typeof x !== 'number' || Number.isFinite(x)),
              )
            : run.problems.length > 0 && run.problems.every((p) => p.message.length > 5);
        },
      ),
      { numRuns: 2000 },
    );
  });
});

describe('looking for a sum', () => {
  const found = (words: string) => methodsAbout(words.split(' ')).map((m) => m.name);

  it('understands what builders call a thing', () => {
    expect(found('pulley')).toContain('sheaveForFlow');
    expect(found('gallons per acre mph')).toEqual(expect.arrayContaining(['flowForDose', 'speedForDose']));
    expect(found('Horsepower')).toContain('fluidPower');
    expect(found('wire size')).toContain('cableFor');
    expect(found('hose on a reel')).toContain('reelHoseLength');
    expect(found('water hammer')).toContain('triggerPeak');
  });

  it('finds what is looked for in name or purpose first, all when nothing is, and none of a stranger', () => {
    expect(found('wet bulb')[0]).toMatch(/humidityFromWetBulb|wetBulbStull/);
    expect(found('')).toHaveLength(METHODS.length);
    expect(found('marmalade')).toEqual([]);
  });
});

describe('the list of methods', () => {
  it('has a purpose, a formula, a source and results for each', () => {
    for (const method of METHODS) {
      expect(methodNamed(method.name)).toBe(method);
      for (const text of [method.purpose, method.formula, method.source])
        expect(text.trim().length, method.name).toBeGreaterThan(3);
      expect(method.results.length, method.name).toBeGreaterThan(0);
    }
  });
});
