import { partNumbers } from '@spraywright/engine/drawings';
import { display, displayParts, type UnitSystem } from '@spraywright/engine/quantity';
import type { DutyProof, Proof } from '@spraywright/engine/rig';
import type { UprightLine, UprightStep } from '../protocol.ts';

/** Pressure from tank to tip standing upright: each part a row, pressure to the right. */
export function uprightLine(proof: Proof, duty: DutyProof, units: UnitSystem): UprightLine {
  const numbers = partNumbers(proof);
  const steps = merged(duty);
  const unit = units === 'us' ? 6894.757293168361 : 1e5;
  const pressures = steps.flatMap((s) => [s.before, s.after]);
  const most = Math.max(1e4, duty.shut.pump?.outlet ?? 0, ...pressures);
  const ceiling = Math.min(...steps.map((s) => s.limit ?? Infinity).filter((l) => l >= most), most * 1.5);
  const top = ceiling * 1.05;
  const share = (p: number) => Math.max(-0.04, p / top);
  const pump = steps.findIndex((s) => s.rise);
  const figure = (p: number) => displayParts(p, 'pressure', units).figure;
  const rows = steps.map((s, i): UprightStep => {
    const part = proof.parts.find((p) => p.item === s.item);
    const number = s.item === undefined ? undefined : numbers.get(s.item);
    const last = i === steps.length - 1;
    const loss = s.before - s.after;
    const [name, ...rest] = (part?.name ?? 'Bends and branches').split(', ');
    return {
      ...(s.item === undefined ? {} : { item: s.item }),
      ...(number === undefined ? {} : { number }),
      name: name!,
      detail: rest.join(', '),
      before: share(s.before),
      after: last && !s.rise ? 0 : share(s.after),
      slope: part?.kind === 'hose',
      rise: s.rise,
      figure: s.rise
        ? display(s.after, 'pressure', units)
        : last
          ? display(s.before, 'pressure', units)
          : i < pump
            ? figure(s.after)
            : Math.abs(loss) < 500
              ? ''
              : loss > 0
                ? `−${figure(loss)}`
                : `+${figure(-loss)}`,
      strong: s.rise || last,
      ...(s.limit === undefined || s.limit > top
        ? {}
        : { limit: { at: share(s.limit), text: display(s.limit, 'pressure', units) } }),
    };
  });
  const step = roundStep(top / unit / 3);
  const ticks = [];
  for (let v = 0; v * unit <= top; v += step) ticks.push({ at: (v * unit) / top, text: String(v) });
  const tank = proof.parts.find((p) => p.kind === 'tank');
  const tankNumber = tank === undefined ? undefined : numbers.get(tank.item);
  const first: UprightStep[] =
    tank === undefined || tankNumber === undefined
      ? []
      : [
          {
            item: tank.item,
            number: tankNumber,
            name: 'Tank',
            detail: tank.name.replace(/^Tank, /, ''),
            before: 0,
            after: share(steps[0]?.before ?? 0),
            slope: true,
            rise: false,
            figure: '',
            strong: false,
          },
        ];
  return {
    steps: [...first, ...rows],
    ticks,
    unit: units === 'us' ? 'psi' : 'bar',
    sentence: `Pressure from tank to tip: ${steps
      .filter((s) => s.item !== undefined)
      .map(
        (s) =>
          `${proof.parts.find((p) => p.item === s.item)?.name ?? ''} ${display(s.after, 'pressure', units)} behind it`,
      )
      .join('; ')}`,
  };
}

interface Merged {
  readonly item: string | undefined;
  readonly before: number;
  readonly after: number;
  readonly limit: number | undefined;
  readonly rise: boolean;
}

/** Elements of one item together; the fittings of a line go with the part in front of them. */
function merged(duty: DutyProof): Merged[] {
  const out: Merged[] = [];
  for (const step of duty.open.steps) {
    const last = out[out.length - 1];
    if (last !== undefined && (step.item === undefined || step.item === last.item))
      out[out.length - 1] = { ...last, after: step.after ?? 0 };
    else
      out.push({
        item: step.item,
        before: step.before ?? 0,
        after: step.after ?? 0,
        limit: step.limit,
        rise: step.item !== undefined && step.item === duty.open.pump?.item,
      });
  }
  return out;
}

function roundStep(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  const rest = value / power;
  return (rest < 1.5 ? 1 : rest < 3.5 ? 2 : rest < 7.5 ? 5 : 10) * power;
}
