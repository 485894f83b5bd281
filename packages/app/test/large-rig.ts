import type { Catalogue, Shop } from '@spraywright/engine/catalogue';
import { readRig, type RawRig, type Rig } from '@spraywright/engine/rig';
import { demoRig } from './demo.ts';

/** Sections that the boom has besides its first, each behind a valve of its own. */
const SECTIONS = [2, 3, 4, 5];

/**
 * A rig of 40 parts: the demo's three-point rig with a boom in five sections and a second gun on a reel of its own, as a
 * large pasture asks for. Its brief is the demo's; the duty of the boom opens all sections, that of the gun both guns.
 */
export function largeRig(catalogue: Catalogue, shop: Shop): { raw: RawRig; rig: Rig } {
  const whole = structuredClone(demoRig('three-point-pasture', catalogue, shop).raw) as RawRig;
  const again = (line: string, n: number, opens: string) => {
    const before = whole.lines.find((l) => l.id === line)!;
    const run = before.run.map((id) => `${id}-${n}`);
    whole.lines.push({ ...before, id: `${line}-${n}`, name: `${before.name} ${n}`, run, opens });
    for (const id of before.run) {
      const { setByDuty: _, ...item } = whole.items.find((i) => i.id === id)!;
      whole.items.push({ ...item, id: `${id}-${n}` });
    }
  };
  for (const n of SECTIONS) again('boom', n, 'boom');
  again('gun', 2, 'second-gun');
  const brief = whole.brief as { duties: { id: string; open: string[] }[] };
  brief.duties.find((d) => d.open.includes('gun'))!.open = ['gun', 'second-gun'];
  const raw = { ...whole, id: 'large-pasture', title: 'Five sections and two guns' };
  const read = readRig(raw, catalogue);
  if (!read.ok) throw new Error(read.problems.map((p) => p.message).join('\n'));
  return { raw, rig: read.rig };
}
