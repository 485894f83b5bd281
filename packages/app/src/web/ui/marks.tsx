import { PALETTES, stateMark } from '@spraywright/engine/drawings';
import type { PromiseState } from '@spraywright/engine/rig';
import { memo } from 'react';
import { useDesk } from './desk-context.ts';

const drawn = new Map<string, string>();

/** The mark of a state; hidden from readers, the word stands beside it. */
export const Mark = memo(function Mark({ state, size = 16 }: { state: PromiseState; size?: number }) {
  const sheet = useDesk((s) => (s.printing ? 'print' : s.sheet));
  const key = `${sheet} ${state}`;
  const svg = drawn.get(key) ?? stateMark(state, 8, 8, PALETTES[sheet]);
  drawn.set(key, svg);
  return (
    <svg
      className="mark"
      width={size}
      height={size}
      viewBox="0 0 16 16"
      aria-hidden="true"
      dangerouslySetInnerHTML={{ __html: svg }}
    />
  );
});

export function Balloon({ number, lit }: { number: number; lit?: boolean }) {
  return <span className={lit === true ? 'balloon lit' : 'balloon'}>{number}</span>;
}
