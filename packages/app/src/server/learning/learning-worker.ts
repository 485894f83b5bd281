import { parentPort } from 'node:worker_threads';
import { learnFromTests, type LearningQuestion } from './learn-from-tests.ts';

/** A thread of its own: the server answers while the tests of all machines are worked through here. */
parentPort!.on('message', (question: LearningQuestion) => parentPort!.postMessage(learnFromTests(question)));
