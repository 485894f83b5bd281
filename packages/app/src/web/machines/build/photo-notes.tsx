import { useState } from 'react';
import type { BuildPhoto } from '@spraywright/engine/rig';
import type { MachineKeeper } from '../machine-keeper.ts';
import { PhotoList } from './photo-list.tsx';
import { smallPhoto } from './photo-file.ts';

/** Photos that belong to no step, with a line of words; made small on the device before they are kept. */
export function PhotoNotes({
  photos,
  keeper,
}: {
  readonly photos: readonly BuildPhoto[];
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
        Other photos
      </h2>
      <p className="note">A photo of a step is taken at the step.</p>
      <p className="field">
        <label htmlFor="photo-about">What it shows</label>
        <input
          id="photo-about"
          value={about}
          maxLength={200}
          onChange={({ target }) => setAbout(target.value)}
        />
      </p>
      <label className="word photo-of-step">
        Photo
        <input
          type="file"
          accept="image/*"
          onChange={({ target }) => {
            void take(target.files?.[0]);
            target.value = '';
          }}
        />
      </label>
      {answer !== '' && <p role="alert">{answer}.</p>}
      <PhotoList photos={photos.filter((p) => p.step === undefined)} />
    </section>
  );
}
