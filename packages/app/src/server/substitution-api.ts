import { createRoute, z, type OpenAPIHono } from '@hono/zod-openapi';
import { frozenPart } from '@spraywright/engine/catalogue';
import { proveRig, proveSubstitution, type PutInstead, type Substitution } from '@spraywright/engine/rig';
import { addEntries, entriesOfKinds, Refusal, type Records } from '../store/index.ts';
import { machineAsBuilt } from './as-built.ts';
import { byShape } from './job-shapes.ts';
import { machineParams } from './machine-shapes.ts';
import { refusals } from './problem.ts';
import { signedName } from './role-guard.ts';
import type { Shelf } from './shelf.ts';

interface SubstitutionApi {
  readonly shelf: Shelf;
  readonly records: Records;
  readonly now: () => string;
}

const json = <T>(schema: T) => ({ 'application/json': { schema } });

const askedShape = z
  .object({
    operation: z
      .string()
      .regex(/^[A-Za-z0-9-]{8,64}$/, 'an operation has 8 to 64 letters, digits and hyphens')
      .openapi({ description: 'A name of its own: the part is put in once, however often it is asked.' }),
    slot: z.string().min(1).max(64).openapi({ example: 'pump' }),
    part: z.string().min(1).max(64).openapi({ description: 'Another part of the catalogue for this slot.' }),
    why: z.string().trim().min(1).max(300),
    by: byShape,
  })
  .openapi('PartInstead');

const doneShape = z
  .object({
    slot: z.string(),
    part: z.string(),
    also: z.array(z.string()).openapi({ description: 'What had to change with the part.' }),
    last: z.int().openapi({ description: 'Number of the last entry of the machine.' }),
  })
  .openapi('PartPutIn');

const route = createRoute({
  method: 'post',
  path: '/api/machines/{serial}/substitutions',
  summary:
    'Put another part into a slot of a machine; refused unless the whole rig, proven anew, keeps every promise it kept',
  request: { params: machineParams, body: { required: true, content: json(askedShape) } },
  responses: {
    200: { description: 'It keeps them: written down; on the disk', content: json(doneShape) },
    ...refusals(
      'not-json',
      'foreign-page',
      'no-such-machine',
      'too-large',
      'wrong-type',
      'bad-request',
      'unreadable-rig',
      'bad-part',
      'promise-broken',
    ),
  },
});

/** Another part in a machine: proven here before it is written down, whoever asks. */
export function substitutionApi(app: OpenAPIHono, api: SubstitutionApi): void {
  const { records, now } = api;
  app.openapi(route, async (c) => {
    const { serial } = c.req.valid('param');
    const { operation, slot, part, why, by } = c.req.valid('json');
    for (;;) {
      const known = (await entriesOfKinds(records.db, serial, ['substitution'])).find(
        (entry) => entry.operation === operation,
      );
      if (known !== undefined) {
        const { also = [] } = known.document as { also?: string[] };
        return c.json({ slot, part, also, last: known.number }, 200);
      }
      const { instead, document } = await proven(api, serial, slot, part);
      const last = await records.save(async (t) => {
        // Somebody else put a part in while this one was proven: it is proven again with that one.
        if ((await entriesOfKinds(t, serial, ['substitution'])).length !== instead) return undefined;
        const entry = { operation, kind: 'substitution', document: { ...document, why } };
        return (await addEntries(t, serial, [entry], { by: signedName(c) ?? by, at: now() })).last;
      });
      if (last !== undefined) return c.json({ slot, part, also: [...document.also], last }, 200);
    }
  });
}

/** @throws Refusal `bad-part` when it does not fit; `promise-broken` when the rig does not keep all with it */
async function proven(
  { shelf, records }: SubstitutionApi,
  serial: string,
  slot: string,
  id: string,
): Promise<{ instead: number; document: PutInstead & { was: string; also: readonly string[] } }> {
  const { catalogue: today, shop, files } = await shelf.current();
  const { raw, rig, catalogue, instead } = await machineAsBuilt(records.db, serial, today);
  const part = today.parts.get(id);
  const frozen = frozenPart(files.files, id);
  if (part === undefined || frozen === undefined)
    throw new Refusal('bad-part', `part is '${id}'; the catalogue '${today.name}' has none of that id`);
  const proof = proveRig(rig, catalogue, shop);
  let tried: Substitution;
  try {
    tried = proveSubstitution({ raw, rig, proof }, catalogue, shop, { slot, part });
  } catch (error) {
    if (error instanceof RangeError) throw new Refusal('bad-part', error.message, { slot, part: id });
    throw error;
  }
  if (!tried.allowed) throw refusalOf(tried, slot, id);
  const was = rig.items.get(slot)?.part.id ?? '';
  return { instead, document: { slot, was, part: frozen, puts: tried.change.puts, also: tried.also } };
}

function refusalOf({ effect }: Substitution, slot: string, part: string): Refusal {
  const worse = [...effect.breaks, ...effect.doubts].map(({ id, after }) => ({
    field: id,
    code: after?.state ?? 'broken',
    message: `${after?.state === 'unknown' ? 'unknown' : 'broken'}: ${after?.sentence ?? id}: ${after?.cause ?? ''}`,
  }));
  return new Refusal('promise-broken', `with '${part}' in '${slot}', ${worse[0]!.message}`, {
    slot,
    part,
    problems: worse,
  });
}
