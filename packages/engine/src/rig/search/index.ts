export { searchRigs, type Choices, type SearchOptions, type SearchProgress } from './search.ts';
export type { Choice } from './front.ts';
export type { Figures } from './figures.ts';
export { groupsOf, type ChoiceGroup } from './groups.ts';
export { setsOfParts, type OneSet, type SetsOfParts } from './enumerate.ts';
export { whyNot, type SmallestRelaxation, type WhyNot, type WhyNotOptions } from './why-not.ts';
export { cheapestOf, linearParts, type Cheapest, type LinearPart } from './linear-part.ts';
export { settledText, withinText } from './settled-text.ts';
