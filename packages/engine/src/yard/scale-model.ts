import type { Proof, Rig } from '../rig/index.ts';
import { massInputs } from './mass-inputs.ts';
import { scaleRows } from './scale-rows.ts';
import { scaled, type YardModel } from './yard-model.ts';

/**
 * What scales show of an empty rig as a function of the logarithms of its masses' factors. No reading with water depends on a
 * mass, so that it is a model of its own.
 *
 * @param proof says where the parts stand
 */
export function scaleModel(rig: Rig, proof: Proof): YardModel {
  const rows = scaleRows(rig, proof);
  const inputs = rows.length === 0 ? [] : massInputs(rig);
  const places = new Map(inputs.map((input, i) => [input.id, i]));
  const runs = new Map<string, never>();
  return {
    rig,
    inputs,
    rows,
    predict: (logFactors) => {
      const factor = (id: string) => {
        const place = places.get(id);
        return place === undefined ? 1 : Math.exp(logFactors[place]!);
      };
      return Float64Array.from(rows, (row) => scaled(row, row.read({ rig, runs, factor })));
    },
  };
}
