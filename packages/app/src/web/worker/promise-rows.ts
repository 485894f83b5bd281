import { partNumbers, promiseScale, type Palette, type PromiseScale } from '@spraywright/engine/drawings';
import type { UnitSystem } from '@spraywright/engine/quantity';
import { figureText, stepText, type Figure, type Proof, type RigPromise } from '@spraywright/engine/rig';
import type { PromiseRow } from '../protocol.ts';

interface RowOptions {
  readonly units: UnitSystem;
  readonly palette: Palette;
  readonly working: readonly string[];
  readonly scaleWidth: number;
  readonly scaleHeight: number;
}

/** Figures and scales stay the same for most promises from one change to the next, so they are kept a while. */
const figureTexts = new Map<string, string>();
const scales = new Map<string, PromiseScale>();
const MOST_KEPT = 4000;

function kept<T>(store: Map<string, T>, key: string, make: () => T): T {
  const known = store.get(key);
  if (known !== undefined) return known;
  if (store.size >= MOST_KEPT) store.clear();
  const made = make();
  store.set(key, made);
  return made;
}

/** Rows of all promises, as the list shows them. */
export function promiseRows(proof: Proof, options: RowOptions): PromiseRow[] {
  const numbers = partNumbers(proof);
  const parts = new Map(proof.parts.map((p) => [p.item, p]));
  const letters = new Map(proof.duties.map((d, i) => [d.id, dutyLetter(i)]));
  return proof.promises.map((p): PromiseRow => {
    const { units } = options;
    const letter = p.duty === undefined ? undefined : letters.get(p.duty);
    return {
      id: p.id,
      kind: p.kind,
      state: p.state,
      sentence: p.sentence,
      ...(p.duty === undefined || letter === undefined ? {} : { duty: p.duty, letter }),
      ...figures(p, units),
      cause: p.cause,
      ...(p.margin === undefined && p.state !== 'unknown' ? {} : { scale: scaleOf(p, options) }),
      items: p.items.slice(0, 6).flatMap((item) => {
        const number = numbers.get(item);
        const part = parts.get(item);
        return number === undefined || part === undefined ? [] : [{ item, number, name: part.name }];
      }),
      decisions: p.decisions ?? [],
      method: p.method,
      source: p.source,
      ...(options.working.includes(p.id)
        ? {
            working: p.working.map((step) => ({
              text: stepText(step, units),
              ...(step.figure === undefined ? {} : { figure: figureText(step.figure, units) }),
            })),
          }
        : {}),
    };
  });
}

function scaleOf(p: RigPromise, { scaleWidth, scaleHeight, palette }: RowOptions): PromiseScale {
  const { state, margin, band, sense, asked } = p;
  const key = JSON.stringify([
    state,
    margin,
    band,
    sense,
    asked?.value,
    scaleWidth,
    scaleHeight,
    palette.paper,
  ]);
  return kept(scales, key, () => promiseScale(p, scaleWidth, scaleHeight, palette));
}

/** What it has and what is asked; the has without its unit where the asked shows the same one. */
function figures(p: RigPromise, units: UnitSystem): { has?: string; asked?: string } {
  const text = (f: Figure) =>
    kept(figureTexts, `${f.value} ${f.dimension} ${f.unit ?? f.as} ${units}`, () => figureText(f, units));
  const has = p.has === undefined ? undefined : text(p.has);
  const asked = p.asked === undefined ? undefined : text(p.asked);
  return {
    ...(has === undefined ? {} : { has: asked === undefined ? has : withoutUnit(has, asked, p.asked?.unit) }),
    ...(asked === undefined ? {} : { asked: `${p.sense === 'at-least' ? '≥' : '≤'} ${asked}` }),
  };
}

function withoutUnit(has: string, asked: string, named: string | undefined): string {
  const unit = named === undefined ? / \S+$/.exec(asked)?.[0] : ` ${named}`;
  return unit !== undefined && has.endsWith(unit) ? has.slice(0, -unit.length) : has;
}

function dutyLetter(index: number): string {
  return 'abcdefghijkl'.charAt(index);
}
