import type { TableOrigin } from '@spraywright/engine/physics';
import * as physics from '@spraywright/engine/physics';

const FIELDS = ['place', 'edition', 'date', 'source', 'evidence', 'checkedBy'] as const;

/**
 * Every law, standard and guidance table that the program reckons with, each once, by the place it holds in: found by
 * looking through all that the engine hands out, so that none can be left off the list.
 */
export function rules(): TableOrigin[] {
  const found = new Map<string, TableOrigin>();
  const seen = new Set<unknown>();
  const look = (value: unknown): void => {
    if (typeof value !== 'object' || value === null || seen.has(value)) return;
    seen.add(value);
    if (isOrigin(value)) found.set(FIELDS.map((f) => value[f]).join('\n'), value);
    else for (const member of Object.values(value)) look(member);
  };
  Object.values(physics).forEach(look);
  return [...found.values()].sort(
    (a, b) => (a.place < b.place ? -1 : a.place > b.place ? 1 : 0) || (a.source < b.source ? -1 : 1),
  );
}

function isOrigin(value: object): value is TableOrigin {
  return FIELDS.every((f) => typeof (value as Record<string, unknown>)[f] === 'string');
}

/** The list for people: where it holds, what it is, whether anybody read it, and who compared it with the text in force. */
export function rulesText(list: readonly TableOrigin[]): string {
  const places = [...new Set(list.map((o) => o.place))];
  return places
    .map((place) =>
      [
        `${place.charAt(0).toUpperCase()}${place.slice(1)}`,
        ...list
          .filter((o) => o.place === place)
          .flatMap((o) => [
            `  ${o.source}`,
            `    edition ${o.edition}; date ${o.date}; ${EVIDENCE[o.evidence]}; checked by ${o.checkedBy}`,
            ...(o.note === undefined ? [] : [`    ${o.note}`]),
          ]),
      ].join('\n'),
    )
    .join('\n\n');
}

const EVIDENCE: Readonly<Record<TableOrigin['evidence'], string>> = {
  seen: 'read in a copy',
  'part seen': 'read in part',
  memory: 'recalled, not read',
};
