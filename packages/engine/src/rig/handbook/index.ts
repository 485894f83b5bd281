export { calibrationsOf, type Calibration, type CalibrationRow } from './calibration.ts';
export { mixCards, type MixCard } from './mix-card.ts';
export { careSteps, highestPressureOf, type CareStep } from './care.ts';
export { CARE_TIMES, type CareTime } from './care.data.ts';
export { sparesOf, type Spare } from './spares.ts';
