// One variant of a search: what it breaks and by how much, what it comes to by each want, what must be bought. Plain data both ways, so
// that variants can be spread over workers.

import type { Cabinet, Edit } from '../../cabinet/cabinet.ts';
import { readCabinet } from '../../cabinet/read-cabinet.ts';
import { setInputs } from '../../cabinet/set-input.ts';
import { sharingParts } from '../../cabinet/sharing-parts.ts';
import { keeps } from '../../judge/bands.ts';
import { findingId, type RunDay, runDay, runDayKept, standingOfMany, type Told } from '../../judge/pipeline.ts';
import { type BatchHooks, type CabinetSource, inTurn } from '../../judge/variants.ts';
import { type Limit, STANDING, type Trade } from '../../trades/measure.ts';
import { trades as allTrades } from '../../trades/trades.ts';
import { priceDifference } from '../price-difference.ts';

export interface SearchTask {
  readonly edits: readonly Edit[];
  readonly inputs: Readonly<Record<string, number>>;
  /** Findings that may be broken; absent: everything is run. As soon as another one is broken, the rest is not run. */
  readonly givenUp?: readonly string[];
}

export interface Broken {
  /** Beyond the limit, as a share of it; of 10 K, of 10 dB; in logarithms where a quantity spans decades. */
  readonly by: number;
  /** How much it matters, 0…1. */
  readonly weight: number;
}

export interface SearchOutcome {
  readonly broken: Readonly<Record<string, Broken>>;
  readonly unknown: readonly string[];
  /** Numbers that wants are made of, by finding id; levels in the room as shares of their guideline. */
  readonly numbers: Readonly<Record<string, number>>;
  /** Middle price of what must be bought; absent when something has none. */
  readonly price?: number;
  /** It broke a limit before all of it was run. */
  readonly abandoned?: true;
  /** Why it could not be run. */
  readonly fault?: string;
}

export type EvaluateSearch = (
  tasks: readonly SearchTask[],
  hooks: BatchHooks,
) => Promise<readonly (SearchOutcome | undefined)[]>;

const SCALE_TEMPERATURE = 10;
const SCALE_LEVEL = 10;

/** By how much a limit is broken; undefined when it is kept. */
export function beyond(limit: Limit, value: number, unit: string, logarithmic: boolean): number | undefined {
  if (keeps(limit, value)) return undefined;
  const over = limit.kind === 'at-most' ? value - limit.value : limit.value - value;
  if (unit.startsWith('temperature')) return over / SCALE_TEMPERATURE;
  if (unit === 'sound-level') return over / SCALE_LEVEL;
  if (logarithmic && value > 0 && limit.value > 0) return Math.abs(Math.log(value / limit.value));
  return over / (Math.abs(limit.value) || 1);
}

/** Findings that the wants are made of. */
const WANTED = /^(?:heat\/peak-air|sound\/loudest|cost\/running-year|draught\/air-speed|air-quality\/room-[^/]*)\//;
/** Of these it is the share of the limit that counts. */
const SHARES = /^(?:air-quality\/room-|draught\/air-speed\/)/;

interface Gathered {
  readonly broken: Record<string, Broken>;
  readonly unknown: string[];
  readonly numbers: Record<string, number>;
}

function gather({ broken, unknown, numbers }: Gathered, measures: readonly Told[], day: string): void {
  for (const measure of measures) {
    const { value, limit, unit, logarithmic = false, weight } = measure;
    const id = findingId(measure, day);
    if (value === undefined || Number.isNaN(value)) {
      unknown.push(id);
      continue;
    }
    const by = limit === undefined ? undefined : beyond(limit, value, unit, logarithmic);
    if (by !== undefined) broken[id] = { by, weight };
    if (!WANTED.test(id)) continue;
    if (!SHARES.test(id)) numbers[id] = value;
    else if (limit !== undefined && limit.value > 0) numbers[id] = value / limit.value;
  }
}

/** A function that runs variants of one file. */
export function searchRunner(
  { file, text }: CabinetSource,
  trades: readonly Trade[] = allTrades,
): (task: SearchTask) => SearchOutcome {
  const kept = runDayKept();
  const shared = sharingParts();
  const standing = standingOfMany(trades);
  let base: Cabinet | undefined;
  return ({ edits, inputs, givenUp }) => {
    const nothing = { broken: {}, unknown: [], numbers: {} };
    const answer = readCabinet(file, text, edits);
    if (!answer.ok) return { ...nothing, fault: answer.complaints[0]?.what ?? 'the edited file cannot be read' };
    base ??= baseOf(file, text);
    try {
      const sampled = Object.keys(inputs).length > 0;
      return measured(setInputs(shared(answer.cabinet), inputs), sampled ? runDay : kept, givenUp);
    } catch (error) {
      return { ...nothing, fault: error instanceof Error ? error.message : String(error) };
    }
  };

  function measured(cabinet: Cabinet, run: RunDay, givenUp: readonly string[] | undefined): SearchOutcome {
    const gathered: Gathered = { broken: {}, unknown: [], numbers: {} };
    const breaks = (): boolean =>
      givenUp !== undefined && Object.keys(gathered.broken).some((id) => !givenUp.includes(id));
    const bought = base === undefined ? undefined : priceDifference(base, cabinet);
    const price = bought === undefined || bought.unknown.length > 0 ? {} : { price: (bought.low + bought.high) / 2 };
    gather(gathered, standing(cabinet), STANDING);
    for (const day of Object.keys(cabinet.days)) {
      if (breaks()) return { ...gathered, ...price, abandoned: true };
      const of = run(cabinet, day);
      gather(
        gathered,
        trades.flatMap((trade) => trade.measure?.(of) ?? []),
        day,
      );
    }
    return { ...gathered, ...price };
  }
}

/** Options and what a search may change are no part of the cabinet: they need not be understood again. */
function baseOf(file: string, text: string): Cabinet | undefined {
  const answer = readCabinet(file, text, [{ set: { title: 'as it stands' } }]);
  return answer.ok ? answer.cabinet : undefined;
}

/** Runs variants in this process and lets others have their turn between them. */
export function evaluateSearchHere(source: CabinetSource, trades?: readonly Trade[]): EvaluateSearch {
  return inTurn(searchRunner(source, trades));
}
