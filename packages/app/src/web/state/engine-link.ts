import { changeBetween, type UnitSystem } from '@spraywright/engine/quantity';
import { fetchStart } from '../frame/fetch-start.ts';
import type {
  Answers,
  FieldProblem,
  FoundRigs,
  FromEngine,
  Question,
  RigJson,
  ToEngine,
  View,
} from '../protocol.ts';

const newWorker = () => new Worker(new URL('../engine-worker.ts', import.meta.url), { type: 'module' });

/** The engine in its worker. While it works only the newest question waits: older ones are not worth answering. */
export class EngineLink {
  readonly #worker = newWorker();
  /** Fetched while the worker loads: it waits for neither the engine nor the first painting. */
  readonly #start = fetchStart(new URL('start.json', document.baseURI).href);
  #seq = 0;
  #busy = false;
  #waiting: { version: number; rig: RigJson; good: RigJson | undefined; view: View } | undefined;
  #sent: RigJson | undefined;
  #designer: Worker | undefined;
  #asked = 0;
  readonly #asking = new Map<number, (answer: Answers[Question['about']]) => void>();

  constructor(tell: (message: FromEngine) => void) {
    this.#worker.onmessage = ({ data }: MessageEvent<FromEngine>) => {
      if (data.type === 'answer') {
        this.#asking.get(data.ask)?.(data.answer);
        this.#asking.delete(data.ask);
        return;
      }
      if (data.type === 'drawn') this.#busy = false;
      tell(data);
      if (data.type === 'drawn') this.#sendWaiting();
    };
    this.#worker.onerror = (event) =>
      tell({ type: 'failed', message: event.message || 'the engine stopped' });
    this.#hand(this.#worker, (message) => tell({ type: 'failed', message }));
  }

  /** Hands a worker what the page starts from; what it is asked before that waits. */
  #hand(worker: Worker, failed: (message: string) => void): void {
    this.#start.then(
      (document) => worker.postMessage({ type: 'start', document } satisfies ToEngine),
      (error: unknown) => failed(error instanceof Error ? error.message : String(error)),
    );
  }

  show(version: number, rig: RigJson, good: RigJson | undefined, view: View): void {
    this.#waiting = { version, rig, good, view };
    this.#sendWaiting();
  }

  /** Whether a question would be worked on at once. */
  get idle(): boolean {
    return !this.#busy;
  }

  /** Asks what a part in a slot, or none, changes in the document. */
  take(rig: RigJson, slot: string, part: string | undefined, about: string): void {
    const message: ToEngine = { type: 'take', rig, slot, about, ...(part === undefined ? {} : { part }) };
    this.#worker.postMessage(message);
  }

  /** Hands over what the search has found, to be proven and compared. */
  found(found: FoundRigs): void {
    this.#worker.postMessage({ type: 'found', found } satisfies ToEngine);
  }

  /** Asks something about a rig that is answered once. */
  ask<Q extends Question>(rig: RigJson, question: Q): Promise<Answers[Q['about']]> {
    const ask = ++this.#asked;
    const message: ToEngine = { type: 'ask', ask, rig, question };
    return new Promise((resolve) => {
      this.#asking.set(ask, resolve as (answer: Answers[Question['about']]) => void);
      this.#worker.postMessage(message);
    });
  }

  /** Chooses a rig for a brief, around what is pinned in the rig there was, in a worker of its own, so that it can be stopped at any moment. */
  design(
    brief: unknown,
    from: RigJson | undefined,
    units: UnitSystem,
    done: (outcome: { rig: RigJson } | { problems: readonly FieldProblem[] }) => void,
  ): void {
    this.stopDesign();
    const worker = (this.#designer = newWorker());
    const end = (outcome: Parameters<typeof done>[0]) => {
      if (this.#designer !== worker) return;
      this.stopDesign();
      done(outcome);
    };
    worker.onmessage = ({ data }: MessageEvent<FromEngine>) => {
      if (data.type === 'designed') end({ rig: data.rig });
      else if (data.type === 'no-design') end({ problems: data.problems });
      else if (data.type === 'failed') end({ problems: [{ path: '', message: data.message }] });
    };
    worker.onerror = (event) =>
      end({ problems: [{ path: '', message: event.message || 'the choosing of parts stopped' }] });
    this.#hand(worker, (message) => end({ problems: [{ path: '', message }] }));
    const message: ToEngine = { type: 'design', brief, units, ...(from === undefined ? {} : { from }) };
    worker.postMessage(message);
  }

  stopDesign(): void {
    this.#designer?.terminate();
    this.#designer = undefined;
  }

  #sendWaiting(): void {
    if (this.#busy || this.#waiting === undefined) return;
    const { version, rig, good, view } = this.#waiting;
    this.#waiting = undefined;
    this.#busy = true;
    const message: ToEngine = {
      type: 'show',
      seq: ++this.#seq,
      version,
      view,
      ...since(this.#sent, rig),
      ...(good === undefined ? {} : { good }),
    };
    this.#sent = rig;
    this.#worker.postMessage(message);
  }
}

/** A whole rig takes longer to hand over than what was changed in it: two thirds of a thousandth of a second, at every step of a drag. */
function since(
  before: RigJson | undefined,
  rig: RigJson,
): Pick<ToEngine & { type: 'show' }, 'rig' | 'change'> {
  if (rig === before) return {};
  return before?.id === rig.id ? { change: changeBetween(before, rig, '') } : { rig };
}
