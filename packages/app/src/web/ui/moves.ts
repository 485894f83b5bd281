import type { PointerEvent } from 'react';
import type { DeskStore } from '../state/desk-store.ts';

/**
 * Handlers of a pointer that moves. `pointermove` waits for the next frame, and an answer to it for the one after; where the
 * browser tells a move as soon as the device does, the engine is asked at once and mostly has answered when the frame begins.
 * While it still works on the move before, a move waits for the frame: of several, only the newest is worth an answer.
 */
export function moves<T>(store: DeskStore, move: (event: PointerEvent<T>) => void) {
  return {
    onPointerMove: move,
    onPointerRawUpdate: (event: PointerEvent<T>) => {
      if (store.isIdle()) move(event);
    },
  };
}
