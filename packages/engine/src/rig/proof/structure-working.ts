import type { LoadedBeam, LoadedBeamInput, Section } from '../../physics/index.ts';
import { is, number, worked, type Figure, type Step } from '../promise.ts';

/** A force and the place where all of it would turn the beam just as much [N, m]. */
interface Resultant {
  readonly force: number;
  readonly place: number;
}

/** Loads of a beam between two places as one, axles that push up taken off. */
function loadBetween(p: LoadedBeamInput, from: number, to: number): Resultant {
  let [force, turn] = [0, 0];
  p.pointLoads.forEach((load, i) => {
    const x = p.pointPlaces[i]!;
    if (x < from || x > to) return;
    force += load;
    turn += load * x;
  });
  p.evenLoads.forEach((load, i) => {
    const [start, end] = [Math.max(from, p.evenFrom[i]!), Math.min(to, p.evenTo[i]!)];
    if (end <= start) return;
    force += load * (end - start);
    turn += (load * (end - start) * (start + end)) / 2;
  });
  return { force, place: force === 0 ? from : turn / force };
}

/** From the load on one rail to the largest moment in it. */
export function momentSteps(p: LoadedBeamInput, bent: LoadedBeam, factor: number, rails: number): Step[] {
  const all = loadBetween(p, 0, p.length);
  const load = is(all.force, 'force');
  const front = is(bent.reactionA, 'force');
  const span = is(p.supportB - p.supportA, 'length');
  return [
    worked('load on one rail, factor in', load, '{weight} × {factor} / {rails}', {
      weight: is((all.force * rails) / factor, 'force'),
      factor: number(factor),
      rails: number(rails),
    }),
    worked('front support of one rail', front, '{load} × {its middle ahead of the rear support} / {span}', {
      load,
      'its middle ahead of the rear support': is(p.supportB - all.place, 'length'),
      span,
    }),
    { text: 'largest moment, behind the front of the beam', figure: is(bent.maxMomentPlace, 'length') },
    momentStep(p, bent),
  ];
}

/** The moment at its largest: of all that lies on one side of that place, the side with fewer supports. */
function momentStep(p: LoadedBeamInput, { maxMoment, maxMomentPlace: x, reactionA }: LoadedBeam): Step {
  const text = 'largest moment in one rail';
  const moment = is(Math.abs(maxMoment), 'torque');
  const inFront = x <= p.supportA || x < p.supportB;
  // A load just where the moment is largest does not turn it, whichever side it is counted on.
  const side = inFront ? loadBetween(p, 0, x) : loadBetween(p, x, p.length);
  const [load, arm] = [is(Math.abs(side.force), 'force'), is(Math.abs(x - side.place), 'length')];
  const sum = (formula: string, terms: Readonly<Record<string, Figure>>) =>
    worked(text, moment, formula, terms);
  if (x <= p.supportA) return sum('{load in front} × {its arm}', { 'load in front': load, 'its arm': arm });
  if (!inFront) return sum('{load behind} × {its arm}', { 'load behind': load, 'its arm': arm });
  const terms = {
    'front support': is(reactionA, 'force'),
    'its arm': is(x - p.supportA, 'length'),
    'load in front': is(side.force, 'force'),
    'arm of that': is(x - side.place, 'length'),
  };
  return maxMoment >= 0
    ? sum('{front support} × {its arm} − {load in front} × {arm of that}', terms)
    : sum('{load in front} × {arm of that} − {front support} × {its arm}', terms);
}

/** Stress at the top and bottom of a rail. */
export function stressStep(stress: number, moment: number, section: Section, note = ''): Step {
  return worked(
    `stress at top and bottom of the rail${note === '' ? '' : `; ${note}`}`,
    is(stress, 'stress'),
    '{moment} / {section modulus of the rail}',
    {
      moment: is(Math.abs(moment), 'torque'),
      'section modulus of the rail': is(section.modulusX, 'volume', 'section-modulus'),
    },
  );
}
