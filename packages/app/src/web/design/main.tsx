import { createRoot } from 'react-dom/client';
import { layOutBeside } from '../frame/lay-out.ts';
import { SheetFrame } from '../frame/sheet-frame.tsx';
import { Colours } from './colours.tsx';
import { Devices } from './devices.tsx';
import { Icons } from './icons.tsx';
import { Lines } from './lines.tsx';
import { Room } from './room.tsx';
import { Type } from './type.tsx';
import '../style/parts.css';
import '../style/brief.css';
import '../style/promises.css';
import '../style/title-block.css';
import '../style/design.css';

layOutBeside();

const SECTIONS = [
  { name: 'Idea', href: '#idea' },
  { name: 'Type', href: '#type' },
  { name: 'Lines', href: '#lines' },
  { name: 'Colours', href: '#colours' },
  { name: 'Room', href: '#room' },
  { name: 'Icons', href: '#icons' },
];

/** The design system on one page: every sample is made of what the page itself is made of, and measured where it stands. */
function Design() {
  return (
    <SheetFrame here="Design" className="design" sections={SECTIONS} at={undefined}>
      <h1>The page is a drawing sheet that answers back</h1>
      <Devices />
      <Type />
      <Lines />
      <Colours />
      <Room />
      <Icons />
    </SheetFrame>
  );
}

createRoot(document.getElementById('sheet')!).render(<Design />);
