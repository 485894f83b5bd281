import { createRoot } from 'react-dom/client';
import { hashOf, useHash } from '../frame/hash.ts';
import { keepOnDevice } from '../frame/keep-on-device.ts';
import { layOutBeside } from '../frame/lay-out.ts';
import { SheetFrame } from '../frame/sheet-frame.tsx';
import { FindMachine } from './find-machine.tsx';
import { MACHINE_SECTIONS } from './sections.ts';

const units = layOutBeside();
keepOnDevice();

/** The machines that were built or are being built; `#SERIAL/yard` is a section of one. */
function Machines() {
  const [serial = '', path, ...at] = useHash();
  const shown = MACHINE_SECTIONS.find((section) => section.path === path) ?? MACHINE_SECTIONS[0];
  return (
    <SheetFrame
      here="Machines"
      className="machines"
      sections={
        serial === ''
          ? []
          : MACHINE_SECTIONS.map((section) => ({ name: section.name, href: hashOf(serial, section.path) }))
      }
      at={shown?.name}
    >
      {serial === '' || shown === undefined ? (
        <FindMachine />
      ) : (
        <shown.Sheet key={serial} serial={serial} at={at} units={units} />
      )}
    </SheetFrame>
  );
}

createRoot(document.getElementById('sheet')!).render(<Machines />);
