import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';

interface PublicFunction {
  readonly name: string;
}
interface Signatures {
  readonly commentProblems: (fn: PublicFunction) => string[];
  readonly publicFunctions: (root: string, layers: string[]) => PublicFunction[];
}
interface DocComment {
  readonly readComment: (comment: string) => { purpose: string; params: unknown[]; results: unknown[] };
}
const root = fileURLToPath(new URL('../../../..', import.meta.url));
const tool = async (name: string): Promise<unknown> =>
  (await import(pathToFileURL(join(root, 'scripts/methods', name)).href)) as unknown;

const GOOD = `/**
 * Power of a flow.
 *
 * @formula P = Q p
 * @param flow volume flow [m3/s] 0..10
 * @param pressure pressure [Pa] 0..
 * @returns power [W]
 * @source Definition
 */
export function power(flow: number, pressure: number): number { return Number(flow) * Number(pressure); }
`;

/** What is spoilt in the good comment, and what must be said about it. */
const SPOILT: readonly [what: string, from: string | RegExp, to: string, message: string][] = [
  ['no comment', /\/\*\*.*?\*\//s, '', 'power has no doc comment'],
  ['no source', ' * @source Definition\n', '', 'power has no @source'],
  ['no formula', ' * @formula P = Q p\n', '', 'power has no @formula'],
  ['no unit', '[m3/s] 0..10', '', 'power has no unit at @param flow'],
  ['an unknown unit', '[m3/s]', '[gal/s]', "power has the unknown unit 'gal/s' at @param flow"],
  ['no range', ' 0..10', '', 'power has no range at @param flow'],
  ['a range in words', '0..10', 'up to 10', "power has 'up to 10' behind the unit at @param flow"],
  ['a range the wrong way round', '0..10', '10..0', 'power has an empty range at @param flow'],
  ['no result', ' * @returns power [W]\n', '', 'power has neither @returns nor @result'],
  ['a result without a unit', 'power [W]', 'power', 'power has no unit at @returns'],
  [
    'a parameter left out',
    ' * @param pressure pressure [Pa] 0..\n',
    '',
    "power does not document 'pressure'",
  ],
  [
    'a parameter that is not there',
    '@param flow ',
    '@param flov ',
    "power documents 'flov', which it does not take",
  ],
  [
    'another type',
    'flow: number',
    'flow: boolean',
    'power calls @param flow a number, but its type is a flag',
  ],
];

describe('the check of doc comments', () => {
  let problems: ReadonlyMap<string, string>;

  beforeAll(async () => {
    const { commentProblems, publicFunctions } = (await tool('signatures.mjs')) as Signatures;
    const folder = mkdtempSync(join(tmpdir(), 'methods-'));
    mkdirSync(join(folder, 'physics'));
    const code = [
      GOOD,
      ...SPOILT.map(([, from, to], i) => GOOD.replace(from, to).replace('power(', `power${i}(`)),
    ];
    writeFileSync(join(folder, 'physics/index.ts'), code.join('\n'));
    const found = publicFunctions(folder, ['physics']);
    rmSync(folder, { recursive: true });
    problems = new Map(found.map((fn) => [fn.name, commentProblems(fn).join('\n')]));
  });

  it('lets a complete comment pass', () => {
    expect(problems.get('power')).toBe('');
  });

  it.each(SPOILT.map((row, i) => [...row, i] as const))('refuses %s', (_, from, to, message, i) => {
    expect(GOOD.replace(from, to)).not.toBe(GOOD);
    expect(problems.get(`power${i}`)).toContain(message.replace('power ', `power${i} `));
  });

  it('reads objects, choices, lists and ranges with one end', async () => {
    const { readComment } = (await tool('doc-comment.mjs')) as DocComment;
    const doc = readComment(`/**
     * First sentence
     * goes on.
     *
     * @param p.side where it sits [one of suction, pressure]
     * @param p.loads the loads [list of N] -1e3..
     * @param p.fixed whether it is fixed [yes/no]
     * @result share share of all [-]
     */`);
    expect(doc.purpose).toBe('First sentence goes on.');
    expect(doc.params).toEqual([
      { name: 'p.side', meaning: 'where it sits', kind: 'choice', choices: ['suction', 'pressure'] },
      { name: 'p.loads', meaning: 'the loads', kind: 'list', unit: 'N', min: -1000, ranged: true },
      { name: 'p.fixed', meaning: 'whether it is fixed', kind: 'flag' },
    ]);
    expect(doc.results).toEqual([{ name: 'share', meaning: 'share of all', kind: 'number', unit: '-' }]);
  });
});
