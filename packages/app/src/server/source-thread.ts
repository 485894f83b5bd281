import { Worker } from 'node:worker_threads';

/** Sources are read by a loader while developing; the built program has them as JavaScript. */
const FROM_SOURCES = import.meta.url.endsWith('.ts');

/**
 * A thread that runs a module of the server.
 *
 * @param module its address without the ending, such as `new URL('./proof-worker', import.meta.url)`
 * @param workerData what it starts from
 */
export function sourceThread(module: URL, workerData?: unknown): Worker {
  if (!FROM_SOURCES) return new Worker(new URL(`${module.href}.js`), { workerData });
  const source = JSON.stringify(`${module.href}.ts`);
  const code = `import('tsx/esm/api').then(({ register }) => { register(); return import(${source}); });`;
  return new Worker(code, { eval: true, workerData, execArgv: ['--conditions=source'] });
}

/** What a thread answers to one question; one is asked at a time. */
export function answerOf<T>(thread: Worker, question: unknown): Promise<T> {
  return new Promise((resolve, reject) => {
    const done = () => {
      thread.off('message', answered);
      thread.off('error', failed);
      thread.off('exit', ended);
    };
    const answered = (answer: T) => {
      done();
      resolve(answer);
    };
    const failed = (error: Error) => {
      done();
      reject(error);
    };
    const ended = () => {
      done();
      reject(new Error('a thread beside the server has ended'));
    };
    thread.on('message', answered);
    thread.on('error', failed);
    thread.on('exit', ended);
    thread.postMessage(question);
  });
}
