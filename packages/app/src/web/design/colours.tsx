import {
  contrast,
  PALETTES,
  seenBy,
  SIGHTS,
  STATE_WORDS,
  stateMark,
  type Palette,
} from '@spraywright/engine/drawings';
import { Drawn } from './drawn.tsx';

const TEXT = [
  ['ink', 'what stands and is kept'],
  ['ink2', 'notes'],
  ['liquid', 'liquid, and what it does'],
  ['broken', 'broken'],
  ['thin', 'thin, under 5 % to spare'],
] as const;
const NO_TEXT = ['rule', 'leaf', 'liquidTint', 'liquidRows', 'brokenTint', 'thinTint'] as const;
const SHEETS = { day: 'By day', night: 'By night', sun: 'In sunlight', print: 'On paper' } as const;
const SEEN = ['liquid', 'broken', 'thin', 'ink'] as const;
const STATES = ['broken', 'thin', 'unknown', 'kept'] as const;

const figure = (ratio: number) => ratio.toFixed(1);

/** Colours of every sheet with their contrast, reckoned here and now from the table that the drawings use. */
export function Colours() {
  return (
    <section id="colours" aria-labelledby="colours-head">
      <h2 className="heading" id="colours-head">
        Colours
      </h2>
      <p className="said">
        Three signals, liquid, broken and thin, and nothing else. Text must have a contrast of 4.5 on its
        paper (WCAG 2.2); the figures are reckoned from the colours as they stand, and a test holds them.
      </p>
      {Object.entries(SHEETS).map(([sheet, name]) => (
        <SheetColours key={sheet} name={name} palette={PALETTES[sheet as keyof typeof SHEETS]} />
      ))}
      <h3>With a deficiency of colour vision</h3>
      <p className="said">
        Full severity, after Machado and others, 2009. The signals come close to each other, so each state has
        a mark, a word and a place on its scale as well.
      </p>
      <div className="design-scroll" tabIndex={0} role="region" aria-label="Signals as others see them">
        <table className="design-table">
          <thead>
            <tr>
              <th scope="col">sight</th>
              {SEEN.map((token) => (
                <th scope="col" key={token}>
                  {token}
                </th>
              ))}
              <th scope="col">told by mark</th>
            </tr>
          </thead>
          <tbody>
            {SIGHTS.map((sight) => {
              const see = (hex: string) => seenBy(sight, hex);
              const { weight } = PALETTES.day;
              const palette = {
                ...(Object.fromEntries(
                  Object.entries(PALETTES.day).map(([k, v]) => [k, typeof v === 'string' ? see(v) : v]),
                ) as unknown as Palette),
                weight,
              };
              return (
                <tr key={sight}>
                  <th scope="row">{sight}</th>
                  {SEEN.map((token) => (
                    <td key={token}>
                      <Swatch paper={palette.paper} color={palette[token]} text="Abc" />{' '}
                      {figure(contrast(palette[token], palette.paper))}
                    </td>
                  ))}
                  <td>
                    <span className="swatch-strip" style={{ background: palette.paper }}>
                      {STATES.map((state) => (
                        <span key={state} title={STATE_WORDS[state]}>
                          <Drawn svg={stateMark(state, 9, 9, palette)} width={18} height={18} />
                        </span>
                      ))}
                    </span>
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </section>
  );
}

function SheetColours({ name, palette }: { name: string; palette: Palette }) {
  return (
    <>
      <h3>{name}</h3>
      <div className="design-scroll" tabIndex={0} role="region" aria-label={`Colours ${name.toLowerCase()}`}>
        <table className="design-table">
          <thead>
            <tr>
              <th scope="col">text</th>
              <th scope="col">colour</th>
              <th scope="col">on paper {palette.paper}</th>
              <th scope="col">on paper2 {palette.paper2}</th>
              <th scope="col">for</th>
            </tr>
          </thead>
          <tbody>
            {TEXT.map(([token, use]) => (
              <tr key={token}>
                <th scope="row">{token}</th>
                <td>{palette[token]}</td>
                {(['paper', 'paper2'] as const).map((paper) => (
                  <td key={paper}>
                    <Swatch paper={palette[paper]} color={palette[token]} text="Abc" />{' '}
                    {figure(contrast(palette[token], palette[paper]))}
                  </td>
                ))}
                <td>{use}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="swatches">
        {NO_TEXT.map((token) => (
          <span key={token}>
            <Swatch paper={palette[token]} color={palette.ink} text="" /> {token} {palette[token]}
          </span>
        ))}
        <span className="note">drawn only, never as text</span>
      </p>
    </>
  );
}

function Swatch({ paper, color, text }: { paper: string; color: string; text: string }) {
  return (
    <span className="swatch" style={{ background: paper, color }}>
      {text}
    </span>
  );
}
