import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { drawingOnPaper } from '../src/documents/paper/drawing-on-paper.ts';
import { drawingPdf } from '../src/documents/paper/pdf.ts';

/** Share of a drawing that is darker than paper once it is printed at 72 to the inch. */
export async function inkOf(svg: string, folder: string): Promise<number> {
  const [width, height] = ['width', 'height'].map((name) =>
    Number(new RegExp(`^<svg[^>]* ${name}="([\\d.]+)"`).exec(svg)![1]),
  );
  const facts = { title: 'Drawing', subject: '', author: '', day: new Date(0) };
  const file = join(folder, 'drawing.pdf');
  writeFileSync(file, await drawingPdf(facts, drawingOnPaper(svg), { width: width!, height: height! }));
  const image = execFileSync('pdftoppm', ['-gray', '-r', '72', file]);
  // A PGM: "P5", width, height, 255, then a byte a point.
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(image.toString('latin1', 0, 40))!;
  const points = image.subarray(head[0].length);
  return points.reduce((n, p) => n + (p < 200 ? 1 : 0), 0) / points.length;
}

/** The words of a PDF without blanks, cells kept together. */
export function wordsOf(bytes: Uint8Array, folder: string): string {
  const file = join(folder, 'paper.pdf');
  writeFileSync(file, bytes);
  return dense(execFileSync('pdftotext', ['-raw', file, '-']).toString('utf8'));
}

export const dense = (text: string) => text.replace(/[\s\u00a0]+/g, '').replace(/<=/g, '≤');
