// What each option changes, sample by sample: the level of a finding may be known badly while its difference is known well.

import type { Limit } from '../../trades/measure.ts';
import { smallestDifference } from '../smallest-difference.ts';
import { chanceOf, type Estimate, type EstimatedBand, estimatedBand, meanOf } from './estimate.ts';
import { brokenIn, keptIn, type SpreadRun, valuesIn } from './spread-runs.ts';

export interface OptionSpread {
  readonly id: string;
  readonly title: string;
  readonly fault?: string;
  readonly ran: number;
  /** Limits broken. */
  readonly broken?: Estimate;
  readonly brokenBand?: EstimatedBand;
  /** Against the cabinet as it stands, on the same samples; absent of that itself. */
  readonly brokenMore?: EstimatedBand;
  readonly fewer?: Estimate;
  readonly more?: Estimate;
  /** Chance that every limit is kept. */
  readonly meetsAll?: Estimate;
}

export interface OptionDifference {
  readonly option: string;
  /** Finding id. */
  readonly id: string;
  readonly trade: string;
  readonly quantity: string;
  readonly title: string;
  readonly part: string;
  readonly day: string;
  readonly unit: string;
  readonly weight: number;
  readonly limit: Limit;
  /** How the band is to be read: option less cabinet in the finding's unit, or option divided by cabinet. */
  readonly as: 'difference' | 'ratio';
  readonly band: EstimatedBand;
  /** Chance that the option is better, and that it is worse; the rest is alike. */
  readonly better: Estimate;
  readonly worse: Estimate;
  /** Chance that the limit is kept. */
  readonly kept: Estimate;
  readonly keptBefore: Estimate;
  /** Width of the cabinet's own band by that of the difference; absent where the difference does not scatter at all. */
  readonly narrower?: number;
  /** How far the middle moves, as share of that and of the room that was between it and the limit. */
  readonly closes: number;
}

export interface Orders {
  /** Differences of findings whose limit neither the cabinet nor the option is certain to keep, or to break ... */
  readonly open: number;
  /** ... and those of them of which it is certain all the same that the option is no worse, or no better. */
  readonly certain: number;
  /** Middle of all differences: how many times as exactly they are known as the cabinet's own level. */
  readonly narrower?: number;
}

/** From this chance on an order is certain, and a verdict too. */
const CERTAIN = 0.95;

/** Neither certain nor certainly not. */
export function isBetween({ value }: Estimate): boolean {
  return value > 1 - CERTAIN && value < CERTAIN;
}

export function ordersOf(differences: readonly OptionDifference[]): Orders {
  const open = differences.filter(({ kept, keptBefore }) => isBetween(kept) && isBetween(keptBefore));
  const certain = open.filter(({ better, worse }) => Math.min(better.value, worse.value) <= 1 - CERTAIN);
  const ratios = differences.map(({ narrower = Infinity }) => narrower).sort((a, b) => a - b);
  const middle = ratios[Math.floor(ratios.length / 2)];
  return {
    open: open.length,
    certain: certain.length,
    ...(middle !== undefined && Number.isFinite(middle) ? { narrower: middle } : {}),
  };
}

export function optionSpread(run: SpreadRun, base: SpreadRun): OptionSpread {
  const { id, title, fault } = run;
  const ran = run.outcomes.filter((outcome) => outcome !== undefined).length;
  const named = { id, title, ran };
  if (fault !== undefined) return { ...named, fault };
  const broken = brokenIn(run);
  const before = brokenIn(base);
  const more = broken.map((count, at) =>
    count === undefined || before[at] === undefined ? undefined : count - before[at],
  );
  const of = (test: (count: number) => boolean, counts: readonly (number | undefined)[]): Estimate | undefined =>
    chanceOf(counts.map((count) => (count === undefined ? undefined : test(count))));
  return defined({
    ...named,
    broken: meanOf(broken),
    brokenBand: estimatedBand(broken),
    meetsAll: of((count) => count === 0, broken),
    ...(run === base
      ? {}
      : {
          brokenMore: estimatedBand(more),
          fewer: of((count) => count < 0, more),
          more: of((count) => count > 0, more),
        }),
  });
}

/** Without keys that have no value. */
function defined<Shape extends object>(shape: Shape): { [Key in keyof Shape]: Exclude<Shape[Key], undefined> } {
  return Object.fromEntries(Object.entries(shape).filter(([, value]) => value !== undefined)) as never;
}

/** Of every finding with a limit that both have; those that are alike in almost every sample are left out. Most changed first. */
export function differencesOf(run: SpreadRun, base: SpreadRun): OptionDifference[] {
  return [...base.measures.keys()]
    .flatMap((id) => differenceIn(run, base, id) ?? [])
    .sort((a, b) => importance(b) - importance(a));
}

/** The difference by which the option is worse, sample by sample. */
export function worseBy(run: SpreadRun, base: SpreadRun, id: string): (number | undefined)[] {
  const { better, limit } = base.measures.get(id)!;
  const sign = better === 'higher' || (better === undefined && limit?.kind === 'at-least') ? -1 : 1;
  const [after, before] = [valuesIn(run, id), valuesIn(base, id)];
  return after.map((value, at) =>
    value === undefined || before[at] === undefined ? undefined : sign * (value - before[at]),
  );
}

function differenceIn(run: SpreadRun, base: SpreadRun, id: string): OptionDifference | undefined {
  const measure = base.measures.get(id)!;
  const { limit, unit, logarithmic = false, trade, quantity, title, part, day, weight } = measure;
  if (limit === undefined || run.measures.get(id)?.limit === undefined) return undefined;
  const [after, before] = [valuesIn(run, id), valuesIn(base, id)];
  const worse = worseBy(run, base, id).map((by, at) => {
    if (by === undefined) return undefined;
    return Math.abs(by) <= smallestDifference(unit, [after[at]!, before[at]!]) ? 0 : by;
  });
  const side = (test: (by: number) => boolean): Estimate | undefined =>
    chanceOf(worse.map((by) => (by === undefined ? undefined : test(by))));
  const [isBetter, isWorse] = [side((by) => by < 0), side((by) => by > 0)];
  const asRatio = logarithmic && [...after, ...before].every((value) => value === undefined || value > 0);
  const band = estimatedBand(
    after.map((value, at) =>
      value === undefined || before[at] === undefined ? undefined : asRatio ? value / before[at] : value - before[at],
    ),
    asRatio,
  );
  const [kept, keptBefore] = [chanceOf(keptIn(run, id)), chanceOf(keptIn(base, id))];
  if (
    band === undefined ||
    isBetter === undefined ||
    isWorse === undefined ||
    kept === undefined ||
    keptBefore === undefined
  )
    return undefined;
  if (isBetter.value + isWorse.value < 1 - CERTAIN) return undefined;
  const level = estimatedBand(before, asRatio)!;
  const narrower = narrowerBy(level, band, asRatio);
  const room = asRatio && limit.value > 0 ? Math.log(level.p50 / limit.value) : level.p50 - limit.value;
  const moved = Math.abs(asRatio ? Math.log(band.p50) : band.p50);
  return {
    option: run.id,
    id,
    trade,
    quantity,
    title,
    part,
    day,
    unit,
    weight,
    limit,
    as: asRatio ? 'ratio' : 'difference',
    band,
    better: isBetter,
    worse: isWorse,
    kept,
    keptBefore,
    ...(narrower === undefined ? {} : { narrower }),
    closes: moved / Math.max(moved + Math.abs(room), 1e-12),
  };
}

function narrowerBy(level: EstimatedBand, difference: EstimatedBand, asRatio: boolean): number | undefined {
  const width = ({ p10, p90 }: EstimatedBand): number => (asRatio ? Math.log(p90 / p10) : p90 - p10);
  return !(width(difference) > 0) ? undefined : width(level) / width(difference);
}

/** What moves the chance of a limit first; then what surely brings it much nearer to its limit or away from it, by weight. */
function importance({ weight, kept, keptBefore, better, worse, closes }: OptionDifference): number {
  return weight * (3 * Math.abs(kept.value - keptBefore.value) + closes * Math.max(better.value, worse.value));
}
