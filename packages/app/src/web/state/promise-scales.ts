import type { View } from '../protocol.ts';

/** Size of the small scale of a promise at each fold of the sheet [px]. */
export const SCALES: Readonly<Record<'desk' | 'tablet' | 'phone', Pick<View, 'scaleWidth' | 'scaleHeight'>>> =
  {
    desk: { scaleWidth: 92, scaleHeight: 24 },
    tablet: { scaleWidth: 92, scaleHeight: 52 },
    phone: { scaleWidth: 86, scaleHeight: 54 },
  };
