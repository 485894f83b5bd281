import { inRange, oneOfChoices } from '../physics/index.ts';
import {
  FINEST_MESH,
  MESH_OPENINGS,
  STRAINER_MESH,
  SUCTION_MESH_BY_PUMP,
  type MeshRange,
  type StrainerPlace,
  type StrainerPump,
} from './handling.data.ts';
import type { AgitationClass } from './liquid.ts';

const INCH = 0.0254;
const GALLON_PER_MINUTE = (231 * INCH ** 3) / 60;
const AREA_PER_FLOW = { suction: 2, pressure: 1 } as const;

/**
 * Open screen area that a strainer wants for a flow.
 *
 * @formula A = 2 in² per gpm on the suction side, 1 in² per gpm on the pressure side
 * @param flow flow through the strainer [m3/s] 0..1
 * @param side where it sits [one of suction, pressure]
 * @returns open area [m2]
 * @throws RangeError when a parameter is outside its range
 * @source Agrochemical and pesticide safety handbook, ch. 8 (excerpts)
 */
export function strainerArea(flow: number, side: 'suction' | 'pressure'): number {
  inRange('flow', flow, 0, 1, 'm3/s');
  oneOfChoices('side', side, ['suction', 'pressure']);
  return (AREA_PER_FLOW[side] * INCH ** 2 * flow) / GALLON_PER_MINUTE;
}

/**
 * Open width of a strainer's mesh.
 *
 * @formula table of test sieves
 * @param mesh openings in an inch [one of 12, 16, 20, 25, 30, 40, 50, 80, 100, 200]
 * @returns open width [m]
 * @valid only the listed meshes; strainer cloths differ from test sieves by some tenths
 * @throws RangeError when the mesh is not in the table
 * @source ASTM E11, ISO 3310-1, from memory
 */
export function meshOpening(mesh: number): number {
  const row = MESH_OPENINGS.find(([m]) => m === mesh);
  if (row === undefined)
    throw new RangeError(
      `mesh is ${mesh}; the table of openings has ${MESH_OPENINGS.map(([m]) => m).join(', ')}`,
    );
  return row[1];
}

export interface StrainerAdvice extends MeshRange {
  /** Why it differs from the range of the place. */
  readonly reasons: readonly string[];
}

/** Meshes for a strainer by its place, the pump behind it and what is in the tank. */
export function strainerAdvice(q: {
  readonly place: StrainerPlace;
  readonly pump: StrainerPump;
  readonly liquidClass: AgitationClass;
}): StrainerAdvice {
  const base = STRAINER_MESH[q.place];
  const byPump = q.place === 'suction' ? SUCTION_MESH_BY_PUMP[q.pump] : undefined;
  const range = byPump ?? base;
  const reasons: string[] = [];
  if (byPump !== undefined)
    reasons.push(`${q.pump} pump: ${byPump.coarsest}-${byPump.finest} mesh on its suction`);
  const passes = FINEST_MESH[q.liquidClass];
  const finest = Math.min(range.finest, passes);
  if (finest < range.finest)
    reasons.push(`a ${q.liquidClass} passes ${passes} mesh at the finest (recalled)`);
  return { ...range, finest, reasons };
}
