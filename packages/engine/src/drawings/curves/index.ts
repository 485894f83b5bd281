export { choicePlot, type ChoicePoint } from './choice-plot.ts';
export { pumpPlot } from './pump-plot.ts';
export { reachPlot } from './reach-plot.ts';
export { tankPlot, type DayAsked } from './tank-plot.ts';
export { dayPlot } from './day-plot.ts';
export type { CurveOptions } from './plot.ts';
