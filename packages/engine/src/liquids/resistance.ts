import { inRange } from '../physics/index.ts';
import { liquidOf, materialOf } from './liquid-of.ts';
import type { LiquidId, StrengthUnit } from './liquid.ts';
import { HOSE_LINERS, type MaterialId } from './materials.data.ts';
import { RESISTANCE } from './resistance.data.ts';
import type { Confidence, Rating, ResistanceCell } from './resistance-cell.ts';
import type { SourceId } from './sources.data.ts';
import { countedStrength } from './strength.ts';

/** "Ambient" of a cell without a temperature of its own: judgement, from ratings made at about 20 degC [degC]. */
export const AMBIENT_TOP_C = 30;

/** From best to worst. No data is worse than limited: it may be anything, and it never passes by itself. */
export const RATINGS: readonly Rating[] = ['suited', 'limited', 'no-data', 'not-suited'];

/** A liquid as it meets a material. */
export interface LiquidContact {
  readonly liquid: string;
  readonly strength?: number | undefined;
  readonly strengthUnit?: StrengthUnit | undefined;
  readonly temperatureC: number;
}

/** How a material stands a liquid, and why. */
export interface Resistance {
  readonly liquid: LiquidId;
  readonly material: MaterialId;
  readonly rating: Rating;
  /** Rating of the table before temperature and strength were looked at. */
  readonly tableRating: Rating;
  readonly confidence: Confidence;
  readonly seen: boolean;
  readonly sources: readonly SourceId[];
  /** In one line, as a proof prints it. */
  readonly reason: string;
  readonly conflict: string | undefined;
  /** Warmest contact rated [degC]. */
  readonly maxC: number;
}

const CELLS: ReadonlyMap<string, ResistanceCell> = new Map(
  RESISTANCE.map((c) => [`${c.liquid} ${c.material}`, c]),
);

/**
 * How a material stands a liquid at a strength and temperature.
 *
 * Above the cell's temperature (ambient when it has none) the rating drops one step. A strength above what was rated
 * turns a pass into no data; a weaker one keeps the rating. A bad rating is never improved.
 *
 * @formula the cell of the resistance table, one step worse above its temperature, no data above its strength
 * @param contact.liquid id of the liquid, such as naocl_12 [text]
 * @param contact.strength number of the strength, in strengthUnit [-] 0..2000
 * @param contact.strengthUnit what the number counts [one of trade %, weight %, g/L, volume %]
 * @param contact.temperatureC temperature of the contact [degC] -60..100
 * @param contact.material id of the wetted material, such as epdm or ss316 [text]
 * @result rating how the material stands the liquid [text]
 * @result confidence how far the rating can be relied on [text]
 * @result seen whether evidence for this very cell was read [yes/no]
 * @result reason why, in one line [text]
 * @result maxC warmest contact that was rated [degC]
 * @valid ambient is taken to 30 degC (judgement) where a cell has no temperature of its own
 * @throws RangeError for an unknown liquid or material, an impossible number
 * @source The sources of the cell; 110 of 782 cells rest on evidence that was read, the others were recalled
 */
export function materialResistance(contact: LiquidContact & { readonly material: string }): Resistance {
  const liquid = liquidOf(contact.liquid);
  if (contact.material === 'hose_liner')
    throw new RangeError(
      `material is 'hose_liner'; name the tube's own material: one of ${HOSE_LINERS.join(', ')}`,
    );
  const material = materialOf(contact.material);
  inRange('temperatureC', contact.temperatureC, -60, 100, 'degC');
  const cell = CELLS.get(`${liquid.id} ${material.id}`);
  if (cell === undefined)
    throw new RangeError(`the resistance table has no cell for ${material.id} in ${liquid.id}`);

  const words = [`${material.name} in ${liquid.name}: ${cell.rating}`];
  if (cell.condition !== undefined) words.push(`rated for ${cell.condition}`);
  if (cell.note !== undefined) words.push(cell.note);
  let rating = cell.rating;
  const maxC = cell.maxC ?? AMBIENT_TOP_C;
  const dropped = contact.temperatureC > maxC ? oneStepWorse(rating) : rating;
  if (dropped !== rating) {
    words.push(
      `${contact.temperatureC} degC is above ${cell.maxC === undefined ? 'ambient, ' : ''}${maxC} degC: one step worse, ${dropped}`,
    );
    rating = dropped;
  }
  const beyond = strengthBeyond(cell, contact);
  if (beyond !== undefined && (rating === 'suited' || rating === 'limited')) {
    words.push(beyond);
    rating = 'no-data';
  }
  if (cell.rating === 'no-data')
    words.push('nothing was found: ask, test a piece, or choose another material');
  if (!cell.seen && cell.rating !== 'no-data') words.push('recalled, not read: check before relying on it');
  return {
    liquid: liquid.id,
    material: material.id,
    rating,
    tableRating: cell.rating,
    confidence: rating === 'no-data' ? 'none' : cell.confidence,
    seen: cell.seen,
    sources: cell.sources,
    reason: words.join('; '),
    conflict: cell.conflict,
    maxC,
  };
}

/** The worse of two ratings. */
export const worseRating = (a: Rating, b: Rating): Rating =>
  RATINGS.indexOf(a) >= RATINGS.indexOf(b) ? a : b;

/** Worst rating over materials and liquids, and what decides it. */
export interface WorstResistance {
  readonly rating: Rating;
  /** Every pair that has the worst rating. */
  readonly deciding: readonly Resistance[];
  /** Pairs that are limited or without data: each asks for a recorded decision. */
  readonly toDecide: readonly Resistance[];
  readonly all: readonly Resistance[];
}

/**
 * Resistance of a part, an assembly or a whole path: the worst material decides, the worst liquid decides, the flush
 * and winterising liquids included.
 *
 * @throws RangeError for an unknown liquid or material, an impossible number, or an empty list.
 */
export function worstResistance(
  materials: readonly string[],
  liquids: readonly LiquidContact[],
): WorstResistance {
  if (materials.length === 0) throw new RangeError('materials is empty; name at least one wetted material');
  if (liquids.length === 0) throw new RangeError('liquids is empty; name at least one liquid');
  const all = materials.flatMap((material) => liquids.map((l) => materialResistance({ ...l, material })));
  const rating = all.reduce<Rating>((worst, r) => worseRating(worst, r.rating), 'suited');
  return {
    rating,
    deciding: all.filter((r) => r.rating === rating),
    toDecide: all.filter((r) => r.rating === 'limited' || r.rating === 'no-data'),
    all,
  };
}

function oneStepWorse(rating: Rating): Rating {
  if (rating === 'suited') return 'limited';
  return rating === 'limited' ? 'not-suited' : rating;
}

/** Says so when the liquid is stronger than what was rated. */
function strengthBeyond(cell: ResistanceCell, contact: LiquidContact): string | undefined {
  const liquid = liquidOf(cell.liquid);
  const usual = liquid.strength?.usual;
  const unit = liquid.strength?.units[0];
  const top =
    cell.strength?.max !== undefined
      ? { max: cell.strength.max, unit: cell.strength.unit }
      : usual && unit
        ? { max: usual.max, unit }
        : undefined;
  if (contact.strength === undefined || top === undefined) return undefined;
  inRange('strength', contact.strength, 0, 2000, contact.strengthUnit);
  const same = contact.strengthUnit === top.unit;
  const given = same ? contact.strength : sameMeasure(contact, cell.liquid);
  const limit = same
    ? top.max
    : sameMeasure({ ...contact, strength: top.max, strengthUnit: top.unit }, cell.liquid);
  if (given === undefined)
    return `strength ${contact.strength} ${contact.strengthUnit ?? ''} lies outside the liquid's table`;
  if (limit === undefined || given <= limit * (1 + 1e-6)) return undefined;
  return `${contact.strength} ${contact.strengthUnit ?? ''} is stronger than the ${top.max} ${top.unit} that was rated`;
}

function sameMeasure(contact: LiquidContact, liquid: LiquidId): number | undefined {
  const counted = countedStrength({ ...contact, liquid });
  if (!counted.ok) return undefined;
  return counted.tradePercent ?? counted.massFraction;
}
