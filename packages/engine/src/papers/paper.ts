// What a paper is: one entry of the registry. It turns a cabinet that was read into written and drawn sheets and files beside
// them; frame, title block, cautions, assumptions and missing inputs are put round it by `frame/sheets.ts`, the same for all.

import type { Judgement, ReadSource } from '../judge/judge.ts';
import type { UnitSystem } from '../units/format.ts';
import type { Block } from './frame/block.ts';
import type { Mark } from './frame/mark.ts';
import type { FormatName } from './frame/page.ts';
import type { Shape } from './printed/shape.ts';

/** How views are placed round the front: seen from the left it stands at the right (first angle), or at the left (third). */
export type Angle = 'first' | 'third';
export const angles: readonly Angle[] = ['first', 'third'];

export interface PaperInput {
  readonly source: ReadSource;
  /** Of the program, for the title block. */
  readonly version: string;
  readonly units: UnitSystem;
  readonly angle: Angle;
  readonly format: FormatName;
  /** Printed only when somebody asks for it: without it the same file gives the same bytes. */
  readonly date?: string;
  /** Findings of the cabinet, for papers that need them. */
  readonly judgement?: Judgement;
}

/** Sheets that are written, or one that is drawn. */
export type Part =
  | {
      readonly kind: 'written';
      readonly blocks: readonly Block[];
      /** With a title of its own it begins a new sheet, and holds drawings to this scale. */
      readonly title?: string;
      readonly scale?: string;
    }
  | {
      readonly kind: 'drawn';
      readonly title: string;
      /** As in the title block: `1:10`, or none where nothing is to scale. */
      readonly scale?: string;
      /** What is seen, in words. */
      readonly says: string;
      /** Within `drawingArea`, from the corner of the sheet. */
      readonly marks: readonly Mark[];
    };

export interface PaperFile {
  /** Below the folder of the papers, with `/` between folders. */
  readonly name: string;
  readonly content: string | Uint8Array;
}

/** A solid to print: the station makes triangles of it, and writes them as 3MF and STL. */
export interface SolidFile {
  readonly name: string;
  readonly shape: Shape;
  /** How often it is printed. */
  readonly count: number;
}

/** Flat shapes for a saw or cutter: the station writes them as DXF. */
export interface FlatFile {
  /** Without folder and ending. */
  readonly name: string;
  readonly shapes: readonly FlatShape[];
}

/** Lengths in millimetres from the lower left corner, upwards; layers are named by purpose. */
export type FlatShape =
  | { readonly kind: 'outline'; readonly layer: string; readonly points: readonly (readonly [number, number])[] }
  | {
      readonly kind: 'circle';
      readonly layer: string;
      readonly at: readonly [number, number];
      readonly diameter: number;
    }
  | {
      readonly kind: 'text';
      readonly layer: string;
      readonly at: readonly [number, number];
      readonly text: string;
      readonly height: number;
    };

export interface PaperContent {
  readonly parts: readonly Part[];
  /** Inputs that the file does not give and nobody should guess, each with the key to write. */
  readonly missing?: readonly string[];
  /** Paths in the cabinet, or beginnings of some, that this paper rests on: what of them is assumed is told on its first sheet. */
  readonly rests?: readonly string[];
  /** Further assumptions of the paper's own, in words. */
  readonly assumes?: readonly string[];
  readonly files?: readonly PaperFile[];
  readonly flats?: readonly FlatFile[];
  readonly solids?: readonly SolidFile[];
}

export interface Paper {
  /** Name of its files. */
  readonly id: string;
  readonly title: string;
  /** What it is for, in a line. */
  readonly what: string;
  /** Cautions of its trade; the first stands on every sheet, all of them on the first. */
  readonly cautions: readonly [string, ...string[]];
  /** It needs the findings of the cabinet, which take time. */
  readonly judged?: true;
  readonly make: (input: PaperInput) => PaperContent | Promise<PaperContent>;
}
