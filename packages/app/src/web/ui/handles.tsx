import { useEffect, useRef, useState, type KeyboardEvent, type PointerEvent } from 'react';
import type { Handle } from '../protocol.ts';
import { pathOf, valueAt } from '@spraywright/engine/quantity';
import { useStore } from './desk-context.ts';
import { moves } from './moves.ts';

/** What can be dragged in a drawing, each a slider for the keyboard and for readers. */
export function Handles({ list }: { list: readonly Handle[] | undefined }) {
  return (
    <>
      {list?.map((handle) => (
        <HandleGrip key={handle.id} handle={handle} />
      ))}
    </>
  );
}

interface Drag {
  readonly x: number;
  readonly y: number;
  readonly from: Handle;
}

function HandleGrip({ handle }: { handle: Handle }) {
  const store = useStore();
  const drag = useRef<Drag | undefined>(undefined);
  const [from, setFrom] = useState<Handle | undefined>(undefined);
  const latest = useRef(handle);
  useEffect(() => {
    latest.current = handle;
  });
  const { x, y, width, height, axis, value, min, max, unit, decimals, told, item } = handle;
  const light = (on: boolean) => store.setLit(on ? item : undefined);
  const put = (next: number, nextAlong?: number) => {
    const { path, within, label, along } = latest.current;
    const text = (value: number, low: number, high: number) =>
      `${Math.max(low, Math.min(high, value)).toFixed(decimals)} ${unit}`;
    const steps = pathOf(path);
    const old = valueAt(store.job()?.rig, steps);
    const whole =
      within === undefined
        ? text(next, min, max)
        : {
            ...(old as object | undefined),
            [within]: text(next, min, max),
            ...(along === undefined || nextAlong === undefined
              ? {}
              : { [along.within]: text(nextAlong, along.min, along.max) }),
          };
    store.edit({ about: label, puts: [{ path: steps, value: whole }] }, `drag ${path}`);
  };
  // A handle that goes in the middle of a drag lets go.
  useEffect(
    () => () => {
      if (drag.current !== undefined) store.letGo();
    },
    [store],
  );
  const end = (left = false) => {
    if (drag.current === undefined) return;
    drag.current = undefined;
    // Pressed and not moved: its slot is opened, as where a part is pressed in a drawing.
    if (from === undefined && item !== undefined && !left) store.setSlot(item);
    setFrom(undefined);
    store.settle();
    store.letGo();
  };
  const onPointerDown = (event: PointerEvent<HTMLElement>) => {
    if (event.button !== 0) return;
    event.preventDefault();
    event.currentTarget.focus({ preventScroll: true });
    event.currentTarget.setPointerCapture(event.pointerId);
    drag.current = { x: event.clientX, y: event.clientY, from: handle };
  };
  const onPointerMove = (event: PointerEvent) => {
    const d = drag.current;
    if (d === undefined) return;
    const [dx, dy] = [event.clientX - d.x, event.clientY - d.y];
    const by = axis === 'x' ? dx : dy;
    if (from === undefined && by === 0 && (d.from.along === undefined || dx === 0)) return;
    if (from === undefined) {
      setFrom(d.from);
      if (d.from.keeps !== undefined) store.hold(d.from.keeps);
    }
    const { along } = d.from;
    put(d.from.value + by * d.from.perPixel, along && along.value + dx * along.perPixel);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const { step } = handle;
    const by = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1, PageUp: 10, PageDown: -10 }[
      event.key
    ];
    if (by !== undefined) put(value + by * step * (event.shiftKey ? 10 : 1));
    else if (event.key === 'Home') put(min);
    else if (event.key === 'End') put(max);
    else if (event.key === 'Escape' && drag.current !== undefined) {
      put(drag.current.from.value, drag.current.from.along?.value);
      end(true);
    } else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <>
      {from !== undefined && (
        <span className={`handle-from ${axis}`} style={{ left: from.x, top: from.y }} aria-hidden="true">
          {difference(value - from.value, decimals, unit)}
        </span>
      )}
      <span
        className={`handle ${axis}`}
        role="slider"
        tabIndex={0}
        data-handle={handle.id}
        aria-label={handle.label}
        aria-orientation={axis === 'x' ? 'horizontal' : 'vertical'}
        aria-valuemin={rounded(min, decimals)}
        aria-valuemax={rounded(max, decimals)}
        aria-valuenow={rounded(value, decimals)}
        aria-valuetext={`${value.toFixed(decimals)} ${unit}; ${told}`}
        title={handle.label}
        style={{ left: x, top: y, width, height }}
        onPointerDown={onPointerDown}
        {...moves(store, onPointerMove)}
        onPointerUp={() => end()}
        onPointerCancel={() => end(true)}
        onKeyDown={onKeyDown}
        onPointerEnter={() => light(true)}
        onPointerLeave={() => light(false)}
        onFocus={() => light(true)}
        onBlur={() => {
          light(false);
          store.settle();
        }}
      >
        <svg width="18" height="8" viewBox="0 0 18 8" aria-hidden="true">
          <path d="M0 4L6 1v6ZM18 4L12 1v6Z" />
        </svg>
      </span>
    </>
  );
}

function rounded(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}

function difference(by: number, decimals: number, unit: string): string {
  const size = Math.abs(by).toFixed(decimals);
  return `${by < 0 ? '−' : '+'}${size} ${unit}`;
}
