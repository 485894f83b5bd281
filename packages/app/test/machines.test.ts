import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { withFrozenParts } from '@spraywright/engine/catalogue';
import { readRig } from '@spraywright/engine/rig';
import { PROBLEMS } from '../src/server/problems.ts';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';
import { DATABASES, newRecords } from './both-databases.ts';
import { testServer, type TestServer } from './desk-server.ts';

let server: TestServer;
let rig: { title: string; items: { id: string; part: string }[] };

const place = newRecords();

async function send(method: string, path: string, body?: unknown) {
  const answer = await server.app.request(path, {
    method,
    ...(body === undefined
      ? {}
      : { headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) }),
  });
  return { status: answer.status, answer, body: (await answer.json()) as never };
}
const refused = async (work: ReturnType<typeof send>, code: keyof typeof PROBLEMS) => {
  const { status, body } = await work;
  expect(body).toMatchObject({ code });
  expect(status).toBe(PROBLEMS[code].status);
  return body as { detail: string };
};
const entry = (operation: string) => ({ operation, kind: 'yard-reading', document: { value: '40 psi' } });

describe.each(DATABASES)('Machines on %s', (database) => {
  beforeAll(async () => {
    server = await testServer(undefined, undefined, false, await place(database));
    rig = demoRig('light-cart', demoCatalogue(), demoShop()).raw as typeof rig;
    await send('POST', '/api/jobs', { id: 'cart', rig, by: 'Dana' });
  });
  afterAll(() => server.close());

  describe('A machine over the wire', () => {
    it('is begun from a version of a job, under the shop’s letters, month and number', async () => {
      const made = await send('POST', '/api/machines', { job: 'cart', version: 1, by: 'Robin' });
      expect(made.status).toBe(201);
      expect(made.answer.headers.get('Location')).toBe('/api/machines/LFR-0326-1');
      expect(made.body).toMatchObject({ serial: 'LFR-0326-1', jobVersion: 1, madeBy: 'Robin', entries: 0 });
      expect((await send('GET', '/api/machines?find=lfr')).body).toMatchObject({
        machines: [{ serial: 'LFR-0326-1', title: rig.title }],
      });
    });

    it('keeps its rig and its parts when job and catalogue change', async () => {
      await send('POST', '/api/machines', { job: 'cart', version: 1, serial: 'KEPT-1' });
      const edit = {
        operation: 'operation-1',
        about: 'Title',
        puts: [{ path: ['rig', 'title'], value: 'Otherwise' }],
      };
      await send('POST', '/api/jobs/cart/edits', { base: 1, edits: [edit] });
      const { document } = (await send('GET', '/api/machines/KEPT-1')).body as {
        document: { rig: typeof rig; parts: { part: { id: string } }[] };
      };
      expect(document.rig).toEqual(rig);
      expect(document.parts.map((p) => p.part.id)).toEqual([...new Set(rig.items.map((i) => i.part))].sort());
      // Without any of its parts in the catalogue, the machine is still the same.
      const today = demoCatalogue();
      const emptied = { ...today, parts: new Map() };
      expect(readRig(document.rig, emptied).ok).toBe(false);
      const frozen = withFrozenParts(emptied, document.parts);
      expect(frozen.ok).toBe(true);
      if (!frozen.ok) return;
      const [then, now] = [readRig(document.rig, frozen.catalogue), readRig(rig, today)];
      expect(then).toEqual(now);
      // An earlier version of the job can still be built.
      expect((await send('POST', '/api/machines', { job: 'cart', version: 1 })).body).toMatchObject({
        title: rig.title,
      });
      expect((await send('POST', '/api/machines', { job: 'cart', version: 2 })).body).toMatchObject({
        title: 'Otherwise',
      });
    });

    it('is what was sold, with the parts of that day, whatever job and catalogue say by now', async () => {
      const title = (raw: unknown) => (raw as { title: string }).title;
      await send('POST', '/api/jobs', { id: 'sold', rig, by: 'Dana' });
      expect((await send('GET', '/api/jobs/sold/sold')).body).toEqual({});
      const { number } = (await send('POST', '/api/quotes', { job: 'sold' })).body as { number: string };
      const way = `/api/quotes/${number}/revisions/A/links`;
      const { address } = (await send('POST', way, {})).body as { address: string };
      const accepted = await server.app.request(`${new URL(address).pathname}/accept`, {
        method: 'POST',
        body: new URLSearchParams({ name: 'Avery', option: '1' }),
      });
      expect(accepted.status).toBe(303);
      // Afterwards the job gets another title, and a part of it another leaflet.
      const puts = [{ path: ['rig', 'title'], value: 'Otherwise' }];
      const edits = [{ operation: 'operation-sold', about: 'Title', puts }];
      await send('POST', '/api/jobs/sold/edits', { base: 1, edits });
      const gun = rig.items.find((i) => i.id === 'gun')!.part;
      const { edition, document: part } = (await send('GET', `/api/parts/${gun}`)).body as {
        edition: number;
        document: object;
      };
      const changed = { madeOn: edition, part: { ...part, note: 'Changed since' }, by: 'Dana' };
      expect((await send('PUT', `/api/parts/${gun}`, changed)).status).toBe(200);

      expect((await send('GET', '/api/jobs/sold/sold')).body).toMatchObject({
        sold: { number, revision: 'A', title: rig.title, options: 1 },
      });
      interface Begun {
        jobVersion: number;
        document: { rig: unknown; quote?: object; parts: { part: { id: string; note?: string } }[] };
      }
      const begin = async (more: object) =>
        (await send('POST', '/api/machines', { job: 'sold', version: 2, ...more })).body as Begun;
      const noteOf = ({ document }: Begun) => document.parts.find(({ part: p }) => p.id === gun)!.part.note;
      const sold = await begin({});
      expect(title(sold.document.rig)).toBe(rig.title);
      expect(sold.document.quote).toMatchObject({
        number,
        revision: 'A',
        acceptedAt: '2026-03-03T09:00:00.000Z',
      });
      expect(noteOf(sold)).not.toBe('Changed since');
      const asItStands = await begin({ from: 'job' });
      expect(title(asItStands.document.rig)).toBe('Otherwise');
      expect(asItStands.document.quote).toBeUndefined();
      expect(noteOf(asItStands)).toBe('Changed since');
    });

    it('a frozen part that cannot be read is a problem by field', () => {
      const read = withFrozenParts(demoCatalogue(), [{ kind: 'hose', part: { id: 'x' } }]);
      expect(read.ok).toBe(false);
      if (!read.ok) expect(read.problems[0]!.path.slice(0, 3)).toEqual(['parts', 0, 'part']);
    });

    it('takes entries in a batch, each once, and tells them in order', async () => {
      await send('POST', '/api/machines', { job: 'cart', version: 1, serial: 'READ-1' });
      const post = (...entries: unknown[]) =>
        send('POST', '/api/machines/READ-1/entries', { entries, by: 'Robin' });
      expect((await post(entry('operation-1'), entry('operation-2'))).body).toEqual({ added: 2, last: 2 });
      expect((await post(entry('operation-2'), entry('operation-3'))).body).toEqual({ added: 1, last: 3 });
      expect((await send('GET', '/api/machines/READ-1/entries?after=1')).body).toMatchObject({
        entries: [
          { number: 2, operation: 'operation-2', by: 'Robin', document: { value: '40 psi' } },
          { number: 3 },
        ],
      });
    });
  });

  describe('What is refused of machines', () => {
    it('is a problem with a code of the table', async () => {
      const begin = (body: unknown) => send('POST', '/api/machines', body);
      await begin({ job: 'cart', version: 1, serial: 'FIRM-1' });
      await refused(begin({ job: 'cart', version: 1, serial: 'FIRM-1' }), 'machine-exists');
      await refused(begin({ job: 'none', version: 1 }), 'no-such-job');
      expect((await refused(begin({ job: 'cart', version: 99 }), 'no-such-version')).detail).toContain('99');
      await refused(begin({ job: 'cart', version: 1, serial: 'small letters' }), 'bad-request');
      await refused(send('GET', '/api/machines/NONE'), 'no-such-machine');
      await refused(send('GET', '/api/machines/NONE/entries'), 'no-such-machine');
      await refused(
        send('POST', '/api/machines/NONE/entries', { entries: [entry('operation-1')] }),
        'no-such-machine',
      );
      expect(
        await refused(
          send('POST', '/api/machines/FIRM-1/entries', { entries: [entry('short')] }),
          'bad-request',
        ),
      ).toMatchObject({ problems: [{ field: 'entries.0.operation' }] });
      await send('POST', '/api/jobs', { id: 'unread', rig: { title: 'Nothing' } });
      await refused(begin({ job: 'unread', version: 1 }), 'unreadable-rig');
    });
  });
});
