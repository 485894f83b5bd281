import { drawing, PALETTES, stateMark } from '@spraywright/engine/drawings';
import type { PromiseState } from '@spraywright/engine/rig';
import { memo } from 'react';
import { useDesk } from './desk-context.ts';
import { imageOf } from './image-of.ts';

/** Size in which it is drawn [px]. */
const DRAWN = 16;

/** The mark of a state; hidden from readers, the word stands beside it. */
export const Mark = memo(function Mark({ state }: { state: PromiseState }) {
  const sheet = useDesk((s) => (s.printing ? 'print' : s.sheet));
  const svg = drawing(DRAWN, DRAWN, '', stateMark(state, DRAWN / 2, DRAWN / 2, PALETTES[sheet]));
  return <span className="mark" style={{ backgroundImage: imageOf(svg) }} aria-hidden="true" />;
});

export function Balloon({ number, lit }: { number: number; lit?: boolean }) {
  return <span className={lit === true ? 'balloon lit' : 'balloon'}>{number}</span>;
}
