import type { Content, DynamicContent, TDocumentDefinitions } from 'pdfmake/interfaces.js';
import { FONTS } from '@spraywright/engine/drawings';
import { FONT_FILES, PAPER_FONTS } from './faces.ts';
import { FRAME, frame, INK, PAGE, STRIP_GAP, STRIP_HEIGHT, titleStrip, type TitleBlock } from './sheet.ts';

/** Sheets that share a foot. */
export interface Sheets {
  readonly content: Content[];
  /** Blank under the upper edge of the frame, in points. */
  readonly head: number;
  readonly foot: DynamicContent;
  /** Height that the foot takes over the lower edge of the frame, in points. */
  readonly footHeight: number;
}

/** What the file says of itself. */
export interface PaperFacts {
  readonly title: string;
  readonly subject: string;
  readonly author: string;
  /** The only moment in the file, so that the same paper is the same bytes. */
  readonly day: Date;
}

/** Sheets with the strip of a title block at their foot. */
export function stripSheets(content: Content[], block: TitleBlock): Sheets {
  return { content, head: 10, foot: titleStrip(block), footHeight: STRIP_HEIGHT + STRIP_GAP };
}

/** Letter sheets in their frame as the bytes of a PDF. It opens no address, and no file but our faces. */
export async function pdfOf(facts: PaperFacts, sections: readonly Sheets[]): Promise<Uint8Array> {
  return bytesOf(facts, {
    pageSize: 'LETTER',
    background: frame,
    content: sections.map(({ content, head, foot, footHeight }) => ({
      section: content,
      pageMargins: [
        FRAME.left,
        FRAME.top + head,
        PAGE.width - FRAME.right,
        PAGE.height - FRAME.bottom + footHeight,
      ] as [number, number, number, number],
      footer: foot,
    })),
  });
}

/** One drawing alone on a sheet of its own size, px at 96 to the inch. */
export async function drawingPdf(
  facts: PaperFacts,
  svg: string,
  size: { readonly width: number; readonly height: number },
): Promise<Uint8Array> {
  const [width, height] = [size.width * PX, size.height * PX];
  return bytesOf(facts, { pageSize: { width, height }, pageMargins: 0, content: [{ svg, width, height }] });
}

const PX = 0.75;

async function bytesOf(
  { title, subject, author, day }: PaperFacts,
  paper: TDocumentDefinitions,
): Promise<Uint8Array> {
  // Loaded when a paper is asked for: it is a fifth of the time it takes to start.
  const { default: pdfmake } = await import('pdfmake');
  pdfmake.setUrlAccessPolicy(() => false);
  pdfmake.setLocalAccessPolicy((path) => FONT_FILES.has(path));
  pdfmake.setFonts(PAPER_FONTS);
  const definition: TDocumentDefinitions = {
    ...paper,
    compress: true,
    info: {
      title,
      author,
      subject,
      creator: 'Spraywright',
      producer: 'Spraywright',
      creationDate: day,
      modDate: day,
    },
    defaultStyle: { font: FONTS.semi, fontSize: 10, color: INK },
  };
  return new Uint8Array(await pdfmake.createPdf(definition).getBuffer());
}
