import type { SceneHold } from '@spraywright/engine/drawings';
import type { UnitSystem } from '@spraywright/engine/quantity';
import type { Leaf, Spared } from '../protocol.ts';
import type { DeskState, Fold } from './desk-state.ts';

/** The state of the desk, who is told of it, and how it is looked at: nothing here changes a job. */
export abstract class DeskView {
  #state: DeskState;
  readonly #listeners = new Set<() => void>();
  #afterDrawn: (() => void)[] = [];

  constructor(state: DeskState) {
    this.#state = state;
  }

  readonly state = (): DeskState => this.#state;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** Asks the engine for the figures and drawings of what is now looked at. */
  protected abstract askShown(): void;

  /** Keeps on this device, a little later, what is to be there when the page is opened again. */
  protected abstract keepSoon(): void;

  protected set(change: Partial<DeskState>): void {
    this.#state = { ...this.#state, ...change };
    for (const listener of this.#listeners) listener();
  }

  protected view(change: Partial<DeskState>): void {
    this.set(change);
    this.askShown();
  }

  /** The drawings that were asked for are there. */
  protected drawn(): void {
    for (const then of this.#afterDrawn.splice(0)) then();
  }

  setUnits(units: UnitSystem): void {
    this.view({ units });
    this.keepSoon();
  }

  setSheet(sheet: 'day' | 'night'): void {
    this.view({ sheet });
    this.keepSoon();
  }

  /** Lays other drawings of the job into the left column. */
  setLeaf(leaf: Leaf): void {
    if (leaf !== this.state().leaf) this.view({ leaf, tried: [] });
  }

  /** Picks a rig to be compared with the one that stands, or drops it; the oldest pick makes room. */
  compare(id: string, shown: readonly string[]): void {
    const now = this.state().compared.length > 0 ? this.state().compared : shown;
    const next = now.includes(id) ? now.filter((c) => c !== id) : [...now, id].slice(-3);
    this.view({ compared: next });
  }

  /** Shuts a valve to see what happens, or opens it again; the document stays as it is. */
  tryValve(item: string): void {
    const { tried } = this.state();
    this.view({ tried: tried.includes(item) ? tried.filter((t) => t !== item) : [...tried, item] });
  }

  setDuty(duty: string): void {
    this.view({ duty, tried: [] });
  }

  setLit(lit: string | undefined): void {
    if (lit !== this.state().lit) this.view({ lit });
  }

  setSlot(slot: string | undefined): void {
    this.view({ slot, effects: undefined });
  }

  toggleWorking(id: string): void {
    const { working } = this.state();
    this.view({ working: working.includes(id) ? working.filter((w) => w !== id) : [...working, id] });
  }

  /** Holds the scene's scale while something in it is dragged: drawn with the first move, for which nothing else is drawn before. */
  hold(keeps: SceneHold['keeps']): void {
    const hold = this.state().pictures?.handles?.hold;
    if (hold !== undefined) this.set({ hold: { ...hold, keeps } });
  }

  /** Lets the scene settle to the scale that fits what it now shows. */
  letGo(): void {
    if (this.state().hold !== undefined) this.view({ hold: undefined });
  }

  /** Tells whether a drawing can be seen; one that comes into sight in the middle of a drag is drawn at once. */
  setSight(name: Spared, seen: boolean): void {
    const outOfSight = this.state().outOfSight.filter((n) => n !== name);
    if (!seen) this.set({ outOfSight: [...outOfSight, name] });
    else if (this.state().hold === undefined) this.set({ outOfSight });
    else this.view({ outOfSight });
  }

  setFold(fold: Fold): void {
    if (fold !== this.state().fold) this.view({ fold });
  }

  setSizes(sizes: Partial<Pick<DeskState, 'sceneWidth' | 'sceneHeight' | 'lineWidth' | 'curveWidth'>>): void {
    const same = Object.entries(sizes).every(
      ([key, value]) => this.state()[key as keyof DeskState] === value,
    );
    if (!same) this.view(sizes);
  }

  /** Draws the sheet for paper, prints it, and draws it for the screen again. */
  print(print: () => void): void {
    this.#afterDrawn.push(() => {
      requestAnimationFrame(() => {
        print();
        this.view({ printing: false });
      });
    });
    this.view({ printing: true });
  }
}
