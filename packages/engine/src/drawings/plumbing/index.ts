export { plumbingDiagram, type PlumbingOptions } from './plumbing-diagram.ts';
export {
  plumbingGraph,
  symbolPlace,
  type PlumbingGraph,
  type PlumbingLayout,
  type PlumbingRun,
} from './plumbing-graph.ts';
