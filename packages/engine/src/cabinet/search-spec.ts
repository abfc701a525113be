// What a search may change, as a person writes it, and the values that this stands for.

import type { PartGroup } from './catalogue.ts';

export interface RangeFree {
  readonly from: string;
  readonly to: string;
  readonly step: string;
}

export interface CatalogueFree {
  readonly catalogue: PartGroup;
  readonly named?: string | undefined;
}

export type FreeSpec = readonly unknown[] | RangeFree | CatalogueFree;

export interface SearchSpec {
  readonly free?: Readonly<Record<string, FreeSpec>> | undefined;
  readonly options?: readonly string[] | undefined;
}

/** What a search may change, with its values written out. */
export interface SearchPlan {
  /** By path: values as they would stand in the file, and whether they lie in order along a scale. */
  readonly free: Readonly<Record<string, FreeValues>>;
  readonly options: readonly string[];
}

export interface FreeValues {
  readonly values: readonly unknown[];
  readonly ordered: boolean;
}

export const SEARCH_GROUPS = [
  'fans',
  'filters',
  'carbons',
  'ducts',
  'fittings',
  'flaps',
  'heats',
  'boards',
  'seals',
  'foams',
  'finishes',
] as const;

/** More values of one range than anybody wants to try. */
export const MOST_VALUES = 60;

/** What is wrong with a range, in words; `key` is the value that is meant. */
export interface RangeFault {
  readonly key: keyof RangeFree;
  readonly what: string;
  readonly allowed: string;
}

/** The number and the rest of a text such as `60 mm round`. */
function numbered(written: string): { readonly number: number; readonly rest: string } | undefined {
  const match = /^\s*(-?\d+(?:\.\d+)?)\s*(.*?)\s*$/.exec(written);
  return match === null ? undefined : { number: Number(match[1]), rest: match[2]! };
}

/** The values of a range in its own unit, or what is wrong with it. */
export function rangeValues({ from, to, step }: RangeFree): readonly unknown[] | RangeFault {
  const allowed = 'numbers in one unit, such as { from: 40 %, to: 100 %, step: 20 % }';
  const [first, last, each] = [from, to, step].map(numbered);
  const fault = (key: keyof RangeFree, what: string): RangeFault => ({ key, what, allowed });
  if (first === undefined) return fault('from', `"${from}" does not begin with a number`);
  if (last === undefined) return fault('to', `"${to}" does not begin with a number`);
  if (each === undefined) return fault('step', `"${step}" does not begin with a number`);
  if (last.rest !== first.rest) return fault('to', `"${to}" is not written as "${from}" is`);
  // Of `60 mm round` the step is `10 mm`: it has the unit, not the shape.
  if (!first.rest.startsWith(each.rest)) return fault('step', `"${step}" is not written as "${from}" is`);
  if (!(each.number > 0)) return fault('step', `"${step}" is not above 0`);
  if (last.number < first.number) return fault('to', `"${to}" is below "${from}"`);
  const count = Math.floor((last.number - first.number) / each.number + 1e-9) + 1;
  if (count > MOST_VALUES) return fault('step', `"${step}" makes ${count} values; ${MOST_VALUES} are the most`);
  return Array.from({ length: count }, (_, at) => {
    const number = Number((first.number + at * each.number).toPrecision(12));
    return first.rest === '' ? number : `${number} ${first.rest}`;
  });
}

/**
 * Whether values lie in order along a scale: numbers in one unit that rise or fall.
 *
 * @example Diameters do, fans do not
 * ```ts
 * inOrder(['60 mm round', '80 mm round']); // => true
 * inOrder(['axial 92 mm quiet', 'blower 75 mm']); // => false
 * ```
 */
export function inOrder(values: readonly unknown[]): boolean {
  const read = values.map((value) => numbered(String(value)));
  const numbers = read.flatMap((each) => (each === undefined ? [] : [each.number]));
  if (numbers.length < values.length || read.some((each) => each?.rest !== read[0]?.rest)) return false;
  const steps = numbers.slice(1).map((number, at) => number - numbers[at]!);
  return steps.every((step) => step > 0) || steps.every((step) => step < 0);
}

/** The values of what is free; `kinds` lists the kinds of a group, the person's own first. */
export function freeValues(
  free: FreeSpec,
  kinds: (group: PartGroup) => readonly string[],
): readonly unknown[] | RangeFault {
  if (Array.isArray(free)) return free as readonly unknown[];
  if ('catalogue' in free) {
    const words = (free.named ?? '').toLowerCase().split(/\s+/);
    return kinds(free.catalogue).filter((kind) => words.every((word) => kind.toLowerCase().includes(word)));
  }
  return rangeValues(free as RangeFree);
}
