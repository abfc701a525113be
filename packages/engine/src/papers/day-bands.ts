// Bands about the lines of a day: the day run again with the samples that the judge varies, each line of its panels held at even
// moments, and of all samples the tenth and ninetieth of a hundred at each moment. What a band says is of one moment, not of a course.

import { assumedInputs } from '../cabinet/assumed-inputs.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { setInputs } from '../cabinet/set-input.ts';
import { bandOf } from '../judge/bands.ts';
import { type ReadSource, USUAL_SAMPLES } from '../judge/judge.ts';
import { runDay } from '../judge/pipeline.ts';
import { sampleInputs } from '../judge/sample-variants.ts';
import { type BatchHooks, type CabinetSource, countedHooks, inTurn } from '../judge/variants.ts';
import { dayPanels, type Panel } from './day-panels.ts';
import type { Points } from './trace.ts';

/** One sample: a day with these numbers of the cabinet replaced, by path. */
export interface CourseTask {
  readonly day: string;
  readonly units: 'metric' | 'imperial';
  readonly inputs: Readonly<Record<string, number>>;
}

export interface LineCourse {
  /** Title of the panel. */
  readonly panel: string;
  readonly line: string;
  readonly decades: boolean;
  /** One a moment. */
  readonly values: readonly number[];
}

export type CourseOutcome = { readonly lines: readonly LineCourse[] } | { readonly fault: string };

export type EvaluateCourses = (
  tasks: readonly CourseTask[],
  hooks: BatchHooks,
) => Promise<readonly (CourseOutcome | undefined)[]>;

export interface LineBand {
  readonly panel: string;
  readonly line: string;
  /** 10th percentile, one a moment, in the unit of the panel. */
  readonly low: readonly number[];
  /** 90th. */
  readonly high: readonly number[];
}

export interface DayBands {
  readonly version: 1;
  readonly day: string;
  /** s, even, from the start to the end of the day. */
  readonly times: readonly number[];
  /** Empty when too few samples ran. */
  readonly bands: readonly LineBand[];
  readonly samples: { readonly asked: number; readonly ran: number; readonly faults: readonly string[] };
  readonly stopped: boolean;
}

export interface DayBandsOptions {
  readonly day: string;
  readonly units?: 'metric' | 'imperial';
  readonly samples?: number;
  readonly seed?: number;
  readonly evaluate?: EvaluateCourses;
  readonly progress?: (done: number, all: number) => void;
  readonly stop?: () => boolean;
}

/** Moments of a day: every five minutes of 24 h, as on the sheet. */
const MOMENTS = 288;

/** A function that runs samples of one file. */
export function courseRunner({ file, text }: CabinetSource): (task: CourseTask) => CourseOutcome {
  const answer = readCabinet(file, text);
  return ({ day, units, inputs }) => {
    if (!answer.ok) return { fault: answer.complaints[0]?.what ?? 'the file cannot be read' };
    try {
      const run = runDay(setInputs(answer.cabinet, inputs), day);
      const times = moments(run.cabinet.days[day]!.length);
      return { lines: dayPanels(run, { units }).flatMap((panel) => coursesOf(panel, times)) };
    } catch (error) {
      // As with any sample: several far inputs together may make a network that no day can be run on.
      return { fault: error instanceof Error ? error.message : String(error) };
    }
  };
}

export async function dayBands(source: ReadSource, options: DayBandsOptions): Promise<DayBands> {
  const { day, units = 'metric', samples = USUAL_SAMPLES, seed = 1, progress, stop = () => false } = options;
  const evaluate = options.evaluate ?? inTurn(courseRunner(source));
  const columns = sampleInputs(assumedInputs(source.origins), samples, seed);
  const tasks = Array.from({ length: samples }, (_, at): CourseTask => {
    const inputs = Object.fromEntries([...columns].map(([path, values]) => [path, values[at]!]));
    return { day, units, inputs };
  });
  const outcomes = await evaluate(
    tasks,
    countedHooks(() => samples, progress, stop),
  );
  const ran = outcomes.flatMap((outcome) => (outcome !== undefined && 'lines' in outcome ? [outcome.lines] : []));
  const faults = outcomes.flatMap((outcome) => (outcome !== undefined && 'fault' in outcome ? [outcome.fault] : []));
  return {
    version: 1,
    day,
    times: moments(source.cabinet.days[day]!.length),
    bands: bandsOf(ran),
    samples: { asked: samples, ran: ran.length, faults: [...new Set(faults)] },
    stopped: stop(),
  };
}

function moments(length: number): number[] {
  return Array.from({ length: MOMENTS + 1 }, (_, at) => (length * at) / MOMENTS);
}

function coursesOf({ title, scale, lines }: Panel, times: readonly number[]): LineCourse[] {
  return lines.map(({ label, points }) => ({
    panel: title,
    line: label,
    decades: scale === 'decades',
    values: heldAt(points, times),
  }));
}

/** Values of a line at rising times; where it jumps, after the jump. */
function heldAt(points: Points, times: readonly number[]): number[] {
  let row = 0;
  return times.map((time) => {
    while (row + 1 < points.length && points[row + 1]![0] <= time) row += 1;
    const [t0, v0] = points[row]!;
    const [t1, v1] = points[row + 1] ?? [t0, v0];
    return t1 > t0 ? v0 + ((v1 - v0) * Math.max(0, time - t0)) / (t1 - t0) : v0;
  });
}

function bandsOf(ran: readonly (readonly LineCourse[])[]): LineBand[] {
  const [first = []] = ran;
  return first.flatMap(({ panel, line, decades, values }): LineBand[] => {
    const same = ran.flatMap((lines) => lines.find((each) => each.panel === panel && each.line === line)?.values ?? []);
    const width = values.length;
    const bands = values.map((_, at) =>
      bandOf(
        Array.from({ length: same.length / width }, (__, sample) => same[sample * width + at]!),
        decades,
      ),
    );
    if (bands.includes(undefined)) return [];
    return [{ panel, line, low: bands.map((band) => band!.p10), high: bands.map((band) => band!.p90) }];
  });
}
