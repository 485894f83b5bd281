import { nozzleReaction, reachSigma } from '../../physics/index.ts';
import type { Target } from '../brief.ts';
import { streamAt } from '../gun-throw.ts';
import type { ProvenDuty } from '../proof/context.ts';
import { throwerOf, type Thrower } from '../proof/thrower.ts';
import type { Contender, DrawnPromise, DrawSheet } from './draw-sheet.ts';
import type { Reading } from './drawn-network.ts';
import { throwSurface, widened } from './throw-surface.ts';
import { TOLERANCES } from './tolerances.data.ts';

interface DrawnGun {
  readonly proven: ProvenDuty;
  readonly thrower: Thrower;
  readonly pressure: Reading;
  readonly flow: Reading;
}

/** Reach towards each target, and the push of the gun on whoever holds it. */
export function throwPromises(sheet: DrawSheet): DrawnPromise[] {
  const guns = sheet.context.duties.flatMap((proven): DrawnGun[] => {
    const network = sheet.network(proven, 'open');
    const thrower = throwerOf(sheet.context.rig, sheet.context.site, proven);
    const outlet = network?.made.outlets.find((o) => o.line === thrower?.line);
    if (network === undefined || thrower === undefined || outlet === undefined) return [];
    return [{ proven, thrower, pressure: network.pressure(outlet.before), flow: network.flow(outlet.last) }];
  });
  const pushes = guns.map(({ proven, thrower, pressure, flow }): Contender => {
    const { velocityCoefficient } = thrower.conditions.tip;
    return {
      readings: [pressure, flow],
      value: (draw) =>
        nozzleReaction(
          Math.max(0, flow.values[draw]!),
          Math.max(0, pressure.values[draw]!),
          proven.liquid.density,
          velocityCoefficient,
        ),
    };
  });
  return [
    ...guns.flatMap((gun): DrawnPromise[] =>
      gun.proven.duty.target === undefined
        ? []
        : [
            {
              id: `reach:${gun.proven.duty.id}`,
              as: 'figure',
              contenders: [throwOf(sheet, gun, gun.proven.duty.target)],
            },
          ],
    ),
    { id: 'hold', as: 'figure', contenders: pushes },
  ];
}

/**
 * Where the water of one draw gets to [m]: the throw of that draw's pressure and tip, times the doubt of the model. As the
 * doubt is in proportion to what the proof takes for this stream, so is a draw's.
 */
function throwOf(sheet: DrawSheet, { proven, thrower, pressure }: DrawnGun, target: Target): Contender {
  const [gun, tip] = thrower.items;
  const isNew = sheet.factor('tip-flow', tip);
  const worn = sheet.factor('tip-wear', tip);
  const k = sheet.draws.inputs.findIndex((input) => input.kind === 'throw' && input.item === gun);
  const input = sheet.draws.inputs[k];
  const model = sheet.draws.columns[k];
  let throws: (pressure: number, wide: number) => number = () => NaN;
  return {
    readings: [pressure],
    prepare: () => {
      const wide = isNew.map((f, i) => f * worn[i]!);
      throws = throwSurface(thrower.conditions, target, proven.duty.reach, pressure.values, wide);
    },
    value: (draw) => {
      const p = Math.max(0, pressure.values[draw]!);
      const wide = isNew[draw]! * worn[draw]!;
      const stream = streamAt(widened(thrower.conditions, wide), p);
      if (stream === undefined) return 0;
      const sigma = reachSigma(p, stream.jetDiameter, false, stream.pattern);
      const off = model?.[draw] ?? 0;
      return throws(p, wide) * Math.exp(input?.taught ? off : (off * sigma) / TOLERANCES.throw.deviation);
    },
  };
}
