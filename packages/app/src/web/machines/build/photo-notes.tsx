import { useState } from 'react';
import type { MachineKeeper } from '../machine-keeper.ts';
import { byWhom } from '../../frame/moment.ts';
import type { Photo } from './build-state.ts';
import { smallPhoto } from './photo-file.ts';

/** Photos with a line of words; made small on the device before they are kept. */
export function PhotoNotes({
  photos,
  keeper,
}: {
  readonly photos: readonly Photo[];
  readonly keeper: MachineKeeper;
}) {
  const [about, setAbout] = useState('');
  const [answer, setAnswer] = useState('');
  const take = async (file: File | undefined) => {
    if (file === undefined) return;
    const words = about.trim();
    if (words === '') return setAnswer('Say first what the photo shows');
    try {
      keeper.write('photo', { about: words, image: await smallPhoto(file) });
      setAbout('');
      setAnswer('');
    } catch (error) {
      setAnswer(`No photo: ${(error as Error).message}`);
    }
  };
  return (
    <section aria-labelledby="photos-heading">
      <h2 className="heading" id="photos-heading">
        Photos
      </h2>
      <p className="field">
        <label htmlFor="photo-about">What it shows</label>
        <input
          id="photo-about"
          value={about}
          maxLength={200}
          onChange={({ target }) => setAbout(target.value)}
        />
      </p>
      <p className="field">
        <label htmlFor="photo-file">Photo</label>
        <input
          id="photo-file"
          type="file"
          accept="image/*"
          onChange={({ target }) => {
            void take(target.files?.[0]);
            target.value = '';
          }}
        />
      </p>
      {answer !== '' && <p role="alert">{answer}.</p>}
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
    </section>
  );
}
