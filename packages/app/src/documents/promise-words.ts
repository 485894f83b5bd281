import type { UnitSystem } from '@spraywright/engine/quantity';
import { figureText, type Proof, type RigPromise } from '@spraywright/engine/rig';

/** The sentence of each promise of a proof; one that several duties make says of which it speaks. */
export function sentencesOf(proof: Pick<Proof, 'duties' | 'promises'>): (p: RigPromise) => string {
  const duties = new Map(proof.duties.map((d) => [d.id, d.name]));
  const times = new Map<string, number>();
  for (const { sentence } of proof.promises) times.set(sentence, (times.get(sentence) ?? 0) + 1);
  return ({ sentence, duty }) => {
    const name = duty === undefined || times.get(sentence)! < 2 ? undefined : duties.get(duty);
    return name === undefined ? sentence : `${sentence} (${name})`;
  };
}

/** What a promise has and what is asked of it, each where there is such a figure. */
export function promiseFigures(
  { has, asked, sense }: Pick<RigPromise, 'has' | 'asked' | 'sense'>,
  units: UnitSystem,
): { readonly has?: string; readonly asked?: string } {
  return {
    ...(has === undefined ? {} : { has: figureText(has, units) }),
    ...(asked === undefined
      ? {}
      : { asked: `${sense === 'at-least' ? '≥' : '≤'} ${figureText(asked, units)}` }),
  };
}

/** The same as two cells of a table: only of an unknown promise is a missing figure an unknown one. */
export function figureCells(
  p: Pick<RigPromise, 'has' | 'asked' | 'sense' | 'state'>,
  units: UnitSystem,
): { readonly has: string; readonly asked: string } {
  const { has = p.state === 'unknown' ? 'unknown' : '', asked = '' } = promiseFigures(p, units);
  return { has, asked };
}
