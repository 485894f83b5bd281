/**
 * Friction of a power-law liquid in the form the solver uses. The variable is w = 23 (Re_MR/Re_c)^(1/(2-n)), which is
 * proportional to the flow; psi(w) = f w^2. Laminar to the Ryan-Johnson limit Re_c, Dodge-Metzner from 4000/2300 times
 * that limit, joined by a cubic of ln f in ln Re as for Newtonian liquids.
 */
/** w at the end of laminar flow: a boundary between pieces of the prepared curves. */
export const POWER_LAW_CRITICAL_W = 23;
const SPAN = Math.log(4000 / 2300);

export function criticalReynoldsPowerLaw(n: number): number {
  return (6464 * n) / ((1 + 3 * n) ** 2 * (1 / (2 + n)) ** ((2 + n) / (1 + n)));
}

export function powerLawPsi(n: number, w: number, out: Float64Array): void {
  const critical = criticalReynoldsPowerLaw(n);
  const re = critical * (w / POWER_LAW_CRITICAL_W) ** (2 - n);
  if (re <= critical) return write(out, n, w, re, 64 / re, -1);
  const turbulent = critical * Math.exp(SPAN);
  if (re >= turbulent) {
    const y = dodgeMetznerY(n, re);
    return write(out, n, w, re, 4 / (y * y), dodgeMetznerSlope(n, y));
  }
  const y = dodgeMetznerY(n, turbulent);
  const start = Math.log(64 / critical);
  const rise = Math.log(4 / (y * y)) - start;
  const end = dodgeMetznerSlope(n, y);
  const c2 = (3 * rise) / (SPAN * SPAN) - (end - 2) / SPAN;
  const c3 = (-2 * rise) / (SPAN * SPAN * SPAN) + (end - 1) / (SPAN * SPAN);
  const t = Math.log(re / critical);
  write(out, n, w, re, Math.exp(start + t * (-1 + t * (c2 + t * c3))), -1 + t * (2 * c2 + 3 * t * c3));
}

/** Nowhere less than 64/Re: for small n the turbulent law starts below it, and the loss must rise with the flow. */
function write(out: Float64Array, n: number, w: number, re: number, f: number, slope: number): void {
  const laminar = 64 / re;
  if (f < laminar) {
    out[0] = laminar * w * w;
    out[1] = laminar * w * n;
    return;
  }
  out[0] = f * w * w;
  out[1] = f * w * (2 + slope * (2 - n));
}

/** 1/sqrt(Fanning f). */
function dodgeMetznerY(n: number, re: number): number {
  const a = 4 / (n ** 0.75 * Math.LN10);
  const b = 0.4 / n ** 1.2;
  const lnRe = Math.log(re);
  let y = 12;
  for (let i = 0; i < 30; i++) {
    const step = (y - a * (lnRe - (2 - n) * Math.log(y)) + b) / (1 + (a * (2 - n)) / y);
    y = Math.max(y - step, 0.2 * y);
    if (Math.abs(step) < 1e-13 * y) break;
  }
  return y;
}

function dodgeMetznerSlope(n: number, y: number): number {
  const a = 4 / (n ** 0.75 * Math.LN10);
  return (-2 * a) / (y + a * (2 - n));
}
