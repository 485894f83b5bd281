import { afterEach, expect, it, vi } from 'vitest';
import type { RigJson } from '../protocol.ts';
import { JobKeeper, type Synced } from './job-keeper.ts';

const rigOf = (length: string) => ({ title: 'Cart', items: [{ id: 'hose', length }] }) as unknown as RigJson;
afterEach(() => vi.unstubAllGlobals());

it('goes on seeing what others do after a version of theirs that left the rig as it was', async () => {
  let stored = { version: 1, rig: rigOf('200 ft') };
  vi.stubGlobal('document', { baseURI: 'http://shop.example/' });
  vi.stubGlobal('fetch', (_: URL, init: RequestInit) => {
    const known = new Headers(init.headers).get('If-None-Match');
    if (known === `"${stored.version}"`) return Promise.resolve(new Response(null, { status: 304 }));
    return Promise.resolve(
      Response.json({ id: 'cart', version: stored.version, changedBy: '', document: { rig: stored.rig } }),
    );
  });
  let rig: RigJson = rigOf('200 ft');
  let synced: Synced = { version: 1, rig };
  const keeper = new JobKeeper({
    rigOf: () => rig,
    aboutOf: () => '',
    syncedOf: () => synced,
    setSynced: (_, now) => (synced = now),
    takeRig: (_, taken) => (rig = taken),
    tell: () => undefined,
    disagree: () => undefined,
  });
  stored = { version: 2, rig: rigOf('200 ft') };
  await keeper.look('cart');
  expect(synced).toEqual({ version: 2, rig: rigOf('200 ft') });
  stored = { version: 3, rig: rigOf('160 ft') };
  await keeper.look('cart');
  expect(rig).toEqual(rigOf('160 ft'));
});
