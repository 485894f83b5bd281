import type { DeskStore } from './desk-store.ts';

interface Refusal {
  readonly detail?: string;
}

/** Asks the server for the quote of the rig as it stands, and hands the PDF to the browser to be saved. */
export async function downloadQuote(store: DeskStore): Promise<void> {
  const rig = store.job()?.rig;
  if (rig === undefined) return;
  store.fail(undefined);
  try {
    const response = await fetch('/api/quote.pdf', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ rig, units: store.state().units }),
    });
    if (!response.ok) {
      const refusal = (await response.json().catch(() => ({}))) as Refusal;
      store.fail(`No quote was written: ${refusal.detail ?? `the server answered ${response.status}`}`);
      return;
    }
    const address = URL.createObjectURL(await response.blob());
    const link = document.createElement('a');
    link.href = address;
    link.download = `quote-${rig.id}.pdf`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(address), 60_000);
  } catch {
    store.fail('No quote was written: the server cannot be reached. The rig is kept on this sheet.');
  }
}
