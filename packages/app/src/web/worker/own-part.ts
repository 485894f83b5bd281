import { frozenPart, ownPartShape, readOwnParts, type Kind } from '@spraywright/engine/catalogue';
import { MATERIALS } from '@spraywright/engine/liquids';
import { changed, formatPath, read, type Problem } from '@spraywright/engine/quantity';
import { partsInstead, putPart, readRig, slotsOf } from '@spraywright/engine/rig';
import { costsAsPrices } from '../frame/costs-as-prices.ts';
import type { Answers, FieldProblem, OwnPartStart, RigJson, TypedPart } from '../protocol.ts';
import type { Inputs } from './inputs.ts';

const MATERIAL_NAMES = MATERIALS.map(({ id, name }) => [id, name] as const);

/** What the form of a part that is in no catalogue begins with, in one slot of a rig. */
export function ownPartStart(slotId: string, rig: RigJson, inputs: Inputs): OwnPartStart {
  const read = readRig(rig, inputs.catalogue);
  const { costsTold } = inputs;
  if (!read.ok) return { kinds: [], like: {}, materials: MATERIAL_NAMES, costsTold };
  const slot = slotsOf(read.rig).find((s) => s.id === slotId);
  const part = read.rig.items.get(slotId)?.part;
  const own = ownOf(rig).find((o) => o.part.id === part?.id);
  const instead = slot === undefined ? [] : partsInstead(read.rig, inputs.catalogue, slotId);
  const like = (slot?.kinds ?? []).flatMap((kind): [Kind, TypedPart['part']][] => {
    if (own?.kind === kind) return [[kind, own.part]];
    const id = part?.kind === kind ? part.id : instead.find((p) => p.kind === kind)?.id;
    const raw = id === undefined ? undefined : frozenPart(inputs.files, id)?.part;
    return raw === undefined ? [] : [[kind, raw as TypedPart['part']]];
  });
  return {
    // The kind that is there comes first.
    kinds: [...(slot?.kinds ?? [])].sort((a, b) => Number(b === part?.kind) - Number(a === part?.kind)),
    like: Object.fromEntries(like),
    materials: MATERIAL_NAMES,
    costsTold,
    ...(own === undefined ? {} : { there: own }),
  };
}

/** Lays a part that is in no catalogue into a slot: what changes in the document, or which fields are refused. */
export function layIn(
  slot: string,
  typed: TypedPart,
  rig: RigJson,
  { catalogue, costsTold }: Inputs,
): Answers['own-part'] {
  const before = ownOf(rig);
  const id = (typed.part.id as string | undefined) ?? freeId(typed, before, catalogue.parts);
  const whole: TypedPart = { ...typed, part: { ...typed.part, id } };
  const own = costsTold ? whole : costsAsPrices(whole);
  const shape = read(ownPartShape, own);
  const { parts, problems } = readOwnParts([own], catalogue, ['']);
  const all = [...(shape.ok ? [] : shape.problems), ...problems];
  const part = parts.get(id)?.part;
  if (part === undefined || all.length > 0) return { refused: all.map(fieldOf) };
  const kept = before.filter((o) => o.part.id !== id);
  const ownParts = [...kept, own] as RigJson['ownParts'];
  const { change } = putPart({ ...rig, ownParts: ownParts! }, catalogue, slot, part);
  const { items, lines } = changed(rig, change).document;
  // Somebody wants this very part: it stays when others are chosen, until it is loosened.
  const pinned = items.map((item) => (item.id === slot ? { ...item, pinned: true } : item));
  return { taken: { items: pinned, lines, ownParts: ownParts! } };
}

function ownOf(rig: RigJson): readonly TypedPart[] {
  return (rig.ownParts ?? []) as readonly TypedPart[];
}

/** "Piston pump 12" is 'own-piston-pump-12', with a number behind it while that is taken. */
function freeId(
  { part: { name }, kind }: TypedPart,
  own: readonly TypedPart[],
  taken: ReadonlyMap<string, unknown>,
): string {
  const words = typeof name === 'string' ? name : kind;
  const stem = `own-${words
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 40)}`;
  const used = (id: string) => taken.has(id) || own.some((o) => o.part.id === id);
  for (let n = 1; ; n++) {
    const id = n === 1 ? stem : `${stem}-${n}`;
    if (!used(id)) return id;
  }
}

/** A problem with its place as the form names it: from the part on, `law.curve[2].head`. */
function fieldOf({ path, message }: Problem): FieldProblem {
  const at = path.lastIndexOf('part');
  return { path: formatPath(at < 0 ? path : path.slice(at + 1)), message };
}
