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
    if (!told && sameOnTheWay(rig, other))
      return (duty) => {
        const { open, dirty, shut } = known.get(duty)!;
        return { open, dirty, shut };
      };
    return dutySolver(other, told);
  };
}

/** Whether everything that decides flows and pressures is the same: brief, tank, heights, drive and all parts of the lines. */
function sameOnTheWay(a: Rig, b: Rig): boolean {
  return (
    a.brief === b.brief &&
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
