import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';

/**
 * Inside shape of a tank. Frame: x forward and y to the left from the middle of the plan, z up from the lowest point inside.
 * A lying tank has its axis along x.
 */
export type TankForm =
  | {
      readonly form: 'lying-round';
      readonly diameter: number;
      /** Straight part, without the ends. */
      readonly length: number;
      readonly ends: TankEnds;
      /** Depth of each end; a default is used when absent: see `endDepth`. */
      readonly endDepth?: number | undefined;
    }
  | {
      readonly form: 'lying-elliptical';
      readonly width: number;
      readonly height: number;
      readonly length: number;
    }
  | {
      readonly form: 'box';
      readonly length: number;
      readonly width: number;
      readonly height: number;
      readonly sump?: TaperedSump | undefined;
    }
  | {
      readonly form: 'upright-round';
      readonly diameter: number;
      /** Straight part, without cone and dome. */
      readonly height: number;
      readonly coneHeight?: number | undefined;
      readonly outletDiameter?: number | undefined;
      /** Depth of an ellipsoidal dome on top. */
      readonly domeHeight?: number | undefined;
    };

export type TankEnds = 'flat' | 'dished' | 'ellipsoidal' | 'hemispherical';

/** Sump below a box tank, tapered in both directions. */
export interface TaperedSump {
  readonly topLength: number;
  readonly topWidth: number;
  readonly bottomLength: number;
  readonly bottomWidth: number;
  readonly depth: number;
  /** Middle of the sump from the middle of the tank. */
  readonly x?: number | undefined;
  readonly y?: number | undefined;
}

const MAX_SIZE = 20;

/** Depth of each end of a lying round tank: as given, else from the kind of end. */
export function endDepth(tank: Extract<TankForm, { form: 'lying-round' }>): number {
  if (tank.endDepth !== undefined && tank.ends !== 'flat' && tank.ends !== 'hemispherical')
    return tank.endDepth;
  const radius = tank.diameter / 2;
  switch (tank.ends) {
    case 'flat':
      return 0;
    case 'hemispherical':
      return radius;
    case 'ellipsoidal':
      return radius / 2;
    case 'dished':
      // A dish of radius equal to the tank's diameter: common practice, no source.
      return tank.diameter - Math.sqrt(tank.diameter ** 2 - radius ** 2);
  }
}

/** Half the outside extent of the inside along x, y, and the full height. */
export function tankExtent(tank: TankForm): { halfLength: number; halfWidth: number; height: number } {
  switch (tank.form) {
    case 'lying-round':
      return {
        halfLength: tank.length / 2 + endDepth(tank),
        halfWidth: tank.diameter / 2,
        height: tank.diameter,
      };
    case 'lying-elliptical':
      return { halfLength: tank.length / 2, halfWidth: tank.width / 2, height: tank.height };
    case 'box':
      return {
        halfLength: tank.length / 2,
        halfWidth: tank.width / 2,
        height: tank.height + (tank.sump?.depth ?? 0),
      };
    case 'upright-round':
      return {
        halfLength: tank.diameter / 2,
        halfWidth: tank.diameter / 2,
        height: tank.height + (tank.coneHeight ?? 0) + (tank.domeHeight ?? 0),
      };
  }
}

/** Refuses a tank whose sizes make no tank. */
export function checkTank(tank: TankForm): void {
  oneOfChoices('tank.form', tank.form, ['lying-round', 'lying-elliptical', 'box', 'upright-round']);
  const size = (name: string, value: number, min = 1e-3): void =>
    inRange(`tank.${name}`, value, min, MAX_SIZE, 'm');
  switch (tank.form) {
    case 'lying-round': {
      oneOfChoices('tank.ends', tank.ends, ['flat', 'dished', 'ellipsoidal', 'hemispherical']);
      size('diameter', tank.diameter);
      // A sphere is a lying tank of no length with hemispherical ends.
      size('length', tank.length, tank.ends === 'flat' ? 1e-3 : 0);
      if (tank.endDepth !== undefined) inRange('tank.endDepth', tank.endDepth, 1e-4, tank.diameter / 2, 'm');
      return;
    }
    case 'lying-elliptical':
      size('width', tank.width);
      size('height', tank.height);
      size('length', tank.length);
      return;
    case 'box':
      size('length', tank.length);
      size('width', tank.width);
      size('height', tank.height);
      if (tank.sump) checkSump(tank.length, tank.width, tank.sump);
      return;
    case 'upright-round':
      size('diameter', tank.diameter);
      size('height', tank.height);
      size('coneHeight', tank.coneHeight ?? 0, 0);
      size('domeHeight', tank.domeHeight ?? 0, 0);
      inRange('tank.outletDiameter', tank.outletDiameter ?? 0, 0, tank.diameter, 'm');
      return;
  }
}

function checkSump(tankLength: number, tankWidth: number, sump: TaperedSump): void {
  inRange('tank.sump.depth', sump.depth, 1e-3, MAX_SIZE, 'm');
  inRange('tank.sump.topLength', sump.topLength, 1e-3, tankLength, 'm');
  inRange('tank.sump.topWidth', sump.topWidth, 1e-3, tankWidth, 'm');
  inRange('tank.sump.bottomLength', sump.bottomLength, 0, sump.topLength, 'm');
  inRange('tank.sump.bottomWidth', sump.bottomWidth, 0, sump.topWidth, 'm');
  const roomX = (tankLength - sump.topLength) / 2;
  const roomY = (tankWidth - sump.topWidth) / 2;
  inRange('tank.sump.x', sump.x ?? 0, -roomX, roomX, 'm');
  inRange('tank.sump.y', sump.y ?? 0, -roomY, roomY, 'm');
}
