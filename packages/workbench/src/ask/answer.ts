// What every question and every answer under Ask is made of.

import type { Edit, UnitSystem } from '@stillair/engine';
import type { ComponentType } from 'preact/compat';
import type { Look, Results, StudyName, Wishes } from '../engine/protocol.ts';

/** What every answer is given to show itself. */
export interface AnswerProps<Name extends StudyName> {
  readonly result: Results[Name];
  readonly look: Look;
  readonly units: UnitSystem;
  /** That it is a study of. */
  readonly text: string;
  /** Of the cabinet as it is drawn: its changes can be done. */
  readonly current: boolean;
  readonly onPart: (part: string, day?: string, time?: number) => void;
  /** Where a name of the file is on the sheet, if it is drawn. */
  readonly partOf: (name: string, day?: string) => string | undefined;
  readonly onKeep: (title: string, edits: readonly Edit[]) => void;
  readonly onEdit: (edits: readonly Edit[]) => void;
}

/** What may be chosen before a question is asked. */
export interface ControlsProps {
  readonly look: Look;
  readonly wishes: Partial<Wishes>;
  readonly onWishes: (wishes: Partial<Wishes>) => void;
  /** What was answered last, of whatever text. */
  readonly before?: Results[StudyName] | undefined;
}

export interface Question<Name extends StudyName> {
  readonly asks: string;
  readonly says: string;
  readonly Controls?: ComponentType<ControlsProps>;
  /** What an answer hands on to the next one. */
  readonly handsOn?: (result: Results[Name]) => Partial<Wishes>;
  /** What is wanted before it can be asked. */
  readonly wants?: (wishes: Partial<Wishes>, look: Look) => string | undefined;
  readonly View: ComponentType<AnswerProps<Name>>;
}
