import type { CalibrationBand } from '@spraywright/engine/yard';
import type { ShopLearned } from './learned-link.ts';

const SIZE = 340;
const PLOT = { left: 46, right: 328, top: 12, bottom: 294 } as const;
/** Ticks of the scale, which is even in the logarithm of the odds: 1 in 100 and 99 in 100 are as far from the middle. */
const TICKS = [0.01, 0.1, 0.5, 0.9, 0.99] as const;
/** The ends of the scale; never and always stand there. */
const END = 0.003;

const along = (p: number): number => {
  const at = Math.max(END, Math.min(1 - END, p));
  return (Math.log(at / (1 - at)) / Math.log((1 - END) / END) + 1) / 2;
};
const x = (p: number): number => PLOT.left + along(p) * (PLOT.right - PLOT.left);
const y = (p: number): number => PLOT.bottom - along(p) * (PLOT.bottom - PLOT.top);

const WINDOWS: Readonly<Record<ShopLearned['calibration']['windows'], string>> = {
  'as promised': 'That is what the windows promise.',
  'too narrow': 'The windows are too narrow: parts or gauges scatter more than their tolerances say.',
  'too wide': 'The windows are too wide: parts and gauges scatter less than their tolerances say.',
  'too few to tell': 'That is too few readings to tell whether the windows are right.',
};

/** What was promised with what probability, against how often it held. */
export function CalibrationPlot({ calibration }: { readonly calibration: ShopLearned['calibration'] }) {
  const { bands, readings, inside, windows } = calibration;
  return (
    <section aria-labelledby="calibration-heading">
      <h2 className="heading" id="calibration-heading">
        Promised against what happened
      </h2>
      <p>
        {inside} of {readings} readings lie inside the windows that should hold nine in ten.{' '}
        {WINDOWS[windows]}
      </p>
      {bands.length === 0 ? (
        <p>No reading so far touches a promise, so nothing was promised that a test could hold against.</p>
      ) : (
        <div className="calibration">
          <svg viewBox={`0 0 ${SIZE} ${SIZE}`} aria-hidden="true">
            {TICKS.map((p) => (
              <g key={p}>
                <path
                  className="grid"
                  d={`M${x(p)} ${PLOT.top}V${PLOT.bottom}M${PLOT.left} ${y(p)}H${PLOT.right}`}
                />
                <text x={x(p)} y={PLOT.bottom + 16} textAnchor="middle">
                  {100 * p} %
                </text>
                <text x={PLOT.left - 6} y={y(p) + 4} textAnchor="end">
                  {100 * p} %
                </text>
              </g>
            ))}
            <path className="said" d={`M${PLOT.left} ${PLOT.bottom}L${PLOT.right} ${PLOT.top}`} />
            <path className="axis" d={`M${PLOT.left} ${PLOT.top}V${PLOT.bottom}H${PLOT.right}`} />
            <text x={(PLOT.left + PLOT.right) / 2} y={SIZE - 8} textAnchor="middle">
              promised
            </text>
            <text transform={`translate(12 ${(PLOT.top + PLOT.bottom) / 2}) rotate(-90)`} textAnchor="middle">
              held
            </text>
            {bands.map((band) => (
              <Point key={band.from} band={band} />
            ))}
          </svg>
          <div className="scroll">
            <table>
              <thead>
                <tr>
                  <th scope="col">Promised</th>
                  <th scope="col">Tested</th>
                  <th scope="col">Should hold</th>
                  <th scope="col">Did</th>
                  <th scope="col">That is</th>
                </tr>
              </thead>
              <tbody>
                {bands.map((band) => (
                  <tr key={band.from}>
                    <th scope="row">
                      {100 * band.from} to {100 * band.to} %
                    </th>
                    <td>{band.tested}</td>
                    <td>
                      {band.promised.toFixed(1)} ({band.fair[0]} to {band.fair[1]})
                    </td>
                    <td>
                      <strong>{band.held}</strong>
                    </td>
                    <td>{band.told}</td>
                  </tr>
                ))}
              </tbody>
            </table>
            <p className="learned-key">
              Each point is the promises of about one probability; on the line, as many held as were promised.
              The bar is where nine in ten shops with right odds would stand. A reading that is set aside
              counts here all the same. Readings of one machine move together, so a shop with few machines may
              stand outside and still be right.
            </p>
          </div>
        </div>
      )}
    </section>
  );
}

function Point({ band: { tested, promised, held, fair } }: { readonly band: CalibrationBand }) {
  const at = x(promised / tested);
  const share = y(held / tested);
  const left = at > (PLOT.left + PLOT.right) / 2;
  return (
    <g>
      <path className="fair" d={`M${at} ${y(fair[0] / tested)}V${y(fair[1] / tested)}`} />
      <path
        className="fair-end"
        d={`M${at - 6} ${y(fair[0] / tested)}h12M${at - 6} ${y(fair[1] / tested)}h12`}
      />
      <path className="point" d={`M${at} ${share - 6}l6 6-6 6-6-6z`} />
      <text
        className="point-count"
        x={left ? at - 11 : at + 11}
        y={share + 5}
        textAnchor={left ? 'end' : 'start'}
      >
        {held} of {tested}
      </text>
    </g>
  );
}
