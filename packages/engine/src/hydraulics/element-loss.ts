/** Loss of total head across one element at one flow, by the laws themselves. */
import type { Laws } from './branch-loss.ts';
import { CENTRE, CUBIC, LOWER, UPPER } from './circuit.ts';
import { addElementCurve } from './element-coefficients.ts';
import { evaluatePsi, psiOut } from './friction-kernel.ts';

const series = new Float64Array(CUBIC);

/** Total flow Q of all `count`, positive from -> to. Regulators: wide open. */
export function elementLoss(laws: Laws, e: number, flow: number): number {
  const k = laws.coefficients;
  const a = Math.abs(flow);
  const sign = flow < 0 ? -1 : 1;
  let loss = k.constant[e]! + (k.linear[e]! + k.quadratic[e]! * a) * flow;
  if (k.frictionLoss[e]! > 0 && a > 0) {
    const w = a * k.frictionW[e]!;
    const low = k.frictionLowW[e]!;
    evaluatePsi(k.friction[e]!, Math.max(w, low));
    loss += sign * k.frictionLoss[e]! * psiOut[0]! * (w < low ? w / low : 1);
  }
  const curve = laws.context.curves[e];
  if (curve === undefined || curve.power !== undefined) return loss;
  series.fill(0);
  series[LOWER] = -Infinity;
  series[UPPER] = Infinity;
  series[CENTRE] = a;
  addElementCurve(laws.context, laws.laws[e]!, e, series, 0);
  return loss + sign * series[0]!;
}
