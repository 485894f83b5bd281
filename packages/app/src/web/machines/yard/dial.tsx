import { fromSi, unitOf, type UnitSystem } from '@spraywright/engine/quantity';
import type { SheetReading } from '@spraywright/engine/yard';
import { unitOfRow } from './typed-reading.ts';

const SIZE = 360;
const MIDDLE = SIZE / 2;
const RIM = 132;
const SWEEP = 270;
const START = 135;

/** A gauge as the hand sees it: the window as a black sector between two stops, the needle at what was read. */
export function Dial({
  row,
  value,
  units,
}: {
  row: SheetReading;
  value: number | undefined;
  units: UnitSystem;
}) {
  const name = unitOfRow(row, units);
  const unit = unitOf(name, row.dimension)!;
  const of = (si: number) => fromSi(si, unit);
  const limits = row.limits.map((l) => of(l.value));
  const [low, high] = [of(row.low), of(row.high)];
  const full = niceEnd(Math.max(high, ...limits.filter((l) => l < 2.5 * high)) * 1.25);
  const step = full / 6;
  const angle = (v: number) => START + (Math.min(Math.max(v, 0), full * 1.03) / full) * SWEEP;
  const shown = value === undefined ? undefined : of(value);
  return (
    <svg className="dial" viewBox={`0 0 ${SIZE} ${SIZE}`} aria-hidden="true">
      <circle cx={MIDDLE} cy={MIDDLE} r={RIM + 14} className="rim" />
      <circle cx={MIDDLE} cy={MIDDLE} r={RIM + 8} className="thin-line" />
      <path
        d={`M${point(START, RIM)}A${RIM} ${RIM} 0 1 1 ${point(START + SWEEP, RIM)}`}
        className="thin-line"
      />
      {Array.from({ length: 31 }, (_, i) => {
        const a = START + (i / 30) * SWEEP;
        const long = i % 5 === 0;
        return (
          <path
            key={i}
            d={`M${point(a, RIM)}L${point(a, long ? RIM - 16 : RIM - 8)}`}
            className={long ? 'tick long' : 'tick'}
          />
        );
      })}
      {Array.from({ length: 7 }, (_, i) => {
        const [x, y] = place(START + (i / 6) * SWEEP, RIM - 36);
        return (
          <text key={i} x={x} y={y + 8} textAnchor="middle">
            {Number((i * step).toPrecision(3))}
          </text>
        );
      })}
      <text x={MIDDLE} y={MIDDLE + 66} textAnchor="middle" className="unit">
        {name}
      </text>
      <path d={sector(angle(low), angle(high))} className="sector" />
      {[low, high].map((v) => (
        <path key={v} d={`M${point(angle(v), RIM - 14)}L${point(angle(v), RIM + 42)}`} className="stop" />
      ))}
      {limits
        .filter((l) => l <= full)
        .map((l) => (
          <path key={l} d={`M${point(angle(l), RIM + 2)}L${point(angle(l), RIM + 26)}`} className="limit" />
        ))}
      {shown !== undefined && <path d={needle(angle(shown))} className="needle" />}
      <circle cx={MIDDLE} cy={MIDDLE} r={10} className="hub" />
    </svg>
  );
}

function place(degrees: number, radius: number): readonly [number, number] {
  const a = (degrees * Math.PI) / 180;
  return [MIDDLE + radius * Math.cos(a), MIDDLE + radius * Math.sin(a)];
}

function point(degrees: number, radius: number): string {
  return place(degrees, radius)
    .map((v) => v.toFixed(1))
    .join(' ');
}

function sector(from: number, to: number): string {
  const [inner, outer] = [RIM + 16, RIM + 34];
  return `M${point(from, inner)}L${point(from, outer)}A${outer} ${outer} 0 0 1 ${point(to, outer)}L${point(to, inner)}A${inner} ${inner} 0 0 0 ${point(from, inner)}z`;
}

function needle(degrees: number): string {
  return `M${point(degrees, RIM - 12)}L${point(degrees + 95, 5)}L${point(degrees + 180, 30)}L${point(degrees - 95, 5)}z`;
}

/** End of the scale: six even parts that people can read. */
function niceEnd(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least / 6));
  const part = [1, 2, 2.5, 5, 10].find((n) => n * power * 6 >= least) ?? 10;
  return 6 * part * power;
}
