import type { BuildPhoto } from '@spraywright/engine/rig';
import { byWhom } from '../../frame/moment.ts';

/** Photos with what they show, by whom and when. */
export function PhotoList({ photos }: { readonly photos: readonly BuildPhoto[] }) {
  if (photos.length === 0) return undefined;
  return (
    <ul className="photos">
      {photos.map((p, i) => (
        <li key={i}>
          <img src={p.image} alt={p.about} loading="lazy" />
          <p>
            {p.about}. {byWhom(p)}
          </p>
        </li>
      ))}
    </ul>
  );
}
