import type { Outlet } from '@spraywright/engine/catalogue';

/** Outlets as a builder says them. */
export const OUTLET_WORDS: Readonly<Record<Outlet, string>> = {
  gun: 'gun',
  'second-gun': 'second gun',
  boom: 'boom',
  bar: 'spray bar',
  transfer: 'transfer hose',
};
