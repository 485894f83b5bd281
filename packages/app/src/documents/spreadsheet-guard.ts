/** A cell of a table in which a spreadsheet runs nothing: a text that looks like a formula is marked as text; a number stays. */
export function guardedCell(cell: string | number): string | number {
  return typeof cell === 'string' && /^[=+\-@\t\r\n＝＋－＠]/.test(cell) ? `'${cell}` : cell;
}
