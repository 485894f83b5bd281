import type { MachineState } from './machine-keeper.ts';

/** Says where what was written down is: on this device, on its way, or in the records. */
export function KeepingNote({ state }: { state: MachineState }) {
  const { keeping, waiting, onDevice } = state;
  const n = waiting.length;
  const things = n === 1 ? '1 entry' : `${n} entries`;
  return (
    <p className="keeping" role="status" data-keeping={keeping.is}>
      {!onDevice && <b>This browser keeps nothing: do not close the page before everything is sent. </b>}
      {keeping.is === 'asking' && 'Asking the records.'}
      {keeping.is === 'sending' && `Sending ${things}.`}
      {keeping.is === 'kept' && (n === 0 ? 'Everything is in the records.' : `${things} to send.`)}
      {keeping.is === 'away' &&
        (n === 0
          ? 'No network. What you write down stays on this device and is sent later.'
          : `No network. ${things} on this device, sent when the network is back.`)}
      {keeping.is === 'refused' &&
        `The records refuse: ${keeping.why}. ${n === 0 ? '' : `${things} stay on this device.`}`}
    </p>
  );
}
