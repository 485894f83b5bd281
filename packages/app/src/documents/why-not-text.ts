import type { Layout } from '@spraywright/engine/catalogue';
import type { WhyNot } from '@spraywright/engine/rig';
import { moneyText } from '@spraywright/engine/quantity';
import { slotNameIn } from './slot-name.ts';
import { table } from './text-table.ts';

type Told = Extract<WhyNot, { ok: true }>;

/** Why no rig keeps every promise of a brief, and the least that could be asked less. */
export function whyNotText(told: Told, layouts: readonly Layout[]): string {
  const slotName = (id: string) => slotNameIn(layouts, id);
  if (told.possible)
    return 'A rig of the catalogue keeps every promise computed: there is nothing to explain.';
  return [
    told.certain
      ? 'No rig of the catalogue can keep every promise of this brief.'
      : 'No rig was found that keeps every promise of this brief. Not every set of parts was looked at.',
    '',
    ...(told.noRig === undefined ? [] : [`Not even one that breaks a promise: ${told.noRig}.`]),
    ...(told.broken.length === 0 ? [] : ['The nearest rig breaks:']),
    ...told.broken.map((p) => `  ${p.sentence}: ${p.cause} [${p.items.map(slotName).join(', ')}]`),
    '',
    'Parts that no rig can have for this brief, by slot:',
    table(
      ['slot', 'refused', 'of', 'for'],
      told.slots.map((s) => [slotName(s.slot), String(s.parts), String(s.offered), s.why]),
      [1, 2],
    ),
    '',
    ...relaxationsText(told),
  ].join('\n');
}

function relaxationsText({ relaxations, tried }: Told): string[] {
  if (relaxations.length === 0)
    return [`No single thing asked less lets a rig be found; ${tried} selections were made.`];
  return [
    'Single things asked less with which there is a rig, the smallest change first:',
    table(
      ['asked less', 'now', 'then', 'price', 'asking more'],
      relaxations.map((r) => [
        r.name,
        r.now ?? '',
        r.text,
        moneyText(r.priceCents),
        r.proven ? 'no rig can' : 'none found',
      ]),
      [3],
    ),
    `Found by halving, ${tried} selections made; "none found" means that a rig may exist between now and then.`,
  ];
}
