import type { DeckPlan } from '@spraywright/engine/drawings';

/** What is said under the list of the parts that stand on a deck. */
export function deckNotes({ standing }: DeckPlan): string[] {
  return [
    'Mass with what rides on the part, its fuel and the liquid in its hose; of a tank without its liquid.',
    // A part over others needs a stand, which is no part of the list.
    ...standing
      .filter(({ over }) => over.length > 0)
      .map(
        ({ number, over }) =>
          `Part ${number} stands over ${listed(over)} on a stand. The stand is in no list: neither its mass nor its price is counted.`,
      ),
  ];
}

/** 5, 11 and 12. */
function listed(numbers: readonly number[]): string {
  const sorted = [...numbers].sort((a, b) => a - b).map(String);
  const last = sorted.pop()!;
  return sorted.length === 0 ? last : `${sorted.join(', ')} and ${last}`;
}
