import 'react';

declare module 'react' {
  interface DOMAttributes<T> {
    /** A move as soon as the device tells it, where the browser has the event: the specification Pointer Events 3. */
    onPointerRawUpdate?: PointerEventHandler<T>;
  }
}
