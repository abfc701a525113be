// What a written sheet is made of: headings, text, lists, tables and pictures, laid out one below another by `flow.ts`.

import type { Mark } from './mark.ts';

export interface Column {
  readonly head: string;
  readonly align?: 'left' | 'right';
  /** Share of the width; columns without one are as wide as their words ask for. */
  readonly share?: number;
}

export type Block =
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'text'; readonly text: string; readonly bold?: true; readonly small?: true }
  /** Dashes, numbers, or boxes to tick. */
  | { readonly kind: 'list'; readonly items: readonly string[]; readonly sign?: 'dash' | 'number' | 'box' }
  | {
      readonly kind: 'table';
      readonly columns: readonly Column[];
      readonly rows: readonly (readonly string[])[];
      /** Least height of a row, mm: room to write by hand. */
      readonly rowHeight?: number;
    }
  /** Marks from its own upper left corner. */
  | {
      readonly kind: 'picture';
      readonly width: number;
      readonly height: number;
      readonly says: string;
      readonly marks: readonly Mark[];
    }
  /** What follows begins on a new sheet. */
  | { readonly kind: 'new sheet' };

export const heading = (words: string): Block => ({ kind: 'heading', text: words });
export const paragraph = (words: string): Block => ({ kind: 'text', text: words });
export const smallPrint = (words: string): Block => ({ kind: 'text', text: words, small: true });
export const list = (items: readonly string[], sign: 'dash' | 'number' | 'box' = 'dash'): Block => ({
  kind: 'list',
  items,
  sign,
});
