import type { Layout } from '@spraywright/engine/catalogue';

/** What a slot is called in the families of a catalogue; its id where none of them has it. */
export function slotNameIn(layouts: readonly Layout[], id: string): string {
  return layouts.flatMap((l) => l.slots).find((s) => s.id === id)?.name ?? id;
}
