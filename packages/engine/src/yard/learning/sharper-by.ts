import { TOLERANCES, type Confidence } from '../../rig/index.ts';

/**
 * Why the odds of a rig are sharper than the tolerances alone would have them.
 *
 * @returns a heading sentence, then a line for each input that readings speak of, the most telling first
 */
export function sharperLines(confidence: Confidence): string[] {
  const taught = confidence.inputs.filter((i) => i.taught);
  if (taught.length === 0)
    return ['Nothing is learned of the parts of this rig: the odds are those of the tolerances.'];
  const rows = taught
    .map((i) => ({ input: i, before: TOLERANCES[i.kind].deviation }))
    .sort((a, b) => a.input.deviation / a.before - b.input.deviation / b.before);
  return [
    `Sharper by readings, which stand for ${taught.length} of ${confidence.inputs.length} tolerances:`,
    ...rows.map(({ input, before }) => {
      const off = 100 * Math.expm1(input.mean - TOLERANCES[input.kind].mean);
      return `  ${input.name} ${off >= 0 ? '+' : '−'}${Math.abs(off).toFixed(1)} %, known to ${share(input.deviation)} where the tolerance is ${share(before)} (${input.source})`;
    }),
  ];
}

const share = (deviation: number): string => `${(100 * deviation).toFixed(1)} %`;
