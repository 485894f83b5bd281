/** A slot with a number behind its name does the same as the one without: `gun-2` is the gun of a second line. */
export function roleOf(slot: string): string {
  // Asked millions of times by a search, of names that seldom end in a number.
  return isDigit(slot.charCodeAt(slot.length - 1)) ? slot.replace(/-\d+$/, '') : slot;
}

function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

/** The number of a slot; '' when it has none. */
export function numberOf(slot: string): string {
  return /-\d+$/.exec(slot)?.[0] ?? '';
}

/** The slot of a line that does a job: the `gun` of a second gun line is `gun-2`. */
export function slotIn(run: readonly string[], role: string): string | undefined {
  return run.find((slot) => roleOf(slot) === role);
}
