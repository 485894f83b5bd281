/**
 * The working day a number of working days before a day: Monday to Friday, no holidays known.
 *
 * @param day a day such as 2026-03-03
 * @param days working days before it, 0 or more; with 0 a Saturday or Sunday becomes the Friday before
 * @returns a day such as 2026-02-27
 * @throws RangeError when the text is not a day of the calendar
 */
export function workingDaysBefore(day: string, days: number): string {
  let number = dayNumber(day);
  while (isWeekend(number)) number--;
  for (let left = days; left > 0; left--) {
    number--;
    while (isWeekend(number)) number--;
  }
  return dayText(number);
}

/**
 * The working day a number of working days after a day: Monday to Friday, no holidays known.
 *
 * @param day a day such as 2026-03-03
 * @param days working days after it, 0 or more; with 0 a Saturday or Sunday becomes the Monday after
 * @returns a day such as 2026-03-06
 * @throws RangeError when the text is not a day of the calendar
 */
export function workingDaysAfter(day: string, days: number): string {
  let number = dayNumber(day);
  while (isWeekend(number)) number++;
  for (let left = days; left > 0; left--) {
    number++;
    while (isWeekend(number)) number++;
  }
  return dayText(number);
}

/**
 * The Monday of the week that a day is in.
 *
 * @param day a day such as 2026-03-03
 * @returns a day such as 2026-03-02
 * @throws RangeError when the text is not a day of the calendar
 */
export function mondayOf(day: string): string {
  const number = dayNumber(day);
  return dayText(number - ((((number + 3) % 7) + 7) % 7));
}

/** 1970-01-01, a Thursday, is 0. */
function isWeekend(number: number): boolean {
  return (((number + 4) % 7) + 7) % 7 === 0 || (((number + 4) % 7) + 7) % 7 === 6;
}

/** Days since 1970-01-01 of the Gregorian calendar. */
function dayNumber(text: string): number {
  const found = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  const [year, month, day] = found === null ? [0, 0, 0] : found.slice(1).map(Number);
  const number = civilDays(year!, month!, day!);
  if (found === null || month! < 1 || month! > 12 || dayText(number) !== text)
    throw new RangeError(`day is '${text}'; a day such as 2026-03-03 was expected`);
  return number;
}

/** Years begin in March, so that the leap day is the last; a leap day in 4, not in 100, in 400 years. */
function civilDays(year: number, month: number, day: number): number {
  const y = month > 2 ? year : year - 1;
  const dayOfYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + day - 1;
  return y * 365 + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400) + dayOfYear - 719468;
}

function dayText(number: number): string {
  const days = number + 719468;
  const era = Math.floor(days / 146097);
  const inEra = days - era * 146097;
  const yearInEra = Math.floor(
    (inEra - Math.floor(inEra / 1460) + Math.floor(inEra / 36524) - Math.floor(inEra / 146096)) / 365,
  );
  const inYear = inEra - (365 * yearInEra + Math.floor(yearInEra / 4) - Math.floor(yearInEra / 100));
  const fromMarch = Math.floor((5 * inYear + 2) / 153);
  const day = inYear - Math.floor((153 * fromMarch + 2) / 5) + 1;
  const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9;
  const year = yearInEra + era * 400 + (month <= 2 ? 1 : 0);
  return [String(year).padStart(4, '0'), pad(month), pad(day)].join('-');
}

function pad(n: number): string {
  return String(n).padStart(2, '0');
}
