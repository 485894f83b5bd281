import { choicePlot, PALETTES } from '@spraywright/engine/drawings';
import type { Part } from '@spraywright/engine/catalogue';
import {
  figureText,
  partsInstead,
  putPart,
  slotsOf,
  trialsOf,
  type Proof,
  type RigPromise,
  type Trials,
} from '@spraywright/engine/rig';
import { priceChangeText, priceText } from '@spraywright/engine/quantity';
import type { ChoicesPicture, Compared, View } from '../protocol.ts';

export { trialsOf };

/** A rig that could be made instead: this one with another part in a slot. */
interface Choice {
  readonly id: string;
  readonly name: string;
  readonly slot?: string;
  readonly part?: Part;
  readonly proof: Proof;
  /** Least margin of its promises that can be judged. */
  readonly margin: number;
}

/** Rigs compared side by side, this one among them. */
const MOST_COMPARED = 4;
const LETTERS = 'ABCD';
/** Promises that differ, at most so many rows of them. */
const MOST_ROWS = 14;

/** The rigs that could be made instead of the one that stands, proven one after another. A wider search would take its place. */
export class Choices {
  readonly #trials: Trials;
  readonly #left: { slot: string; part: Part }[];
  readonly #found: Choice[];
  readonly #total: number;

  constructor(trials: Trials) {
    this.#trials = trials;
    this.#found = [
      { id: 'now', name: 'As it stands', proof: trials.proof, margin: leastMargin(trials.proof) },
    ];
    const loose = slotsOf(trials.rig).filter(({ id }) => trials.rig.items.get(id)?.item.pinned !== true);
    const lists = loose.map((slot) =>
      partsInstead(trials.rig, trials.catalogue, slot.id).map((part) => ({ slot: slot.id, part })),
    );
    // Turn by turn from every slot, so that the plot is a fair picture early.
    const longest = Math.max(0, ...lists.map((list) => list.length));
    this.#left = Array.from({ length: longest }, (_, i) => lists.flatMap((list) => list[i] ?? [])).flat();
    this.#total = this.#left.length;
  }

  get done(): boolean {
    return this.#left.length === 0;
  }

  /** Proves further rigs while there is time. */
  work(goOn: () => boolean): void {
    while (this.#left.length > 0 && goOn()) {
      const { slot, part } = this.#left.shift()!;
      const { change } = putPart(this.#trials.raw, this.#trials.catalogue, slot, part);
      const proof = this.#trials.prove(change);
      if (proof === undefined) continue;
      const name = placeAndPart(this.#slotName(slot), part.name);
      this.#found.push({ id: `${slot}/${part.id}`, name, slot, part, proof, margin: leastMargin(proof) });
    }
  }

  picture(view: View): ChoicesPicture {
    const compared = this.#compared(view.compared);
    const letter = (c: Choice) => {
      const at = compared.indexOf(c);
      return at === -1 ? {} : { letter: LETTERS.charAt(at) };
    };
    const palette = PALETTES[view.sheet];
    return {
      svg: choicePlot(
        this.#found.map((c) => ({
          priceCents: c.proof.bill.priceCents,
          margin: c.margin,
          broken: c.proof.counts.broken > 0,
          ...letter(c),
        })),
        { width: view.curveWidth, units: view.units, palette },
      ),
      tried: this.#total - this.#left.length,
      total: this.#total,
      done: this.done,
      sentence: this.#sentence(),
      best: this.#front().map((c) => ({
        id: c.id,
        name: c.name,
        price: priceText(c.proof.bill.priceCents),
        margin: marginText(c.margin),
        state: stateOf(c.proof),
        ...letter(c),
      })),
      compared: comparison(compared, view),
    };
  }

  #slotName(id: string): string {
    return slotsOf(this.#trials.rig).find((s) => s.id === id)?.name ?? id;
  }

  /** Those that no other beats in both price and least margin, cheapest first; a rig that breaks a promise beats no sound one. */
  #front(): Choice[] {
    const sound = this.#sound();
    let best = -Infinity;
    return (sound.length > 0 ? sound : [...this.#found])
      .sort((a, b) => a.proof.bill.priceCents - b.proof.bill.priceCents || b.margin - a.margin)
      .filter((c) => {
        if (c.margin <= best + 1e-6) return false;
        best = c.margin;
        return true;
      });
  }

  #sound(): Choice[] {
    return this.#found.filter((c) => c.proof.counts.broken === 0);
  }

  /** The rig that stands, then those picked; without a pick the cheapest with nothing broken and that of the widest margin. */
  #compared(picked: readonly string[]): Choice[] {
    const front = this.#front();
    const wanted =
      picked.length > 0
        ? picked.flatMap((id) => this.#found.filter((c) => c.id === id))
        : [front[0], front.at(-1)].filter((c): c is Choice => c !== undefined);
    return [...new Set([this.#found[0]!, ...wanted])].slice(0, MOST_COMPARED);
  }

  #sentence(): string {
    const front = this.#front();
    const sound = this.#sound().length;
    const rigs = `${this.#found.length} rigs, each this one with one other part;`;
    if (sound === 0)
      return `${rigs} each of them breaks a promise, and ${front.length} are beaten by no other in price and margin.`;
    const cheapest = front[0]!;
    return `${rigs} ${sound} break nothing, and ${front.length} of those are beaten by no other in price and margin. The cheapest costs ${priceText(cheapest.proof.bill.priceCents)}${cheapest.id === 'now' ? ' and is this one' : `: ${cheapest.name}`}.`;
  }
}

/** "Pump: Roller pump, 22 gpm"; where the part's name already begins with its place, once. */
function placeAndPart(place: string, part: string): string {
  return part.toLowerCase().startsWith(place.toLowerCase()) ? part : `${place}: ${part}`;
}

/** Least of the margins that are a share of something; what must be nothing at all has none. */
function leastMargin({ promises }: Proof): number {
  return Math.min(
    ...promises.flatMap((p) => (p.margin === undefined || p.asked?.value === 0 ? [] : [p.margin])),
  );
}

function stateOf({ counts }: Proof) {
  return (['broken', 'thin', 'unknown'] as const).find((s) => counts[s] > 0) ?? 'kept';
}

function marginText(margin: number): string {
  const value = Math.round(margin * 1000) / 10;
  return `${value > 0 ? '+' : value < 0 ? '−' : ''}${Math.abs(value).toFixed(1)} %`;
}

/** Figures side by side: what is the same as in the first is told by ditto marks, what differs stands out. */
function comparison(choices: readonly Choice[], { units }: View): Compared {
  const first = choices[0]!;
  const row = (
    label: string,
    text: (c: Choice) => string,
    more: (c: Choice) => { change?: string; state?: RigPromise['state'] } = () => ({}),
  ) => ({
    label,
    cells: choices.map((c) => ({ text: text(c), same: c !== first && text(c) === text(first), ...more(c) })),
  });
  const of = (c: Choice, id: string) => c.proof.promises.find((p) => p.id === id);
  const shown = (p: RigPromise | undefined) =>
    p === undefined ? 'not asked' : p.has === undefined ? p.state : figureText(p.has, units);
  const ids = [...new Set(choices.flatMap((c) => c.proof.promises.map((p) => p.id)))].filter((id) =>
    choices.some(
      (c) => shown(of(c, id)) !== shown(of(first, id)) || of(c, id)?.state !== of(first, id)?.state,
    ),
  );
  const label = (id: string) => choices.map((c) => of(c, id)).find((p) => p !== undefined)!.sentence;
  return {
    rigs: choices.map((c, i) => ({
      id: c.id,
      letter: LETTERS.charAt(i),
      name: c.name,
      ...(c.slot === undefined || c.part === undefined ? {} : { slot: c.slot, part: c.part.id }),
    })),
    rows: [
      row(
        'Price',
        (c) => priceText(c.proof.bill.priceCents),
        (c) =>
          c === first
            ? {}
            : { change: priceChangeText(c.proof.bill.priceCents - first.proof.bill.priceCents) },
      ),
      row(
        'Least margin',
        (c) => marginText(c.margin),
        (c) => ({ state: stateOf(c.proof) }),
      ),
      row('Dry', (c) => figureText({ value: c.proof.bill.dryMass, dimension: 'mass' }, units)),
      row('Ready in', (c) => `${c.proof.bill.readyInDays} days`),
      ...ids.slice(0, MOST_ROWS).map((id) =>
        row(
          label(id),
          (c) => shown(of(c, id)),
          (c) => {
            const p = of(c, id);
            return p === undefined ? {} : { state: p.state };
          },
        ),
      ),
    ],
    more: Math.max(0, ids.length - MOST_ROWS),
  };
}
