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

/** A rating as a sentence has it. */
const SAID: Readonly<Record<Rating, string>> = {
  suited: 'suited',
  limited: 'limited',
  'no-data': 'no data',
  'not-suited': 'not suited',
};

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

/** A cell with what it says at every temperature and strength put into words beforehand: it is asked for often. */
interface WordedCell {
  readonly cell: ResistanceCell;
  readonly maxC: number;
  readonly opening: string;
  readonly closing: string;
  /** Strongest that was rated; else the strongest usual. */
  readonly top: { readonly max: number; readonly unit: StrengthUnit } | undefined;
  /** The same in the measure that strengths of other units are compared in. */
  readonly topMeasure: number | undefined;
}

const CELLS: ReadonlyMap<LiquidId, ReadonlyMap<MaterialId, WordedCell>> = wordedCells();

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
  const worded = CELLS.get(liquid.id)?.get(material.id);
  if (worded === undefined)
    throw new RangeError(`the resistance table has no cell for ${material.id} in ${liquid.id}`);

  const { cell, maxC } = worded;
  let { rating } = cell;
  let reason = worded.opening;
  const dropped = contact.temperatureC > maxC ? oneStepWorse(rating) : rating;
  if (dropped !== rating) {
    reason += `; ${contact.temperatureC} degC is above ${cell.maxC === undefined ? 'ambient, ' : ''}${maxC} degC: one step worse, ${SAID[dropped]}`;
    rating = dropped;
  }
  const beyond = strengthBeyond(worded, contact);
  if (beyond !== undefined && (rating === 'suited' || rating === 'limited')) {
    reason += `; ${beyond}`;
    rating = 'no-data';
  }
  return {
    liquid: liquid.id,
    material: material.id,
    rating,
    tableRating: cell.rating,
    confidence: rating === 'no-data' ? 'none' : cell.confidence,
    seen: cell.seen,
    sources: cell.sources,
    reason: reason + worded.closing,
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

function wordedCells(): Map<LiquidId, Map<MaterialId, WordedCell>> {
  const byLiquid = new Map<LiquidId, Map<MaterialId, WordedCell>>();
  for (const cell of RESISTANCE) {
    let row = byLiquid.get(cell.liquid);
    if (row === undefined) byLiquid.set(cell.liquid, (row = new Map<MaterialId, WordedCell>()));
    row.set(cell.material, wordedCell(cell));
  }
  return byLiquid;
}

function wordedCell(cell: ResistanceCell): WordedCell {
  const { name, strength } = liquidOf(cell.liquid);
  const opening = [`${materialOf(cell.material).name} in ${name}: ${SAID[cell.rating]}`];
  if (cell.condition !== undefined) opening.push(`rated for ${cell.condition}`);
  if (cell.note !== undefined) opening.push(cell.note);
  const unit = strength?.units[0];
  const top =
    cell.strength?.max !== undefined
      ? { max: cell.strength.max, unit: cell.strength.unit }
      : strength && unit
        ? { max: strength.usual.max, unit }
        : undefined;
  return {
    cell,
    maxC: cell.maxC ?? AMBIENT_TOP_C,
    opening: opening.join('; '),
    closing:
      cell.rating === 'no-data'
        ? '; nothing was found: ask, test a piece, or choose another material'
        : cell.seen
          ? ''
          : '; recalled, not read: check before relying on it',
    top,
    topMeasure: top === undefined ? undefined : commonMeasure(cell.liquid, top.max, top.unit),
  };
}

/** Says so when the liquid is stronger than what was rated. */
function strengthBeyond({ cell, top, topMeasure }: WordedCell, contact: LiquidContact): string | undefined {
  if (contact.strength === undefined || top === undefined) return undefined;
  inRange('strength', contact.strength, 0, 2000, contact.strengthUnit);
  const same = contact.strengthUnit === top.unit;
  const given = same ? contact.strength : commonMeasure(cell.liquid, contact.strength, contact.strengthUnit);
  const limit = same ? top.max : topMeasure;
  if (given === undefined)
    return `strength ${contact.strength} ${contact.strengthUnit ?? ''} lies outside the liquid's table`;
  if (limit === undefined || given <= limit * (1 + 1e-6)) return undefined;
  return `${contact.strength} ${contact.strengthUnit ?? ''} is stronger than the ${top.max} ${top.unit} that was rated`;
}

function commonMeasure(
  liquid: LiquidId,
  strength: number,
  strengthUnit: StrengthUnit | undefined,
): number | undefined {
  const counted = countedStrength({ liquid, strength, strengthUnit });
  if (!counted.ok) return undefined;
  return counted.tradePercent ?? counted.massFraction;
}
