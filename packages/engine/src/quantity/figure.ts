/** A number as typed at the start of a text, and what follows it. */
export interface Figure {
  readonly value: number;
  readonly rest: string;
  /** "1,200" may be twelve hundred or 1.2: the second reading, in plain writing. */
  readonly decimalReading?: string;
}

const FRACTION = /^(?:(\d{1,9})(?: ?- ?| ))?(\d{1,9}) ?\/ ?(\d{1,9})(?![\d.,])/;
const DECIMAL = /^(\d{1,3}(?: \d{3})+(?:[.,]\d+)?(?!\d)|\d[\d.,]*|[.,]\d+)(?:[eE]([+-]?\d{1,4})(?![\d.]))?/;

/**
 * Reads a number the way people type it: 12, -5, 1.5, 3/4, 1 1/2, 1-1/2, 2e5, 1,200, 1.200,5, 1 200.
 *
 * Separators. Where both "," and "." stand, the last is the decimal mark and the other groups thousands. A mark
 * that stands several times groups thousands. One "." is a decimal point. One "," before exactly three digits and
 * behind one to three digits that do not begin with 0 groups thousands, otherwise it is a decimal comma. A space
 * before three digits groups thousands. Groups must be of three.
 *
 * @returns undefined when the text does not begin with a number, or the number contradicts itself
 */
export function readFigure(text: string): Figure | undefined {
  const signed = /^([+-]?) ?(?=[\d.,])/.exec(text);
  if (signed === null) return undefined;
  const sign = signed[1] === '-' ? -1 : 1;
  const unsigned = text.slice(signed[0].length);

  const fraction = FRACTION.exec(unsigned);
  if (fraction !== null) {
    const [matched, whole, above, below] = fraction;
    const value = Number(whole ?? 0) + Number(above) / Number(below);
    if (!Number.isFinite(value) || (whole !== undefined && Number(above) >= Number(below))) return undefined;
    return { value: sign * value, rest: unsigned.slice(matched.length) };
  }
  const decimal = DECIMAL.exec(unsigned);
  if (decimal === null) return undefined;
  const [matched, digits = '', exponent] = decimal;
  const plain = plainDigits(digits.replaceAll(' ', ''));
  if (plain === undefined) return undefined;
  const value = sign * Number(exponent === undefined ? plain : `${plain}e${exponent}`);
  // A number too small for a double must not pass as 0.
  if (value === 0 && /[1-9]/.test(plain)) return undefined;
  const rest = unsigned.slice(matched.length);
  if (!/^\d{1,3},\d{3}$/.test(digits) || digits.startsWith('0')) return { value, rest };
  return { value, rest, decimalReading: String(sign * Number(digits.replace(',', '.'))) };
}

/** The digits with a decimal point and no separators, or undefined when the separators make no sense. */
function plainDigits(digits: string): string | undefined {
  const marks = digits.replaceAll(/\d/g, '');
  if (marks === '' || marks === '.') return digits;
  if (marks === ',') {
    return /^[1-9]\d{0,2},\d{3}$/.test(digits) ? digits.replace(',', '') : digits.replace(',', '.');
  }
  const last = marks.at(-1) === '.' ? '.' : ',';
  const grouping = marks.startsWith('.') ? '.' : ',';
  const decimalMark = last === grouping ? '' : last;
  const [whole = '', fraction = ''] = decimalMark === '' ? [digits] : digits.split(decimalMark);
  const groups = whole.split(grouping);
  const wellGrouped = groups.every((g, i) => (i === 0 ? /^[1-9]\d{0,2}$/ : /^\d{3}$/).test(g));
  const once = decimalMark === '' || digits.split(decimalMark).length === 2;
  return wellGrouped && once && groups.length > 1 ? `${groups.join('')}.${fraction}` : undefined;
}
