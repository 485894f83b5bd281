import { describe, expect, it } from 'vitest';
import { METHODS } from '../src/calc/registry.ts';
import { main } from '../src/cli/main.ts';

async function calc(...argv: string[]): Promise<{ code: number; out: string; err: string }> {
  let out = '';
  let err = '';
  const code = await main(['calc', ...argv], {
    out: (t) => void (out += `${t}\n`),
    err: (t) => void (err += `${t}\n`),
  });
  return { code, out, err };
}

const POWER = '{"flow": "12 gpm", "pressureRise": "500 psi"}';

describe('spraywright calc', () => {
  it('lists every calculation with its inputs, their units and ranges, and its source', async () => {
    const { code, out } = await calc('--list');
    expect(code).toBe(0);
    for (const method of METHODS) {
      expect(out).toContain(`  ${method.name}  ${method.purpose}`);
      expect(out).toContain(`source: ${method.source}`);
      for (const param of method.params) expect(out).toContain(`      ${param.name} [`);
    }
    expect(out).toContain('flow [m3/s, 0 to 10]');
    expect(out).toContain(`${METHODS.length} of ${METHODS.length} calculations`);
  });

  it('narrows the list by words, and says when nothing is left', async () => {
    const { out } = await calc('--list', 'hypochlorite', 'decay');
    expect(out).toContain('hypochloriteRateConstant');
    expect(out).not.toContain('fluidPower');
    expect(await calc('--list', 'marmalade')).toMatchObject({
      code: 1,
      err: expect.stringContaining('marmalade'),
    });
    const psychrometer = (await calc('--list', 'wet', 'bulb')).out;
    expect(psychrometer.indexOf('wetBulbStull')).toBeLessThan(psychrometer.indexOf('deltaT'));
    const listed = JSON.parse((await calc('--list', '--as', 'json')).out) as { name: string }[];
    expect(listed.map((m) => m.name)).toEqual(METHODS.map((m) => m.name));
  });

  it('tells the inputs of one when it is given none', async () => {
    const { code, out } = await calc('fluidPower');
    expect(code).toBe(0);
    expect(out).toContain('P = Q Δp');
    expect(out).toContain('pressureRise  pressure rise across the pump [Pa, 0 to 1000000000]');
    expect(out).toContain(`calc fluidPower --json '{"flow": ..., "pressureRise": ...}'`);
  });

  it('runs on quantities as people type them and shows the working', async () => {
    const { code, out } = await calc('fluidPower', '--json', POWER);
    expect(code).toBe(0);
    // hp = gpm psi / 1714, common practice.
    expect(out).toContain('12 gpm = 0.0007570824 m3/s');
    expect(out).toContain('P = Q Δp');
    expect(out).toMatch(/fluid power: 2609\.95 W \(3\.5 hp\)/);
    expect(out).toContain('Source: ');
    expect((await calc('fluidPower', '--json', POWER, '--units', 'metric')).out).toContain('(2.6 kW)');
  });

  it('takes name=value as well, and answers in JSON', async () => {
    const { code, out } = await calc('fluidPower', 'flow=12 gpm', 'pressureRise=500 psi', '--as', 'json');
    expect(code).toBe(0);
    const json = JSON.parse(out) as { ok: boolean; results: { value: number; unit: string }[] };
    expect(json.ok).toBe(true);
    expect(json.results[0]!.value).toBeCloseTo(2610, 0);
    expect(json.results[0]!.unit).toBe('W');
  });

  it('shows lists, yes and no, and words in its answer', async () => {
    const { out } = await calc(
      'isoTipsForDose',
      'dose=20 gal/acre',
      'speed=5 mph',
      'spacing=20 in',
      'density=1000 kg/m3',
      'leastPressure=20 psi',
      'mostPressure=60 psi',
    );
    expect(out).toMatch(/sizes, .*: 0[34]/);
    expect(out).toMatch(/pressures, .*: \d+.* Pa/);
    expect((await calc('isAsCoarseAs', 'droplets=coarse', 'than=medium')).out).toContain(': yes');
  });

  it('names each bad field, and the limit it breaks', async () => {
    const bad = await calc('fluidPower', '--json', '{"flow": "70 F", "presureRise": 5}');
    expect(bad.code).toBe(2);
    expect(bad.err).toContain("flow: '70 F' is a temperature; a flow was expected");
    expect(bad.err).toContain('pressureRise is missing');
    expect(bad.err).toContain("did you mean 'pressureRise'?");
    const hot = await calc('waterDensity', 'temperatureC=300 F');
    expect(hot).toMatchObject({ code: 2, err: expect.stringContaining('at most 100 degC (212 °F)') });
    const json = await calc('waterDensity', 'temperatureC=300 F', '--as', 'json');
    expect(json.code).toBe(2);
    expect((JSON.parse(json.out) as { problems: { path: string[] }[] }).problems[0]!.path).toEqual([
      'temperatureC',
    ]);
  });

  it.each([
    [['fluidPowr', '--json', '{}'], "did you mean 'fluidPower'?"],
    [['fluidPower', '--json', '{"flow": '], 'this is not JSON'],
    [['fluidPower', '--json', '[1]'], 'an object was expected'],
    [['fluidPower', 'flow'], 'write it as name=value'],
    [['fluidPower', 'flow=1 gpm', 'flow=2 gpm'], 'flow is given twice'],
    [['fluidPower', 'flow=1 gpm', '--units', 'furlongs'], 'us or metric'],
    [['fluidPower', 'flow=1 gpm', '--as', 'poem'], 'text or json'],
    [[], 'needs the name of a calculation'],
    [['fluidPower', '__proto__=1', 'flow=1 gpm', 'pressureRise=1 psi'], "'__proto__' is not an input"],
  ])('refuses %j by name', async (argv, message) => {
    const result = await calc(...argv);
    expect(result.code).toBe(2);
    expect(result.err).toContain(message);
    expect(result.out).toBe('');
  });
});
