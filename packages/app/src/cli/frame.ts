import { framePaper } from '../documents/frame-papers.ts';
import { paperCommand } from './paper-command.ts';

/** Writes the deck with its parts and loads: a sheet as PDF, or the drawing alone as DXF or SVG. */
export const frameCommand = paperCommand({
  name: 'frame',
  summary: 'Write the deck of a rig with its parts and loads, as .pdf, or the drawing alone as .dxf or .svg.',
  called: 'The proof',
  endings: ['.pdf', '.dxf', '.svg'],
  write: (_rig, proof, options, { file }) =>
    framePaper(proof, /\.dxf$/i.test(file) ? 'dxf' : /\.svg$/i.test(file) ? 'svg' : 'pdf', options),
});
