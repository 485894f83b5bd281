export * from './port.ts';
export * from './part.ts';
export {
  catalogueOf,
  partOf,
  readCatalogue,
  readPart,
  type Catalogue,
  type CatalogueProblem,
} from './catalogue.ts';
export { withMoved } from './on-hand.ts';
export * from './own-part.ts';
export { curveFaults } from './pump-curve.ts';
export { frozenPart, withFrozenParts, type FrozenPart } from './frozen-parts.ts';
export * from './adapters.ts';
export * from './shop.ts';
export * from './works.ts';
export { WET_KINDS } from './wet-kinds.ts';
export type { Layout, LayoutLine, Slot } from './layout.ts';
export { readLayout } from './read-layout.ts';
export { LAYOUT_DOCUMENTS } from './layouts.data.ts';
export { LAYOUTS } from './layouts.ts';
export { roleOf, slotIn } from './slot-role.ts';
