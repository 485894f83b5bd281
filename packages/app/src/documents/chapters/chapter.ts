import type { CaughtCaution } from '@spraywright/engine/physics';

/** One thing to do: its number is its place in the list. */
export interface StepBlock {
  readonly text: string;
  /** Numbers of the parts that it is about. */
  readonly parts: readonly number[];
  readonly source: string;
}

/** What papers and pages are made of, so that both say the same. */
export type Block =
  | { readonly kind: 'note'; readonly text: string }
  | { readonly kind: 'warning'; readonly text: string }
  | { readonly kind: 'head'; readonly text: string }
  | { readonly kind: 'steps'; readonly steps: readonly StepBlock[] }
  | {
      readonly kind: 'table';
      readonly captions: readonly string[];
      readonly rows: readonly (readonly string[])[];
      /** Points on paper; `*` takes what is left. */
      readonly widths: readonly (number | '*')[];
      /** How many columns from the left are words; the others are figures. */
      readonly words: number;
      /** Column whose figures are set bold. */
      readonly strong?: number;
    }
  | {
      readonly kind: 'drawing';
      readonly svg: string;
      /** What it shows, for those who cannot see it. */
      readonly words: string;
      /** Points on paper. */
      readonly width: number;
      /** A small drawing at its right, with its words. */
      readonly beside?: { readonly svg: string; readonly words: string; readonly width: number };
    }
  | {
      readonly kind: 'photos';
      /** JPEGs as data addresses, with what they show. */
      readonly photos: readonly { readonly image: string; readonly words: string }[];
    }
  | { readonly kind: 'cautions'; readonly cautions: readonly CaughtCaution[] };

/** A part of a paper under its own heading. */
export interface Chapter {
  readonly id: string;
  readonly title: string;
  readonly blocks: readonly Block[];
  /** Begins a new sheet of paper. */
  readonly newSheet?: boolean;
}

export const note = (text: string): Block => ({ kind: 'note', text });
export const warning = (text: string): Block => ({ kind: 'warning', text });
export const head = (text: string): Block => ({ kind: 'head', text });
