import { z } from '@hono/zod-openapi';
import { Refusal, type NewEntry } from '../store/index.ts';

/** Longest photo, as text: 200 KB of picture. */
const LARGEST_PHOTO = 275_000;

const words = (most: number) => z.string().trim().min(1).max(most);
const photo = z
  .string()
  .regex(/^data:image\/jpeg;base64,[A-Za-z0-9+/=]+$/, 'image must be a JPEG as a data address')
  .max(LARGEST_PHOTO, `image is larger than 200 KB; the page makes photos smaller before it sends them`);

/** Entries of building and service; other kinds are their own senders' to check. */
const SHAPES: Readonly<Record<string, z.ZodType>> = {
  'build-step': z.object({
    step: words(100),
    text: words(600),
    done: z.boolean(),
    /** What was asked and read, as typed, or why it is not known. */
    value: words(60).optional(),
    unknown: words(200).optional(),
    note: z.string().max(500).optional(),
  }),
  lot: z.object({ part: words(64), item: z.string().max(64).optional(), lot: words(60) }),
  photo: z.object({ about: words(200), image: photo, step: z.string().max(100).optional() }),
  service: z.object({ words: words(2000) }).loose(),
  'last-liquid': z.object({ liquid: words(64), note: z.string().max(500).optional() }),
  flush: z.object({
    after: words(64),
    next: words(64),
    /** Every forbidden meeting that whoever flushed was shown. */
    dangers: z.array(words(200)).max(40),
    how: words(500),
  }),
};

/**
 * Refuses entries that could not be read again, and a part put in around its proof.
 *
 * @throws Refusal `bad-entry`
 */
export function checkEntries(entries: readonly NewEntry[]): void {
  entries.forEach(({ kind, document }, i) => {
    if (kind === 'substitution')
      throw new Refusal(
        'bad-entry',
        `entries.${i}: another part is put in at /api/machines/{serial}/substitutions, where it is proven first`,
        { entry: i },
      );
    const read = Object.hasOwn(SHAPES, kind) ? SHAPES[kind]?.safeParse(document) : undefined;
    if (read === undefined || read.success) return;
    const { path, message } = read.error.issues[0]!;
    const field = ['entries', i, 'document', ...path].join('.');
    throw new Refusal('bad-entry', `${field}: ${message}`, { entry: i });
  });
}
