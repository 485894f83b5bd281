import type { UnitSystem } from '@spraywright/engine/quantity';
import { useEffect, useState } from 'react';
import type { MachineState } from '../machine-keeper.ts';
import type { AskedMachine, FromMachine, Questions, ToMachine, Topic } from './protocol.ts';

let worker: Worker | undefined;
let asked = 0;
const waiting = new Map<number, (answer: FromMachine) => void>();

/** What the engine told, or why it cannot. */
export type Told<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: string };

/** Asks the engine about a machine. */
export function askMachine<T extends Topic>(
  topic: T,
  machine: AskedMachine,
  asks: Questions[T]['asks'],
): Promise<Told<Questions[T]['tells']>> {
  worker ??= started();
  const id = ++asked;
  return new Promise((tell) => {
    waiting.set(id, ({ tells, why }) => {
      waiting.delete(id);
      tell(why === undefined ? { ok: true, value: tells as Questions[T]['tells'] } : { ok: false, why });
    });
    const address = new URL('start.json', document.baseURI).href;
    worker!.postMessage({ id, address, topic, machine, asks } satisfies ToMachine);
  });
}

function started(): Worker {
  const made = new Worker(new URL('./machine-worker.ts', import.meta.url), { type: 'module' });
  made.onmessage = ({ data }: MessageEvent<FromMachine>) => waiting.get(data.id)?.(data);
  return made;
}

/** A machine as it stands on this device, ready to be asked about; undefined before it has been fetched once. */
export function askedOf({ machine, entries, waiting: unsent }: MachineState, units: UnitSystem) {
  if (machine === undefined) return undefined;
  const { serial, document } = machine;
  const instead = [...entries, ...unsent].filter((e) => e.kind === 'substitution').map((e) => e.document);
  return { serial, document, instead, units } satisfies AskedMachine;
}

/** An answer, and whether it is one to what is asked now: the last stays until the next is there. */
export type ToldOf<T> = Told<T> & { readonly current: boolean };

/** What the engine tells of a machine, told anew when what is asked or the machine changes; undefined before the first answer. */
export function useTold<T extends Topic>(
  topic: T,
  machine: AskedMachine | undefined,
  asks: Questions[T]['asks'] | undefined,
): ToldOf<Questions[T]['tells']> | undefined {
  const [told, setTold] = useState<{ readonly key: string; readonly answer: Told<Questions[T]['tells']> }>();
  const key = JSON.stringify([machine?.serial, machine?.units, machine?.instead.length, asks]);
  useEffect(() => {
    if (machine === undefined || asks === undefined) return;
    let wanted = true;
    void askMachine(topic, machine, asks).then((answer) => {
      if (wanted) setTold({ key, answer });
    });
    return () => {
      wanted = false;
    };
    // The key stands for everything that is asked.
  }, [key]);
  return told === undefined ? undefined : { ...told.answer, current: told.key === key };
}
