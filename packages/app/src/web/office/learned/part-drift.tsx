import type { LearnedPart } from './learned-link.ts';

const [WIDTH, HEIGHT] = [300, 108];
/** The plot inside: figures of the scale left, days below. */
const PLOT = { left: 40, right: 292, top: 8, bottom: 84 } as const;
const NINETY_FIVE = 1.6449;
/** Half of an upright scale [%]. */
const REACHES = [1, 2, 5, 10, 20, 50, 100, 200] as const;

/** First and last test of the shop [ms]; all parts are drawn over the same time. */
export interface Times {
  readonly from: number;
  readonly to: number;
}

export function timesOf(parts: readonly LearnedPart[]): Times {
  const all = parts.flatMap((p) => p.machines.map((m) => Date.parse(m.taken))).filter(Number.isFinite);
  return { from: Math.min(...all), to: Math.max(...all) };
}

/** How far one part is off what is said of it: itself, and each tested machine over time. */
export function PartDrift({ part, times }: { readonly part: LearnedPart; readonly times: Times }) {
  const { name, told, mean, deviation, before, copyDeviation, machines, drifts } = part;
  const percent = (log: number) => 100 * Math.expm1(log - before.mean);
  const expected = NINETY_FIVE * Math.hypot(before.deviation, copyDeviation);
  const most = Math.max(
    ...[mean - NINETY_FIVE * deviation, mean + NINETY_FIVE * deviation].map((v) => Math.abs(percent(v))),
    ...machines.map((m) => Math.abs(percent(m.mean))),
  );
  const reach = REACHES.find((r) => r >= most) ?? most;
  const y = (log: number) => {
    const at = Math.max(-reach, Math.min(reach, percent(log)));
    return PLOT.top + ((reach - at) / (2 * reach)) * (PLOT.bottom - PLOT.top);
  };
  const nought = y(before.mean);
  return (
    <figure className="drift" data-drifts={drifts}>
      <figcaption>
        <strong>{name}</strong> <span>{told}</span>
      </figcaption>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
        <rect
          className="part-band"
          x={PLOT.left}
          y={y(mean + NINETY_FIVE * deviation)}
          width={PLOT.right - PLOT.left}
          height={y(mean - NINETY_FIVE * deviation) - y(mean + NINETY_FIVE * deviation)}
        />
        {[-1, 1].map((side) => {
          const at = before.mean + side * expected;
          return (
            Math.abs(percent(at)) < reach && (
              <path key={side} className="expected" d={`M${PLOT.left} ${y(at)}H${PLOT.right}`} />
            )
          );
        })}
        <path className="said" d={`M${PLOT.left} ${nought}H${PLOT.right}`} />
        <path className="part-mean" d={`M${PLOT.left} ${y(mean)}H${PLOT.right}`} />
        <path className="axis" d={`M${PLOT.left} ${PLOT.top}V${PLOT.bottom}`} />
        {[reach, 0, -reach].map((at) => (
          <text
            key={at}
            x={PLOT.left - 5}
            y={PLOT.top + ((reach - at) / (2 * reach)) * (PLOT.bottom - PLOT.top) + 4}
            textAnchor="end"
          >
            {at === 0 ? '0' : `${at > 0 ? '+' : '−'}${Math.abs(at).toFixed(0)} %`}
          </text>
        ))}
        {machines.map((m, i) => {
          const x = placeOf(m.taken, times, (i + 0.5) / machines.length);
          const [high, low] = [m.mean + NINETY_FIVE * m.deviation, m.mean - NINETY_FIVE * m.deviation];
          return (
            <g key={m.serial}>
              <path className="doubt" d={`M${x} ${y(high)}V${y(low)}`} />
              <circle className="dot" cx={x} cy={y(m.mean)} r={2.6} />
            </g>
          );
        })}
        <Days times={times} />
      </svg>
    </figure>
  );
}

/** Days of the first and last test; one day stands in the middle. */
function Days({ times: { from, to } }: { readonly times: Times }) {
  if (!Number.isFinite(from)) return undefined;
  const day = (at: number) => new Date(at).toISOString().slice(0, 10);
  const y = HEIGHT - 8;
  if (day(from) === day(to))
    return (
      <text x={(PLOT.left + PLOT.right) / 2} y={y} textAnchor="middle">
        {day(from)}
      </text>
    );
  return (
    <>
      <text x={PLOT.left} y={y}>
        {day(from)}
      </text>
      <text x={PLOT.right} y={y} textAnchor="end">
        {day(to)}
      </text>
    </>
  );
}

/** Room at both ends, so that a bar does not lie on the axis [px]. */
const ROOM = 8;

/** Where a test stands; where all are of one day, side by side in their order. */
function placeOf(taken: string, { from, to }: Times, order: number): number {
  const at = Date.parse(taken);
  const share = to - from < 864e5 || !Number.isFinite(at) ? order : (at - from) / (to - from);
  return PLOT.left + ROOM + share * (PLOT.right - PLOT.left - 2 * ROOM);
}
