import { LINES, PALETTES } from '@spraywright/engine/drawings';
import { drawnSheet } from './drawn-sheet.ts';
import { Drawn } from './drawn.tsx';

const USES: Readonly<Record<keyof typeof LINES, string>> = {
  extra: 'ground, demand line of a plot, centring marks',
  outline: 'visible edges, frame, ceilings',
  thin: 'dimensions, leaders, box of a given value',
  hatch: 'hatching: cut solid, ground, what cannot be',
  centre: 'axes of wheels, tanks, reels',
  neighbour: 'carriers that are not ours; what would be, before it is taken',
  hidden: 'baffles, sparger; what is unknown',
  liquid: 'jet, hose, pressure line: ends round',
  farthest: 'farthest drops, peak with the outlets shut',
};

/** Line weights and patterns, each with its one meaning. */
export function Lines() {
  const palette = PALETTES[drawnSheet()];
  return (
    <section id="lines" aria-labelledby="lines-head">
      <h2 className="heading" id="lines-head">
        Lines
      </h2>
      <p className="said">
        One meaning each. Widths in px never grow with the drawing; on the night sheet they are drawn{' '}
        {PALETTES.night.weight} times as wide, in sunlight {PALETTES.sun.weight} times.
      </p>
      <table className="design-table">
        <thead>
          <tr>
            <th scope="col">line</th>
            <th scope="col">width and pattern</th>
            <th scope="col">for</th>
          </tr>
        </thead>
        <tbody>
          {Object.entries(LINES).map(([name, line]) => {
            const dash = 'dash' in line ? line.dash : undefined;
            const wet = name === 'liquid' || name === 'farthest';
            const color = wet ? palette.liquid : palette.ink;
            const pattern = dash === undefined ? '' : ` stroke-dasharray="${dash}"`;
            const svg = `<path d="M3 10H157" stroke="${color}" stroke-width="${line.width * palette.weight}"${pattern}${wet ? ' stroke-linecap="round"' : ''}/>`;
            return (
              <tr key={name}>
                <td>
                  <Drawn svg={svg} width={160} height={20} />
                  <span className="for-readers">{name}</span>
                </td>
                <td>
                  {name}, {line.width}
                  {dash === undefined ? '' : `, ${dash}`}
                </td>
                <td>{USES[name as keyof typeof LINES]}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
