import { overlap, TOUCH, underWords, type PlacedPart } from '../placement/index.ts';
import { compared, type RigPromise } from '../promise.ts';
import { say, type ProofContext } from './context.ts';
import { carrierItem, type Loaded } from './loaded.ts';

/** Parts may stand out over the deck by this share of its length or width: common practice, no source. */
const OVERHANG = 0.05;

/** Everything stands on the deck, and no two parts in the same place. */
export function fitPromises(context: ProofContext, { rig }: Loaded): RigPromise[] {
  const { deckLength, deckWidth } = rig.carrier;
  const standing = rig.parts.filter((p) => p.on === undefined && p.kind !== 'boom' && p.kind !== 'pto-drive');
  const front = Math.min(0, ...standing.map((p) => p.x - p.length / 2));
  const rear = Math.max(deckLength, ...standing.map((p) => p.x + p.length / 2));
  const needsLength = rear - front;
  const needsWidth = 2 * Math.max(...standing.map((p) => Math.abs(p.y) + p.width / 2));
  const byWidth = needsWidth / deckWidth > needsLength / deckLength;
  const told = {
    id: 'structure:fit',
    kind: 'structure' as const,
    sentence: 'Everything fits on the deck',
    items: [carrierItem(context), ...standing.map((p) => p.item)],
    method: 'outside sizes of the parts where they stand',
    source: 'sizes of the catalogue; 5 % of overhang is common practice, no source',
  };
  const clash = clashOf(context, standing) ?? buried(context, rig.parts, rig.carrier.deckHeight);
  const judged = compared(
    {
      ...told,
      cause: [
        byWidth
          ? `it takes ${say(context, needsWidth, 'length')} of width`
          : needsLength > deckLength
            ? `parts stand ${say(context, needsLength - deckLength, 'length')} out over the deck`
            : 'nothing stands out over the deck',
        ...standing.flatMap((p) => onStand(context, p, standing, rig.carrier.deckHeight)),
      ].join('; '),
      working: standing.map((p) => ({
        text: `${p.name}: middle behind the front of the deck${p.given ? ', as given' : ''}`,
        figure: { value: p.x, dimension: 'length' as const },
      })),
    },
    { value: (byWidth ? deckWidth : deckLength) * (1 + OVERHANG), dimension: 'length' },
    { value: byWidth ? needsWidth : needsLength, dimension: 'length' },
    'at-most',
  );
  // Nearly full decks are the rule and no weakness: the limit already forgives an overhang.
  const state = judged.state === 'thin' ? 'kept' : judged.state;
  return [
    clash === undefined
      ? { ...judged, state }
      : { ...judged, state: 'broken', cause: clash.cause, items: clash.items },
  ];
}

/** A part over others needs a stand, which nobody has put into the list. */
function onStand(
  context: ProofContext,
  part: PlacedPart,
  standing: readonly PlacedPart[],
  deckHeight: number,
): string[] {
  const under = underWords(part, standing);
  if (under === undefined) return [];
  const height = say(context, part.z - deckHeight, 'length');
  return [
    `the ${part.kind} stands over ${under}, ${height} above the deck: the stand for it is in no list, neither its mass nor its price is counted`,
  ];
}

interface Clash {
  readonly cause: string;
  readonly items: readonly string[];
}

function clashOf(context: ProofContext, parts: readonly PlacedPart[]): Clash | undefined {
  for (let i = 0; i < parts.length; i++)
    for (let k = i + 1; k < parts.length; k++) {
      const [a, b] = [parts[i]!, parts[k]!];
      const { along, across, up } = overlap(a, b);
      if (along > TOUCH && across > TOUCH && up > TOUCH)
        return {
          cause: `${a.name} and ${b.name} stand in the same place, ${say(context, Math.min(along, across, up), 'length')} into each other`,
          items: [a.item, b.item],
        };
    }
  return undefined;
}

/** A part given a place below the ground. */
function buried(context: ProofContext, parts: readonly PlacedPart[], deckHeight: number): Clash | undefined {
  const part = parts.find((p) => (context.rig.items.get(p.item)!.item.at?.z ?? 0) < -deckHeight);
  return part === undefined
    ? undefined
    : { cause: `${part.name} is given a place below the ground`, items: [part.item] };
}
