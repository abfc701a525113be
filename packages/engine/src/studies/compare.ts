// The cabinet as it stands and every option, over every day, on common samples: what differs, what fails, which is best for what.

import { type AssumedInput, assumedInputs } from '../cabinet/assumed-inputs.ts';
import type { Cabinet, Edit } from '../cabinet/cabinet.ts';
import type { Origins } from '../cabinet/origin.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { type Band, bandOf, chanceInside } from '../judge/bands.ts';
import type { Verdict } from '../judge/finding.ts';
import type { ReadSource } from '../judge/judge.ts';
import { type CabinetMeasures, type DayMeasure, measureDays } from '../judge/pipeline.ts';
import { relevanceIn } from '../judge/relevance.ts';
import { sampleInputs, sampleVariants } from '../judge/sample-variants.ts';
import { sampleColumn } from '../judge/samples.ts';
import { countedHooks, type Evaluate, evaluateHere, type Outcome } from '../judge/variants.ts';
import { verdictOf } from '../judge/verdict.ts';
import type { Limit, Trade } from '../trades/measure.ts';
import { type BestFor, bestFor } from './best-for.ts';
import { type PriceRange, priceDifference } from './price-difference.ts';
import { smallestDifference } from './smallest-difference.ts';
import { type SummaryRow, summaryOf } from './summary.ts';
import { type Want, wantRules } from './wants.ts';

/** Id of the cabinet as it stands, beside the options' own. */
export const AS_IT_STANDS = 'as it stands';

export interface Sheet {
  readonly id: string;
  readonly title: string;
  readonly edits: readonly Edit[];
  /** Why the option cannot be run. */
  readonly fault?: string;
  /** What must be bought, from the cabinet as it stands. */
  readonly price: PriceRange;
  /** Limits that are broken with the nominal inputs, by finding id. */
  readonly broken: readonly string[];
  /** Share of samples in which every limit is kept. */
  readonly chanceOfAll?: number;
  /** What it comes to with the nominal inputs by the measures of the wants, the lower the better. */
  readonly comesTo: Readonly<Partial<Record<Want, number>>>;
  /** What simulating its days warned of. */
  readonly warnings: CabinetMeasures['warnings'];
}

export interface Cell extends Partial<Band> {
  readonly value?: number;
  readonly verdict: Verdict;
  readonly chance?: number;
}

export interface Row {
  /** Finding id. */
  readonly id: string;
  readonly title: string;
  readonly part: string;
  readonly day: string;
  readonly unit: string;
  readonly logarithmic: boolean;
  readonly limit?: Limit;
  readonly weight: number;
  readonly better?: 'lower' | 'higher';
  /** Told even without a limit. */
  readonly compared: boolean;
  /** By sheet id; a sheet in which the part does not exist has none. */
  readonly cells: Readonly<Record<string, Cell>>;
  /** Sheets whose nominal value is best, where one is better than another. */
  readonly best: readonly string[];
  readonly differs: boolean;
}

export interface Comparison {
  /** 2: `summary` came, and a settling measurement says how it is made and how exactly. */
  readonly version: 2;
  readonly currency: string;
  readonly sheets: readonly Sheet[];
  /** One row for each question: every sheet's worst in it. */
  readonly summary: readonly SummaryRow[];
  /** What differs between sheets or fails in one of them, the weightiest first; then all the rest. */
  readonly rows: readonly Row[];
  readonly rest: readonly Row[];
  readonly wants: readonly BestFor[];
  /** Sheets that break no limit with the nominal inputs, the surest first. */
  readonly meetAll: readonly string[];
  readonly samples: { readonly asked: number; readonly faults: readonly string[] };
  readonly stopped: boolean;
}

export interface CompareOptions {
  readonly samples?: number;
  readonly seed?: number;
  readonly evaluate?: Evaluate;
  readonly trades?: readonly Trade[];
  readonly progress?: (done: number, all: number) => void;
  readonly stop?: () => boolean;
}

interface Run {
  readonly id: string;
  readonly title: string;
  readonly edits: readonly Edit[];
  readonly cabinet: Cabinet;
  readonly measures: ReadonlyMap<string, DayMeasure>;
  readonly warnings: CabinetMeasures['warnings'];
  readonly outcomes: readonly (Outcome | undefined)[];
}

export const COMPARE_SAMPLES = 24;

export async function compare(source: ReadSource, options: CompareOptions = {}): Promise<Comparison> {
  const { samples = COMPARE_SAMPLES, seed = 1, trades, progress, stop = () => false } = options;
  const evaluate = options.evaluate ?? evaluateHere(source, trades);
  const candidates = candidatesOf(source);
  const all = candidates.filter(({ read }) => typeof read !== 'string').length * samples;
  const hooks = countedHooks(() => all, progress, stop);
  const runs: Run[] = [];
  const uncertain = new Map<string, AssumedInput>();
  for (const { id, title, edits, read } of candidates) {
    if (typeof read === 'string' || stop()) continue;
    const inputs = assumedInputs(read.origins);
    for (const input of inputs) uncertain.set(input.path, input);
    const variants = sampleVariants(edits, sampleInputs(inputs, samples, seed), samples);
    const { measures, warnings } = measureDays(read.cabinet, trades);
    const outcomes = await evaluate(variants, hooks);
    runs.push({ id, title, edits, cabinet: read.cabinet, measures, warnings, outcomes });
  }

  const rows = rowsOf(runs);
  const differing = new Set(rows.filter(({ differs }) => differs).map(({ id }) => id));
  const worth = (row: Row): boolean =>
    row.differs || Object.values(row.cells).some(({ verdict }) => verdict === 'fails');
  const columns = new Map([...uncertain.keys()].map((path) => [path, sampleColumn(path, samples, seed)] as const));
  const matters = relevanceIn(source.cabinet);
  const sheets = candidates.map((candidate) => sheetOf(candidate, runs, source.cabinet, differing));
  return {
    version: 2,
    currency: source.cabinet.currency,
    sheets,
    summary: summaryOf(
      rows,
      runs.map(({ id }) => id),
    ),
    rows: rows.filter(worth).sort((a, b) => urgency(b) - urgency(a)),
    rest: rows.filter((row) => !worth(row)),
    wants:
      runs.length < 2 || samples === 0
        ? []
        : wantRules.map((rule) => {
            const values = new Map(
              runs.map(({ id, cabinet, outcomes }) => {
                const price = middleOf(priceDifference(source.cabinet, cabinet));
                const of = (outcome: Outcome | undefined): number | undefined =>
                  outcome === undefined || outcome.fault !== undefined ? undefined : rule.of(outcome, price, differing);
                return [id, outcomes.map(of)] as const;
              }),
            );
            return bestFor(
              rule,
              // A sheet that never has a number is not compared, rather than keeping all others from it.
              new Map([...values].filter(([, each]) => each.some((value) => value !== undefined))),
              new Map([...columns].filter(([path]) => matters(path, rule.about))),
              (path) => uncertain.get(path)!,
            );
          }),
    meetAll: sheets
      .filter(({ fault, broken }) => fault === undefined && broken.length === 0)
      .sort((a, b) => (b.chanceOfAll ?? 0) - (a.chanceOfAll ?? 0))
      .map(({ id }) => id),
    samples: {
      asked: samples,
      faults: [...new Set(runs.flatMap(({ outcomes }) => outcomes.flatMap((outcome) => outcome?.fault ?? [])))],
    },
    stopped: stop(),
  };
}

interface Candidate {
  readonly id: string;
  readonly title: string;
  readonly edits: readonly Edit[];
  readonly read: { readonly cabinet: Cabinet; readonly origins: Origins } | string;
}

function candidatesOf({ file, text, cabinet, origins }: ReadSource): Candidate[] {
  const options = Object.entries(cabinet.options).map(([id, { title, edits }]): Candidate => {
    const answer = readCabinet(file, text, edits);
    return { id, title, edits, read: answer.ok ? answer : (answer.complaints[0]?.what ?? 'its edits cannot be done') };
  });
  return [{ id: AS_IT_STANDS, title: 'the cabinet as it stands', edits: [], read: { cabinet, origins } }, ...options];
}

function rowsOf(runs: readonly Run[]): Row[] {
  const ids = new Set(runs.flatMap(({ measures }) => [...measures.keys()]));
  return [...ids].map((id) => {
    const measure = runs.map(({ measures }) => measures.get(id)).find((found) => found !== undefined)!;
    const present = runs.filter(({ measures }) => measures.has(id));
    const cells = Object.fromEntries(present.map((run) => [run.id, cellOf(run, id)]));
    const values = present.flatMap(({ id: sheet }) => cells[sheet]!.value ?? []);
    const spread = Math.max(...values) - Math.min(...values);
    const differs =
      values.length > 0 && (spread > smallestDifference(measure.unit, values) || present.length < runs.length);
    const { better } = measure;
    const top = better === undefined ? undefined : better === 'lower' ? Math.min(...values) : Math.max(...values);
    return {
      id,
      title: measure.title,
      part: measure.part,
      day: measure.day,
      unit: measure.unit,
      logarithmic: measure.logarithmic ?? false,
      ...(measure.limit === undefined ? {} : { limit: measure.limit }),
      weight: measure.weight + (measure.compared === true ? 0.2 : 0),
      ...(better === undefined ? {} : { better }),
      compared: measure.compared === true,
      cells,
      best:
        top === undefined || !differs
          ? []
          : present
              .filter(
                ({ id: sheet }) =>
                  Math.abs((cells[sheet]!.value ?? Number.NaN) - top) <= smallestDifference(measure.unit, values),
              )
              .map(({ id: sheet }) => sheet),
      differs: differs && (measure.compared === true || measure.limit !== undefined),
    };
  });
}

function cellOf({ measures, outcomes }: Run, id: string): Cell {
  const { value, limit, logarithmic } = measures.get(id)!;
  const values = outcomes.flatMap((outcome) => outcome?.values[id] ?? []);
  const band = bandOf(values, logarithmic);
  return {
    ...(value === undefined ? {} : { value }),
    ...band,
    verdict: verdictOf(value, band, limit),
    ...(limit === undefined || band === undefined ? {} : { chance: chanceInside(limit, values) }),
  };
}

function sheetOf(
  { id, title, edits, read }: Candidate,
  runs: readonly Run[],
  base: Cabinet,
  differing: ReadonlySet<string>,
): Sheet {
  const run = runs.find((candidate) => candidate.id === id);
  const price = run === undefined ? { low: 0, high: 0, sources: [], unknown: [] } : priceDifference(base, run.cabinet);
  if (run === undefined)
    return {
      id,
      title,
      edits,
      fault: typeof read === 'string' ? read : 'stopped before it was run',
      price,
      broken: [],
      comesTo: {},
      warnings: [],
    };
  const limited = [...run.measures.values()].filter(({ limit }) => limit !== undefined);
  const broken = limited
    .filter(({ value, limit }) => verdictOf(value, undefined, limit) === 'fails')
    .map(({ id: of }) => of);
  const sampled = run.outcomes.filter((outcome) => outcome !== undefined && outcome.fault === undefined) as Outcome[];
  const keepsAll = ({ values }: Outcome): boolean =>
    limited.every(
      ({ id: of, limit }) => values[of] === undefined || verdictOf(values[of], undefined, limit) === 'holds',
    );
  return {
    id,
    title,
    edits,
    price,
    broken,
    comesTo: comesTo(run, price, differing),
    warnings: run.warnings,
    ...(sampled.length === 0 ? {} : { chanceOfAll: sampled.filter(keepsAll).length / sampled.length }),
  };
}

function middleOf({ low, high, unknown }: PriceRange): number | undefined {
  return unknown.length > 0 ? undefined : (low + high) / 2;
}

function comesTo({ measures }: Run, price: PriceRange, differing: ReadonlySet<string>): Sheet['comesTo'] {
  const values: Record<string, number> = {};
  const limits: Record<string, number> = {};
  for (const [id, { value, limit }] of measures) {
    if (value !== undefined) values[id] = value;
    if (limit !== undefined) limits[id] = limit.value;
  }
  return Object.fromEntries(
    wantRules.flatMap(({ want, of }) => {
      const number = of({ values, limits, unknown: [] }, middleOf(price), differing);
      return number === undefined ? [] : [[want, number] as const];
    }),
  );
}

function urgency({ cells, weight }: Row): number {
  const verdicts = Object.values(cells).map(({ verdict }) => verdict);
  return weight + (verdicts.includes('fails') ? 2 : verdicts.includes('tight') ? 1 : 0);
}
