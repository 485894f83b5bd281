/** Cents as people read a price: "$1,180", or "$7.40" below a hundred dollars when there are cents. */
export function money(cents: number): string {
  const fine = Math.abs(cents) < 10_000 && cents % 100 !== 0;
  const text = (Math.abs(cents) / 100).toFixed(fine ? 2 : 0).replace(/\B(?=(\d{3})+(?!\d))/g, ',');
  return `${cents < 0 ? '−' : ''}$${text}`;
}

/** A change of price with its sign; nothing changed is "$0". */
export function moneyChange(cents: number): string {
  return cents > 0 ? `+${money(cents)}` : money(cents);
}
