import type { JsonSource } from '../documents/json-source.ts';

/** What each format is called, and what is done with such a document where another was expected. */
const KINDS = {
  brief: {
    name: 'a brief',
    first: (file: string) => `spraywright design ${file} -o rig.json chooses a rig for it`,
  },
  rig: { name: 'a rig', first: (file: string) => `spraywright prove ${file} proves it` },
  readings: {
    name: 'readings',
    first: () => 'they go behind a rig: spraywright yard rig.json --readings FILE',
  },
  network: { name: 'a pipe network', first: (file: string) => `spraywright solve ${file} solves it` },
  learned: {
    name: 'a file of what yard tests taught',
    first: () => 'it goes behind a rig: spraywright prove rig.json --odds --learned FILE',
  },
} as const;

export type DocumentKind = keyof typeof KINDS;

/** One line for a document of one kind where another was expected; undefined when it is of that kind, or of none. */
export function mistakenKind({ file, raw }: JsonSource, wanted: DocumentKind | 'any'): string | undefined {
  const format = typeof raw === 'object' && raw !== null ? (raw as { format?: unknown }).format : undefined;
  const kind = (Object.keys(KINDS) as DocumentKind[]).find((k) => format === `spraywright-${k}`);
  if (kind === undefined || kind === wanted || wanted === 'any') return undefined;
  return `${file}: this is ${KINDS[kind].name}; ${KINDS[wanted].name} was expected. ${sentence(KINDS[kind].first(file))}`;
}

const sentence = (text: string) =>
  `${text.startsWith('spraywright') ? text : text[0]!.toUpperCase() + text.slice(1)}.`;
