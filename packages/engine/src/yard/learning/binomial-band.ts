/**
 * Between how many of a number of trials hold, in a given share of cases, when each holds with the same probability.
 *
 * @param trials how many [-] 0..
 * @param probability of each [-] 0..1
 * @param share of cases within; what is left is halved between both ends [-] 0..1
 * @returns least and most
 * @source binomial distribution, textbook; its terms by their ratio from the largest, so that none underflows
 */
export function binomialBand(trials: number, probability: number, share: number): readonly [number, number] {
  if (trials === 0 || probability <= 0) return [0, 0];
  if (probability >= 1) return [trials, trials];
  const odds = probability / (1 - probability);
  const terms = new Float64Array(trials + 1);
  const mode = Math.min(trials, Math.floor((trials + 1) * probability));
  terms[mode] = 1;
  for (let k = mode; k < trials; k++) terms[k + 1] = (terms[k]! * odds * (trials - k)) / (k + 1);
  for (let k = mode; k > 0; k--) terms[k - 1] = (terms[k]! * k) / (odds * (trials - k + 1));
  const tail = ((1 - share) / 2) * terms.reduce((sum, t) => sum + t, 0);
  let [low, high] = [0, trials];
  for (let sum = terms[0]!; sum <= tail; sum += terms[low]!) low++;
  for (let sum = terms[trials]!; sum <= tail; sum += terms[high]!) high--;
  return [low, high];
}
