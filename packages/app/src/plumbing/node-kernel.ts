import ELK from 'elkjs/lib/elk.bundled.js';
import type { LayoutKernel } from './lay-plumbing.ts';

/** The layout kernel within Node, for papers. */
export function nodeKernel(): LayoutKernel {
  return new ELK.default();
}
