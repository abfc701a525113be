// What the sheet and every figure on it are given.

import type { Cabinet, UnitSystem } from '@stillair/engine';
import type { ShownDay } from '../engine/protocol.ts';
import type { Shift } from './moves.ts';
import type { FlatView, Paper } from './projection.ts';

export interface SheetProps {
  readonly cabinet: Cabinet;
  readonly day: ShownDay;
  readonly time: number;
  readonly view: FlatView;
  readonly units: UnitSystem;
  readonly dark: boolean;
  readonly picked?: string | undefined;
  /** An option laid over it. */
  readonly traced?: Cabinet | undefined;
  /** Said above it when there is another beside it. */
  readonly heading?: string | undefined;
  /** Parts that remarks speak of, with the mark of the worst. */
  readonly marked: Readonly<Record<string, string>>;
  readonly onPick: (part: string | undefined) => void;
  readonly onMove: (part: string, shift: Shift, phase: 'first' | 'more' | 'last') => void;
}

export type DrawingProps = SheetProps & { readonly paper: Paper };
