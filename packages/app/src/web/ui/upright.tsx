import { Fragment } from 'react';
import type { PartRow, UprightLine, UprightStep } from '../protocol.ts';
import { Alternatives } from './alternatives.tsx';
import { useDesk, useStore } from './desk-context.ts';
import { FieldProblems, GivenBox } from './given-box.tsx';
import { Balloon } from './marks.tsx';
import { PinSign } from './signs.tsx';

/** Shares of the column's width left of zero, for suction, and right of the last ceiling. */
const LEFT = 8;
const RIGHT = 9;
/** Height of a row's segment in its own drawing units; it is stretched to the row. */
const HIGH = 100;

const x = (share: number) => LEFT + (100 - LEFT - RIGHT) * share;
const NO_PARTS: readonly PartRow[] = [];

/** The pressure line standing upright, which is the list of its parts as well: tank on top, tip below. */
export function Upright({ line }: { line: UprightLine }) {
  const slot = useDesk((s) => s.slot);
  const parts = useDesk((s) => s.body?.parts ?? NO_PARTS);
  const pump = line.steps.findIndex((s) => s.rise);
  return (
    <div className="upright">
      <p className="for-readers">{line.sentence}</p>
      <div className="upright-scale" aria-hidden="true">
        <span className="unit">{line.unit}</span>
        {line.ticks.map((t) => (
          <span key={t.text} style={{ left: `${x(t.at)}%` }}>
            {t.text}
          </span>
        ))}
      </div>
      <ol>
        {line.steps.map((s, i) => (
          <Row
            key={s.item ?? `bends-${i}`}
            step={s}
            part={parts.find((p) => p.item === s.item)}
            ticks={line.ticks}
            wet={i >= pump}
            last={i === line.steps.length - 1}
            open={s.item !== undefined && s.item === slot}
          />
        ))}
      </ol>
    </div>
  );
}

interface RowProps {
  readonly step: UprightStep;
  readonly part: PartRow | undefined;
  readonly ticks: UprightLine['ticks'];
  readonly wet: boolean;
  readonly last: boolean;
  readonly open: boolean;
}

function Row({ step, part, ticks, wet, last, open }: RowProps) {
  const store = useStore();
  const { item } = step;
  const lit = useDesk((s) => item !== undefined && s.lit === item) || open;
  const massUnit = useDesk((s) => s.body?.massUnit ?? '');
  return (
    <li className={lit ? 'upright-part lit' : 'upright-part'} data-part={item}>
      <div className="upright-row">
        {step.number === undefined ? (
          <span className="balloon none" />
        ) : (
          <Balloon number={step.number} lit={lit} />
        )}
        <div className="upright-words">
          {item === undefined ? (
            <span className="upright-name">{step.name}</span>
          ) : (
            <button
              type="button"
              className="upright-name"
              aria-expanded={open}
              onClick={() => store.setSlot(open ? undefined : item)}
              onFocus={() => store.setLit(item)}
              onBlur={() => store.setLit(undefined)}
            >
              {step.name}
              {part?.own === true && <small className="own-mark">own figures</small>}
              {part?.pin.held === true && <PinSign />}
              <small>{step.detail}</small>
            </button>
          )}
          {part !== undefined && (
            <p className="upright-figures">
              {part.givens.map(({ before, given, after }) => (
                <Fragment key={given.path}>
                  {before}
                  <GivenBox given={given} />
                  {after}
                </Fragment>
              ))}
              <span>
                {part.mass} {massUnit}
              </span>
              <span>${part.price}</span>
              <FieldProblems givens={part.givens.map((g) => g.given)} />
            </p>
          )}
        </div>
        <div className="upright-cell" aria-hidden="true">
          <Segment step={step} ticks={ticks} wet={wet} last={last} />
          <Figure step={step} last={last} wet={wet} />
        </div>
      </div>
      {open && item !== undefined && part !== undefined && (
        <>
          <p className="part-note note">
            {part.slot}, no. {part.number}: {part.stock}
            {part.note === undefined ? '' : `. ${part.note}`}
          </p>
          <Alternatives slot={item} title={part.slot.toLowerCase()} optional={part.optional} />
        </>
      )}
    </li>
  );
}

/** A row's piece of the line: it meets the pieces above and below at the row's edges. */
function Segment({ step, ticks, wet, last }: Omit<RowProps, 'part' | 'open'>) {
  const points = pointsOf(step, last);
  const line = points.map(([px, py]) => `${px} ${py}`).join('L');
  const from = step.rise ? HIGH / 2 : 0;
  const below = points.filter(([, py]) => py >= from);
  const [first, end] = [below[0], below.at(-1)];
  return (
    <svg viewBox={`0 0 100 ${HIGH}`} preserveAspectRatio="none">
      {ticks.map((t) => (
        <path key={t.text} className="tick" d={`M${x(t.at)} 0V${HIGH}`} />
      ))}
      {wet && first !== undefined && end !== undefined && (
        <path
          className="wet"
          d={`M${x(0)} ${first[1]}L${below.map(([px, py]) => `${px} ${py}`).join('L')}L${x(0)} ${end[1]}Z`}
        />
      )}
      <path className="zero" d={`M${x(0)} 0V${HIGH}`} />
      {step.limit !== undefined && (
        <>
          <path className="ceiling" d={`M${x(step.limit.at)} 8V92`} />
          <path className="hatch" d={hatched(x(step.limit.at))} />
        </>
      )}
      <path className="jet" d={`M${line}`} />
    </svg>
  );
}

function pointsOf(step: UprightStep, last: boolean): [number, number][] {
  const [before, after] = [x(step.before), x(step.after)];
  if (step.slope)
    return [
      [before, 0],
      [after, HIGH],
    ];
  const middle: [number, number][] = [
    [before, HIGH / 2],
    [after, HIGH / 2],
  ];
  return last ? [[before, 0], ...middle] : [[before, 0], ...middle, [after, HIGH]];
}

function hatched(at: number): string {
  let d = '';
  for (let y = 8; y < 86; y += 14) d += `M${at} ${y + 12}l4 -12`;
  return d;
}

/** The loss or the pressure of a row: left of the line where there is room, right of it at low pressure. */
function Figure({ step, last, wet }: { step: UprightStep; last: boolean; wet: boolean }) {
  if (step.figure === '') return null;
  const at = Math.max(step.before, step.after);
  const roomy = at > 0.42;
  const low = step.strong && (step.rise || !last);
  return (
    <span
      className={`upright-figure${wet ? '' : ' dry'}${step.strong ? ' strong' : ''}${low ? ' low' : last ? ' high' : ''}`}
      style={roomy ? { right: `${101.5 - x(at)}%` } : { left: `${x(Math.max(at, 0)) + 3}%` }}
    >
      {step.figure}
    </span>
  );
}
