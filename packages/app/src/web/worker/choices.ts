import { choicePlot, PALETTES } from '@spraywright/engine/drawings';
import type { Part } from '@spraywright/engine/catalogue';
import {
  figureText,
  groupsOf,
  partById,
  partsInstead,
  putPart,
  slotsOf,
  trialsOf,
  type Choice as SearchChoice,
  type Proof,
  type RigPromise,
  type Trials,
} from '@spraywright/engine/rig';
import { priceChangeText, priceText } from '@spraywright/engine/quantity';
import type { ChoicesPicture, Compared, FoundRigs, Take, View } from '../protocol.ts';

export { trialsOf };

/** A rig that could be made instead: this one with another part in a slot, or one that the search found. */
interface Choice {
  readonly id: string;
  readonly name: string;
  readonly take?: Take;
  readonly proof: Proof;
  /** Least margin of its promises that can be judged. */
  readonly margin: number;
}

/** Rigs compared side by side, this one among them. */
const MOST_COMPARED = 4;
const LETTERS = 'ABCD';
/** Promises that differ, at most so many rows of them. */
const MOST_ROWS = 14;

/**
 * The rigs that could be made instead of the one that stands, proven one after another: those with one other part, and
 * those that the search of the whole catalogue found.
 */
export class Choices {
  readonly #trials: Trials;
  readonly #left: { slot: string; part: Part }[];
  readonly #found: Choice[];
  readonly #total: number;
  #searched: FoundRigs = { rigs: [], complete: false };
  /** Of the rigs that the search found, those proven; none where one cannot be read. */
  readonly #proven = new Map<string, Choice | undefined>();

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
    return this.#left.length === 0 && this.#unproven() === undefined;
  }

  /** Takes over what the search has found so far. */
  take(found: FoundRigs): void {
    this.#searched = found;
  }

  /** Proves further rigs while there is time. */
  work(goOn: () => boolean): void {
    for (let next = this.#unproven(); next !== undefined && goOn(); next = this.#unproven())
      this.#proven.set(idOf(next), this.#asChoice(next));
    while (this.#left.length > 0 && goOn()) {
      const { slot, part } = this.#left.shift()!;
      const { change } = putPart(this.#trials.raw, this.#trials.catalogue, slot, part);
      const proof = this.#trials.prove(change);
      if (proof === undefined) continue;
      const name = placeAndPart(this.#slotName(slot), part.name);
      const take = { slot, part: part.id };
      this.#found.push({ id: `${slot}/${part.id}`, name, take, proof, margin: leastMargin(proof) });
    }
  }

  picture(view: View): ChoicesPicture {
    const { groups, more } = groupsOf(this.#searched.rigs, this.#trials.catalogue.layouts);
    const kinds = groups.flatMap((group) => {
      const proven = this.#proven.get(idOf(group.choice));
      return proven === undefined ? [] : [{ ...group, proven }];
    });
    const names = kindNames(
      kinds.map((k) => k.parts),
      (slot) => this.#slotName(slot),
      (part) => partById(this.#trials.raw, this.#trials.catalogue, part)?.name ?? part,
    );
    const searched = kinds.map(({ proven, alike }, i) => ({ ...proven, name: names[i]!, alike }));
    const compared = this.#compared(view.compared, searched);
    const letter = (c: Choice) => {
      const at = compared.findIndex((other) => other.id === c.id);
      return at === -1 ? {} : { letter: LETTERS.charAt(at) };
    };
    const palette = PALETTES[view.sheet];
    return {
      svg: choicePlot(
        [...this.#found, ...this.#provenFound()].map((c) => ({
          priceCents: c.proof.bill.priceCents,
          margin: c.margin,
          broken: c.proof.counts.broken > 0,
          ...letter(c),
        })),
        { width: view.curveWidth, units: view.units, palette, toTheEnd: this.#searched.complete },
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
      found: searched.map((c) => ({
        id: c.id,
        name: c.name,
        price: priceText(c.proof.bill.priceCents),
        margin: marginText(c.margin),
        dry: figureText({ value: c.proof.bill.dryMass, dimension: 'mass' }, view.units),
        days: `${c.proof.bill.readyInDays} days`,
        alike: c.alike,
        state: stateOf(c.proof),
        ...letter(c),
      })),
      moreFound: more,
      compared: comparison(compared, view),
    };
  }

  #slotName(id: string): string {
    const { rig, catalogue } = this.#trials;
    const slots = [...slotsOf(rig), ...catalogue.layouts.flatMap((l) => l.slots)];
    return slots.find((s) => s.id === id)?.name ?? id;
  }

  #unproven(): SearchChoice | undefined {
    return this.#searched.rigs.find((r) => !this.#proven.has(idOf(r)));
  }

  #provenFound(): Choice[] {
    return this.#searched.rigs.flatMap((r) => this.#proven.get(idOf(r)) ?? []);
  }

  /** A rig that the search found, proven with the prices and title of this one. */
  #asChoice(found: SearchChoice): Choice | undefined {
    const { layout, nodes, items, lines } = found.rig;
    const rig = { layout, nodes, items, lines };
    const puts = Object.entries(rig).map(([field, value]) => ({ path: [field], value }));
    const proof = this.#trials.prove({ about: '', puts });
    const id = idOf(found);
    return proof && { id, name: id, take: { rig }, proof, margin: leastMargin(proof) };
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
  #compared(picked: readonly string[], searched: readonly Choice[]): Choice[] {
    const front = this.#front();
    const all = [...this.#found, ...searched];
    const wanted =
      picked.length > 0
        ? picked.flatMap((id) => all.filter((c) => c.id === id))
        : [searched[0] ?? front[0], front.at(-1)].filter((c): c is Choice => c !== undefined);
    return [...new Set([this.#found[0]!, ...wanted])].slice(0, MOST_COMPARED);
  }

  #searchedSentence(): string {
    const prices = this.#provenFound().flatMap(({ proof: { counts, bill } }) =>
      counts.broken === 0 ? [bill.priceCents] : [],
    );
    if (prices.length === 0) return '';
    const rigs = prices.length === 1 ? 'one rig is' : `${prices.length} rigs are`;
    const others = this.#searched.complete ? 'no other' : 'no other found so far';
    return `In the whole catalogue ${rigs} beaten by ${others}, from ${priceText(Math.min(...prices))}. `;
  }

  #sentence(): string {
    const front = this.#front();
    const sound = this.#sound().length;
    const rigs = `${this.#searchedSentence()}${this.#found.length} rigs, each this one with one other part;`;
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

/** A rig that the search found, whatever else was found: settings follow from its parts. */
function idOf({ rig }: SearchChoice): string {
  return [rig.layout, ...rig.items.map((i) => `${i.id}=${i.part}`)].join(' ');
}

/** What tells kinds of rigs apart, in the parts that a buyer sees. */
function kindNames(
  kinds: readonly Readonly<Record<string, string>>[],
  slotName: (slot: string) => string,
  partName: (part: string) => string,
): string[] {
  const slots = [...new Set(kinds.flatMap((parts) => Object.keys(parts)))].filter(
    (slot) => new Set(kinds.map((parts) => parts[slot])).size > 1,
  );
  return kinds.map((parts) => {
    const told = slots.map((slot) => {
      const part = parts[slot];
      return part === undefined ? `no ${slotName(slot).toLowerCase()}` : partName(part);
    });
    return told.length === 0 ? 'The one kind that was found' : told.join('; ');
  });
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
      ...(c.take === undefined ? {} : { take: c.take }),
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
