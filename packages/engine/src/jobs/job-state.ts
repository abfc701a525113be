// Everything that a job file has said and done up to a line. Written in place, a line at a time: files have millions of them.

import type { Complaint } from '../cabinet/complaint.ts';
import { CODE, MOST_TOOLS } from './code-words.ts';
import { type HeatCourse, openCourse, settleFirst } from './heat-course.ts';
import type { JobRules } from './job.ts';
import { type MoveQueue, openQueue } from './move-queue.ts';

export const MILLIMETRE = 0.001;
export const INCH = 0.0254;

export interface JobState {
  readonly file: string;
  readonly rules: JobRules;
  readonly queue: MoveQueue;
  readonly heat: HeatCourse;
  /** Place of the machine in x, y, z, and how far that is from what the file calls it, m. */
  readonly place: Float64Array;
  readonly offset: Float64Array;
  /** Least and greatest of x, y, z: everywhere, and printed. */
  readonly all: Float64Array;
  readonly printed: Float64Array;
  /** Filament of each tool: fed so far, and the most that it ever was, m. */
  readonly fed: Float64Array;
  readonly mostFed: Float64Array;
  /** Where the file believes the filament to be, m. */
  filament: number;
  feed: number;
  scale: number;
  incremental: boolean;
  filamentRelative: boolean;
  motion: number;
  flat: boolean;
  printAcceleration: number;
  travelAcceleration: number;
  fan: number;
  mostFan: number;
  tool: number;
  depthWay: number;
  depthSign: number;
  reversals: number;
  dwell: number;
  dwellsInP: number;
  heatWaits: number;
  homing: number;
  pauses: number;
  toolChanges: number;
  line: number;
  ended: boolean;
  readonly unknown: Map<string, number>;
  readonly notes: Set<string>;
  readonly complaints: Complaint[];
}

export function openState(file: string, rules: JobRules): JobState {
  const heat = openCourse();
  const none = () => Float64Array.of(Infinity, -Infinity, Infinity, -Infinity, Infinity, -Infinity);
  return {
    file,
    rules,
    queue: openQueue({ deviation: rules.deviation, onMark: (clock) => settleFirst(heat, clock) }),
    heat,
    place: new Float64Array(3),
    offset: new Float64Array(3),
    all: none(),
    printed: none(),
    fed: new Float64Array(MOST_TOOLS),
    mostFed: new Float64Array(MOST_TOOLS),
    filament: 0,
    feed: 0,
    scale: MILLIMETRE,
    incremental: false,
    filamentRelative: false,
    motion: CODE.straight,
    flat: true,
    printAcceleration: rules.acceleration,
    travelAcceleration: rules.acceleration,
    fan: 0,
    mostFan: 0,
    tool: 0,
    depthWay: 0,
    depthSign: 0,
    reversals: 0,
    dwell: 0,
    dwellsInP: 0,
    heatWaits: 0,
    homing: 0,
    pauses: 0,
    toolChanges: 0,
    line: 0,
    ended: false,
    unknown: new Map(),
    notes: new Set(),
    complaints: [],
  };
}
