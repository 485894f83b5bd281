export { BILL_GROUPS } from './groups.ts';
export { billFor, wholeFeet, type Bill } from './bill.ts';
export type { BillLine } from './bill-line.ts';
export type { HardwareNeed } from './hardware.ts';
export type { HoseCut } from './hoses.ts';
export { ordersFor, ordersOf, type Order } from './orders.ts';
export { priceBy, pricingOf, type Discount, type Tax } from './pricing.ts';
export { buildCalendar, type BuildPlan, type PlannedBuild, type WeekOfBuilds } from './build-calendar.ts';
export { workingDaysAfter } from './working-days.ts';
