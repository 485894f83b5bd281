import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';
import { testServer, type TestServer } from './desk-server.ts';

let server: TestServer;
let clock = Date.parse('2026-03-03T09:00:00.000Z');
const paths: string[] = [];

const ORIGIN = 'http://localhost';
const send = async (path: string, body: object) => {
  const answer = await server.app.request(path, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ by: 'Dana', ...body }),
  });
  return { status: answer.status, body: (await answer.json()) as Record<string, never> };
};
const read = async <T>(path: string) => (await (await server.app.request(path)).json()) as T;
const get = (path: string) => server.app.request(path);
const form = (path: string, fields: Record<string, string>, headers: Record<string, string> = {}) =>
  server.app.request(path, {
    method: 'POST',
    headers: { 'Content-Type': 'application/x-www-form-urlencoded', Origin: ORIGIN, ...headers },
    body: new URLSearchParams(fields).toString(),
  });
/** A quote that was sent, and the path of its link. */
const quoted = async (contents: object = {}, sending: object = {}) => {
  const made = await send('/api/quotes', { job: 'cart', ...contents });
  const number = made.body.number as unknown as string;
  const sent = await send(`/api/quotes/${number}/revisions/A/links`, { to: 'kim@parks.example', ...sending });
  expect(sent.status).toBe(201);
  const path = new URL(sent.body.address as unknown as string).pathname;
  paths.push(path);
  return { number, path, link: (sent.body.link as unknown as { id: string }).id };
};
const stateOf = async (number: string) => (await read<{ state: string }>(`/api/quotes/${number}`)).state;

beforeAll(async () => {
  server = await testServer(() => new Date(clock).toISOString());
  const { raw } = demoRig('light-cart', demoCatalogue(), demoShop());
  await send('/api/jobs', { id: 'cart', rig: raw });
});
afterAll(() => server.close());

describe('The page behind a customer link', () => {
  it('says what the rig will do, what it will not, price and terms, and needs no script', async () => {
    const { path, number } = await quoted({ note: 'We hold the reel for you.' });
    const page = await get(path);
    expect(page.status).toBe(200);
    expect(page.headers.get('Cache-Control')).toBe('no-store');
    const text = await page.text();
    for (const said of [
      'What it will do',
      'What it will not do',
      'Price',
      '$3,234.62',
      'We hold the reel for you.',
      number,
    ])
      expect(text, said).toContain(said);
    expect(text).toContain('The product label, local codes and licensed practice come first.');
    expect(text).not.toMatch(/<script|javascript:| on\w+=/i);
    // What the shop pays is nobody's business behind a link.
    const { document } = await read<{ document: { options: { summary: { costCents: number } }[] } }>(
      `/api/quotes/${number}/revisions/A`,
    );
    const cost = (document.options[0]!.summary.costCents / 100).toFixed(2);
    expect(text.replace(/,/g, '')).not.toContain(cost);
    const paper = await get(`${path}/quote.pdf`);
    expect(paper.headers.get('Content-Type')).toBe('application/pdf');
    expect(await paper.text()).toBe(await (await get(`/api/quotes/${number}/revisions/A/quote.pdf`)).text());
  });

  it('is opened once in the story of the quote, however often it is looked at', async () => {
    const { path, number } = await quoted();
    await get(path);
    await get(path);
    const { events } = await read<{ events: { kind: string }[] }>(`/api/quotes/${number}/story`);
    expect(events.map((e) => e.kind)).toEqual(['sent', 'opened']);
  });

  it('takes an acceptance with a name and the option, once', async () => {
    const { path, number } = await quoted({
      options: [{ name: 'As drawn' }, { name: 'Cheaper', pricing: { discountPercent: 3 } }],
    });
    expect((await form(`${path}/accept`, { name: 'Kim', option: '3' })).status).toBe(422);
    expect((await form(`${path}/accept`, { name: '', option: '2' })).status).toBe(422);
    expect(await stateOf(number)).toBe('sent');
    const taken = await form(`${path}/accept`, { name: 'Kim Alder', option: '2' });
    expect([taken.status, taken.headers.get('Location')]).toEqual([303, path]);
    expect(await stateOf(number)).toBe('accepted');
    expect(await (await get(path)).text()).toContain('Accepted by Kim Alder on 3 March 2026: Cheaper.');
    expect((await form(`${path}/decline`, { name: 'Kim', said: 'no' })).status).toBe(422);
    expect(await stateOf(number)).toBe('accepted');
    // Accepted is closed for the shop too.
    expect((await send(`/api/quotes/${number}/revisions`, {})).body.code).toBe('quote-closed');
    expect((await send(`/api/quotes/${number}/withdraw`, {})).body.code).toBe('quote-closed');
    const { doings } = await read<{ doings: { who: string; did: string; aboutId: string }[] }>(
      `/api/doings?about=${number}`,
    );
    expect(doings).toContainEqual(
      expect.objectContaining({ who: 'Kim Alder', did: 'Accept a quote by its link' }),
    );
  });

  it('takes a refusal with its reason', async () => {
    const { path, number } = await quoted();
    await form(`${path}/decline`, { name: 'Kim', said: 'Too heavy for our truck' });
    expect(await stateOf(number)).toBe('declined');
    const { events } = await read<{ events: { kind: string; said?: string }[] }>(
      `/api/quotes/${number}/story`,
    );
    expect(events.at(-1)).toMatchObject({ kind: 'declined', said: 'Too heavy for our truck' });
  });

  it('takes questions, shows the answer, and says when too many wait', async () => {
    const { path, number } = await quoted();
    expect((await form(`${path}/ask`, { name: 'Kim', said: 'Can it spray oil?' })).status).toBe(303);
    expect(await read(`/api/quotes/${number}`)).toMatchObject({ question: true });
    server.letters.length = 0;
    const answered = await send(`/api/quotes/${number}/answers`, { said: 'Yes, with other seals.' });
    // The shop is told what became of the letter.
    expect(answered.body).toMatchObject({ to: 'kim@parks.example', posted: { is: 'sent' } });
    expect(server.letters[0]).toMatchObject({ to: 'kim@parks.example' });
    expect(await read(`/api/quotes/${number}`)).toMatchObject({ question: false });
    expect(await (await get(path)).text()).toMatch(/Can it spray oil\?[^]*Yes, with other seals\./);
    clock += 61_000;
    for (let i = 0; i < 10; i++) await form(`${path}/ask`, { name: 'Kim', said: `Question ${i}` });
    const one = await form(`${path}/ask`, { name: 'Kim', said: 'One more' });
    expect(one.status).toBe(422);
    expect(await one.text()).toMatch(/10 questions wait.*[^]*One more/);
  });

  it('shows what was typed as text and never as a page', async () => {
    clock += 61_000;
    const { path } = await quoted({ note: '<img src=x onerror=alert(1)>' });
    const evil = '"><script>alert(1)</script>';
    await form(`${path}/ask`, { name: evil, said: evil });
    const refused = await form(`${path}/accept`, { name: evil.repeat(5), option: '1' });
    for (const text of [await (await get(path)).text(), await refused.text()])
      expect(text).not.toMatch(/<script|<img/);
  });

  it('says that a quote was revised, taken back or is past its day, and takes no acceptance then', async () => {
    clock += 61_000;
    const { path, number } = await quoted();
    const revised = await send(`/api/quotes/${number}/revisions`, { note: 'Again' });
    expect(revised.body).toMatchObject({ revision: 'B', state: 'drawn' });
    expect(await (await get(path)).text()).toContain('This one can no longer be accepted.');
    expect((await form(`${path}/accept`, { name: 'Kim', option: '1' })).status).toBe(422);
    expect((await send(`/api/quotes/${number}/revisions/A/links`, {})).body.code).toBe('quote-closed');
    await send(`/api/quotes/${number}/withdraw`, {});
    expect(await (await get(path)).text()).toContain('The shop has taken this quote back.');
    const short = await quoted({ validDays: 1 }, { days: 90 });
    clock += 3 * 86_400_000;
    expect((await form(`${short.path}/accept`, { name: 'Kim', option: '1' })).status).toBe(422);
    expect(await stateOf(short.number)).toBe('sent');
  });
});

describe('A revision that was sent', () => {
  it('is never changed: the next letter is made, and the changes are told', async () => {
    const { number } = await quoted();
    const before = await (await get(`/api/quotes/${number}/revisions/A/quote.pdf`)).text();
    await send(`/api/quotes/${number}/revisions`, { depositPercent: 10 });
    expect(await (await get(`/api/quotes/${number}/revisions/A/quote.pdf`)).text()).toBe(before);
    expect(await read(`/api/quotes/${number}/changes?from=A&to=B`)).toMatchObject({
      terms: ['On order 10 % is due, before 40 %.'],
    });
  });
});

describe('A link that opens nothing', () => {
  it('is one and the same page, forged, expired or revoked', async () => {
    clock += 61_000;
    const revoked = await quoted();
    const expired = await quoted({}, { days: 1 });
    await send(`/api/quotes/${revoked.number}/links/${revoked.link}/revoke`, {});
    clock += 40 * 86_400_000;
    const tries = [
      revoked.path,
      expired.path,
      `/q/${'A'.repeat(43)}`,
      '/q/x',
      '/q/%27%20or%201=1',
      `${revoked.path.slice(0, -1)}_`,
    ];
    const seen = new Set<string>();
    for (const path of tries)
      for (const answer of [
        await get(path),
        await get(`${path}/quote.pdf`),
        await form(`${path}/accept`, { name: 'K', option: '1' }),
      ])
        seen.add(`${answer.status} ${await answer.text()}`);
    expect([...seen]).toHaveLength(1);
    expect([...seen][0]).toMatch(/^404 [^]*This link opens nothing/);
  });

  it('is kept as a hash: the records hold no token', async () => {
    const rows = await server.records.db.selectFrom('quote_links').selectAll().execute();
    const doings = await server.records.db.selectFrom('doings').selectAll().execute();
    const events = await server.records.db.selectFrom('quote_events').selectAll().execute();
    const kept = JSON.stringify([rows, doings, events]);
    expect(rows.length).toBeGreaterThan(5);
    for (const path of paths) expect(kept).not.toContain(path.slice(3));
  });

  it('refuses forms of other sites, and whoever asks too often', async () => {
    clock += 61_000;
    const { path, number } = await quoted();
    for (const headers of [
      { Origin: 'http://elsewhere.example' },
      { Origin: 'null' },
      { 'Sec-Fetch-Site': 'cross-site' },
    ])
      expect((await form(`${path}/accept`, { name: 'Kim', option: '1' }, headers)).status).toBe(403);
    expect(await stateOf(number)).toBe('sent');
    const statuses: number[] = [];
    clock += 15 * 60_000;
    for (let i = 0; i < 125; i++) statuses.push((await get(path)).status);
    expect(statuses.filter((s) => s === 200).length).toBe(120);
    expect(statuses.at(-1)).toBe(429);
    clock += 61_000;
    expect((await get(path)).status).toBe(200);
    // Links that open nothing shut out for longer.
    const wrong: number[] = [];
    for (let i = 0; i < 65; i++) wrong.push((await get('/q/x')).status);
    expect(wrong.filter((s) => s === 404).length).toBe(60);
    clock += 61_000;
    expect((await get(path)).status).toBe(429);
    clock += 15 * 60_000;
    expect((await get(path)).status).toBe(200);
  });

  it('reports nothing unforeseen', () => expect(server.reports).toEqual([]));
});

describe('The letter with a link', () => {
  it('carries address, price and PDF; an address that is none is refused', async () => {
    clock += 61_000;
    server.letters.length = 0;
    const { path, number } = await quoted({}, { message: 'As we spoke.' });
    const [letter] = server.letters;
    expect(letter!.text).toContain(`${ORIGIN}${path}`);
    expect(letter!.text).toMatch(/^As we spoke\./);
    expect(letter!.text).toContain('$3,234.62');
    expect(letter!.files![0]!.name).toBe(`${number}-A.pdf`);
    for (const to of ['nobody', 'a@b.example, c@d.example', 'a@b.example\r\nBcc: c@d.example'])
      expect((await send(`/api/quotes/${number}/revisions/A/links`, { to })).status).toBe(422);
  });
});
