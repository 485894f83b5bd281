/** Steepness with which the loss climbs from the laminar law to the turbulent one just below the critical Re. */
const CLIMB = 6;

/**
 * Darcy friction factor in a hose wound on a drum: White's laminar law up to Schmidt's critical Reynolds number,
 * Schmidt's turbulent law above. Schmidt's law starts with a step up; the step is spread over the few percent below the
 * critical Reynolds number, so that loss rises continuously with flow, and never falls below the straight hose's.
 */
export function coilFrictionFactor(re: number, coilRatio: number, straightFactor: number): number {
  const critical = criticalReynoldsSchmidt(coilRatio);
  const laminar = Math.max((64 / re) * laminarRatioWhite(re, coilRatio), straightFactor);
  if (re >= critical) return Math.max(laminar, straightFactor * turbulentRatioSchmidt(re, coilRatio));
  if (re < 0.3 * critical) return laminar;
  return Math.max(
    laminar,
    straightFactor * turbulentRatioSchmidt(critical, coilRatio) * (re / critical) ** CLIMB,
  );
}

function criticalReynoldsSchmidt(coilRatio: number): number {
  return 2300 * (1 + 8.6 * coilRatio ** 0.45);
}

function laminarRatioWhite(re: number, coilRatio: number): number {
  const dean = re * Math.sqrt(coilRatio);
  if (dean <= 11.6) return 1;
  return 1 / (1 - (1 - (11.6 / dean) ** 0.45) ** (1 / 0.45));
}

/** The larger of Schmidt's two ranges, which meet with a step of about 1 % at Re 22000. */
function turbulentRatioSchmidt(re: number, coilRatio: number): number {
  const low = 1 + (2.88e4 / re) * coilRatio ** 0.62;
  const high = 1 + 0.0823 * (1 + coilRatio) * coilRatio ** 0.53 * re ** 0.25;
  return Math.max(low, high);
}
