import { calibrationOf, learnFrom, type Calibration, type Learned } from '@spraywright/engine/yard';
import type { WrittenMachine } from '../../store/index.ts';
import { readFiles, type CatalogueFiles } from '../catalogue-files.ts';
import { doubtedReadings, type DoubtedReading } from './doubted-readings.ts';
import { testedMachines, type Tested } from './tested-machines.ts';

/** What a shop learns from: its tested machines, and the catalogue of today. */
export interface LearningQuestion {
  readonly written: readonly WrittenMachine[];
  readonly files: CatalogueFiles;
}

/** What the tests of all built machines say; plain data, so that a thread can hand it over. */
export interface LearnedFromTests extends Pick<Tested, 'unfinished' | 'unfit'> {
  readonly learned: Learned;
  readonly calibration: Calibration;
  readonly doubted: readonly DoubtedReading[];
}

/** Works out what the entries say, from them alone. */
export function learnFromTests({ written, files }: LearningQuestion): LearnedFromTests {
  const { catalogue, shop } = readFiles(files);
  const { machines, tests, unfinished, unfit } = testedMachines(written, catalogue, shop);
  const learned = learnFrom(machines);
  return {
    learned,
    calibration: calibrationOf(tests),
    doubted: doubtedReadings(learned, tests),
    unfinished,
    unfit,
  };
}
