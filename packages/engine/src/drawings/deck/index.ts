export { deckPlanOf, DECK_LAYERS, type DeckFigure, type DeckLayer, type DeckPlan } from './deck-figures.ts';
export { deckPlan } from './deck-plan.ts';
