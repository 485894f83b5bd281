import { drivenWidth, groundDose } from '../application.ts';
import { usedOutlets } from '../design/outlet-demands.ts';
import { speedsOf } from '../proof/pattern-dose.ts';
import { swathOf } from '../proof/sprayer.ts';
import type { Limit } from './limit.ts';
import { timesOf } from './part-rig.ts';
import type { SearchSpace } from './space.ts';

const FREE = Infinity;
const BAR = 1e5;
const HAIR = 1e-9;
/** For the rounding of a flow that was solved. */
const SOLVED = 1e-5;

/** Promises on what one line of nozzles lays down: they hang on boom and nozzle alone where no other line is open with it. */
export function rateLimits({ brief, contexts, layout }: SearchSpace): Limit[] {
  return brief.duties.flatMap((duty): Limit[] => {
    const { application } = duty;
    const width = drivenWidth(duty);
    const open = usedOutlets(layout, brief).filter((l) => (duty.open as readonly string[]).includes(l.opens));
    const withNozzles = open.filter((l) => l.run.includes('nozzle'));
    const [line] = withNozzles;
    const told = application !== undefined || duty.lane !== undefined;
    if (!told || width === undefined || withNozzles.length !== 1) return [];
    const slots = line!.run.filter((id) => id === 'boom' || id === 'nozzle');
    const widths: Limit = {
      slots,
      margin: (partAt) => {
        const [boom, nozzle] = [partAt('boom'), partAt('nozzle')];
        if (nozzle?.kind !== 'nozzle') return FREE;
        const has = swathOf(nozzle, boom?.kind === 'boom' ? boom : undefined, timesOf(nozzle, partAt));
        return has === undefined ? FREE : (has - width) / width + HAIR;
      },
      why: 'pattern: it does not cover the width that is driven',
    };
    if (application === undefined || open.length !== 1) return [widths];
    const { density } = contexts[0]!.liquids.get(duty.liquid)!;
    const { slowest, fastest } = speedsOf(application);
    // At one rate the flow goes with the speed, whatever the pressure is that the boom is given.
    const speeds: Limit = {
      slots,
      margin: (partAt) => {
        const nozzle = partAt('nozzle');
        if (nozzle?.kind !== 'nozzle') return FREE;
        const factor = nozzle.flowAtOneBar * timesOf(nozzle, partAt);
        const pressureAt = (speed: number) =>
          ((groundDose(application) * speed * application.width) / factor) ** 2 * BAR * (density / 1000);
        const slow = (pressureAt(slowest) - nozzle.minPressure) / nozzle.minPressure;
        const fast = (nozzle.maxPressure - pressureAt(fastest)) / nozzle.maxPressure;
        // Of the two the promise tells of the one with less room, reckoned as a share of pressures.
        return (
          (pressureAt(slowest) / nozzle.minPressure < nozzle.maxPressure / pressureAt(fastest)
            ? slow
            : fast) + SOLVED
        );
      },
      why: 'pattern: the nozzles do not keep the rate at the speeds asked',
    };
    return [widths, speeds];
  });
}
