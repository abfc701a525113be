// A page as plain data: its size, and items in the order in which they are read, each with the marks that show it.
// What an item is for is kept, so that a PDF can be read aloud and a picture has words in place of it.

import type { Mark } from './mark.ts';

export type FormatName = 'a4' | 'letter';
/** Upright sheets that a person prints at home, mm. */
export const formats: Readonly<Record<FormatName, { readonly width: number; readonly height: number }>> = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
};

/** ISO 5457: 20 mm at the left for filing, 10 mm elsewhere; the frame is as wide as the title block of ISO 7200, 180 mm. */
export const MARGIN = { left: 20, top: 10, bottom: 10 } as const;
export const FRAME_WIDTH = 180;
export const TITLE_HEIGHT = 30;

export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** What the frame leaves for drawings and text. */
export function drawingArea(format: FormatName): Area {
  const { height } = formats[format];
  const air = 4;
  return {
    x: MARGIN.left + air,
    y: MARGIN.top + air,
    width: FRAME_WIDTH - 2 * air,
    height: height - MARGIN.top - MARGIN.bottom - TITLE_HEIGHT - 2 * air,
  };
}

/** Marks of the cells of one row. */
export type Cells = readonly (readonly Mark[])[];

export type Item =
  | { readonly role: 'title' | 'heading' | 'text'; readonly marks: readonly Mark[] }
  /** `says` stands for it where it cannot be seen. */
  | { readonly role: 'figure'; readonly says: string; readonly marks: readonly Mark[] }
  | { readonly role: 'table'; readonly head: Cells; readonly rows: readonly Cells[]; readonly rules: readonly Mark[] }
  /** Frame, rules, repeated words: nothing that must be read. */
  | { readonly role: 'trim'; readonly marks: readonly Mark[] };

export interface Page {
  readonly width: number;
  readonly height: number;
  readonly items: readonly Item[];
}

/** Every mark of a page, in the order in which it is drawn. */
export function marksOf({ items }: Page): readonly Mark[] {
  return items.flatMap((item) =>
    item.role === 'table' ? [...item.rules, ...item.head.flat(), ...item.rows.flat(2)] : item.marks,
  );
}
