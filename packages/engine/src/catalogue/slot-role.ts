/** A slot with a number behind its name does the same as the one without: `gun-2` is the gun of a second line. */
export function roleOf(slot: string): string {
  return slot.replace(/-\d+$/, '');
}

/** The number of a slot; '' when it has none. */
export function numberOf(slot: string): string {
  return /-\d+$/.exec(slot)?.[0] ?? '';
}

/** The slot of a line that does a job: the `gun` of a second gun line is `gun-2`. */
export function slotIn(run: readonly string[], role: string): string | undefined {
  return run.find((slot) => roleOf(slot) === role);
}
