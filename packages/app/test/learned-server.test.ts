import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { confidenceOf, proveRig } from '@spraywright/engine/rig';
import {
  correctionsOf,
  learnFrom,
  readLearned,
  SCALE_WHOLE,
  yardSheet,
  type BuiltRig,
  type LearnedFactor,
  type TestedCopy,
} from '@spraywright/engine/yard';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';
import { DATABASES, newRecords, type DatabaseName } from './both-databases.ts';
import { testServer, type TestServer } from './desk-server.ts';
import { syntheticShop } from './synthetic-shop.ts';
import { toldTest } from './told-tests.ts';

const catalogue = demoCatalogue();
const { raw, rig } = demoRig('utility-12v', catalogue, demoShop());
const sheet = yardSheet(rig, proveRig(rig, catalogue, demoShop()));

interface Told {
  document: unknown;
  factors: (LearnedFactor & { drifts: boolean; told: string; machines?: TestedCopy[] })[];
  calibration: { readings: number; inside: number; bands: { tested: number; held: number }[] };
  doubted: { serial: string; id: string; sound: number; read?: string; window?: string }[];
  unfinished: string[];
  unfit: { serial: string; day: string; why: string }[];
}

/** A shop of six rigs whose tests are told in SI, as its tablet would send them. */
const shop = syntheticShop([rig], { count: 6, seed: 12 });
const entriesOf = (built: BuiltRig, how?: Parameters<typeof toldTest>[2]) =>
  toldTest(built, sheet.readings, how);

interface Opened {
  edition: number;
  document: Record<string, unknown>;
}

async function send(server: TestServer, path: string, body?: unknown, method = 'POST') {
  const answer = await server.app.request(path, {
    ...(body === undefined
      ? {}
      : { method, headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) }),
  });
  const told = (await answer.json()) as never;
  expect(told).not.toHaveProperty('code');
  return told;
}
const learned = async (server: TestServer): Promise<Told> => send(server, '/api/learned');

async function shopOf(machines: readonly BuiltRig[], database: DatabaseName): Promise<TestServer> {
  const server = await testServer(undefined, undefined, false, await place(database));
  await send(server, '/api/jobs', { id: 'utility', rig: raw, by: 'Dana' });
  for (const machine of machines) {
    await send(server, '/api/machines', { job: 'utility', version: 1, serial: machine.serial });
    await send(server, `/api/machines/${machine.serial}/entries`, { entries: entriesOf(machine) });
  }
  return server;
}

const place = newRecords();

describe.each(DATABASES)('What the records have taught on %s', (database) => {
  let server: TestServer;
  beforeAll(async () => void (server = await shopOf(shop.machines, database)));
  afterAll(() => server.close());

  it('is nothing where no rig was tested', async () => {
    const empty = await shopOf([], database);
    expect(await learned(empty)).toMatchObject({
      document: { machines: 0, readings: 0, factors: [] },
      factors: [],
      calibration: { readings: 0, windows: 'too few to tell' },
    });
    await empty.close();
  });

  it('is what the same readings teach from files', async () => {
    const told = await learned(server);
    const plain = learnFrom(shop.machines).factors.filter((f) => f.rigs > 0);
    expect(told.factors.map((f) => f.key)).toEqual(plain.map((f) => f.key));
    told.factors.forEach((f, i) => {
      expect(f.rigs).toBe(6);
      expect(Math.abs(f.mean - plain[i]!.mean) / plain[i]!.deviation).toBeLessThan(1e-6);
    });
    expect(told.unfit).toEqual([]);
    expect(told.calibration.readings).toBe(shop.machines.reduce((n, m) => n + m.tests[0]!.values.size, 0));
  });

  it('tells what each machine says of its own parts, the first tested first', async () => {
    const { factors } = (await send(server, '/api/learned?machines=yes')) as Told;
    for (const { machines, mean } of factors) {
      expect(machines!.map((m) => m.serial)).toEqual(shop.machines.map((m) => m.serial).sort());
      expect(machines!.every((m) => m.taken === '2026-03-03T10:00:00Z' && m.deviation > 0)).toBe(true);
      // The part is about the middle of its copies.
      const middle = machines!.reduce((sum, m) => sum + m.mean, 0) / machines!.length;
      expect(Math.abs(middle - mean)).toBeLessThan(0.02);
    }
    expect((await learned(server)).factors.every((f) => f.machines === undefined)).toBe(true);
  });

  it('makes the odds of the next rig sharper', async () => {
    const read = readLearned((await learned(server)).document);
    if (!read.ok) throw new Error(read.problems[0]!.message);
    const corrections = correctionsOf(rig, read.document)!;
    expect(corrections.length).toBeGreaterThan(2);
    const proof = proveRig(rig, catalogue, demoShop());
    const width = (c: typeof corrections) =>
      confidenceOf(rig, proof, { corrections: c, draws: 256 }).inputs.reduce(
        (sum, i) => sum + i.deviation,
        0,
      );
    expect(width(corrections)).toBeLessThan(width([]));
  });

  it('comes out the same when machines and tests come in another order', async () => {
    const other = await shopOf([...shop.machines].reverse(), database);
    const [there, here] = [await learned(other), await learned(server)];
    expect(there.factors.map((f) => f.key)).toEqual(here.factors.map((f) => f.key));
    there.factors.forEach((f, i) => expect(f.mean).toBeCloseTo(here.factors[i]!.mean, 9));
    await other.close();
  });

  it('is held until something is written down, and told by its ETag', async () => {
    const ask = (tag?: string) =>
      server.app.request('/api/learned', tag === undefined ? {} : { headers: { 'If-None-Match': tag } });
    const tag = (await ask()).headers.get('ETag')!;
    expect((await ask(tag)).status).toBe(304);
    await send(server, '/api/machines', { job: 'utility', version: 1, serial: 'S-90' });
    // A test that is under way teaches nothing, and says so.
    await send(server, '/api/machines/S-90/entries', {
      entries: entriesOf(shop.machines[0]!, { finished: false }),
    });
    const again = await ask(tag);
    expect(again.status).toBe(200);
    const told = (await again.json()) as Told;
    expect(told.unfinished).toEqual(['S-90']);
    expect(told.factors.every((f) => f.rigs === 6)).toBe(true);
  });

  it('tells of a reading that does not fit all others, and of a test that cannot be read', async () => {
    const other = await shopOf(shop.machines, database);
    const [first] = shop.machines;
    const bucket = [...first!.tests[0]!.values.keys()].find((id) => id.startsWith('bucket:'))!;
    await send(other, '/api/machines', { job: 'utility', version: 1, serial: 'S-80' });
    await send(other, '/api/machines/S-80/entries', { entries: entriesOf(first!, { by: { [bucket]: 2 } }) });
    await send(other, '/api/machines', { job: 'utility', version: 1, serial: 'S-81' });
    const [conditions, ...rest] = entriesOf(first!);
    const document = { ...rest[0]!.document, row: 'no-such-row' };
    await send(other, '/api/machines/S-81/entries', {
      entries: [conditions, { ...rest[0]!, document }, ...rest.slice(1)],
    });
    const told = await learned(other);
    const doubted = told.doubted.find((d) => d.serial === 'S-80' && d.id === bucket)!;
    expect(doubted.sound).toBeLessThan(0.01);
    expect(doubted).toMatchObject({ task: 'Time to fill 1 gal from the gun' });
    // It is told with what was read and with what was expected of it.
    expect(doubted.read).toMatch(/min$/);
    expect(doubted.window).toMatch(/^\d+ s to \d+ s$/);
    expect(told.unfit).toMatchObject([{ serial: 'S-81', day: '2026-03-03' }]);
    expect(told.unfit[0]!.why).toContain('no-such-row');
    expect(told.factors.every((f) => f.rigs === 7)).toBe(true);
    await other.close();
  });

  it('learns from the scale ticket of the build too, once, and against the mass of its day', async () => {
    const other = await shopOf(shop.machines.slice(0, 2), database);
    const masses = async () => (await learned(other)).factors.filter((f) => f.key.startsWith('dry-mass:'));
    expect(await masses()).toEqual([]);
    const write = async (serial: string, kind: string, operation: string, document: object) => {
      const entries = [{ operation, kind, document }];
      await send(other, `/api/machines/${serial}/entries`, { entries });
    };
    const { expected } = sheet.readings.find((r) => r.id === SCALE_WHOLE)!;
    const ticket = { step: 'weigh', text: 'Weigh it', done: true, note: 'ticket 4711' };
    const serial = shop.machines[0]!.serial!;
    const value = `${(expected * 1.04).toFixed(2)} kg`;
    await write(serial, 'build-step', 'weighed-it', { ...ticket, value });
    const found = await masses();
    expect(found.length).toBeGreaterThan(2);
    for (const f of found) {
      expect(f.rigs).toBe(1);
      expect(f.mean).toBeGreaterThan(0);
    }
    expect((await learned(other)).unfit).toEqual([]);
    // The same ticket in the yard test takes its place.
    const head = { test: 'weighing-1', taken: '2026-03-04T10:00:00Z' };
    await write(serial, 'yard-reading', 'weighed-there', { ...head, row: SCALE_WHOLE, value });
    await write(serial, 'yard-finished', 'finished-there', { ...head, state: 'pass' });
    const again = await masses();
    again.forEach((f, i) => expect(f.mean).toBeCloseTo(found[i]!.mean, 9));
    // A mass that the shop puts right is not put right twice; what water taught of the part stands.
    const tank = [...rig.items.values()].find((i) => i.part.kind === 'tank')!.part.id;
    const { edition, document } = (await send(other, `/api/parts/${tank}`)) as Opened;
    const part = { ...document, mass: '9.9 kg' };
    await send(other, `/api/parts/${tank}`, { madeOn: edition, part, by: 'Dana' }, 'PUT');
    const keys = (await masses()).map((f) => f.key.replace(/#[0-9a-f]{8}$/, '#'));
    expect(keys).toContain(`dry-mass:${tank}#`);
    expect(keys.filter((k) => k.endsWith('#'))).toHaveLength(1);
    await other.close();
  });

  it('is not put right twice once the shop has put the leaflet right', async () => {
    const other = await shopOf(shop.machines, database);
    const pump = [...rig.items.values()].find((i) => i.part.kind.endsWith('pump'))!.part.id;
    const keys = async () => (await learned(other)).factors.map((f) => f.key).filter((k) => k.includes(pump));
    const before = await keys();
    expect(before).toContain(`pump-flow:${pump}`);
    const put = async (more: object) => {
      const { edition, document } = (await send(other, `/api/parts/${pump}`)) as Opened;
      await send(
        other,
        `/api/parts/${pump}`,
        { madeOn: edition, part: { ...document, ...more }, by: 'Dana' },
        'PUT',
      );
    };
    await put({ note: 'Seals in the drawer under the bench' });
    expect(await keys()).toEqual(before);
    await put({ maxPressure: '58 psi' });
    const after = await learned(other);
    const then = after.factors.filter((f) => f.key.includes(pump));
    expect(then.map((f) => f.key.replace(/#[0-9a-f]{8}$/, ''))).toEqual(before);
    for (const f of then)
      expect([f.key, f.name]).toEqual([
        expect.stringContaining('#'),
        expect.stringContaining('by its data of then'),
      ]);
    const document = readLearned(after.document);
    if (!document.ok) throw new Error(document.problems[0]!.message);
    expect(correctionsOf(rig, document.document)!.map((c) => c.id)).not.toContain('pump-flow:pump');
    await other.close();
  });
});
