import type { Brief } from '../brief.ts';
import { driveOf } from '../drive.ts';
import { dutySolver } from '../duty-state.ts';
import type { Proof } from '../proof/prove.ts';
import { first, type Rig } from '../rig-document.ts';

/**
 * Solves the duties of rigs that differ from a proven one by a change or two: where nothing that the liquid meets has
 * changed, the states of the proof are taken, and nothing is solved.
 */
export function solverBeside(rig: Rig, proof: Proof): typeof dutySolver {
  const known = new Map(proof.duties.map((d) => [d.duty, d]));
  return (other, told) => {
    const solve = dutySolver(other, told);
    if (told || !sameOnTheWay(rig, other)) return solve;
    return (duty, liquid) => {
      const before = known.get(duty);
      if (before === undefined) return solve(duty, liquid);
      const { open, dirty, shut } = before;
      return { open, dirty, shut };
    };
  };
}

/** Whether everything that decides flows and pressures of a duty is the same: brief, tank, heights, drive and all parts of the lines. */
function sameOnTheWay(a: Rig, b: Rig): boolean {
  return (
    sameButDuties(a.brief, b.brief) &&
    a.lines === b.lines &&
    a.document.nodes === b.document.nodes &&
    first(a, 'tank')?.part === first(b, 'tank')?.part &&
    first(a, 'carrier')?.part.deckHeight === first(b, 'carrier')?.part.deckHeight &&
    driveOf(a)?.pumpSpeed === driveOf(b)?.pumpSpeed &&
    a.lines.every((line) =>
      line.run.every((id) => {
        const [one, other] = [a.items.get(id), b.items.get(id)];
        return one?.part === other?.part && one?.item === other?.item;
      }),
    )
  );
}

/** Whether two briefs differ in their duties at most; these are known by themselves. */
function sameButDuties(a: Brief, b: Brief): boolean {
  if (a === b) return true;
  const keys = Object.keys(a) as (keyof Brief)[];
  return Object.keys(b).length === keys.length && keys.every((key) => key === 'duties' || a[key] === b[key]);
}
