import { useRef, useState } from 'react';

/** An address that is shown once, to be copied and given to somebody. */
export function ShownAddress(given: {
  readonly address: string;
  /** What it is called to readers. */
  readonly name: string;
  /** Look of the button on its sheet. */
  readonly button?: string;
}) {
  const { address, name, button } = given;
  const field = useRef<HTMLInputElement>(null);
  const [said, setSaid] = useState('Copy');
  const copy = async () => {
    field.current?.select();
    setSaid((await copied(address)) ? 'Copied' : 'It is marked: copy it by hand');
  };
  return (
    <>
      <input
        ref={field}
        readOnly
        value={address}
        aria-label={name}
        onFocus={(event) => event.target.select()}
      />{' '}
      <button type="button" className={button} onClick={() => void copy()}>
        {said}
      </button>
    </>
  );
}

/** Copies a text that is marked on the page. */
async function copied(text: string): Promise<boolean> {
  // A page that came in clear from another machine has no clipboard of its own; the mark is copied in the old way there.
  const { clipboard } = navigator as { readonly clipboard?: Clipboard };
  if (clipboard === undefined) return document.execCommand('copy');
  return clipboard.writeText(text).then(
    () => true,
    () => false,
  );
}
