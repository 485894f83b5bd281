import type { Leaf } from '../protocol.ts';

/** What the page's address names: a job, and one of its sheets. `#tall-elms/curves` */
export interface Place {
  readonly job: string;
  readonly leaf: Leaf;
}

const LEAVES: readonly Leaf[] = ['desk', 'plumbing', 'curves', 'choices'];

export function placeShown(hash = location.hash): Place {
  const [job = '', sheet = ''] = hash.slice(1).split('/').map(decoded);
  return { job, leaf: LEAVES.find((leaf) => leaf === sheet) ?? 'desk' };
}

/** Writes the place into the address; another place is a step for the browser's way back. */
export function showPlace(job: string, leaf: Leaf): void {
  const now = placeShown();
  if (now.job === job && now.leaf === leaf) return;
  const hash = `#${encodeURIComponent(job)}${leaf === 'desk' ? '' : `/${leaf}`}`;
  if (now.job === '') history.replaceState(null, '', hash);
  else history.pushState(null, '', hash);
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return '';
  }
}
