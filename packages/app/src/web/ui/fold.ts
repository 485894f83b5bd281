import type { Fold } from '../state/desk-state.ts';

const DESK = matchMedia('(min-width: 1000px)');
const PAPER = matchMedia('print');
const TABLET = matchMedia('(min-width: 680px)');

/** How the sheet is folded at the window's width. */
export function foldOf(): Fold {
  return DESK.matches ? 'desk' : TABLET.matches ? 'tablet' : 'phone';
}

/** Tells when the window folds the sheet otherwise. Paper has a width too, but what is printed is the sheet as it stands. */
export function watchFold(then: (fold: Fold) => void): void {
  for (const query of [DESK, TABLET])
    query.addEventListener('change', () => {
      if (!PAPER.matches) then(foldOf());
    });
}
