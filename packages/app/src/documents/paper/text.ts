import type { Content, ContentText } from 'pdfmake/interfaces.js';
import { FONTS } from '@spraywright/engine/drawings';
import { runsOf, SIGN_SIZE, signDrop, type Family } from './faces.ts';

interface TextLook {
  readonly family?: Family;
  readonly bold?: boolean;
  readonly size: number;
  readonly color: string;
  readonly spacing?: number;
  readonly align?: 'left' | 'right' | 'center';
  readonly lineHeight?: number;
  readonly margin?: [number, number, number, number];
  /** Figures of one width, for columns; off where a text was measured, since figures are measured at their own widths. */
  readonly tabular?: boolean;
}

/** A paragraph whose signs come from the faces that have them, its figures all of one width. */
export function paragraph(text: string, look: TextLook): ContentText {
  const [left, top, right, bottom] = look.margin ?? [0, 0, 0, 0];
  const drop = signDrop(text, look.family ?? 'semi', look.size);
  return { text: spans(text, look), ...block({ ...look, margin: [left, top - drop, right, bottom] }) };
}

/** A paragraph of several looks, one after the other. */
export function mixed(parts: readonly (readonly [string, TextLook])[], look: TextLook): ContentText {
  return { text: parts.flatMap(([text, own]) => spans(text, own)), ...block(look) };
}

/** Content with its place on the sheet, in points from the upper left corner. */
export type Placed = Exclude<Content, string | readonly unknown[]> & {
  readonly absolutePosition: { readonly x: number; readonly y: number };
};

/** One line at a fixed place on the sheet. */
export function lineAt(x: number, y: number, text: string, look: TextLook): Placed {
  return { text: spans(text, look), ...block(look), noWrap: true, absolutePosition: { x, y } };
}

function spans(text: string, look: TextLook): ContentText[] {
  const { family = 'semi', bold = false, size, color, spacing, tabular = true } = look;
  return runsOf(text, family).map((run) => ({
    text: run.text,
    font: run.font,
    bold,
    fontSize: run.font === FONTS.signs ? size * SIGN_SIZE : size,
    color,
    ...(tabular ? { fontFeatures: ['tnum', 'lnum'] } : {}),
    ...(spacing === undefined ? {} : { characterSpacing: spacing }),
  }));
}

function block({ align = 'left', lineHeight = 1, margin }: TextLook) {
  return { alignment: align, lineHeight, ...(margin === undefined ? {} : { margin }) };
}
