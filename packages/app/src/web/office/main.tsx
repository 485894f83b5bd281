import { createRoot } from 'react-dom/client';
import { hashOf, useHash } from '../frame/hash.ts';
import { layOutBeside } from '../frame/lay-out.ts';
import { sells, useMe } from '../frame/me.ts';
import { SheetFrame } from '../frame/sheet-frame.tsx';
import { SECTIONS } from './sections.ts';

const units = layOutBeside();

/** The office: what the shop keeps beside its jobs, a section at a time. */
function Office() {
  const [path, ...at] = useHash();
  const me = useMe();
  const shown = SECTIONS.find((section) => section.path === path) ?? SECTIONS[0];
  const mine = SECTIONS.filter(
    ({ only }) =>
      only === undefined || (only === 'sellers' ? sells(me) : me === undefined || me.role === 'owner'),
  );
  return (
    <SheetFrame
      here="Office"
      className="office"
      sections={mine.map((section) => ({ name: section.name, href: hashOf(section.path) }))}
      at={shown.name}
    >
      <shown.Sheet at={at} units={units} />
    </SheetFrame>
  );
}

createRoot(document.getElementById('sheet')!).render(<Office />);
