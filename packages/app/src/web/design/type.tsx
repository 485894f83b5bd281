import { useLayoutEffect, useRef, useState } from 'react';

/** Every sample wears the very class that the page gives it, so that what is measured is what is used. */
const SAMPLES = [
  ['title', 'Heavy cart for tall elms', 'title in the title block'],
  ['price', '$8,890', 'price'],
  ['sentence', 'Wets leaves at 52 ft in still air', 'sentence of a promise'],
  ['figure', '57.8 ft', 'figure that matters'],
  ['row', 'Diaphragm pump, 37 gpm, 725 psi', 'table row'],
  ['note', 'Scale 1 : 200', 'note'],
  ['heading', 'Pressure, tank to tip', 'heading of an area'],
] as const;

const WRAPPED: Readonly<Record<(typeof SAMPLES)[number][0], (text: string) => React.ReactNode>> = {
  title: (text) => (
    <span className="title-block plain">
      <span className="cell title">
        <span data-sample>{text}</span>
      </span>
    </span>
  ),
  price: (text) => (
    <span className="title-block plain">
      <span className="cell price">
        <span data-sample>{text}</span>
      </span>
    </span>
  ),
  sentence: (text) => (
    <span className="promise">
      <span className="sentence" data-sample>
        {text}
      </span>
    </span>
  ),
  figure: (text) => (
    <span className="total" data-sample>
      {text}
    </span>
  ),
  row: (text) => (
    <span className="part-row" data-sample>
      {text}
    </span>
  ),
  note: (text) => (
    <span className="note" data-sample>
      {text}
    </span>
  ),
  heading: (text) => (
    <span className="heading" data-sample>
      {text}
    </span>
  ),
};

/** The two widths of one family, and the sizes in use. */
export function Type() {
  const table = useRef<HTMLTableElement>(null);
  const [measured, setMeasured] = useState<readonly string[]>([]);
  useLayoutEffect(() => {
    const samples = [...(table.current?.querySelectorAll('[data-sample]') ?? [])];
    setMeasured(
      samples.map((node) => {
        const { fontSize, lineHeight, fontWeight, fontFamily } = getComputedStyle(node);
        const family = fontFamily.split(',')[0]!.replaceAll('"', '').replace('Sheet ', '');
        return `${family}, ${fontSize.replace('px', '')} / ${lineHeight.replace('px', '')}, weight ${fontWeight}`;
      }),
    );
  }, []);
  return (
    <section id="type" aria-labelledby="type-head">
      <h2 className="heading" id="type-head">
        Type
      </h2>
      <p className="said">
        One family in two widths: Semi for sentences, Condensed for figures and labels; the narrower, the more
        technical. Figures are tabular. Signs the family lacks (≥ ≤ ≈ √) come from a face of their own. Sizes
        below are measured on this page, in px.
      </p>
      <table className="design-table" ref={table}>
        <thead>
          <tr>
            <th scope="col">sample</th>
            <th scope="col">for</th>
            <th scope="col">measured</th>
          </tr>
        </thead>
        <tbody>
          {SAMPLES.map(([name, text, use], i) => (
            <tr key={name}>
              <td>{WRAPPED[name](text)}</td>
              <td>{use}</td>
              <td>{measured[i]}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
