import { useEffect, useState } from 'react';
import { hashOf } from '../../frame/hash.ts';
import { got } from '../got.ts';
import type { Calendar } from './quotes-link.ts';
import { WeekLine } from './week-line.tsx';
import { dayText } from '../../frame/moment.ts';
import '../../style/office-quotes.css';

/** What was accepted, week by week against the hours of the shop, and when each is ready. */
export function CalendarSheet() {
  const [calendar, setCalendar] = useState<Calendar>();
  const [why, setWhy] = useState('');
  useEffect(() => {
    void got<Calendar>('api/calendar').then((answer) => {
      if ('why' in answer) setWhy(answer.why);
      else setCalendar(answer.value);
    });
  }, []);
  return (
    <div className="quotes">
      <h1>What is to be built</h1>
      <p role="status">{why}</p>
      {calendar !== undefined && <Builds calendar={calendar} />}
    </div>
  );
}

function Builds({ calendar }: { readonly calendar: Calendar }) {
  const { builds, hoursPerWeek } = calendar;
  if (builds.length === 0)
    return (
      <p>Nothing that was accepted waits to be built. A new order is begun as soon as its parts are there.</p>
    );
  const hours = builds.reduce((sum, b) => sum + b.hours, 0);
  return (
    <>
      <p>
        {builds.length} {builds.length === 1 ? 'rig' : 'rigs'}, {hours.toFixed(0)} hours of work.{' '}
        {hoursPerWeek === undefined
          ? 'The shop file sets no hours a week: each is ready by its parts and its own days alone, as if nothing else were built.'
          : `The shop builds ${hoursPerWeek} hours a week. An earlier order never gives way to a later one; holidays are not known here.`}
      </p>
      {hoursPerWeek !== undefined && <WeekLine calendar={calendar} hoursPerWeek={hoursPerWeek} />}
      <ul className="quote-lines">
        {builds.map((build, i) => (
          <li key={build.quote} className="build-line">
            <strong>{i + 1}</strong>
            <a href={hashOf('quotes', build.quote)}>
              {build.quote}, {build.title}
            </a>
            <span>
              for {build.customer}, accepted {dayText(build.acceptedOn)}
              {build.serials.length === 0 ? '' : `; begun as ${build.serials.join(', ')}`}
            </span>
            <span className="figure">
              {build.hours.toFixed(1)} h, parts there {dayText(build.partsOn)},{' '}
              <strong>ready by {dayText(build.ready)}</strong>
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}
