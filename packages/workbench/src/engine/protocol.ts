// What the page and the engine's workers say to each other. Plain data; every answer names the question it belongs to.

import type {
  Cabinet,
  Comparison,
  Complaint,
  Edit,
  Finding,
  Judgement,
  Panel,
  SheetDay,
  Strip,
  UnitSystem,
} from '@stillair/engine';
import type { JsonSchema } from '../text/schema-at.ts';

/** One day, ready to be drawn. */
export interface ShownDay {
  readonly sheet: SheetDay;
  readonly strips: readonly Strip[];
  readonly panels: readonly Panel[];
}

/** Where an input came from, in words, by its path in the cabinet. */
export type OriginTexts = Readonly<Record<string, string>>;

export interface Uncertain {
  readonly path: string;
  readonly label: string;
  readonly why: string;
}

/** Words for the text editor. */
export interface Vocabulary {
  readonly schema: JsonSchema;
  /** Names that fit at a key, `machines.kind` before `kind`. */
  readonly names: Readonly<Record<string, readonly string[]>>;
}

/** One key of a part. */
export interface Field {
  /** In the file. */
  readonly path: string;
  readonly key: string;
  readonly about: string;
  /** It can be a single value. */
  readonly editable: boolean;
  readonly written?: string;
  readonly words?: readonly string[];
  /** Where the number in use comes from. */
  readonly origin: string;
}

export type Question =
  /** Read this text and answer with its middle values; a later question of the kind ends this one. */
  | { readonly kind: 'look'; readonly id: number; readonly text: string; readonly units: UnitSystem }
  /** Bands, chances and tried remedies of this text. */
  | { readonly kind: 'judge'; readonly id: number; readonly text: string; readonly samples: number }
  | { readonly kind: 'compare'; readonly id: number; readonly text: string; readonly samples: number }
  /** The text with these edits done, comments kept. */
  | { readonly kind: 'edit'; readonly id: number; readonly text: string; readonly edits: readonly Edit[] }
  /** The text of an option, read for drawing beside the cabinet as it stands. */
  | {
      readonly kind: 'option';
      readonly id: number;
      readonly text: string;
      readonly option: string;
      readonly units: UnitSystem;
    }
  | { readonly kind: 'words'; readonly id: number; readonly text: string }
  | { readonly kind: 'inspect'; readonly id: number; readonly text: string; readonly path: string }
  | { readonly kind: 'stop'; readonly id: number };

/** The cabinet of a text, drawn and answered by middle values. */
export interface Look {
  readonly cabinet: Cabinet;
  readonly findings: readonly Finding[];
  readonly days: readonly ShownDay[];
  readonly origins: OriginTexts;
  readonly uncertain: readonly Uncertain[];
  readonly warnings: readonly { readonly day: string; readonly message: string }[];
}

export type Answer =
  | { readonly kind: 'faulty'; readonly id: number; readonly complaints: readonly Complaint[] }
  | ({ readonly kind: 'looked'; readonly id: number; readonly took: number } & Look)
  | { readonly kind: 'judged'; readonly id: number; readonly judgement: Judgement }
  | { readonly kind: 'compared'; readonly id: number; readonly comparison: Comparison }
  | { readonly kind: 'edited'; readonly id: number; readonly text: string }
  | { readonly kind: 'worded'; readonly id: number; readonly vocabulary: Vocabulary }
  | { readonly kind: 'inspected'; readonly id: number; readonly fields: readonly Field[] }
  | { readonly kind: 'refused'; readonly id: number; readonly why: string }
  | {
      readonly kind: 'progress';
      readonly id: number;
      readonly of: 'judge' | 'compare';
      readonly done: number;
      readonly all: number;
    };
