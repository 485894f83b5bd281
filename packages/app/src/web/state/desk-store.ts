import type { PlumbingGraph } from '@spraywright/engine/drawings';
import { changed, pathOf, type Change, type UnitSystem } from '@spraywright/engine/quantity';
import type {
  Answers,
  BriefTab,
  FieldProblem,
  FromEngine,
  Leaf,
  PartRow,
  Question,
  RigChange,
  RigJson,
  Taken,
  TypedPart,
} from '../protocol.ts';
import { operationName } from '../frame/operation-name.ts';
import { afterPaint } from './after-paint.ts';
import { CLOSED, EMPTY, type Fold } from './desk-state.ts';
import { DeskView } from './desk-view.ts';
import { EngineLink } from './engine-link.ts';
import { cancelled, edited, judged, newJob, redone, settled, undone, type Job } from './job.ts';
import { JobKeeper, type Synced } from './job-keeper.ts';
import { keepWork, loadWork } from './kept-work.ts';
import type { Clash } from './merge.ts';
import { findStored } from './records-link.ts';
import { OddsLink } from './odds-link.ts';
import { SearchLink } from './search-link.ts';
import { picturesAfter, toldOf } from './told-of.ts';
import { viewOf } from './view-of.ts';

const KEEP_AFTER = 300;

/** The jobs on the desk and everything that can be done to them. */
export class DeskStore extends DeskView {
  #version = 0;
  #versionOf: RigJson | undefined;
  #oddsIn: UnitSystem | undefined;
  #lastReadable: RigJson | undefined;
  /** Rig that the server has chosen for the brief it names. */
  #designed: RigJson | undefined;
  /** When what the engine is asked to answer was done at the device, which is before the page is told. */
  #inputAt: number | undefined;
  #keeping: ReturnType<typeof setTimeout> | undefined;
  readonly #storage: Storage | undefined;
  readonly #engine: EngineLink;
  readonly #odds: OddsLink;
  readonly #search: SearchLink;
  readonly #keeper: JobKeeper;
  /** Job that the page's address names. */
  readonly #wanted: string;
  /** What the records say of the job that comes first onto the desk, asked while the engine is still loading. */
  #early: { readonly id: string; readonly answer: ReturnType<typeof findStored> } | undefined;

  constructor(storage: Storage | undefined, start: { night: boolean; fold: Fold; job: string; leaf: Leaf }) {
    const { night, fold, leaf } = start;
    super({ ...loadWork(storage, night), ...EMPTY, fold, leaf });
    this.#storage = storage;
    this.#wanted = start.job;
    const { current, jobs } = this.state();
    const first = start.job === '' ? (current ?? FIRST_JOB) : start.job;
    if (jobs[first] === undefined) this.#early = { id: first, answer: findStored(first) };
    this.#engine = new EngineLink((message) => this.#hear(message));
    this.#keeper = new JobKeeper({
      rigOf: (id) => this.state().jobs[id]?.rig,
      aboutOf: (id) => this.state().jobs[id]?.past.at(-1)?.about ?? '',
      syncedOf: (id) => this.state().synced[id],
      setSynced: (id, synced) => this.#setSynced(id, synced),
      takeRig: (id, rig) => this.#takeRig(id, rig),
      tell: (id, keeping, keepingWhy) => {
        if (id === this.state().current) this.set({ keeping, keepingWhy });
      },
      disagree: (disagreement) => this.set({ disagreement }),
    });
    this.#odds = new OddsLink((odds) => {
      if (odds.version === this.#version) this.set({ odds });
    });
    this.#search = new SearchLink((search, found) => {
      this.set({ search });
      if (found !== undefined) this.#engine.found(found);
    });
  }

  job(): Job | undefined {
    const { current, jobs } = this.state();
    return current === undefined ? undefined : jobs[current];
  }

  /** Opens the job of a brief; parts are chosen for it the first time. */
  open(id: string): void {
    this.#lastReadable = undefined;
    const brief = this.state().briefs.find((b) => b.id === id);
    if (this.state().jobs[id] !== undefined) {
      this.set({ current: id, ...CLOSED });
      this.askShown();
      void this.#keeper.opened(id);
    } else void this.#fetch(id, brief);
  }

  /** A new job of a kind of work, with the start values of its brief. */
  begin(work: string): void {
    const from = this.state().works.find((w) => w.id === work);
    if (from === undefined) return;
    const id = `${work}-${operationName().slice(0, 8)}`;
    this.list(false);
    this.#choose(id, from.name, { ...(from.raw as object), id });
  }

  list(listing: boolean): void {
    this.set({ listing });
  }

  /** Sends what waits and looks what others did; asked now and then, and when the connection is back. */
  look(): void {
    const { current, jobs, synced } = this.state();
    for (const id of Object.keys(jobs))
      if (id === current) void this.#keeper.look(id);
      else if (synced[id] === undefined || synced[id].rig !== jobs[id]?.rig) this.#keeper.touched(id, 0);
    if (current !== undefined && this.state().keeping !== 'kept') this.#keeper.touched(current, 0);
  }

  /** Ends a disagreement with another person about the job. */
  agree(mineStands: (clash: Clash) => boolean): void {
    const { disagreement } = this.state();
    if (disagreement !== undefined) this.#keeper.settle(disagreement.id, mineStands);
  }

  /** A job that is not on this device comes from the records; a demo brief that is not there either is designed. */
  async #fetch(id: string, brief: BriefTab | undefined): Promise<void> {
    const early = this.#early?.id === id ? this.#early.answer : undefined;
    this.#early = undefined;
    const answer = await (early ?? findStored(id));
    if (this.state().jobs[id] !== undefined) return this.open(id);
    if (answer.is === 'done') {
      const { version, document } = answer.value;
      const { jobs } = this.state();
      this.set({ jobs: { ...jobs, [id]: newJob(document.rig) }, current: id, keeping: 'kept', ...CLOSED });
      this.#setSynced(id, { version, rig: document.rig });
      this.askShown();
    } else if (brief !== undefined && brief.id === this.#designed?.id) {
      this.set({ current: id, ...CLOSED });
      this.#put(newJob(this.#designed));
    } else if (brief !== undefined) this.#choose(brief.id, brief.title, brief.raw);
    else if (answer.is === 'absent') this.set({ failure: `There is no job '${id}'` });
    else this.set({ failure: `The job '${id}' is not on this device, and the records cannot be reached` });
  }

  #setSynced(id: string, synced: Synced): void {
    this.set({ synced: { ...this.state().synced, [id]: synced } });
    this.keepSoon();
  }

  /** Leaves what was tried on a job that is only read, for the job as the shop has it. */
  goBackToShops(): void {
    const { current, jobs, synced } = this.state();
    const shops = current === undefined ? undefined : synced[current];
    if (current === undefined || shops === undefined || shops.version === 0) return;
    this.set({ jobs: { ...jobs, [current]: newJob(shops.rig) } });
    this.askShown();
    this.keepSoon();
    void this.#keeper.look(current);
  }

  /** What others did is no step of one's own: Undo takes back what one did before, where that still fits. */
  #takeRig(id: string, rig: RigJson): void {
    const { jobs, current } = this.state();
    const job = jobs[id];
    if (job === undefined || job.rig === rig) return;
    this.set({ jobs: { ...jobs, [id]: { ...settled(job), rig } } });
    if (id === current) this.askShown();
    this.keepSoon();
  }

  /** Chooses all parts again for the brief as it now stands; one step for Undo. */
  chooseAgain(): void {
    const job = this.job();
    const { current, body } = this.state();
    if (job !== undefined && current !== undefined)
      this.#choose(current, body?.title ?? job.rig.title, job.rig.brief, job.rig);
  }

  stopChoosing(): void {
    this.#engine.stopDesign();
    this.set({ choosing: undefined });
  }

  /** Searches the whole catalogue for the brief as it stands, around what is pinned. */
  search(): void {
    const job = this.job();
    if (job !== undefined) this.#search.start(job.rig, this.state().units);
  }

  stopSearch(): void {
    this.#search.stop();
  }

  edit(change: Change, merge?: string): void {
    const job = this.job();
    if (job !== undefined) this.#put(edited(job, change, merge));
  }

  /** Whether the engine would answer an edit at once. */
  readonly isIdle = (): boolean => this.#engine.idle;

  /** A pinned part stays where others are chosen; a step for Undo like any other. */
  pin({ name, pin: { path, held } }: PartRow): void {
    const about = `${held ? 'Loosen' : 'Pin'} ${name}`;
    this.edit({ about, puts: [{ path: pathOf(path), value: held ? undefined : true }] });
  }

  /** Puts a part into a slot, or leaves the slot empty; the engine says what has to change with it. */
  take(slot: string, part: string | undefined, about: string): void {
    const job = this.job();
    if (job === undefined) return;
    this.#inputAt ??= window.event?.timeStamp ?? performance.now();
    this.#engine.take(job.rig, slot, part, about);
  }

  /** Asks the engine something about a rig, the one on the desk unless another is given; never answered without one. */
  ask<Q extends Question>(question: Q, rig = this.job()?.rig): Promise<Answers[Q['about']]> {
    return rig === undefined ? new Promise(() => undefined) : this.#engine.ask(rig, question);
  }

  /** Lays a part that is in no catalogue into a slot, as one step. @returns the fields that were refused */
  async layIn(slot: string, own: TypedPart): Promise<readonly FieldProblem[]> {
    const answer = await this.ask({ about: 'own-part', slot, own });
    if ('refused' in answer) return answer.refused;
    this.#putTaken(answer.taken, `Lay in ${String(own.part.name)}`);
    return [];
  }

  /** Takes a whole rig that was found, as one step. */
  takeRig(rig: RigChange, about: string): void {
    this.#putTaken(rig, about);
  }

  #putTaken(taken: Taken | RigChange, about: string): void {
    const puts = Object.entries<unknown>(taken).map(([field, value]) => ({ path: [field], value }));
    this.edit({ about, puts });
  }

  /** Takes back what is being dragged or typed under a name. */
  cancel(merge: string): void {
    if (this.job()?.merge === merge) this.#put(cancelled(this.job()!));
  }

  /** The end of a drag or of typing. */
  settle(): void {
    const job = this.job();
    if (job?.merge !== undefined) this.#put(settled(job));
  }

  undo(): void {
    const job = this.job();
    if (job !== undefined) this.#step(() => undone(job));
  }

  redo(): void {
    const job = this.job();
    if (job !== undefined) this.#step(() => redone(job));
  }

  /** A step that no longer fits what others made of the job is told, and nothing is changed. */
  #step(make: () => Job): void {
    try {
      this.#put(make());
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      this.set({ failure: `This step no longer fits the job: ${error.message}` });
    }
  }

  fail(failure: string | undefined): void {
    this.set({ failure });
  }

  #choose(id: string, title: string, brief: unknown, from?: RigJson): void {
    this.set({ choosing: { id, title }, failure: undefined });
    this.#engine.design(brief, from, this.state().units, (outcome) => {
      this.set({ choosing: undefined });
      if ('problems' in outcome) {
        const first = outcome.problems[0];
        this.set({ failure: `No rig for "${title}": ${first?.message ?? 'no reason is known'}` });
        return;
      }
      const before = this.state().jobs[id];
      const job =
        before === undefined
          ? newJob(outcome.rig)
          : edited(settled(before), {
              about: 'Parts chosen again',
              puts: [{ path: [], value: outcome.rig }],
            });
      this.set({ current: id, ...CLOSED });
      this.#put(job);
      // The same parts may have been chosen again: what was closed is asked for all the same.
      if (job.rig === before?.rig) this.askShown();
    });
  }

  /** Keeps the last readable document beside one that is not, for the day the page is opened again. */
  #judge(readable: boolean): void {
    const job = this.job();
    const { current, jobs } = this.state();
    if (job === undefined || current === undefined) return;
    const next = judged(job, readable, this.#lastReadable);
    if (readable) this.#lastReadable = job.rig;
    if (next === job) return;
    this.set({ jobs: { ...jobs, [current]: next } });
    this.keepSoon();
  }

  #put(job: Job): void {
    const { current, jobs } = this.state();
    if (current === undefined || job === jobs[current]) return;
    const rigChanged = job.rig !== jobs[current]?.rig;
    this.set({ jobs: { ...jobs, [current]: job } });
    if (rigChanged) {
      this.#inputAt ??= window.event?.timeStamp ?? performance.now();
      this.askShown();
      this.#keeper.touched(current);
    }
    this.keepSoon();
  }

  protected override askShown(): void {
    const rig = this.job()?.rig;
    const s = this.state();
    this.#search.keepFor(rig);
    if (rig === undefined || s.shop === undefined || (s.sceneWidth === 0 && s.leaf === 'desk')) return;
    if (rig !== this.#versionOf) {
      this.#version++;
      this.#versionOf = rig;
    }
    this.#engine.show(this.#version, rig, this.job()?.good, viewOf(s));
  }

  #hear(message: FromEngine): void {
    switch (message.type) {
      case 'ready': {
        this.#designed = message.designed;
        this.set({ shop: message.shop, briefs: message.briefs, works: message.works });
        const { current, jobs, briefs } = this.state();
        if (this.#wanted !== '') this.open(this.#wanted);
        else if (current !== undefined && jobs[current] !== undefined) this.open(current);
        else {
          const first = briefs.find((b) => b.id === FIRST_JOB) ?? briefs[0];
          if (first !== undefined) this.open(first.id);
        }
        return;
      }
      case 'failed':
        this.set({ failure: message.message });
        return;
      case 'shown': {
        const { change, problems, version } = message;
        const newest = version === this.#version;
        if (newest) this.#judge(problems.length === 0);
        if (newest && change !== undefined) this.#askOdds(problems.length === 0);
        const none = problems.length === 0 && this.state().problems.length === 0;
        this.set({
          ...(none ? {} : { problems }),
          ...(change === undefined ? {} : { body: changed(this.state().body, change).document }),
        });
        if (newest && this.#inputAt !== undefined) {
          const from = this.#inputAt;
          this.#inputAt = undefined;
          afterPaint(() => performance.measure('input-to-repaint', { start: from, end: performance.now() }));
        }
        return;
      }
      case 'drawn':
        this.set(picturesAfter(this.state().pictures, message));
        this.drawn();
        return;
      case 'taken':
        this.#putTaken(message.taken, message.about);
        return;
      case 'plumbing':
        void this.#layPlumbing(message.key, message.graph);
        return;
      default: {
        const told = toldOf(message, this.#version, this.state().slot);
        if (told !== undefined) this.set(told);
      }
    }
  }

  /** Odds of another rig never stand beside new figures. */
  #askOdds(readable: boolean): void {
    const rig = this.job()?.rig;
    const { odds, units } = this.state();
    if (rig === undefined || (odds?.version === this.#version && this.#oddsIn === units)) return;
    this.#oddsIn = units;
    if (odds !== undefined) this.set({ odds: undefined });
    if (readable) this.#odds.ask(this.#version, rig, units);
  }

  /** Lays the plumbing out with the kernel, which is loaded the first time. */
  async #layPlumbing(key: string, graph: PlumbingGraph): Promise<void> {
    try {
      const { layInPage } = await import('./plumbing-layout.ts');
      const layout = await layInPage(graph);
      this.view({ plumbing: { key, layout }, plumbingFailure: undefined });
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      this.set({ plumbingFailure: `The diagram could not be laid out: ${why}` });
    }
  }

  protected override keepSoon(): void {
    clearTimeout(this.#keeping);
    this.#keeping = setTimeout(() => this.keepNow(), KEEP_AFTER);
  }

  keepNow(): void {
    const { jobs, synced, current, units, sheet } = this.state();
    const kept = keepWork(this.#storage, { jobs, synced, current, units, sheet });
    if (kept !== this.state().kept) this.set({ kept });
  }
}

/** The job that is on the desk the first time. */
const FIRST_JOB = 'tall-elms';
