import { memo, useEffect, useLayoutEffect, useRef, type PointerEvent } from 'react';
import { useStore } from './desk-context.ts';
import { drawnGiven, type DrawnGiven } from './drawn-given.ts';
import { moves } from './moves.ts';
import { redraw } from './redraw.ts';

/**
 * A drawing from the engine; its parts light up the same parts elsewhere and open their slots
 * when pressed; its boxed values are pressed or dragged like those of the brief.
 */
export const Picture = memo(function Picture({
  svg,
  className,
  onItem,
}: {
  svg: string;
  className: string;
  /** What pressing a part does; its slot is opened when nothing is said. */
  onItem?: (item: string) => void;
}) {
  const store = useStore();
  const itemAt = (target: EventTarget) =>
    target instanceof Element
      ? (target.closest('[data-item]')?.getAttribute('data-item') ?? undefined)
      : undefined;
  const drag = useRef<DrawnGiven | undefined>(undefined);
  const holder = useRef<HTMLDivElement>(null);
  const pieces = useRef<readonly string[] | undefined>(undefined);
  useLayoutEffect(() => {
    pieces.current = redraw(holder.current!, svg, pieces.current);
  }, [svg]);
  return (
    <div
      ref={holder}
      className={`picture ${className}`}
      onPointerDown={(event) => {
        drag.current = drawnGiven(event, store);
        if (drag.current !== undefined && event.pointerType !== 'touch')
          event.currentTarget.setPointerCapture(event.pointerId);
      }}
      {...moves(store, (event) => drag.current?.move(event))}
      onPointerUp={() => {
        drag.current?.end();
        drag.current = undefined;
      }}
      onPointerCancel={() => {
        drag.current = undefined;
      }}
      onPointerOver={(event: PointerEvent) => {
        if (event.pointerType !== 'touch') store.setLit(itemAt(event.target));
      }}
      onPointerLeave={() => store.setLit(undefined)}
      onClick={(event) => {
        const item = itemAt(event.target);
        if (item !== undefined) (onItem ?? ((i: string) => store.setSlot(i)))(item);
      }}
    />
  );
});

/** Narrower, it is hidden or not laid out yet, and nothing can be drawn to it [px]. */
const NARROWEST = 48;

/** Tells an element's width, and its height where that is wanted, whenever it changes. */
export function useSize<T extends HTMLElement>(tell: (width: number, height: number) => void) {
  const ref = useRef<T>(null);
  const latest = useRef(tell);
  useEffect(() => {
    latest.current = tell;
  });
  useEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => {
      if (element.clientWidth >= NARROWEST) latest.current(element.clientWidth, element.clientHeight);
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return ref;
}
