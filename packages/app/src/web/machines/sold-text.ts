import { dayText } from '../frame/moment.ts';

/** Which quote a rig was sold by: "quote Q-0007 B, option 'With reel', accepted 3 Mar 2026". */
export function soldText(sold: {
  readonly number: string;
  readonly revision: string;
  readonly option: string;
  readonly acceptedAt: string;
}): string {
  const { number, revision, option, acceptedAt } = sold;
  return `quote ${number} ${revision}, option '${option}', accepted ${dayText(acceptedAt)}`;
}
