import type { OddReading, ShopLearned } from './learned-link.ts';

/** Readings that count for next to nothing or for nothing at all, and why. */
export function SetAside({ learned: { doubted, unused, unfit } }: { readonly learned: ShopLearned }) {
  if (doubted.length + unused.length + unfit.length === 0) return undefined;
  return (
    <section aria-labelledby="aside-heading">
      <h2 className="heading" id="aside-heading">
        Readings set aside
      </h2>
      <ul className="set-aside">
        {doubted.map((d) => (
          <li key={`${d.serial} ${d.id}`}>
            <YardLink serial={d.serial} /> {oddWords(d)}
          </li>
        ))}
        {unfit.map(({ serial, day, why }) => (
          <li key={`${serial} ${day}`}>
            <YardLink serial={serial} /> The test of {day} cannot be read: {why}.
          </li>
        ))}
        {unused.map(({ why, readings }) => (
          <li key={why}>
            {readings} {readings === 1 ? 'reading' : 'readings'}: {why}.
          </li>
        ))}
      </ul>
    </section>
  );
}

function oddWords({ task, read, window, sound }: OddReading): string {
  const said = read === undefined ? task : `${task}: ${read}`;
  const should = window === undefined ? '' : `, where such a machine shows ${window}`;
  const counts = sound < 0.01 ? 'it counts for nothing' : `it counts for ${Math.round(100 * sound)} in 100`;
  return `${said}${should}. It does not fit what all other readings say, so ${counts}.`;
}

/** To the tests of a machine; one that was tested before another part came carries that in its name. */
function YardLink({ serial }: { readonly serial: string }) {
  const machine = serial.replace(/ before$/, '');
  return <a href={`./machines.html#${encodeURIComponent(machine)}/yard`}>{serial}</a>;
}
