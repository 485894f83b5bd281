import { afterAll, beforeAll, expect, it } from 'vitest';
import { ROLES, ROLE_TABLE } from '../src/server/role-table.ts';
import { targets, type Target } from './attack-bodies.ts';
import { attackedShop, leakOf, type AttackedShop } from './attack-shop.ts';
import { randomOf, spoil } from './mutation.ts';

const REQUESTS = Number(process.env.FUZZ_REQUESTS ?? 10_000);
/** Requests between two looks at what the records hold. */
const LOOK = 50;
const METHODS = ['GET', 'HEAD', 'POST', 'PUT', 'PATCH', 'DELETE', 'OPTIONS'];
const TEXTS = [
  '',
  'cart',
  'CART-1',
  '..',
  '%2e%2e',
  '%',
  '%ff',
  '*',
  ':id',
  '-1',
  '1e9',
  '<b>',
  "'",
  '"',
  '\\',
  'é',
  '日本',
  '😀',
  '__proto__',
  'a'.repeat(3000),
];
const TYPES = [
  'application/json',
  'application/json; charset=latin1',
  'text/plain',
  'multipart/form-data; boundary=x',
  'application/x-www-form-urlencoded',
  'a',
  '',
];
/** Papers are made by the second, so that only those of what is not there are asked for. */
const SLOW = /\.(pdf|html)/;

let shop: AttackedShop;
let routes: readonly Target[];
beforeAll(async () => {
  shop = await attackedShop();
  routes = await targets(shop);
}, 60_000);
afterAll(() => shop.server.close());

it(`${REQUESTS} requests of a careless or wicked program are answered without failing, telling or changing anything unasked`, async () => {
  const random = randomOf(Number(process.env.FUZZ_SEED ?? 20_260_303));
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const forms = Object.keys(ROLE_TABLE).flatMap((route) => {
    const [method = '', path = ''] = route.split(' ');
    return path.startsWith('/api') || method === 'ALL'
      ? []
      : [{ method, path: path.replace(/:\w+|\*/g, () => pick(TEXTS)) }];
  });
  const secrets = await shop.secrets();
  let state = await shop.state();
  let accepted = 0;
  let quiet = 0;
  const answers = new Map<number, number>();
  for (let n = 1; n <= REQUESTS; n++) {
    const request = random() < 0.1 ? formRequest() : routeRequest();
    const { method, path, given } = request;
    const answer = await shop.send(method, path, given);
    answers.set(answer.status, (answers.get(answer.status) ?? 0) + 1);
    const where = `${n}: ${method} ${path.slice(0, 200)} ${JSON.stringify(given).slice(0, 400)}`;
    const reported = answer.status === 500 ? shop.server.reports.join('; ') : '';
    expect(await leakOf(answer, secrets), `${where} ${reported}`).toBeUndefined();
    // A request that is right may change something: a fuzzed one is, now and then.
    if (answer.status < 400 && method !== 'GET' && method !== 'HEAD') accepted++;
    if (n % LOOK !== 0 && n !== REQUESTS) continue;
    const now = await shop.state();
    if (accepted === 0) {
      quiet++;
      expect(now, `within ${LOOK} requests up to ${n}`).toBe(state);
    }
    [state, accepted] = [now, 0];
  }
  expect(shop.server.reports).toEqual([]);
  expect(quiet).toBeGreaterThan(REQUESTS / LOOK / 4);
  expect((answers.get(401) ?? 0) + (answers.get(403) ?? 0)).toBeGreaterThan(REQUESTS / 20);
  expect(answers.get(422) ?? 0).toBeGreaterThan(REQUESTS / 20);
  expect(answers.get(200) ?? 0).toBeGreaterThan(REQUESTS / 50);

  function routeRequest() {
    const target = pick(routes);
    const method = random() < 0.85 ? target.method : pick(METHODS);
    const strange = SLOW.test(target.known) || random() < 0.4;
    let path = strange ? target.address(`${pick(TEXTS)}x`) : target.known;
    if (random() < 0.1) path = path.replace('/', pick(['//', '/./', '/%2f', '/API/', '\\']));
    if (random() < 0.1)
      path += `?${pick(TEXTS)}=${encodeURIComponent(pick(TEXTS))}&limit=${pick(['0', '-1', '1e3', 'x', '5'])}`;
    const body = target.body(pick(TEXTS));
    return { method, path, given: { ...who(), ...bodyOf(method, body) } };
  }

  function formRequest() {
    const { method, path } = pick(forms);
    const fields = new URLSearchParams({
      email: `${pick(TEXTS)}@x`,
      password: '',
      next: pick(TEXTS).slice(0, 11),
      name: pick(TEXTS),
    });
    // Signing out would leave the rest to nobody.
    const role = path === '/sign-out' ? {} : who();
    return { method, path, given: { ...role, ...(method === 'POST' ? { body: fields.toString() } : {}) } };
  }

  function who() {
    const roll = random();
    const role = roll < 0.2 ? undefined : pick(ROLES);
    const headers: Record<string, string> = {};
    if (roll < 0.05) headers.Cookie = `better-auth.session_token=${encodeURIComponent(pick(TEXTS))}`;
    if (random() < 0.05)
      headers[pick(['Origin', 'Sec-Fetch-Site', 'Host', 'If-None-Match', 'Range', 'X-Forwarded-For'])] = pick(
        ['x', 'null', '"1"', '*'],
      );
    return { role, headers };
  }

  function bodyOf(method: string, body: unknown) {
    if (method === 'GET' || method === 'HEAD' || body === undefined) return {};
    const sent = random() < 0.8 ? spoil(body, random) : body;
    let text = typeof sent === 'string' ? sent : (JSON.stringify(sent) ?? '');
    if (random() < 0.1) text = text.slice(0, Math.floor(random() * text.length));
    return random() < 0.9 ? { body: text } : { body: text, headers: { 'Content-Type': pick(TYPES) } };
  }
}, 900_000);
