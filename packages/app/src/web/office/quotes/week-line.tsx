import type { Calendar } from './quotes-link.ts';
import { dayText } from '../../frame/moment.ts';

const WEEK = 76;
/** Height of a whole week's hours [px]. */
const FULL = 120;
const LEFT = 44;
const TOP = 18;
const LEAST_WEEKS = 8;
const MOST_WEEKS = 26;
/** Lowest piece that has room for its number [px]. */
const NUMBERED = 14;

interface Piece {
  readonly build: number;
  readonly hours: number;
  /** Hours of the week under it. */
  readonly under: number;
}

/** Weeks in a row, each with its builds stacked under the ceiling of its hours; numbers are those of the list. */
export function WeekLine({
  calendar,
  hoursPerWeek,
}: {
  readonly calendar: Calendar;
  readonly hoursPerWeek: number;
}) {
  const weeks = weeksOf(calendar);
  const width = LEFT + weeks.length * WEEK + 10;
  const height = TOP + FULL + 30;
  const foot = TOP + FULL;
  const y = (hours: number) => foot - (hours / hoursPerWeek) * FULL;
  return (
    <div className="week-line scroll" tabIndex={0} role="region" aria-label="Weeks and their hours">
      <svg
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={`${weeks.length} weeks from ${dayText(weeks[0]!)}; every build and its weeks are in the list below`}
        style={{ minWidth: width }}
      >
        <text x={LEFT - 6} y={TOP + 4} textAnchor="end" className="week-note">
          {hoursPerWeek} h
        </text>
        {weeks.map((monday, i) => {
          const x = LEFT + i * WEEK;
          const capacity = calendar.weeks.find((w) => w.monday === monday)?.capacity ?? hoursPerWeek;
          return (
            <g key={monday}>
              <line x1={x} x2={x + WEEK} y1={y(capacity)} y2={y(capacity)} className="week-ceiling" />
              {piecesOf(calendar, monday).map(({ build, hours, under }) => {
                const [top, tall] = [y(under + hours), (hours / hoursPerWeek) * FULL];
                return (
                  <g key={build}>
                    <rect x={x + 5} y={top} width={WEEK - 10} height={tall} className="week-piece" />
                    {tall >= NUMBERED && (
                      <text
                        x={x + WEEK / 2}
                        y={top + tall / 2 + 4.5}
                        textAnchor="middle"
                        className="week-number"
                      >
                        {build + 1}
                      </text>
                    )}
                  </g>
                );
              })}
              <line x1={x} x2={x} y1={foot} y2={foot + 6} className="week-tick" />
              <text x={x + 4} y={foot + 20} className="week-note">
                {dayText(monday).replace(/ \d{4}$/, '')}
              </text>
            </g>
          );
        })}
        <line x1={LEFT} x2={width - 10} y1={foot} y2={foot} className="week-ground" />
      </svg>
    </div>
  );
}

function piecesOf({ builds }: Calendar, monday: string): Piece[] {
  let under = 0;
  return builds.flatMap(({ weeks }, build) => {
    const hours = weeks.find((w) => w.monday === monday)?.hours;
    if (hours === undefined) return [];
    const piece = { build, hours, under };
    under += hours;
    return [piece];
  });
}

/** Mondays from the week of today to the last that has work, at least two months of them. */
function weeksOf({ today, weeks }: Calendar): string[] {
  const day = new Date(`${today}T00:00:00Z`);
  day.setUTCDate(day.getUTCDate() - ((day.getUTCDay() + 6) % 7));
  const last = weeks.at(-1)?.monday ?? '';
  const found: string[] = [];
  while (found.length < MOST_WEEKS) {
    const monday = day.toISOString().slice(0, 10);
    if (found.length >= LEAST_WEEKS && monday > last) break;
    found.push(monday);
    day.setUTCDate(day.getUTCDate() + 7);
  }
  return found;
}
