import { tipDensityFactor } from '../flow/tip.ts';
import { inRange } from '../in-range.ts';
import { flowForDose } from './dose.ts';
import { isoTipColour, isoTipFlow, ISO_RATED_PRESSURE } from './iso-tips.ts';
import { ISO_TIPS } from './iso-tips.data.ts';

/** Tips of the series that can do a job, the middle of their pressure range first. */
export interface TipChoice {
  readonly sizes: readonly string[];
  readonly colours: readonly string[];
  /** Pressure at the tip for the wanted dose and speed. */
  readonly pressures: readonly number[];
  readonly slowest: readonly number[];
  readonly fastest: readonly number[];
  /** Flow of the liquid through one tip. */
  readonly flow: number;
  /** Flow of water to look up in a table. */
  readonly waterFlow: number;
}

/**
 * Sizes of the ISO series that lay a dose at a speed within their pressures, and the speeds each can be driven at.
 *
 * @formula Q_w = q v w sqrt(SG); p = 3 bar (Q_w / Q_r)^2; v = Q / (q w) at the least and most pressure
 * @param p.dose dose of the liquid [m3/m2] 1e-7..1
 * @param p.speed speed over ground [m/s] 0.01..30
 * @param p.spacing spacing of the tips on the boom [m] 0.05..5
 * @param p.density density of the liquid [kg/m3] 500..2500
 * @param p.leastPressure lowest pressure allowed at the tip [Pa] 1e4..2e6
 * @param p.mostPressure highest pressure allowed at the tip [Pa] 1e4..2e6
 * @result sizes ISO sizes that fit, the one nearest the middle of the speed range first [list of text]
 * @result colours their colours [list of text]
 * @result pressures pressure each needs [list of Pa]
 * @result slowest slowest speed of each at this dose [list of m/s]
 * @result fastest fastest speed of each at this dose [list of m/s]
 * @result flow flow of the liquid a tip [m3/s]
 * @result waterFlow flow of water that the tip is picked by [m3/s]
 * @valid No fit gives empty lists. Whether the droplet class suits is data of the tip at its pressure.
 * @throws RangeError when a parameter is outside its range
 * @source Orifice law; UNL CropWatch 2016 for the density; ISO 10625 for the sizes.
 */
export function isoTipsForDose(p: {
  readonly dose: number;
  readonly speed: number;
  readonly spacing: number;
  readonly density: number;
  readonly leastPressure: number;
  readonly mostPressure: number;
}): TipChoice {
  inRange('dose', p.dose, 1e-7, 1, 'm3/m2');
  inRange('speed', p.speed, 0.01, 30, 'm/s');
  inRange('spacing', p.spacing, 0.05, 5, 'm');
  inRange('leastPressure', p.leastPressure, 1e4, 2e6, 'Pa');
  inRange('mostPressure', p.mostPressure, p.leastPressure, 2e6, 'Pa');
  const factor = tipDensityFactor(p.density);
  const flow = flowForDose(p.dose, p.speed, p.spacing);
  const waterFlow = flow * factor;
  const speedAt = (size: string, pressure: number) =>
    isoTipFlow(size, pressure) / factor / (p.dose * p.spacing);
  const needs = (size: string) =>
    ISO_RATED_PRESSURE * (waterFlow / isoTipFlow(size, ISO_RATED_PRESSURE)) ** 2;
  const fits = ISO_TIPS.map(({ size }) => ({
    size,
    colour: isoTipColour(size),
    pressure: needs(size),
    slowest: speedAt(size, p.leastPressure),
    fastest: speedAt(size, p.mostPressure),
  })).filter((tip) => tip.pressure >= p.leastPressure && tip.pressure <= p.mostPressure);
  // On speed, not on pressure: the driver has as much room to slow down as to speed up.
  const offMiddle = (tip: (typeof fits)[number]) => Math.abs(p.speed - (tip.slowest + tip.fastest) / 2);
  fits.sort((a, b) => offMiddle(a) - offMiddle(b));
  return {
    sizes: fits.map((t) => t.size),
    colours: fits.map((t) => t.colour),
    pressures: fits.map((t) => t.pressure),
    slowest: fits.map((t) => t.slowest),
    fastest: fits.map((t) => t.fastest),
    flow,
    waterFlow,
  };
}
