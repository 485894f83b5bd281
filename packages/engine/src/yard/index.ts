export { INSTRUMENTS, type Instrument, type InstrumentId } from './instruments.data.ts';
export { yardModel, type YardModel, type YardOptions } from './yard-model.ts';
export type { SheetReading } from './sheet-reading.ts';
export { yardSheet, type YardSheet } from './sheet.ts';
export type { ReadingLimit } from './promise-limits.ts';
export {
  matchReadings,
  readReadings,
  type ReadingsDocument,
  type TakenReadings,
} from './readings-document.ts';
export {
  judgeReadings,
  type JudgeOptions,
  type JudgedReading,
  type JudgedTest,
  type ReadingState,
} from './judge.ts';
export * from './learning/index.ts';
export { bucketFor } from './bucket.ts';
export { massWeights, WHOLE_MASS } from './mass-inputs.ts';
export { scaleModel } from './scale-model.ts';
export { SCALE_SUM, SCALE_WHOLE } from './scale-rows.ts';
export { repeatName, repeatsLeft, valuesAsked, valuesTaken } from './repeats.ts';
export * from './diagnosis/index.ts';
export {
  dutyConditions,
  judgedText,
  readingTask,
  readingText,
  repeatsTask,
  READING_WORDS,
  vesselText,
  YARD_CAUTIONS,
} from './sheet-words.ts';
export { readingsOfTest, yardTests, type YardEntry, type YardTest } from './yard-tests.ts';
