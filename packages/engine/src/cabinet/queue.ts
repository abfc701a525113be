// Jobs that wait to be printed, and what a plan of them has to go by. As written and as filled in.

import type { Moment } from '../units/week.ts';
import type { Given } from './spec.ts';

type Maybe<T> = T | undefined;

/** What a plan makes least, after deadlines that are missed. */
export const queueAims = ['early', 'cost', 'quiet'] as const;
export type QueueAim = (typeof queueAims)[number];

export type Stretch = readonly [start: number, end: number];

export interface PresentSpec {
  readonly written: string;
  readonly days: readonly number[];
  readonly windows: readonly Stretch[];
}

export interface QueueJobSpec {
  readonly machine?: Maybe<readonly string[]>;
  readonly material: string;
  /** From the folder of the cabinet file on. */
  readonly 'job-file'?: Maybe<string>;
  /** Needed where there is no job file. */
  readonly for?: Given;
  readonly nozzle?: Given;
  readonly bed?: Given;
  readonly mass?: Given;
  readonly 'part-size'?: Given;
  readonly base?: Maybe<readonly number[]>;
  readonly copies?: Maybe<number>;
  readonly earliest?: Maybe<Moment>;
  readonly due?: Maybe<Moment>;
  readonly attended?: Given;
  readonly pinned?: Maybe<Moment>;
}

/** From a moment to another. */
export interface MomentsSpec {
  readonly from: Moment;
  readonly to: Moment;
}

export interface QueueSpec {
  readonly from: Moment;
  readonly length?: Given;
  readonly step?: Given;
  readonly like?: Maybe<string>;
  readonly aims?: Maybe<readonly QueueAim[]>;
  readonly attended?: Given;
  readonly present?: Maybe<readonly PresentSpec[]>;
  readonly down?: Maybe<Readonly<Record<string, readonly MomentsSpec[]>>>;
  readonly jobs?: Maybe<Readonly<Record<string, QueueJobSpec>>>;
}

/** Times are s after midnight of the day on which the plan begins. */
export interface QueueJob {
  /** Machines on which it may run. */
  readonly machines: readonly string[];
  readonly material: string;
  readonly duration: number;
  readonly nozzle: number;
  readonly bed: number;
  /** kg */
  readonly mass: number;
  /** m */
  readonly partSize: number;
  readonly copies: number;
  readonly earliest?: number;
  readonly due?: number;
  /** How long somebody watches it once it is warm, s. */
  readonly attended: number;
  /** It starts then, or has started then, on its one machine. */
  readonly pinned?: number;
  /** The job file that it was read from. */
  readonly jobFile?: string;
  /** Where the entry says otherwise than its job file. */
  readonly remarks?: readonly string[];
}

/** A job whose job file has not been read: nothing is known of it yet. */
export interface UnreadJob {
  /** As it is written: from the folder of the cabinet file on. */
  readonly path: string;
  readonly machines: readonly string[];
  readonly material: string;
}

export interface Queue {
  /** Day on which it begins, days since 1970-01-01. */
  readonly origin: number;
  readonly from: number;
  readonly until: number;
  /** Starts lie on multiples of it after `from`, s. */
  readonly step: number;
  /** Day of the file whose room and outdoors the week has. */
  readonly like: string;
  /** One after the other, behind missed deadlines. */
  readonly aims: readonly QueueAim[];
  /** When somebody is there who can start a job and watch it. */
  readonly present: readonly Stretch[];
  /** What these hours are taken from. */
  readonly presentFrom: string;
  /** When machines are out of use. */
  readonly down: Readonly<Record<string, readonly Stretch[]>>;
  readonly jobs: Readonly<Record<string, QueueJob>>;
  readonly unread: Readonly<Record<string, UnreadJob>>;
}

/** Of a plan that does not say, s. */
export const QUEUE_LENGTH: number = 7 * 86_400;

/** Whether a bed takes a part, turned by a quarter or not. */
export function takes([width, depth]: readonly [number, number], a: number, b: number): boolean {
  return (a <= width && b <= depth) || (b <= width && a <= depth);
}
