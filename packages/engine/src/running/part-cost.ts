// What a part costs from its job: filament with what is wasted, electricity as simulated, wear, filters, machine, the cabinet's own
// share, hands, and what failed prints add; held against what the cost trade says of the same job and day.

import type { Edit } from '../cabinet/cabinet.ts';
import { joinPath } from '../cabinet/edit-path.ts';
import type { JobEntry } from '../jobs/job-entry.ts';
import { durationText } from '../jobs/job-entry.ts';
import type { ReadSource } from '../judge/judge.ts';
import { countedHooks } from '../judge/variants.ts';
import { formatNumber } from '../units/format.ts';
import { type CostRow, rowOf, type Told } from './cost-rows.ts';
import { type DayMoney, type MoneyRuns, type PrintMoney, runMoney } from './day-money.ts';
import type { Diary } from './diary.ts';
import { failuresOf } from './failures.ts';
import { clockText } from './job-kinds.ts';
import { printingPerYear } from './printing-year.ts';

export interface PartCost {
  readonly job: string;
  readonly machine: string;
  readonly material: string;
  readonly day: string;
  /** s, and kg of filament as the job says it. */
  readonly duration: number;
  readonly mass: number;
  /** Pieces in the order of the bill; what they add up to comes last. Money for one good job. */
  readonly rows: readonly CostRow[];
  readonly total: CostRow;
  /** The same for one of the parts that it makes. */
  readonly part: CostRow;
  readonly parts: number;
  /** Hands on one good job, s; money is in the rows where `costs.hand-hour` says what an hour costs. */
  readonly hand: CostRow;
  /** What the cost trade says of this job, and what the rows that it knows add up to. */
  readonly trade: { readonly id: string; readonly value: number; readonly sum: number };
}

export interface PartCosts {
  readonly version: 1;
  readonly currency: string;
  readonly parts: readonly PartCost[];
  /** Electricity, wear and filters of all jobs of each day, beside what the cost trade says that the day costs to run. */
  readonly days: readonly { readonly day: string; readonly jobs: number; readonly running: number }[];
  readonly remarks: readonly string[];
  readonly samples: { readonly asked: number; readonly ran: number };
  readonly stopped: boolean;
}

/** A job that no day of the file has yet. */
export interface NewJob {
  readonly entry: JobEntry;
  readonly machine: string;
  readonly material: string;
  /** Of the day, s. */
  readonly start: number;
}

export interface PartCostOptions {
  /** All of the file's days unless given. */
  readonly days?: readonly string[];
  /** Only this job. */
  readonly job?: string;
  /** Put in on the first of the days in place of what its machine prints there. */
  readonly put?: NewJob;
  /** How many parts one job makes. */
  readonly partsAJob?: number;
  readonly diary?: Diary;
  /** Day as a number; needed with a diary. */
  readonly today?: number;
  readonly samples?: number;
  readonly seed?: number;
  readonly progress?: (done: number, all: number) => void;
  readonly stop?: () => boolean;
}

export const PART_SAMPLES = 24;
/** Tails of spools: what a job file does not hold of what is wasted. Common practice. */
const TAILS = '2 (0.5 to 4) %';

export async function partCosts(source: ReadSource, options: PartCostOptions = {}): Promise<PartCosts> {
  const { cabinet, origins } = source;
  const { put, diary, today, samples = PART_SAMPLES, seed = 1, progress, stop = () => false } = options;
  const asked = options.days ?? Object.keys(cabinet.days);
  const days = put === undefined ? asked : asked.slice(0, 1);
  const assumed = (name: string): boolean => origins.get(`costs.${name}`)?.kind === 'assumed';
  const failed = diary === undefined || !assumed('failures') ? undefined : failuresOf(diary.jobs);
  const remarks = [
    ...(failed === undefined ? [] : [failed.says]),
    ...(put !== undefined && assumed('waste')
      ? [
          'the mass is all that the job file feeds, skirts, supports and purging too: only tails of spools are wasted beside it',
        ]
      : []),
  ];
  const edits: Edit[] = [
    ...(failed === undefined ? [] : [{ set: { 'costs.failures': failed.share } }]),
    ...(put !== undefined && assumed('waste') ? [{ set: { 'costs.waste': TAILS } }] : []),
  ];
  const all = days.length * (1 + samples);
  const runs = await runMoney(
    source,
    days.map((day) => ({ day, edits: [...edits, ...(put === undefined ? [] : putEdits(put, day, source))] })),
    {
      samples,
      seed,
      hooks: countedHooks(() => all, progress, stop),
    },
  );
  const perYear = printingPerYear(cabinet, diary, today);
  const found = runs.flatMap((run, at) => (run === undefined || 'fault' in run ? [] : [{ run, day: days[at]! }]));
  return {
    version: 1,
    currency: cabinet.currency,
    parts: found.flatMap(({ run, day }) =>
      Object.keys(run.middle.prints)
        .filter((job) =>
          put === undefined ? options.job === undefined || options.job === job : put.entry.name === job,
        )
        .map((job) => partOf(run, day, job, perYear, options.partsAJob ?? 1)),
    ),
    days: found.map(({ run: { middle }, day }) => ({
      day,
      jobs: Object.values(middle.prints).reduce(
        (sum, { own, shared, wear, filters }) => sum + own + shared + wear + filters,
        0,
      ),
      running: middle.electricity + middle.filters + middle.wear,
    })),
    remarks: [
      ...remarks,
      ...runs.flatMap((run, at) =>
        run !== undefined && 'fault' in run ? [`${days[at]!} could not be run: ${run.fault}`] : [],
      ),
    ],
    samples: {
      asked: samples,
      ran: Math.min(...(found.length === 0 ? [0] : found.map(({ run }) => run.samples.length))),
    },
    stopped: stop(),
  };
}

/** The job in place of what its machine prints on that day. */
function putEdits({ entry, machine, material, start }: NewJob, day: string, { cabinet }: ReadSource): Edit[] {
  const { jobs, length } = cabinet.days[day]!;
  const at = (...keys: string[]): string => joinPath(['days', day, ...keys]);
  const others = Object.keys(jobs).filter((id) => jobs[id]!.machine === machine || id === entry.name);
  const end = start + entry.for;
  const degrees = (kelvin: number): string => `${formatNumber(kelvin - 273.15, 1)} °C`;
  const job = {
    machine,
    material,
    start: clockText(start),
    for: durationText(entry.for),
    ...(entry.nozzle === undefined ? {} : { nozzle: degrees(entry.nozzle) }),
    ...(entry.bed === undefined ? {} : { bed: degrees(entry.bed) }),
    ...(entry.mass === undefined ? {} : { mass: `${formatNumber(entry.mass * 1000, 2)} g` }),
    ...(entry.partSize === undefined ? {} : { 'part-size': `${formatNumber(entry.partSize * 1000, 1)} mm` }),
  };
  return [
    ...(others.length === 0 ? [] : [{ remove: others.map((id) => at('jobs', id)) }]),
    {
      set: {
        [at('jobs', entry.name)]: job,
        ...(end > length ? { [at('length')]: `${Math.ceil(end / 3600 + 1)} h` } : {}),
      },
    },
  ];
}

/** One job, and the day on which it runs. */
export interface Sum {
  readonly print: PrintMoney;
  readonly day: DayMoney;
}

/** Pieces of one good job, in the order of the bill; what failed prints add comes last. */
export function partPieces(perYear: number | undefined): readonly Told<Sum>[] {
  return [...TOLD, cabinetShare(perYear), HANDS, FAILED(perYear)];
}

export function partOf(
  { middle, samples }: MoneyRuns,
  day: string,
  job: string,
  perYear: number | undefined,
  parts: number,
): PartCost {
  const drawn = {
    middle: { print: middle.prints[job]!, day: middle },
    samples: samples.flatMap((one) => (one.prints[job] === undefined ? [] : [{ print: one.prints[job]!, day: one }])),
  };
  const { print } = drawn.middle;
  const told = (row: Told<Sum>): CostRow => rowOf(drawn, row);
  const rows = partPieces(perYear).map(told);
  const total = told({ id: 'total', says: 'one good job', of: (sum) => totalOf(sum, perYear) });
  const inTrade: readonly string[] = ['filament', 'waste', 'electricity', 'standby', 'wear', 'machine', 'filters'];
  const once = rows.filter(({ id }) => inTrade.includes(id)).reduce((sum, { value = 0 }) => sum + value, 0);
  return {
    job,
    machine: print.machine,
    material: print.material,
    day,
    duration: print.duration,
    mass: print.mass,
    rows,
    total,
    part: told({ id: 'part', says: 'one good part', of: (sum) => totalOf(sum, perYear) / parts }),
    parts,
    hand: told({ id: 'hand', says: 'hands on one good job, s', of: ({ day: of }) => of.hand / (1 - of.failures) }),
    trade: {
      id: `cost/print-cost/${print.machine}.${job}/${day}`,
      value: print.total,
      sum: once / (1 - middle.failures),
    },
  };
}

const INVENTED = 'catalogue prices are invented, typical; the file’s own go first';

const TOLD: readonly Told<Sum>[] = [
  { id: 'filament', says: 'filament of the part', of: ({ print }) => print.filament, source: INVENTED },
  { id: 'waste', says: 'filament beyond it: purging, skirts, supports, tails', of: ({ print }) => print.waste },
  { id: 'electricity', says: 'electricity of its machine, as simulated', of: ({ print }) => print.own },
  { id: 'standby', says: 'its share of standby, fans and lamps of the day', of: ({ print }) => print.shared },
  { id: 'wear', says: 'nozzle, belts and plate', of: ({ print }) => print.wear },
  {
    id: 'machine',
    says: 'the machine growing old',
    of: ({ print }) => print.ageing,
    missing: 'nobody said what the machine costs: give prices: for its kind',
  },
  { id: 'filters', says: 'its share of filters and carbon, by their lives', of: ({ print }) => print.filters },
];

const shareOfCabinet = ({ print, day }: Sum, perYear: number | undefined): number | undefined =>
  perYear === undefined || day.bill === undefined || !(perYear > 0)
    ? undefined
    : (day.bill * (YEAR / day.cabinetLife) * print.duration) / perYear;
const YEAR = 365.25 * 86_400;

const cabinetShare = (perYear: number | undefined): Told<Sum> => ({
  id: 'cabinet',
  says: 'its share of the cabinet itself, by the hours of all machines in a year',
  of: (sum) => shareOfCabinet(sum, perYear),
  missing:
    perYear === undefined
      ? 'how much is printed in a year is not known: give costs.times, or enter jobs in a diary'
      : 'no price of the cabinet is known: give prices: of its parts',
  source: 'written off over 5 to 8 years unless costs.cabinet-life says otherwise; common practice',
});

const HANDS: Told<Sum> = {
  id: 'hands',
  says: 'hands: preparing, taking off, cleaning',
  of: ({ day }) => (day.handRate === undefined ? undefined : day.hand * day.handRate),
  missing: 'your own time, counted as nothing; costs.hand-hour says what an hour of it costs',
  source: '5 to 25 min a job unless costs.hand says otherwise; common practice',
};

const FAILED = (perYear: number | undefined): Told<Sum> => ({
  id: 'failures',
  says: 'what failed prints add: all of it again for each',
  of: (sum) => onceOf(sum, perYear) * (sum.day.failures / (1 - sum.day.failures)),
  source: 'mean of a geometric number of trials',
});

/** One job whether or not it fails, with the cabinet's share and hands where they are known. */
function onceOf(sum: Sum, perYear: number | undefined): number {
  return [...TOLD, cabinetShare(perYear), HANDS].reduce((total, { of }) => total + (of(sum) ?? 0), 0);
}

function totalOf(sum: Sum, perYear: number | undefined): number {
  return onceOf(sum, perYear) / (1 - sum.day.failures);
}
