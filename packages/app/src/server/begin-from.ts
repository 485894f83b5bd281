import type { Kysely } from 'kysely';
import { frozenPart } from '@spraywright/engine/catalogue';
import type { Problem } from '@spraywright/engine/quantity';
import { ENGINE_VERSION, readRig } from '@spraywright/engine/rig';
import type { FrozenQuote } from '../documents/quote/frozen-quote.ts';
import {
  catalogueOn,
  jobAtVersion,
  soldRigOf,
  type MachineDocument,
  type Records,
  type SoldRig,
} from '../store/index.ts';
import { filesOfCatalogue, readFiles, type CatalogueFiles } from './catalogue-files.ts';
import type { Shelf } from './shelf.ts';

type Db = Records['db'] extends Kysely<infer T> ? Kysely<T> : never;

/** What a machine is begun with, or why its rig cannot be read. */
type Begun =
  | { readonly ok: true; readonly document: MachineDocument }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** The option of a sold quote whose rig is to be built. */
export function soldOption({ document, option }: SoldRig): FrozenQuote['options'][number] {
  const { options } = document as FrozenQuote;
  return options.find((o) => o.name === option) ?? options[0]!;
}

/**
 * The rig that was sold of a job, with its parts as they stood in the catalogue when it was quoted; undefined where no
 * quote of the job was accepted.
 */
export async function begunFromQuote(db: Db, job: string): Promise<Begun | undefined> {
  const sold = await soldRigOf(db, job);
  if (sold === undefined) return undefined;
  const { date, catalogue } = sold.document as FrozenQuote;
  const kept = await catalogueOn(db, date, catalogue.version);
  const { quote, revision, acceptedAt } = sold;
  const { name, rig } = soldOption(sold);
  return begun(rig, filesOfCatalogue(kept!), {
    quote: { number: quote, revision, option: name, acceptedAt },
  });
}

/**
 * The rig of a version of a job with today's parts.
 *
 * @throws Refusal `no-such-job`, `no-such-version`
 */
export async function begunFromJob(db: Db, shelf: Shelf, job: string, version: number): Promise<Begun> {
  const { document } = await jobAtVersion(db, job, version);
  return begun(document.rig, (await shelf.current()).files, {});
}

/** The machine's own copy of what it is: rig, brief and the catalogue's parts as they stand in these files. */
function begun(
  raw: MachineDocument['rig'],
  files: CatalogueFiles,
  from: Pick<MachineDocument, 'quote'>,
): Begun {
  const read = readRig(raw, readFiles(files).catalogue);
  if (!read.ok) return read;
  const { rig } = read;
  const used = [...new Set([...rig.items.values()].map(({ part }) => part.id))].filter(
    (id) => !rig.ownParts.has(id),
  );
  const parts = used.sort().map((id) => {
    const part = frozenPart(files.files, id);
    if (part === undefined) throw new Error(`part '${id}' is in the catalogue and not in its files`);
    return part;
  });
  return { ok: true, document: { rig: raw, parts, engine: ENGINE_VERSION, ...from } };
}
