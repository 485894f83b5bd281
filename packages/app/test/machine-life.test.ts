import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { partsInstead, proveRig, proveSubstitution, type RawRig } from '@spraywright/engine/rig';
import { PROBLEMS } from '../src/server/problems.ts';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';
import { testServer, type TestServer } from './desk-server.ts';
import { dense, wordsOf } from './ink.ts';

const SERIAL = 'LF-0412-1';
const catalogue = demoCatalogue();
const shop = demoShop();
const { raw, rig } = demoRig('light-cart', catalogue, shop);
const folder = mkdtempSync(join(tmpdir(), 'machine-life-'));
let server: TestServer;

beforeAll(async () => {
  server = await testServer();
  await send('POST', '/api/jobs', { id: 'cart', rig: raw });
  await send('POST', '/api/machines', { job: 'cart', version: 1, serial: SERIAL });
});
afterAll(async () => {
  rmSync(folder, { recursive: true });
  await server.close();
});

const ask = (path: string) => server.app.request(path);
async function send(method: string, path: string, body?: unknown) {
  const answer = await server.app.request(path, {
    method,
    ...(body === undefined
      ? {}
      : { headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) }),
  });
  return { status: answer.status, body: (await answer.json()) as never };
}
const refused = async (work: ReturnType<typeof send>, code: keyof typeof PROBLEMS) => {
  const { status, body } = await work;
  expect(body).toMatchObject({ code });
  expect(status).toBe(PROBLEMS[code].status);
  return body as { detail: string; problems: { field: string; message: string }[] };
};
const instead = (operation: string, slot: string, part: string) =>
  send('POST', `/api/machines/${SERIAL}/substitutions`, {
    operation,
    slot,
    part,
    why: 'the one on the list has not come',
    by: 'Sam',
  });
/** Parts for a slot by whether the rig keeps all with them. */
function tried(slot: string) {
  const made = { raw: raw as RawRig, rig, proof: proveRig(rig, catalogue, shop) };
  const all = partsInstead(rig, catalogue, slot).map((part) => ({
    part,
    ...proveSubstitution(made, catalogue, shop, { slot, part }),
  }));
  return { good: all.find((t) => t.allowed)!, bad: all.find((t) => !t.allowed)! };
}

/** A black square. */
const SMALL_JPEG =
  'data:image/jpeg;base64,/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDAFA3PEY8MlBGQUZaVVBfeMiCeG5uePWvuZH' +
  'I////////////////////////////////////////////////////2wBDAVVaWnhpeOuCguv//////////////////' +
  '///////////////////////////////////////////////////////wAARCAAIAAgDASIAAhEBAxEB/8QAFQABAQA' +
  'AAAAAAAAAAAAAAAAAAAT/xAAUEAEAAAAAAAAAAAAAAAAAAAAA/8QAFAEBAAAAAAAAAAAAAAAAAAAAAP/EABQRAQAAA' +
  'AAAAAAAAAAAAAAAAAD/2gAMAwEAAhEDEQA/AIgAf//Z';

describe('Another part in a machine', () => {
  it('is refused with the promise it would break, and nothing is written down', async () => {
    const { bad } = tried('tank');
    const { problems, detail } = await refused(instead('operation-1', 'tank', bad.part.id), 'promise-broken');
    const broken = bad.effect.breaks[0] ?? bad.effect.doubts[0]!;
    expect(problems.map((p) => p.field)).toContain(broken.id);
    expect(detail).toContain(problems[0]!.message);
    await refused(instead('operation-1', 'tank', 'no-such-part'), 'bad-part');
    await refused(instead('operation-1', 'tank', rig.items.get('pump')!.part.id), 'bad-part');
    expect((await send('GET', `/api/machines/${SERIAL}`)).body).toMatchObject({ entries: 0 });
  });

  it('goes in once when the rig keeps all with it, and every later paper has it', async () => {
    const { good } = tried('strainer');
    for (const _ of [1, 2]) {
      const { status, body } = await instead('operation-2', 'strainer', good.part.id);
      expect({ status, body }).toMatchObject({ status: 200, body: { part: good.part.id, last: 1 } });
    }
    const page = await (await ask(`/api/machines/${SERIAL}/handbook.html`)).text();
    expect(page).toContain(good.part.id);
    expect(page).not.toContain(rig.items.get('strainer')!.part.id);
    expect((await send('GET', `/api/machines/${SERIAL}/entries`)).body).toMatchObject({
      entries: [
        {
          kind: 'substitution',
          by: 'Sam',
          document: { slot: 'strainer', was: rig.items.get('strainer')!.part.id },
        },
      ],
    });
  });

  it('is no entry that can be sent around its proof', async () => {
    const entry = { operation: 'operation-3', kind: 'substitution', document: { slot: 'tank', puts: [] } };
    await refused(send('POST', `/api/machines/${SERIAL}/entries`, { entries: [entry] }), 'bad-entry');
  });
});

describe('An entry of building or service', () => {
  it('is kept when it can be read again, and refused by its field when not', async () => {
    const add = (kind: string, document: object) =>
      send('POST', `/api/machines/${SERIAL}/entries`, {
        entries: [{ operation: `entry-${kind}`, kind, document }],
      });
    const image = `data:image/jpeg;base64,${'A'.repeat(400)}`;
    for (const [kind, document] of Object.entries({
      'build-step': { step: 'mount-tank', text: 'Set the tank', done: true, value: '40 lbf.ft' },
      lot: { part: 'tip-orifice-6', lot: '2026-11' },
      photo: { about: 'Hose behind the tank', image },
      'last-liquid': { liquid: 'naocl_12' },
    }))
      expect(await add(kind, document)).toMatchObject({ status: 200, body: { added: 1 } });
    const large = await refused(
      add('photo', { about: 'x', image: `data:image/jpeg;base64,${'A'.repeat(300_000)}` }),
      'bad-entry',
    );
    expect(large.detail).toMatch(/entries\.0\.document\.image: image is larger than 200 KB/);
    const script = await refused(
      add('photo', { about: 'x', image: 'data:text/html;base64,AAAA' }),
      'bad-entry',
    );
    expect(script.detail).toMatch(/image must be a JPEG/);
    await refused(add('lot', { part: 'tip-orifice-6', lot: '' }), 'bad-entry');
  });
});

describe('The papers of a machine', () => {
  it.each(['handbook.pdf', 'plate.pdf', 'build-pack.pdf', 'freight.pdf'])(
    '%s opens and names the machine',
    async (name) => {
      const answer = await ask(`/api/machines/${SERIAL}/${name}`);
      expect(answer.headers.get('Content-Type')).toBe('application/pdf');
      expect(answer.headers.get('Content-Disposition')).toContain(SERIAL);
      const words = wordsOf(new Uint8Array(await answer.arrayBuffer()), folder);
      expect(words).toContain(dense(SERIAL));
      // What parts cost the shop is not for everybody who builds.
      expect(words).not.toContain('$');
    },
  );

  it('draw its frame as a sheet, as SVG and for drawing programs', async () => {
    const sheet = await ask(`/api/machines/${SERIAL}/frame.pdf`);
    const words = wordsOf(new Uint8Array(await sheet.arrayBuffer()), folder);
    expect(words).toContain(dense('WHAT RESTS WHERE'));
    expect(words).not.toContain('$');
    const svg = await ask(`/api/machines/${SERIAL}/frame.svg`);
    expect(svg.headers.get('Content-Type')).toBe('image/svg+xml');
    expect(await svg.text()).toMatch(/^<svg /);
    const dxf = await ask(`/api/machines/${SERIAL}/frame.dxf`);
    expect(dxf.headers.get('Content-Disposition')).toBe(`attachment; filename="frame-${SERIAL}.dxf"`);
    expect(await dxf.text()).toMatch(/SECTION[^]*ENTITIES[^]*EOF/);
  });

  it('tell how it was built: who did a step and when, its figure, lots and photos', async () => {
    const entries = [
      ['photo', { about: 'Tank strapped', image: SMALL_JPEG, step: 'mount-tank' }],
      ['lot', { part: rig.items.get('gun')!.part.id, lot: 'P-77' }],
    ].map(([kind, document], i) => ({ operation: `built-entry-${i}`, kind, document }));
    await send('POST', `/api/machines/${SERIAL}/entries`, { entries, by: 'Robin' });
    const page = await (await ask(`/api/machines/${SERIAL}/handbook.html`)).text();
    const built = page.slice(page.indexOf('<section id="built">'));
    expect(built).toMatch(/1 of \d+ steps are written down as done/);
    expect(built).toContain('40 lbf·ft');
    expect(built).toContain('P-77');
    // A photo of a step carries the words of the step.
    expect(built).toMatch(
      new RegExp(`<img src="${SMALL_JPEG.replace(/[+/]/g, '.')}" alt=""><figcaption>Set the tank`),
    );
    for (const name of ['handbook.pdf', 'build-pack.pdf']) {
      const answer = await ask(`/api/machines/${SERIAL}/${name}`);
      const words = wordsOf(new Uint8Array(await answer.arrayBuffer()), folder);
      expect(words).toContain('40lbf·ft');
      // What only looks like a photo is said, and the paper opens all the same.
      if (name === 'handbook.pdf') expect(words).toContain('Thisphotocannotbeprinted');
    }
  });

  it('print what was read in the yard, and say so when nothing was', async () => {
    const page = async () => (await ask(`/api/machines/${SERIAL}/handbook.html`)).text();
    expect(await page()).toContain('No readings of this machine are recorded');
    const taken = { test: '2026-03-04-a', taken: '2026-03-04T10:00:00.000Z' };
    const entries = [
      ['yard-reading', { ...taken, row: 'drive-speed', value: '3600 rpm' }],
      ['yard-finished', { ...taken, state: 'missing' }],
    ].map(([kind, document], i) => ({ operation: `yard-entry-${i}`, kind, document }));
    await send('POST', `/api/machines/${SERIAL}/entries`, { entries, by: 'Robin' });
    expect(await page()).toMatch(/Read with clean water on 2026-03-04 by Robin/);
    const odd = {
      operation: 'yard-entry-9',
      kind: 'yard-reading',
      document: { ...taken, row: 'no-such-row', value: '1 psi' },
    };
    await send('POST', `/api/machines/${SERIAL}/entries`, { entries: [odd] });
    expect(await page()).toMatch(/A yard test of 2026-03-04 is recorded and does not fit/);
  });

  it('the handbook is one page that fetches nothing', async () => {
    const answer = await ask(`/api/machines/${SERIAL}/handbook.html?units=metric`);
    expect(answer.headers.get('Content-Security-Policy')).toContain("font-src 'self' data:");
    const page = await answer.text();
    expect(page).toContain("default-src 'none'");
    expect(page).toContain(`machines.html#${SERIAL}`);
    expect(page).not.toMatch(/(src|href)="(?!#|data:image\/jpeg;base64,)/);
  });

  it('are refused for a machine that is not there', async () => {
    await refused(send('GET', '/api/machines/NONE-1/handbook.pdf'), 'no-such-machine');
  });
});

describe('A recall', () => {
  it('lists the machines of a part, and gives a table that a spreadsheet opens', async () => {
    const pump = rig.items.get('pump')!.part.id;
    expect((await send('GET', `/api/recall?part=${pump}`)).body).toMatchObject({
      machines: [{ serial: SERIAL, slots: ['pump'], match: 'yes' }],
    });
    const table = await ask(`/api/recall.csv?part=${pump}&lot=7`);
    expect(table.headers.get('Content-Type')).toContain('text/csv');
    const [head, row] = (await table.text()).split('\r\n');
    expect(head).toBe('serial,customer,title,begun,part,where,replaced,given,lots,match');
    expect(row).toContain(`${SERIAL},`);
    expect(row).toMatch(/,unknown$/);
  });

  it('leaves nothing unforeseen', () => expect(server.reports).toEqual([]));
});
