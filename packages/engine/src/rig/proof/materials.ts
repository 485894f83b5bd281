import type { Part } from '../../catalogue/index.ts';
import { isLiquid, liquidOf, mustNotMeet, type Resistance, type SealChoice } from '../../liquids/index.ts';
import { contactsOf, type BriefContacts } from '../contacts.ts';
import type { RigPromise, Step } from '../promise.ts';
import type { ProofContext } from './context.ts';
import { decisionOn } from './decision.ts';
import { metalPromises } from './metals.ts';
import { ventPromises } from './venting.ts';

const METHOD = 'worst wetted material against worst liquid';
const SOURCE = 'resistance table, each cell with its own sources; see liquids';

interface Pair {
  readonly item: string | undefined;
  /** What the builder calls it: the part, and the piece of it. */
  readonly part: string;
  readonly piece: string;
  readonly resistance: Resistance;
}

/** Every wetted material of every part on the liquid's way against every liquid, flush and winterising liquids too. */
export function materialPromises(context: ProofContext): RigPromise[] {
  const { brief } = context.rig;
  const contacts = contactsOf(brief, context.site);
  const strangers = brief.liquids.filter((l) => !isLiquid(l.liquid));
  const parts = wettedParts(context);
  const { bad, doubtful, suited, blanks } = pairsOf(parts, contacts);
  const out: RigPromise[] = [];
  const all = 'Every part stands the liquids';
  if (bad.length > 0) out.push(told(context, 'materials:not-suited', 'broken', all, bad, reasonOf(bad[0]!)));
  if (doubtful.length > 0 || blanks.length > 0 || strangers.length > 0) {
    const undecided = doubtful.filter((p) => decisionOn(brief, decisionId(p)) === undefined);
    const open = new Set(undecided.map(decisionId)).size + blanks.length + strangers.length;
    const cause =
      strangers.length > 0
        ? `nothing is known of ${strangers.map((l) => l.name).join(', ')}`
        : blanks.length > 0
          ? `nobody says which materials the liquid touches in ${blanks.join(', ')}`
          : `${reasonOf(undecided[0] ?? doubtful[0]!)}${open > 1 ? ` (${open - 1} more in the working)` : ''}`;
    const sentence =
      open === 0
        ? 'Materials with doubts are accepted by name'
        : `${open} ${open === 1 ? 'material in a liquid asks' : 'materials in liquids ask'} for a decision`;
    out.push(told(context, 'materials:doubtful', open > 0 ? 'unknown' : 'thin', sentence, doubtful, cause));
  }
  if (out.length === 0)
    out.push(
      told(context, 'materials', 'kept', all, [], `${suited} pairs of material and liquid are suited`),
    );
  return [
    ...out,
    ...sealPromises(context, contacts.seals),
    ...meetingPromises(context, parts, contacts),
    ...metalPromises(context),
    ...ventPromises(context),
  ];
}

/** The pairs of material and liquid by how they get on; of most there is nothing to say, and they are only counted. */
interface Pairs {
  readonly bad: Pair[];
  readonly doubtful: Pair[];
  suited: number;
  /** Parts of which nobody says what the liquid touches. */
  readonly blanks: string[];
}

function pairsOf(parts: readonly WettedPart[], contacts: BriefContacts): Pairs {
  const out: Pairs = { bad: [], doubtful: [], suited: 0, blanks: [] };
  const blank = ({ name }: Part) => {
    if (!out.blanks.includes(name)) out.blanks.push(name);
  };
  for (const [part, item] of parts) {
    if (part.wetted.length === 0) blank(part);
    for (const { piece, material } of part.wetted) {
      const list = contacts.resistances.get(material);
      if (list === undefined) blank(part);
      else
        for (const resistance of list)
          if (resistance.rating === 'suited') out.suited++;
          else {
            const pair = { item, part: part.name, piece, resistance };
            (resistance.rating === 'not-suited' ? out.bad : out.doubtful).push(pair);
          }
    }
  }
  return out;
}

/** A part on the liquid's way, and its item: fittings have none. */
type WettedPart = readonly [part: Part, item: string | undefined];

/** Parts of every line with their items, each once, then the fittings that join them. */
function wettedParts({ rig, bill }: ProofContext): WettedPart[] {
  const onTheWay = new Set(['tank']);
  for (const { run } of rig.lines) for (const id of run) onTheWay.add(id);
  const out: WettedPart[] = [];
  for (const id of onTheWay) {
    const entry = rig.items.get(id);
    if (entry !== undefined) out.push([entry.part, id]);
  }
  const { joints, added } = bill.plumbing;
  const fittings = new Set<Part>();
  for (const { part } of added) fittings.add(part);
  for (const { pieces } of joints) for (const piece of pieces) fittings.add(piece);
  for (const part of fittings) out.push([part, undefined]);
  return out;
}

function reasonOf(p: Pair): string {
  return `${p.part}, ${p.piece}: ${p.resistance.reason}`;
}

/** Decisions are recorded for a material in a liquid, whatever the part. */
function decisionId(p: Pair): string {
  return `materials:${p.resistance.material}:${p.resistance.liquid}`;
}

function told(
  context: ProofContext,
  id: string,
  state: RigPromise['state'],
  sentence: string,
  pairs: readonly Pair[],
  cause: string,
): RigPromise {
  const working: Step[] = pairs.slice(0, 40).map((p) => {
    const decision = decisionOn(context.rig.brief, decisionId(p));
    const accepted =
      decision === undefined ? '' : `. Accepted by ${decision.who}, ${decision.when}: ${decision.why}`;
    return { text: `${reasonOf(p)}${accepted}` };
  });
  return {
    id,
    kind: 'materials',
    state,
    sentence,
    sense: 'at-least',
    cause,
    items: [...new Set(pairs.flatMap((p) => p.item ?? []))],
    method: METHOD,
    source: SOURCE,
    working,
    ...(state === 'unknown'
      ? {
          decisions: [...new Set(pairs.map(decisionId))].filter(
            (d) => decisionOn(context.rig.brief, d) === undefined,
          ),
        }
      : {}),
  };
}

/** Whether one set of rubber seals serves every liquid; said plainly when none does. */
function sealPromises(context: ProofContext, choice: SealChoice | undefined): RigPromise[] {
  if (choice?.conflict !== true) return [];
  const decision = decisionOn(context.rig.brief, 'materials:seals');
  return [
    {
      id: 'materials:seals',
      kind: 'materials',
      state: decision === undefined ? 'unknown' : 'thin',
      sentence:
        decision === undefined
          ? 'No single set of seals stands all the liquids: decide'
          : 'Seals are changed or shared as decided',
      sense: 'at-least',
      cause:
        decision === undefined
          ? choice.statement
          : `${decision.who}, ${decision.when}: ${decision.why}. ${choice.statement}`,
      items: [],
      method: METHOD,
      source: SOURCE,
      working: choice.options.map((o) => ({ text: `${o.seal}: ${o.rating}` })),
      ...(decision === undefined ? { decisions: ['materials:seals'] } : {}),
    },
  ];
}

/** Liquids of the brief that must never meet, in the tank or one after the other. */
function meetingPromises(
  context: ProofContext,
  parts: readonly WettedPart[],
  { resistances }: BriefContacts,
): RigPromise[] {
  const carries = [...new Set(context.rig.brief.liquids.map((l) => l.liquid).filter(isLiquid))];
  if (carries.length < 2) return [];
  const materials = new Set<string>();
  for (const [part] of parts)
    for (const { material } of part.wetted) if (resistances.has(material)) materials.add(material);
  const meetings = carries.flatMap((a, i) =>
    carries
      .slice(i + 1)
      .flatMap((b) => mustNotMeet(a, b, [...materials]).map(({ result }) => ({ a, b, result }))),
  );
  return meetings.map((m): RigPromise => {
    const id = `meeting:${m.a}:${m.b}`;
    const decision = decisionOn(context.rig.brief, id);
    return {
      id,
      kind: 'materials',
      state: decision === undefined ? 'unknown' : 'thin',
      sentence: `${liquidOf(m.a).name} and ${liquidOf(m.b).name} never meet`,
      sense: 'at-least',
      cause:
        decision === undefined
          ? `${m.result}. Say how they are kept apart: flushed between, two tanks, two rigs`
          : `${decision.who}, ${decision.when}: ${decision.why}. ${m.result}`,
      items: ['tank'],
      method: 'pairs that must not meet',
      source: 'handling rules of the liquids layer',
      working: [],
      ...(decision === undefined ? { decisions: [id] } : {}),
    };
  });
}
