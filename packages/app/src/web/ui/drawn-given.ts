import type { PointerEvent } from 'react';
import type { DeskStore } from '../state/desk-store.ts';
import { pathOf } from '@spraywright/engine/quantity';
import { stepped } from '../state/stepped.ts';
import { typedValue } from '../state/typed-value.ts';
import type { Given } from '../protocol.ts';

/** Pixels of a drag that are one step. */
const STEP_PIXELS = 5;

/** A boxed value of a drawing under the pointer. */
export interface DrawnGiven {
  readonly move: (event: PointerEvent) => void;
  readonly end: () => void;
}

/**
 * The brief's value that is boxed in a drawing at the pointer: dragging right or up raises it, pressing goes to its box in
 * the brief. Undefined where there is no box, or when several values of the brief read alike.
 */
export function drawnGiven(event: PointerEvent, store: DeskStore): DrawnGiven | undefined {
  const text = boxedText(event.target);
  const alike = (store.state().body?.prose ?? [])
    .flat()
    .filter((piece): piece is Given => typeof piece !== 'string' && piece.shown === text);
  const given = alike.length === 1 ? alike[0] : undefined;
  if (given === undefined) return undefined;
  const { clientX, clientY } = event;
  let moved = false;
  return {
    move: (now) => {
      if (now.pointerType === 'touch') return;
      const by = Math.trunc((now.clientX - clientX - (now.clientY - clientY)) / STEP_PIXELS);
      if (by === 0 && !moved) return;
      moved = true;
      const next = stepped(given.shown, by * (now.shiftKey ? 10 : 1));
      if (next === undefined) return;
      const value = typedValue(given, next, given.shown);
      store.edit({ about: given.label, puts: [{ path: pathOf(given.path), value }] }, given.path);
    },
    end: () => {
      if (moved) store.settle();
      else document.querySelector<HTMLElement>(`[data-path="${given.path}"]`)?.focus();
    },
  };
}

/** The text of the box that an element belongs to: boxes are rectangles with their text behind them. */
function boxedText(target: EventTarget): string | undefined {
  if (!(target instanceof Element)) return undefined;
  const text = target.closest('text');
  if (text !== null) return text.previousElementSibling?.tagName === 'rect' ? textOf(text) : undefined;
  const next = target.nextElementSibling;
  return target.tagName === 'rect' && next?.tagName === 'text' ? textOf(next) : undefined;
}

function textOf(element: Element): string {
  return (element.textContent ?? '').trim();
}
