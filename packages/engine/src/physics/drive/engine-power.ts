import { inRange } from '../in-range.ts';
import { fluidPower } from './fluid-power.ts';
import { CONTINUOUS_FRACTION, LABEL_FRACTION } from './engine-rating.data.ts';

export interface EnginePowerDemand {
  readonly flow: number;
  readonly pressureRise: number;
  readonly pumpEfficiency: number;
  readonly driveEfficiency: number;
  readonly continuousFraction?: number;
  readonly siteFactor?: number;
  readonly labelFraction?: number;
}

export interface EnginePowerChain {
  readonly fluidPower: number;
  readonly pumpShaftPower: number;
  readonly engineContinuousPower: number;
  readonly siteRatedPower: number;
  readonly meanProductionPower: number;
  readonly labelPower: number;
}

/**
 * Power that must stand on the engine's label so that the pump can run all day at the site.
 *
 * @formula P_f = Q Δp; P_pump = P_f/η_p; P_eng = P_pump/η_d; P_label = P_eng / (f_cont f_site f_label)
 * @param p.flow volume flow [m3/s] 0..10
 * @param p.pressureRise pressure rise across the pump [Pa] 0..1e9
 * @param p.pumpEfficiency overall efficiency of the pump [-] 0.05..1
 * @param p.driveEfficiency efficiency of belt, gear or shaft; 1 when direct [-] 0.5..1
 * @param p.continuousFraction share of the rated power taken all day; default 0.85 [-] 0.3..1
 * @param p.siteFactor share of the rated power left at the site's altitude and temperature; default 1 [-] 0.2..1.2
 * @param p.labelFraction share of the label that the mean engine of the production must reach; default 0.95 [-] 0.5..1
 * @result fluidPower power in the liquid [W]
 * @result pumpShaftPower power at the pump's shaft [W]
 * @result engineContinuousPower power the engine gives all day [W]
 * @result siteRatedPower rated power the engine must have at the site [W]
 * @result meanProductionPower rated power the engine must have at reference conditions [W]
 * @result labelPower power on the label [W]
 * @valid a gross label (SAE J1995) must first be lowered to net; how much is unknown (5 to 15 % from memory)
 * @throws RangeError when a parameter is outside its range
 * @source Power balance; label fraction: SAE J1940 (2012), mean of production at least 95 % of the label, 85 % before; continuous fraction 0.80 to 0.90 is common practice, no source
 */
export function enginePowerNeeded(p: EnginePowerDemand): EnginePowerChain {
  const {
    continuousFraction = CONTINUOUS_FRACTION.value,
    siteFactor = 1,
    labelFraction = LABEL_FRACTION.value,
  } = p;
  inRange('pumpEfficiency', p.pumpEfficiency, 0.05, 1, '-');
  inRange('driveEfficiency', p.driveEfficiency, 0.5, 1, '-');
  checkFractions(continuousFraction, siteFactor, labelFraction);
  const fluid = fluidPower(p.flow, p.pressureRise);
  const pumpShaft = fluid / p.pumpEfficiency;
  const continuous = pumpShaft / p.driveEfficiency;
  const atSite = continuous / continuousFraction;
  const mean = atSite / siteFactor;
  return {
    fluidPower: fluid,
    pumpShaftPower: pumpShaft,
    engineContinuousPower: continuous,
    siteRatedPower: atSite,
    meanProductionPower: mean,
    labelPower: mean / labelFraction,
  };
}

/**
 * Power that an engine with a given label gives all day at the site.
 *
 * @formula P = P_label f_label f_site f_cont
 * @param labelPower power on the label, net [W] 0..1e7
 * @param siteFactor share of the rated power left at the site [-] 0.2..1.2
 * @param continuousFraction share of the rated power taken all day [-] 0.3..1
 * @param labelFraction share of the label that the mean engine must reach [-] 0.5..1
 * @returns continuous power at the engine's shaft [W]
 * @throws RangeError when a parameter is outside its range
 * @source The chain of enginePowerNeeded read backwards; SAE J1940 (2012) for the label
 */
export function engineContinuousPower(
  labelPower: number,
  siteFactor = 1,
  continuousFraction = CONTINUOUS_FRACTION.value,
  labelFraction = LABEL_FRACTION.value,
): number {
  inRange('labelPower', labelPower, 0, 1e7, 'W');
  checkFractions(continuousFraction, siteFactor, labelFraction);
  return labelPower * labelFraction * siteFactor * continuousFraction;
}

function checkFractions(continuousFraction: number, siteFactor: number, labelFraction: number): void {
  inRange('continuousFraction', continuousFraction, 0.3, 1, '-');
  inRange('siteFactor', siteFactor, 0.2, 1.2, '-');
  inRange('labelFraction', labelFraction, 0.5, 1, '-');
}
