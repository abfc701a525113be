// Set-points of a job over time: listed up to a number, and for each how long every value was held.

import type { SetPoint } from './job.ts';

const MOST_LISTED = 400;
/** Values told apart for each heater; nobody sets more. */
const MOST_VALUES = 500;

export interface HeatCourse {
  readonly listed: SetPoint[];
  more: number;
  /** Set-points whose time is not known yet, with the number of the move that they stand before. */
  readonly waiting: { readonly before: number; readonly point: Omit<SetPoint, 'at'> }[];
  /** By heater: what it holds, since when, and how long it held each value. */
  readonly heaters: Map<string, { to: number; since: number; readonly held: Map<number, number> }>;
}

export function openCourse(): HeatCourse {
  return { listed: [], more: 0, waiting: [], heaters: new Map() };
}

export function heaterName(what: SetPoint['what'], tool: number | undefined): string {
  return tool === undefined ? what : `${what} ${tool}`;
}

/** Gives the first waiting set-point its time; tells before which move the next one stands. */
export function settleFirst(course: HeatCourse, at: number): number {
  const first = course.waiting.shift();
  if (first !== undefined) note(course, { at, ...first.point });
  return course.waiting[0]?.before ?? Infinity;
}

export function note(course: HeatCourse, point: SetPoint): void {
  if (course.listed.length < MOST_LISTED) course.listed.push(point);
  else course.more++;
  const name = heaterName(point.what, point.tool);
  hold(course, name, point.at);
  const held = course.heaters.get(name)?.held ?? new Map<number, number>();
  course.heaters.set(name, { to: point.to ?? 0, since: point.at, held });
}

/** The value above 0 that a heater has held longest by `now`, K. */
export function heldLongest(course: HeatCourse, name: string, now: number): number | undefined {
  hold(course, name, now);
  const values = [...(course.heaters.get(name)?.held ?? [])].filter(([value]) => value > 0);
  // One that was set and never moved under still says what is wanted.
  return values.sort(([, a], [, b]) => b - a)[0]?.[0];
}

/** What a heater is set to; 0 when off. */
export function setTo(course: HeatCourse, name: string): number {
  return course.heaters.get(name)?.to ?? 0;
}

function hold({ heaters }: HeatCourse, name: string, now: number): void {
  const heater = heaters.get(name);
  if (heater === undefined) return;
  const { held, to, since } = heater;
  if (held.size < MOST_VALUES || held.has(to)) held.set(to, (held.get(to) ?? 0) + now - since);
  heater.since = now;
}
