import { createRoot } from 'react-dom/client';
import { hashOf, useHash } from '../frame/hash.ts';
import { layOutBeside } from '../frame/lay-out.ts';
import { sells, useMe } from '../frame/me.ts';
import { SheetFrame } from '../frame/sheet-frame.tsx';
import { ROLES } from './people-link.ts';
import { SECTIONS, type Section } from './sections.ts';

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
      {mine.includes(shown) ? (
        <shown.Sheet at={at} units={units} />
      ) : (
        <NotYours name={shown.name} only={shown.only} role={ROLES[me?.role as keyof typeof ROLES]} />
      )}
    </SheetFrame>
  );
}

/** A section whose address somebody has, and whose role does not open it. */
function NotYours(given: { readonly name: string; readonly only: Section['only']; readonly role: string }) {
  const { name, only, role } = given;
  return (
    <>
      <h1>{name}</h1>
      <p>
        Owners{only === 'sellers' ? ' and builders' : ''} see this; you are signed in as {role}. Ask an owner
        for another role.
      </p>
    </>
  );
}

createRoot(document.getElementById('sheet')!).render(<Office />);
