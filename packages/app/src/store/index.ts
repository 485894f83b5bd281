export { openRecords, type Records } from './records.ts';
export { copyLines, layCopy } from './copy.ts';
export { Refusal } from './refusal.ts';
export type { Job, JobHead } from './job.ts';
export { listJobs, makeJob, openJob } from './jobs.ts';
export { editJob, editsAfter } from './job-edits.ts';
export { moveStock, movedStock, movementsOf, STOCK_REASONS, type StockReason } from './stock.ts';
export { addDoing, listDoings } from './doings.ts';
export type { DoingRow as Doing } from './people-tables.ts';
