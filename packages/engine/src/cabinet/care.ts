// What is done to a cabinet again and again so that it stays what its file says: parts, actions, and how long between.

import type { Assumption } from './assumption.ts';

/** As it is asked for, and as it is said when it is done. */
export const careActions = {
  change: 'changed',
  check: 'checked',
  clean: 'cleaned',
  test: 'tested',
  lubricate: 'lubricated',
  dry: 'dried',
} as const;

export type CareAction = keyof typeof careActions;

/** Printing time, s, or months or days of the calendar, each with its spread; pressure loss at which a filter is done, Pa. */
export interface CareInterval {
  readonly printing?: Assumption;
  readonly months?: Assumption;
  readonly days?: Assumption;
  readonly pressure?: number;
}

/** What printing time counts: of one machine, or of every machine whose air meets an air path; else of any machine. */
export interface CareCount {
  readonly machine?: string;
  readonly path?: string;
}

export interface CareTask {
  /** `filter exhaust change`, stable. */
  readonly id: string;
  /** `filter exhaust` */
  readonly part: string;
  readonly action: CareAction;
  readonly says: string;
  readonly counts: CareCount;
  readonly interval: CareInterval;
  /** Where the interval comes from. */
  readonly source: string;
  /** The file gives the interval. */
  readonly own?: true;
  /** Part of the cabinet that it is about, as findings name parts; absent where none is modelled. */
  readonly about?: string;
  /** What the part is, for what its ageing does. */
  readonly kind: CareKind;
}

export type CareKind =
  | 'filter'
  | 'carbon'
  | 'fan'
  | 'seal'
  | 'machine'
  | 'desiccant'
  | 'detector'
  | 'chain'
  | 'extinguisher'
  | 'sensor'
  | 'bay';

/** Intervals of the file: by part, by action; an empty one is care that the person does not want. */
export type OwnCare = Readonly<Record<string, Readonly<Partial<Record<CareAction, CareInterval>>>>>;

/** Names of common practices. */
export type CarePractice =
  | 'belts'
  | 'terminals'
  | 'guides'
  | 'tube end'
  | 'hot end'
  | 'bed cable'
  | 'filterChange'
  | 'filterCheck'
  | 'carbonChange'
  | 'fanCheck'
  | 'fanChange'
  | 'fanAlways'
  | 'sealCheck'
  | 'detectorTest'
  | 'detectorChange'
  | 'chainTest'
  | 'linkCheck'
  | 'extinguisherCheck'
  | 'sensorCheck'
  | 'bayClean'
  | 'desiccantDry';
