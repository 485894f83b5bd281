import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import { CONTAINER_RULES } from './rinse-targets.data.ts';

/**
 * Water for rinsing an emptied product container.
 *
 * @formula V = s V_c each, n times
 * @param rule which rule [one of montana]
 * @param container volume of the container [m3] 1e-4..1.5
 * @result share water of one rinse as a share of the container [-]
 * @result each water of one rinse [m3]
 * @result rinses number of rinses [-]
 * @result total water of all rinses [m3]
 * @result power water of a power rinse instead [m3]
 * @valid The label comes first; the rinse water goes into the tank.
 * @throws RangeError when a parameter is outside its range
 * @source Montana Administrative Rule on pesticide container rinsing, kept as data.
 */
export function containerRinse(
  rule: string,
  container: number,
): { share: number; each: number; rinses: number; total: number; power: number } {
  oneOfChoices(
    'rule',
    rule,
    CONTAINER_RULES.map((r) => r.id),
  );
  inRange('container', container, 1e-4, 1.5, 'm3');
  const row = CONTAINER_RULES.find((r) => r.id === rule) ?? CONTAINER_RULES[0];
  const share = container < row.border ? row.below : row.from;
  const each = share * container;
  const total = row.rinses * each;
  return { share, each, rinses: row.rinses, total, power: row.power * total };
}
