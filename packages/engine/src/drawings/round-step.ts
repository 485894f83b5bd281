/** The nearest of 1, 2 and 5 times a power of ten: steps of a scale that people count in. */
export function roundStep(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  const rest = value / power;
  return (rest < 1.5 ? 1 : rest < 3.5 ? 2 : rest < 7.5 ? 5 : 10) * power;
}
