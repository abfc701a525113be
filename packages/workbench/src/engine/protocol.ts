// What the page and the engine's workers say to each other. Plain data; every answer names the question it belongs to.

import type {
  BriefFinding,
  Cabinet,
  CalibrationStudy,
  CareStudy,
  Comparison,
  Complaint,
  Cut,
  DayBands,
  DriftStudy,
  Edit,
  FaultStudy,
  JobReport,
  JobSummary,
  Judgement,
  KeptStart,
  LogFault,
  LogPlan,
  MonthCost,
  Panel,
  PaperFile,
  Paring,
  PartCosts,
  Plan,
  QueueCosts,
  SearchStudy,
  SheetDay,
  ShutOffs,
  SpreadStudy,
  Step,
  Strip,
  UnitSystem,
  Want,
} from '@stillair/engine';
import type { JsonSchema } from '../text/schema-at.ts';

/** One day, ready to be drawn. */
export interface ShownDay {
  readonly sheet: SheetDay;
}

/** What happens over a day, drawn at the foot of the page. */
export interface DayLines {
  readonly strips: readonly Strip[];
  readonly panels: readonly Panel[];
}

/** From the inputs to a number, each input with where it came from, in words. */
export interface Reason {
  readonly steps: readonly (Omit<Step, 'inputs'> & {
    readonly inputs: readonly { readonly path: string; readonly from: string }[];
  })[];
}

/** A number that nobody has given. */
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

/** A file of the person's own that has faults: nothing came of it. */
export interface Unreadable {
  readonly unreadable: string;
  readonly complaints: readonly Complaint[];
}

export interface JobRead {
  readonly file: string;
  readonly job: JobSummary;
  readonly report: JobReport;
  /** Keys of its entry in a day of the file. */
  readonly keys: Readonly<Record<string, string>>;
}

/** One paper, its sheets as pictures. */
export interface PaperShown {
  readonly id: string;
  readonly title: string;
  readonly what: string;
  readonly sheets: readonly string[];
  readonly missing: readonly string[];
  readonly files: readonly PaperFile[];
  /** Flat shapes and solids, which only the command writes as files. */
  readonly elsewhere: number;
}

/** What a column of a log measured, over the panel of a day that has its place. */
export interface Measured {
  readonly name: string;
  /** Title of the panel. */
  readonly panel: string;
  readonly unit: string;
  /** s of the day, value in the unit. */
  readonly points: readonly (readonly [number, number])[];
}

/** A log held against the file. */
export interface Calibrated {
  readonly study: CalibrationStudy;
  readonly overlay: readonly Measured[];
  readonly picture?: string;
}

export interface Drifted {
  readonly study: DriftStudy;
  readonly picture?: string;
}

export interface PlanMade {
  readonly plan: Plan;
  readonly picture: string;
  readonly calendar: string;
}

/** What each study answers. */
export interface Results {
  readonly compare: Comparison;
  readonly spread: SpreadStudy;
  /** With the front as a picture. */
  readonly search: { readonly study: SearchStudy; readonly picture: string };
  readonly faults: FaultStudy;
  readonly pare: Paring;
  readonly job: JobRead | Unreadable;
  readonly shutOff: ShutOffs | Unreadable;
  readonly care: CareStudy | Unreadable;
  readonly partCosts:
    | { readonly of: 'days'; readonly costs: PartCosts }
    | { readonly of: 'queue'; readonly costs: QueueCosts }
    | { readonly of: 'month'; readonly costs: MonthCost }
    | Unreadable;
  /** With the week as a picture, and as a calendar. */
  readonly plan: PlanMade | Unreadable;
  readonly calibrate: Calibrated | LogFault;
  readonly drift: Drifted | LogFault;
  readonly papers: { readonly papers: readonly PaperShown[] };
}

export type StudyName = keyof Results;

/** What a person may choose of a study. */
export interface Wishes {
  readonly samples: number;
  /** All days of the file unless given. */
  readonly days?: readonly string[];
  /** What a search is for. */
  readonly wants?: readonly Want[];
  /** A job file, a diary, a log. */
  readonly file?: File;
  readonly machine?: string;
  readonly material?: string;
  /** Year-month-day. */
  readonly today?: string;
  readonly units?: UnitSystem;
  /** Typed by hand: `14:05 top 41 °C`. */
  readonly readings?: readonly string[];
  /** Where columns of a log hang: `Temp 1=top`. */
  readonly columns?: readonly string[];
  /** Added to all times of a log: `1 h`. */
  readonly shift?: string;
  /** Job files that the queue names, handed in. */
  readonly jobFiles?: readonly File[];
  /** Where the local server gives them: `&path=` and the path come behind it. */
  readonly served?: string;
  /** What is asked about: days unless given. */
  readonly of?: 'days' | 'queue' | 'month';
  /** Year-month. */
  readonly month?: string;
  /** A plan is made anew from then on: `Tue 14:00`. */
  readonly now?: string;
  /** What the plan before it said. */
  readonly earlier?: {
    readonly origin: number;
    readonly starts: readonly KeptStart[];
    readonly cuts: readonly Cut[];
  };
}

/** Tasks that can be spread over workers, by the function that runs them. */
export type Runs = 'variants' | 'faults' | 'search' | 'trials' | 'log' | 'courses';

/** One task for a helping worker; tasks of one piece of work share what was read for it. */
export interface Help {
  readonly kind: 'help';
  readonly ticket: number;
  readonly work: number;
  readonly runs: Runs;
  readonly text: string;
  /** Of a log: what is read of the cabinet, and when. */
  readonly plan?: LogPlan;
  readonly task: unknown;
}

export interface Helped {
  readonly kind: 'helped';
  readonly ticket: number;
  readonly outcome: unknown;
}

export interface Progress {
  readonly done: number;
  readonly all: number;
  /** Since it was begun, ms. */
  readonly took: number;
}

export type Question =
  /** Read this text and answer with a share of its middle values; a later question of the kind ends this one. */
  | { readonly kind: 'look'; readonly id: number; readonly text: string; readonly share: Share }
  /** How a finding of a text that was looked at came about. */
  | { readonly kind: 'reason'; readonly id: number; readonly text: string; readonly finding: string }
  /** What is drawn of a day of a text that was looked at. */
  | {
      readonly kind: 'lines';
      readonly id: number;
      readonly text: string;
      readonly day: string;
      readonly units: UnitSystem;
    }
  /** Bands, chances and tried remedies of this text; ends whatever long work there is. */
  | { readonly kind: 'judge'; readonly id: number; readonly text: string; readonly samples: number }
  /** A study of this text, after its bands; ends another study. */
  | {
      readonly kind: 'ask';
      readonly id: number;
      readonly text: string;
      readonly study: StudyName;
      readonly wishes: Wishes;
    }
  /** Bands about the lines of one day of this text; runs beside the rest, and ends only another of its kind. */
  | {
      readonly kind: 'dayBands';
      readonly id: number;
      readonly text: string;
      readonly day: string;
      readonly units: UnitSystem;
      readonly samples: number;
    }
  /** The text with these edits done, comments kept. */
  | { readonly kind: 'edit'; readonly id: number; readonly text: string; readonly edits: readonly Edit[] }
  /** The text of an option, read for drawing beside the cabinet as it stands. */
  | { readonly kind: 'option'; readonly id: number; readonly text: string; readonly option: string }
  | { readonly kind: 'words'; readonly id: number; readonly text: string }
  | { readonly kind: 'inspect'; readonly id: number; readonly text: string; readonly path: string }
  /** The person wants no more of it: what there is, is told. */
  | { readonly kind: 'stop'; readonly id: number; readonly of: 'judge' | 'ask' }
  /** The text has changed: nobody wants to hear of the old one. */
  | { readonly kind: 'leave'; readonly id: number };

type LongKind = 'judge' | 'ask' | 'dayBands' | 'stop' | 'leave';
export type QuickQuestion = Exclude<Question, { readonly kind: LongKind }>;
export type LongQuestion = Extract<Question, { readonly kind: LongKind }>;

/** A look that `of` workers share: each takes every `of`-th day, from its own place `at` on; the first also takes what no day changes. */
export interface Share {
  readonly at: number;
  readonly of: number;
}

/** What one worker has looked at. */
export interface LookPart {
  readonly standing?: {
    readonly cabinet: Cabinet;
    readonly uncertain: readonly Uncertain[];
    readonly findings: readonly BriefFinding[];
  };
  readonly days: readonly DayLook[];
}

export interface DayLook extends ShownDay {
  readonly findings: readonly BriefFinding[];
  readonly warnings: readonly string[];
}

/** The cabinet of a text, drawn and answered by middle values. */
export interface Look {
  readonly cabinet: Cabinet;
  readonly findings: readonly BriefFinding[];
  readonly days: readonly ShownDay[];
  readonly uncertain: readonly Uncertain[];
  readonly warnings: readonly { readonly day: string; readonly message: string }[];
}

/** Bands, chances and what was tried. */
export type Judged = Omit<Judgement, 'findings'> & { readonly findings: readonly BriefFinding[] };

/** What the page hears. */
export type Answer =
  | { readonly kind: 'faulty'; readonly id: number; readonly complaints: readonly Complaint[] }
  | ({ readonly kind: 'looked'; readonly id: number; readonly text: string } & Look)
  /** Findings with their bands, before changes that might mend them are tried. */
  | { readonly kind: 'banded'; readonly id: number; readonly findings: readonly BriefFinding[] }
  | { readonly kind: 'judged'; readonly id: number; readonly judgement: Judged }
  | { readonly kind: 'judging'; readonly id: number; readonly progress: Progress }
  | { readonly kind: 'dayBanded'; readonly id: number; readonly units: UnitSystem; readonly bands: DayBands }
  | { readonly kind: 'studying'; readonly id: number; readonly study: StudyName; readonly progress: Progress }
  | Told
  /** The study could not be made. */
  | { readonly kind: 'broke'; readonly id: number; readonly study: StudyName; readonly why: string }
  | { readonly kind: 'edited'; readonly id: number; readonly text: string }
  | { readonly kind: 'worded'; readonly id: number; readonly vocabulary: Vocabulary }
  | { readonly kind: 'inspected'; readonly id: number; readonly fields: readonly Field[] }
  | { readonly kind: 'reasoned'; readonly id: number; readonly reason?: Reason }
  | { readonly kind: 'lined'; readonly id: number; readonly lines?: DayLines }
  | { readonly kind: 'refused'; readonly id: number; readonly why: string };

/** What a worker says: of a look, its part. */
export type Said =
  | Exclude<Answer, { readonly kind: 'looked' }>
  | { readonly kind: 'part'; readonly id: number; readonly text: string; readonly part: LookPart };

/** What a study says: so far, or at its end. */
export type Told = {
  readonly [Name in StudyName]: {
    readonly kind: 'told';
    readonly id: number;
    readonly study: Name;
    readonly result: Results[Name];
    readonly ended: 'not yet' | 'whole' | 'stopped';
  };
}[StudyName];
