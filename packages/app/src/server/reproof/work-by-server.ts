import PgBoss from 'pg-boss';
import type { WorkGiven, WorkQueue } from './work-queue.ts';

const QUEUE = 'quotes-again';
const SCHEMA = 'spraywright_work';
/** A piece that has been held for so long is handed to another process as well; the records say who has it [s]. */
const HELD = 60;
/** Until a piece that could not be done, or that another process has, is looked at again [s]. */
const AGAIN = 5;
/** Until work that another process asked for is seen here [s]. */
const LOOK = 2;
const OFTEN_ENOUGH = 100_000;
/** So often at most is the queue made anew when another process makes it in the same moment. */
const MEETINGS = 10;

/**
 * Work that the processes on one PostgreSQL database share: whoever is free takes it, and what a process leaves when it is
 * killed comes back to the others. Who has a piece is told by the records, so that no two do it.
 *
 * @param address of the database; the queue has tables of its own there
 * @throws Error when the database does not let its tables be made
 */
export function workByServer(address: string, { next, left, report }: WorkGiven): WorkQueue {
  const end = new AbortController();
  const boss = new PgBoss({
    connectionString: address,
    schema: SCHEMA,
    max: 2,
    schedule: false,
    maintenanceIntervalSeconds: HELD / 2,
  });
  boss.on('error', seldom(report));
  const running = new Set<Promise<void>>();
  const work = async () => {
    while (!end.signal.aborted && (await next(end.signal)));
    // Told as undone, so that it is offered again: to another process, or to this one when the other was killed.
    if (await left()) throw new Error('another process is at it');
  };
  const begin = async () => {
    await boss.start();
    // Processes that start at once on a new database meet here: who loses finds the queue made, or makes it then.
    for (let tries = 1; (await boss.getQueue(QUEUE)) === null; tries++)
      await boss
        .createQueue(QUEUE, {
          name: QUEUE,
          policy: 'short',
          expireInSeconds: HELD,
          retryLimit: OFTEN_ENOUGH,
          retryDelay: AGAIN,
        })
        .catch((error: unknown) => {
          if (tries === MEETINGS) throw error;
        });
    return boss.work(QUEUE, { pollingIntervalSeconds: LOOK }, async () => {
      const piece = work();
      running.add(piece);
      await piece.finally(() => running.delete(piece));
    });
  };
  const worker = begin();
  worker.catch(report);
  let asking: Promise<unknown> = Promise.resolve();
  const ask = async () => {
    const id = await worker;
    await boss.send(QUEUE, {});
    boss.notifyWorker(id);
  };
  return {
    wake: () => {
      if (!end.signal.aborted) asking = asking.then(ask).catch(report);
    },
    idle: async () => {
      await asking;
      while (running.size > 0 || (await boss.getQueueSize(QUEUE, { before: 'completed' })) > 0)
        await new Promise((then) => setTimeout(then, 100));
    },
    close: async () => {
      end.abort();
      await asking;
      await Promise.allSettled(running);
      // Also where it could not begin, which was told then: what it has opened would keep the process alive.
      await worker.catch(() => undefined);
      await boss.stop({ graceful: true, timeout: 5000 });
    },
  };
}

/** A server that is away is told once a minute, not at every look. */
function seldom(report: (error: unknown) => void): (error: unknown) => void {
  let [last, at] = ['', 0];
  return (error) => {
    const said = error instanceof Error ? error.message : String(error);
    if (said === last && Date.now() - at < 60_000) return;
    [last, at] = [said, Date.now()];
    report(error);
  };
}
