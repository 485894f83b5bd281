/** Work that is done after the answer: asked for by whoever changes something, one piece at a time. */
export interface WorkQueue {
  /** Says that there is work; what it is stands in the records. */
  readonly wake: () => void;
  /** Resolves when there is nothing left to do. */
  readonly idle: () => Promise<void>;
  /** Begins nothing more and resolves when the piece at hand has stopped. */
  readonly close: () => Promise<void>;
}

export interface WorkGiven {
  /** Does the next piece until it is done or `ended`; false when there is none for this process. */
  readonly next: (ended: AbortSignal) => Promise<boolean>;
  /** Whether anything is undone, in whatever process. */
  readonly left: () => Promise<boolean>;
  /** Told what nobody foresaw. */
  readonly report: (error: unknown) => void;
}

/** Work in this process: the records hold what is to be done, so that a new start goes on with it. */
export function workHere({ next, report }: WorkGiven): WorkQueue {
  const end = new AbortController();
  let running: Promise<void> | undefined;
  let woken = false;
  const work = async () => {
    while (woken && !end.signal.aborted) {
      woken = false;
      while (!end.signal.aborted && (await next(end.signal)));
    }
  };
  const wake = () => {
    if (end.signal.aborted) return;
    woken = true;
    running ??= work()
      .catch(report)
      .finally(() => {
        running = undefined;
        // Woken between the last look and here.
        if (woken) wake();
      });
  };
  return {
    wake,
    idle: async () => {
      while (running !== undefined) await running;
    },
    close: async () => {
      end.abort();
      await running;
    },
  };
}
