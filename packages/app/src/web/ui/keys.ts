import type { DeskStore } from '../state/desk-store.ts';

/** Keys that work anywhere on the sheet. */
export function listenToKeys(store: DeskStore): void {
  document.addEventListener('keydown', (event) => {
    if (event.defaultPrevented || event.altKey) return;
    const command = event.ctrlKey || event.metaKey;
    if (command) {
      const key = event.key.toLowerCase();
      if (key === 'z' && !event.shiftKey) store.undo();
      else if (key === 'y' || (key === 'z' && event.shiftKey)) store.redo();
      else return;
      event.preventDefault();
      return;
    }
    if (typing(event.target)) return;
    if (event.key === '[' || event.key === ']') turnDuty(store, event.key === ']' ? 1 : -1);
    else if (event.key === 'Escape' && store.state().slot !== undefined) store.setSlot(undefined);
    else if (event.key === '0') store.list(true);
    else if (event.key === '/') document.querySelector<HTMLElement>('.part-find input')?.focus();
    else if (/^[1-9]$/.test(event.key)) {
      const brief = store.state().briefs[Number(event.key) - 1];
      if (brief === undefined) return;
      store.open(brief.id);
    } else return;
    event.preventDefault();
  });
}

function turnDuty(store: DeskStore, by: number): void {
  const { body } = store.state();
  if (body === undefined) return;
  const at = body.duties.findIndex((d) => d.id === body.duty);
  const next = body.duties[(at + by + body.duties.length) % body.duties.length];
  if (next !== undefined) store.setDuty(next.id);
}

function typing(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.matches('input, select, textarea');
}
