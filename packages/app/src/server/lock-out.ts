import { createHash } from 'node:crypto';
import type { Records } from '../store/index.ts';

/** Wrong passwords in a row until sign-in is closed, and for how long [ms]. */
export const MOST = 5;
const CLOSED = 15 * 60_000;

/**
 * Counts wrong passwords by e-mail address, of people and of nobody alike, so that it tells nobody which is which. The
 * counts stand in the records: no second process and no new start gives more tries.
 */
export class LockOut {
  readonly #save: Records['save'];

  constructor({ save }: Pick<Records, 'save'>) {
    this.#save = save;
  }

  /** Counts a try before its password is looked at, so that tries at the same time count too; 0 when closed. */
  begin(email: string, now: number): Promise<number> {
    const [last, forgotten] = [new Date(now).toISOString(), new Date(now - CLOSED).toISOString()];
    return this.#save(async (t) => {
      const counted = await t
        .insertInto('sign_in_tries')
        .values({ address: digest(email), count: 1, last })
        .onConflict((c) =>
          c
            .column('address')
            .doUpdateSet((e) => ({
              count: e
                .case()
                .when('sign_in_tries.last', '<=', forgotten)
                .then(1)
                .else(e('sign_in_tries.count', '+', 1))
                .end(),
              last,
            }))
            .where((e) =>
              e.or([e('sign_in_tries.count', '<', MOST), e('sign_in_tries.last', '<=', forgotten)]),
            ),
        )
        .returning('count')
        .executeTakeFirst();
      return counted?.count ?? 0;
    });
  }

  /** Forgets the count, and every count that is too old to close anything. */
  async succeeded(email: string, now: number): Promise<void> {
    const forgotten = new Date(now - CLOSED).toISOString();
    await this.#save((t) =>
      t
        .deleteFrom('sign_in_tries')
        .where((e) => e.or([e('address', '=', digest(email)), e('last', '<=', forgotten)]))
        .execute(),
    );
  }
}

function digest(email: string): string {
  return createHash('sha256').update(email).digest('hex');
}
