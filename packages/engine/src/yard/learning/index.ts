export { PART_SHARES, type PartShare } from './part-share.data.ts';
export { factorKey, type BuiltRig } from './evidence.ts';
export { learnFrom, type Learned, type LearnedCopy, type LearnedFactor } from './learn.ts';
export { testedCopies, type TestedCopy } from './tested-copies.ts';
export { drifts, driftText } from './drift.ts';
export { correctionsOf, learnedDocument, readLearned, type LearnedDocument } from './learned-document.ts';
export { calibrationOf, type Calibration, type CalibrationBand, type SheetTest } from './calibration.ts';
export { sharperLines } from './sharper-by.ts';
