import { WORKS, type Work } from '../catalogue/index.ts';
import { dutyStart } from './duty-starts.data.ts';
import { WORK_BRIEFS } from './start-brief.data.ts';
import { marksOf } from './starts.ts';

/** A brief that a new job begins with; every value in it is marked as a start value of ours. */
export interface StartBrief {
  readonly id: Work;
  readonly name: string;
  readonly raw: unknown;
}

/** The start of a job of each kind of work. */
export function startBriefs(): StartBrief[] {
  return WORKS.map((work) => ({ id: work, name: WORK_BRIEFS[work].name, raw: startBrief(work) }));
}

function startBrief(work: Work): unknown {
  const { name, duty, outlet, liquid, carrier, wishes } = WORK_BRIEFS[work];
  const asks = dutyStart(work, outlet);
  const head = { title: name, customer: 'Not named yet' };
  const rest = { carrier, site: { altitude: '500 ft', temperature: '75 F', wind: '5 mph' }, wishes };
  return {
    format: 'spraywright-brief',
    id: work,
    ...head,
    work,
    liquids: [
      { ...liquid, starts: marksOf(liquid, ['id']) },
      { id: 'rinse', name: 'Clean water to flush', liquid: 'water', use: 'flush' },
    ],
    duties: [
      {
        id: 'duty',
        name: duty,
        liquid: liquid.id,
        open: [outlet],
        ...asks,
        starts: { name: true, ...marksOf(asks, ['target.aim']) },
      },
    ],
    ...rest,
    limits: {},
    starts: marksOf({ ...head, ...rest }),
  };
}
