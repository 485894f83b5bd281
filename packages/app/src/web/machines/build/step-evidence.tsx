import { useId, useState } from 'react';
import type { BuildRecord } from '@spraywright/engine/rig';
import type { MachineKeeper } from '../machine-keeper.ts';
import type { StepRow } from '../worker/protocol.ts';
import { smallPhoto } from './photo-file.ts';
import { PhotoList } from './photo-list.tsx';

/** What shows how a step was done: the lots of its parts and its photos. */
export function StepEvidence(given: {
  readonly step: StepRow;
  readonly number: number;
  readonly record: BuildRecord;
  readonly keeper: MachineKeeper;
}) {
  const { step, number, record, keeper } = given;
  const id = useId();
  const [answer, setAnswer] = useState('');
  const lots = step.parts.flatMap(({ part, name }) => {
    const known = record.lots.get(part);
    return known === undefined ? [] : [`${name}: lot ${known.join(', ')}`];
  });
  const photos = record.photos.filter((p) => p.step === step.id);
  const take = async (file: File | undefined) => {
    if (file === undefined) return;
    try {
      keeper.write('photo', { about: step.text.slice(0, 200), image: await smallPhoto(file), step: step.id });
      setAnswer('');
    } catch (error) {
      setAnswer(`No photo: ${(error as Error).message}`);
    }
  };
  return (
    <div className="step-evidence">
      {lots.length > 0 && <p>{lots.join('; ')}.</p>}
      <label className="word photo-of-step" htmlFor={id}>
        Photo<span className="for-readers"> of step {number}</span>
        <input
          id={id}
          type="file"
          accept="image/*"
          onChange={({ target }) => {
            void take(target.files?.[0]);
            target.value = '';
          }}
        />
      </label>
      {answer !== '' && <p role="alert">{answer}.</p>}
      <PhotoList photos={photos} />
    </div>
  );
}
