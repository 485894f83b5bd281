import type { Layout } from '@spraywright/engine/catalogue';
import { display, moneyText } from '@spraywright/engine/quantity';
import { groupsOf, settledText, withinText, type ChoiceGroup, type Choices } from '@spraywright/engine/rig';
import { slotNameIn } from './slot-name.ts';
import { table } from './text-table.ts';

type Found = Extract<Choices, { ok: true }>;
type Units = 'us' | 'metric';

/** Conditions named when no rig was found. */
const NAMED = 6;

/** Rigs that no other found beats, put together by what a buyer sees of them, and how far the search came. */
export function choicesText(
  found: Found,
  partName: (id: string) => string,
  layouts: readonly Layout[],
  units: Units,
): string {
  const { groups, more } = groupsOf(found.choices, layouts);
  const slotName = (id: string) => slotNameIn(layouts, id);
  return [
    ...(groups.length === 0 ? noneText(found) : groupsText(groups, more, partName, slotName, units)),
    '',
    howFar(found),
  ].join('\n');
}

function groupsText(
  groups: readonly ChoiceGroup[],
  more: number,
  partName: (id: string) => string,
  slotName: (id: string) => string,
  units: Units,
): string[] {
  const rows = groups.map(({ choice: { figures, unknown }, alike }, i) => [
    String(i + 1),
    moneyText(figures.priceCents),
    display(figures.mass / 10, 'mass', units),
    `${Math.round(figures.margin / 10)} %`,
    `${figures.days} days`,
    String(unknown.length),
    String(alike),
  ]);
  const varying = Object.keys(groups[0]!.parts).filter(
    (slot) => new Set(groups.map((g) => g.parts[slot])).size > 1,
  );
  const named = groups.flatMap(({ parts }, i) => [
    `${i + 1}. ${
      varying.length === 0
        ? 'the only kind'
        : varying
            .map((s) => `${slotName(s)}: ${parts[s] === undefined ? 'none' : partName(parts[s])}`)
            .join('; ')
    }`,
  ]);
  return [
    'Rigs that keep every promise computed, and that no other rig found beats in price, dry mass, least margin and days:',
    '',
    table(
      ['', 'price', 'dry mass', 'least margin', 'ready in', 'to decide', 'alike'],
      rows,
      [1, 2, 3, 4, 5, 6],
    ),
    '',
    ...named,
    ...(more === 0 ? [] : [`${more} more kinds are left out here; --json has every rig.`]),
    '"to decide" counts promises that a missing datum or decision leaves open; "alike" counts rigs that differ only in small parts.',
  ];
}

function noneText({ complete, refused }: Found): string[] {
  return [
    complete
      ? 'No rig of the catalogue keeps every promise of this brief.'
      : 'No rig was found that keeps every promise of this brief; not all have been looked at.',
    'What refused the sets of parts, most first:',
    ...refused.slice(0, NAMED).map(({ why, sets }) => `  ${rough(sets)}  ${why}`),
  ];
}

function howFar({ complete, within, progress, choices }: Found): string {
  const { size, narrowed, settled, nodes, proofs, sought } = progress;
  const space = `${rough(size)} sets of parts, of which ${rough(narrowed)} hold only parts that some rig can have`;
  const work = `${rough(nodes)} looked at in whole or in part, ${rough(proofs)} proven whole`;
  if (complete)
    return `Complete: ${space}; ${work}.${choices.length === 0 ? '' : ' Nothing in the catalogue beats these, with settings by the rules of the selection.'}`;
  if (within !== undefined && within === sought)
    return `${withinText(within)} Settings are by the rules of the selection. ${space}; ${work}.`;
  const stopped = `Stopped at ${settledText(settled)} of the latter: ${space}; ${work}.`;
  return within === undefined
    ? `${stopped} Better rigs may be among the rest: --proofs gives it more.`
    : `${withinText(within)} Smaller gains were looked for too. ${stopped} --proofs gives it more.`;
}

/** A count as it is said: whole up to a million, then by powers of ten. */
function rough(count: number): string {
  if (count < 1e6) return String(Math.round(count));
  const power = Math.floor(Math.log10(count));
  return `${(count / 10 ** power).toFixed(1)}e${power}`;
}
