export { openRecords, type Records } from './records.ts';
export { copyLines, layCopy } from './copy.ts';
export { Refusal } from './refusal.ts';
export type { Job, JobHead } from './job.ts';
export type { Place } from './found-by.ts';
export { listJobs, makeJob, openJob } from './jobs.ts';
export {
  countMovements,
  moveStock,
  movedOf,
  movedStock,
  movementsOf,
  STOCK_REASONS,
  type StockMovement,
  type StockReason,
} from './stock.ts';
export { asksOf, countAsk } from './asks.ts';
export { addDoing, listDoings } from './doings.ts';
export type { DoingRow as Doing } from './people-tables.ts';
export { editJob, editsAfter, jobAtVersion } from './job-edits.ts';
export type { Machine, MachineDocument, MachineEntry, NewEntry } from './machine.ts';
export { listMachines, makeMachine, openMachine } from './machines.ts';
export {
  addPerson,
  endSessions,
  hasOwner,
  keptPeople,
  listPeople,
  personOf,
  removePerson,
  setPassword,
  signedInBy,
  setRole,
} from './people.ts';
export { FIRST_OWNER, linkOf, makeLink, useLink, type OneTimeLink } from './one-time-links.ts';
export { addEntries, entriesAfter, entriesOfKinds } from './machine-entries.ts';
export { recallOf, type Recalled } from './recall.ts';
export { QUOTE_STATES } from './quote-tables.ts';
export {
  findQuote,
  findRevision,
  listQuotes,
  listRevisions,
  makeQuote,
  reviseQuote,
  type Freeze,
  type Revision,
} from './quotes.ts';
export { catalogueEdition, catalogueOn, type KeptCatalogue } from './catalogue.ts';
export { changeCatalogue, layFirstCatalogue, type CatalogueChange } from './catalogue-change.ts';
export { shopEditions } from './shop-editions.ts';
export { listParts, openPart } from './parts.ts';
export {
  answerQuestion,
  askAboutQuote,
  markSent,
  quoteEvents,
  settleQuote,
  withdrawQuote,
  type QuoteEvent,
} from './quote-events.ts';
export { firstOpened, linksOf, makeQuoteLink, newToken, openedBy, revokeLink } from './quote-links.ts';
export { usesOfPart } from './part-uses.ts';
export {
  addFindings,
  askReproof,
  countOpenQuotes,
  findingsOf,
  listReproofs,
  moveReproof,
  openQuotes,
  reproofsLeft,
  takeReproof,
  type OpenQuote,
  type Reproof,
  type ReproofFinding,
} from './reproofs.ts';
export { JOB_MARKS, JOB_STATES, jobStandings, markJob, type StandingsEnd } from './job-standing.ts';
export { soldRigOf, type SoldRig } from './sold-rig.ts';
export { buildsToDo, type BuildToDo } from './builds.ts';
export { writtenMachines, writtenMark, type WrittenMachine } from './written-machines.ts';
