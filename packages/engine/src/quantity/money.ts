/** From this many cents on, a price is said in whole dollars. */
const WHOLE_FROM = 10_000;

/** What is to be paid, to the cent: "$1,180", "$1,180.50", "−$35". Cents are left out only where there are none. */
export function moneyText(cents: number): string {
  return signed(cents, figure(cents, cents % 100 !== 0));
}

/** A price as it is said: "$1,180" for 118 049 cents; below a hundred dollars with its cents, "$7.40". */
export function priceText(cents: number): string {
  const step = Math.abs(cents) < WHOLE_FROM ? 1 : 100;
  return moneyText(Math.sign(cents) * Math.round(Math.abs(cents) / step) * step);
}

/** What a change does to a price: "+$120", "−$35"; "$0" where it does nothing. */
export function priceChangeText(cents: number): string {
  return `${cents > 0 ? '+' : ''}${priceText(cents)}`;
}

/** An amount in a column whose head names the currency: "1,180.00", "−35.20". */
export function amountText(cents: number): string {
  return signed(cents, figure(cents, true), '');
}

function signed(cents: number, unsigned: string, sign = '$'): string {
  return `${cents < 0 ? '\u2212' : ''}${sign}${unsigned}`;
}

/** @throws RangeError for anything but whole cents: a sum that is not known must be said in words */
function figure(cents: number, withCents: boolean): string {
  if (!Number.isSafeInteger(cents))
    throw new RangeError(`money to show is ${cents} cents; it must be whole cents`);
  const size = Math.abs(cents);
  const whole = String(Math.trunc(size / 100)).replaceAll(/\B(?=(\d{3})+$)/g, ',');
  return withCents ? `${whole}.${String(size % 100).padStart(2, '0')}` : whole;
}
