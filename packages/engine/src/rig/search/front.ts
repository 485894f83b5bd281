import type { RawRig } from '../design/assemble.ts';
import type { Proven } from './evaluate.ts';
import { asGood, beats, type Figures } from './figures.ts';

/** A rig that keeps every promise computed. */
export interface Choice {
  readonly rig: RawRig;
  readonly figures: Figures;
  readonly counts: Proven['counts'];
  readonly unknown: readonly string[];
}

/** The rigs found that no other found beats; of rigs with the same figures the first by the names of its parts. */
export class Front {
  #choices: Choice[] = [];

  /** Cheapest first. */
  get choices(): readonly Choice[] {
    return this.#choices;
  }

  /** Whether one of them beats everything that is no better than some bounds. */
  beatsAll(best: Figures): boolean {
    return this.#choices.some((c) => beats(c.figures, best));
  }

  /** Whether one of them is as good, within a share, as everything that is no better than some bounds. */
  covers(best: Figures, within: number): boolean {
    return this.#choices.some((c) => asGood(c.figures, best, within));
  }

  /** Takes a proven rig in; false when it breaks a promise or is beaten. */
  offer({ rig, figures, counts, broken, unknown }: Proven): boolean {
    if (broken.length > 0) return false;
    const twin = this.#choices.find((c) => asGood(c.figures, figures) && asGood(figures, c.figures));
    if (twin !== undefined && nameOf(twin.rig) <= nameOf(rig)) return false;
    if (this.beatsAll(figures)) return false;
    this.#choices = this.#choices.filter((c) => c !== twin && !beats(figures, c.figures));
    this.#choices.push({ rig, figures, counts, unknown });
    this.#choices.sort(
      (a, b) =>
        a.figures.priceCents - b.figures.priceCents ||
        a.figures.mass - b.figures.mass ||
        b.figures.margin - a.figures.margin ||
        a.figures.days - b.figures.days,
    );
    return true;
  }
}

function nameOf(rig: RawRig): string {
  return rig.items.map((i) => i.part).join(' ');
}
