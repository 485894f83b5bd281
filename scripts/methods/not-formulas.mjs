// Public functions that compute no formula, with what they are. A new public function without a @formula fails the
// check until it has one or stands here, and an entry that has gone fails it too.
export const NOT_FORMULAS = {
  // Guards of the formulas.
  inRange: 'guard',
  rangeProblem: 'guard',
  listInRange: 'guard',
  sameLength: 'guard',
  oneOfChoices: 'guard',
  // Found by name.
  liquidOf: 'look-up',
  materialOf: 'look-up',
  sourceOf: 'look-up',
  citation: 'look-up',
  normalShareBelow: 'look-up',
  // Decided from tables; each answer carries its own sources or reasons.
  agitationNeed: 'decision',
  ventDemands: 'decision',
  flushDemand: 'decision',
  galvanicPair: 'decision',
  galvanicPairs: 'decision',
  brassUpstreamOfAluminium: 'decision',
  mustNotMeet: 'decision',
  forbiddenMeetings: 'decision',
  materialResistance: 'decision',
  worstResistance: 'decision',
  sealChoice: 'decision',
  strainerAdvice: 'decision',
  tankMixOrder: 'decision',
  tankRatingFor: 'decision',
  // Choose among documented formulas and put their answers together.
  liquidProperties: 'composition',
  countedStrength: 'composition',
  recipe: 'composition',
  thinnedWithWater: 'composition',
  compileNetwork: 'composition',
  solveNetwork: 'composition',
  // Polynomials through exact solves.
  surfaceGrid: 'composition',
  gridPoint: 'composition',
  fitSurface: 'composition',
  evaluateSurface: 'composition',
  readNetwork: 'reader',
};
