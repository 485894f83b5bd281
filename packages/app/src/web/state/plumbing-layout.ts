import type { PlumbingGraph, PlumbingLayout } from '@spraywright/engine/drawings';
import ELK from 'elkjs/lib/elk-api.js';
import { layPlumbing } from '../../plumbing/lay-plumbing.ts';

let kernel: InstanceType<typeof ELK> | undefined;

/** Lays a plumbing out in a worker of its own, which is loaded the first time that a plumbing is looked at. */
export function layInPage(graph: PlumbingGraph): Promise<PlumbingLayout> {
  kernel ??= new ELK({
    workerFactory: () =>
      new Worker(new URL('elkjs/lib/elk-worker.min.js', import.meta.url), { type: 'module' }),
  });
  return layPlumbing(graph, kernel);
}
