import type { SheetReading } from '@spraywright/engine/yard';

const WIDTH = 156;
const HEIGHT = 36;
/** Where the two ends of the window stand; beyond them the scale goes on by the same measure. */
const [FROM, TO] = [48, 108];

/** The window of a row between two stops, and what was read on it. */
export function WindowScale({ row, value }: { row: SheetReading; value: number | undefined }) {
  const at =
    value === undefined ? undefined : FROM + ((value - row.low) / (row.high - row.low)) * (TO - FROM);
  const inside = at !== undefined && at >= 6 && at <= WIDTH - 6;
  const y = HEIGHT / 2;
  return (
    <svg
      className="window-scale"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      width={WIDTH}
      height={HEIGHT}
      aria-hidden="true"
    >
      <rect x={FROM} y={y - 9} width={TO - FROM} height={18} className="window" />
      <path d={`M0 ${y}H${WIDTH}`} className="line" />
      <path d={`M${FROM} ${y - 15}V${y + 15}M${TO} ${y - 15}V${y + 15}`} className="stop" />
      {at !== undefined &&
        (inside ? (
          <path d={`M${at} ${y - 9}l9 9-9 9-9-9z`} className="point" />
        ) : (
          <path
            d={at < 0 || at < 6 ? `M2 ${y}l14-8v16z` : `M${WIDTH - 2} ${y}l-14-8v16z`}
            className="point"
          />
        ))}
    </svg>
  );
}
