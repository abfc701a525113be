// A plan in words: the week as a strip, what happens when, why then, and what does not hold.

import {
  type Cabinet,
  conflictHead,
  FEWEST_SAMPLES,
  formatDatedMoment,
  formatDay,
  formatMoment,
  formatNumber,
  movedHead,
  movedText,
  type Plan,
  type PlanAim,
  type PlanCheck,
  type PlannedJob,
  type UnitSystem,
} from '@stillair/engine';
import { bandOf, quantity, shortLimit } from '../finding-text.ts';
import { type Ink, inkFor } from '../ink.ts';
import type { Io } from '../io.ts';
import { sourceNotes } from '../source-notes.ts';
import { table } from '../table.ts';
import { hanging, pad } from '../text.ts';

const DAY = 86_400;
const HOUR = 3600;
const CAUTION =
  'A plan is no watch: nothing here replaces somebody who looks, the makers’ papers, local codes and licensed practice.';

const aimWords: Readonly<Record<PlanAim['aim'], string>> = {
  deadlines: 'deadlines kept',
  early: 'done early',
  cost: 'cheap electricity',
  quiet: 'quiet where people are',
  stay: 'where an earlier plan has it',
};

export function planText(plan: Plan, cabinet: Cabinet, units: UnitSystem, io: Io): string {
  const ink = inkFor(io);
  const paragraph = (text: string): string => hanging('', text, io.columns);
  const { origin, from, until, aims } = plan.queue;
  const day = (time: number): string => formatDatedMoment(origin, time);
  const span = `From ${day(from)} to ${day(until)}; first ${['deadlines', ...aims].map((aim) => aimWords[aim as PlanAim['aim']]).join(', then ')}.`;
  const head = [ink.strong(cabinet.title), paragraph(`${span} ${openingOf(plan, cabinet)}`), paragraph(CAUTION)].join(
    '\n',
  );
  const letters = new Map(plan.jobs.map(({ id }, at) => [id, letterOf(at)]));
  return [
    head,
    ...conflictText(plan, io),
    ...(plan.jobs.length === 0
      ? []
      : [
          strips(plan, Object.keys(cabinet.machines), letters, units, io),
          jobTable(plan, cabinet, letters, io),
          `${ink.strong('Why then')}\n${whys(plan, io)}`,
        ]),
    ...movedLines(plan, io),
    ...remarksText(plan, io),
    ...learned(plan, io),
    ...checksText(plan, units, io, ink),
  ].join('\n\n');
}

function openingOf({ found, aims, jobs }: Plan, { currency }: Cabinet): string {
  if (found === 'no') return 'There is no such plan.';
  if (found === 'unknown') return 'No plan was found; that there is none is not proved. --nodes searches further.';
  const missed = jobs.filter(({ late }) => late);
  const dues =
    missed.length === 0
      ? 'No deadline is missed.'
      : `${missed.map(({ id }) => id).join(', ')} miss${missed.length === 1 ? 'es' : ''} the deadline.`;
  const others = aims.filter(({ aim }) => aim !== 'deadlines').map((aim) => aimText(aim, currency));
  return [dues, ...others].join(' ');
}

function aimText({ aim, value, bound, proved }: PlanAim, currency: string): string {
  const number = (one: number): string =>
    aim === 'cost'
      ? `${formatNumber(one, 2)} ${currency}`
      : aim === 'early'
        ? `${formatNumber(one, 1)} h`
        : aim === 'stay'
          ? String(Math.round(one))
          : `${formatNumber(one, 2)} h`;
  const what =
    aim === 'cost'
      ? 'Electricity beyond rest'
      : aim === 'early'
        ? 'Ends of all jobs after the plan’s start, added up'
        : aim === 'stay'
          ? 'Jobs that leave the earlier plan'
          : 'Noise of machines while people are there, as hours at 40 dB(A)';
  const surely = proved ? 'proved least' : `at best ${number(bound)}: the search was ended, --nodes goes further`;
  return `${what}: ${number(value)} (${surely}).`;
}

function conflictText({ conflict, found }: Plan, io: Io): string[] {
  if (conflict === undefined) return [];
  return [
    [
      hanging('', conflictHead(conflict, found !== 'no'), io.columns),
      ...conflict.demands.map(({ says }) => hanging('- ', says, io.columns)),
    ].join('\n'),
  ];
}

const letterOf = (at: number): string => 'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ'[at % 52]!;

const LEVELS = '▁▂▃▄▅▆▇█';

/** Day by day: machines with the letters of their jobs, and below the most of the hour. */
function strips(
  plan: Plan,
  machines: readonly string[],
  letters: ReadonlyMap<string, string>,
  units: UnitSystem,
  io: Io,
): string {
  const { origin, from, until } = plan.queue;
  const rows = rowsOf(plan);
  const names = [...machines, 'there', ...rows.map(({ name }) => name)];
  // As wide as the day that stands above them.
  const wide = Math.max(10, ...names.map((name) => name.length));
  const cells = io.columns >= wide + 2 + 48 ? 2 : 1;
  const most = scalesOf(plan);
  const days: string[] = [];
  const last = Math.max(...plan.jobs.map(({ end }) => end));
  for (let day = Math.floor(from / DAY); day * DAY < Math.min(last, until); day += 1) {
    const at = (cell: number): number => day * DAY + (cell * HOUR) / cells + HOUR / cells / 2;
    const row = (name: string, sign: (time: number) => string): string =>
      `${pad(name, wide)}  ${Array.from({ length: 24 * cells }, (_, cell) => sign(at(cell))).join('')}`.trimEnd();
    const clock = Array.from({ length: 4 }, (_, at6) => pad(`${6 * at6}`, 6 * cells)).join('');
    const inside = (time: number): boolean => time >= from && time < until;
    days.push(
      [
        `${pad(formatDay(origin + day), wide + 2)}${clock}`.slice(0, io.columns).trimEnd(),
        ...machines.map((machine) =>
          row(machine, (time) => {
            const job = plan.jobs.find((each) => each.machine === machine && each.start <= time && time < each.end);
            return job === undefined ? (inside(time) ? '·' : ' ') : letters.get(job.id)!;
          }),
        ),
        row('there', (time) =>
          plan.queue.present.some(([a, b]) => a <= time && time < b) ? '=' : inside(time) ? '·' : ' ',
        ),
        ...rows.map(({ name, what, of }) =>
          row(name, (time) => {
            const hour = plan.hours.find((each) => each.time <= time && time < each.time + HOUR);
            return hour === undefined ? ' ' : levelOf(of(hour), most[what]);
          }),
        ),
      ].join('\n'),
    );
  }
  const range = (what: 'power' | 'air' | 'noise', kind: string): string =>
    `${what} ${quantity(kind, most[what].low, units)} to ${quantity(kind, most[what].high, units)}`;
  const legend = hanging(
    '',
    `${last + DAY < until ? `Nothing is planned after ${formatMoment(origin, last)}. ` : ''}Letters: jobs, below. there: somebody who can start a job. Steps: most in the hour, ${range('power', 'power')}; ${range('air', 'temperature')} (warmest bay); ${range('noise', 'sound-level')} (loudest place).${rows.length > 3 ? ' p90: what nine of ten samples stay below.' : ''}`,
    io.columns,
  );
  return [...days, legend].join('\n\n');
}

type Hour = Plan['hours'][number];
type Step = 'power' | 'air' | 'noise';

interface Range {
  readonly low: number;
  readonly high: number;
}

const middle: Readonly<Record<Step, (hour: Hour) => number>> = {
  power: ({ power }) => power,
  air: ({ air }) => Math.max(...Object.values(air)),
  noise: ({ noise }) => Math.max(0, ...Object.values(noise)),
};

const high: Readonly<Record<Step, (hour: Hour) => number>> = {
  power: (hour) => hour.bands?.power.p90 ?? middle.power(hour),
  air: (hour) =>
    Math.max(...(hour.bands === undefined ? [middle.air(hour)] : Object.values(hour.bands.air).map(({ p90 }) => p90))),
  noise: (hour) =>
    Math.max(
      0,
      ...(hour.bands === undefined ? [middle.noise(hour)] : Object.values(hour.bands.noise).map(({ p90 }) => p90)),
    ),
};

/** A row of steps for each quantity, and one for its 90th percentile where that shows. */
function rowsOf(plan: Plan): { readonly name: string; readonly what: Step; readonly of: (hour: Hour) => number }[] {
  const scales = scalesOf(plan);
  return (['power', 'air', 'noise'] as const).flatMap((what) => {
    const apart = plan.hours.some(
      (hour) => levelOf(high[what](hour), scales[what]) !== levelOf(middle[what](hour), scales[what]),
    );
    return [{ name: what, what, of: middle[what] }, ...(apart ? [{ name: `${what} p90`, what, of: high[what] }] : [])];
  });
}

function scalesOf({ hours }: Plan): Readonly<Record<Step, Range>> {
  const range = (what: Step, low?: number): Range => ({
    low: low ?? Math.min(...hours.map(middle[what])),
    high: Math.max(...hours.map(high[what])),
  });
  return { power: range('power', 0), air: range('air'), noise: range('noise') };
}

function levelOf(value: number, { low, high }: Range): string {
  const share = high > low ? (value - low) / (high - low) : 0;
  return LEVELS[Math.min(Math.floor(share * LEVELS.length), LEVELS.length - 1)]!;
}

function jobTable(
  { jobs, queue: { origin } }: Plan,
  { currency }: Cabinet,
  letters: ReadonlyMap<string, string>,
  io: Io,
): string {
  return table(
    [
      { head: '', least: 1 },
      { head: 'job', least: 8 },
      { head: 'machine', least: 7 },
      { head: 'starts', least: 9 },
      { head: 'watched until', least: 7 },
      { head: 'ends', least: 9 },
      { head: 'due', least: 9 },
      { head: 'socket off from', least: 9 },
      { head: currency, align: 'right', least: 4 },
    ],
    jobs.map(({ id, machine, start, watched, end, due, late, off, cost, how }) => [
      letters.get(id)!,
      how === 'planned' ? id : `${id} (${how})`,
      machine,
      formatMoment(origin, start),
      formatMoment(origin, Math.ceil(watched / 60) * 60).replace(/^\w+ /, ''),
      formatMoment(origin, end),
      due === undefined ? '' : `${formatMoment(origin, due)}${late ? ' MISSED' : ''}`,
      off === undefined ? 'stays on' : formatMoment(origin, off),
      formatNumber(cost, 2),
    ]),
    io.columns,
  );
}

function whys({ jobs, queue: { origin }, now }: Plan, io: Io): string {
  return jobs
    .map(({ id, why, how, start }: PlannedJob) => {
      const reasons =
        how !== 'planned'
          ? [how === 'pinned' ? 'it is pinned there in the file' : 'it had started by then']
          : start <= now || why.length === 0
            ? ['nothing keeps it from starting at once']
            : why.slice(0, 2).map(({ to, because }) => `until ${formatMoment(origin, to)} ${because}`);
      return hanging(`- ${id}: `, reasons.join('; '), io.columns);
    })
    .join('\n');
}

/** What has become of the jobs of the earlier plan. */
function movedLines({ moved, queue: { origin } }: Plan, io: Io): string[] {
  if (moved === undefined) return [];
  const lines = moved.flatMap((job) => movedText(job, origin) ?? []);
  return [
    [hanging('', movedHead(moved), io.columns), ...lines.map((text) => hanging('- ', text, io.columns))].join('\n'),
  ];
}

function remarksText({ remarks }: Plan, io: Io): string[] {
  if (remarks.length === 0) return [];
  return [['Of job files:', ...remarks.map((text) => hanging('- ', text, io.columns))].join('\n')];
}

function learned({ learned: says }: Plan, io: Io): string[] {
  if (says.length === 0) return [];
  return [
    ['Learned from weeks that were simulated:', ...says.map((text) => hanging('- ', text, io.columns))].join('\n'),
  ];
}

function checksText(plan: Plan, units: UnitSystem, io: Io, ink: Ink): string[] {
  const {
    checks,
    queue: { origin },
  } = plan;
  if (checks.length === 0) return [];
  const notes = sourceNotes();
  const told = checks.filter(({ verdict }) => verdict === 'fails' || verdict === 'tight');
  const count = (verdict: PlanCheck['verdict']): number => checks.filter((check) => check.verdict === verdict).length;
  const line = ({ title, part, unit, value, limit, at, alone, verdict, p10, p90 }: PlanCheck): string => {
    const number = quantity(unit, value!, units);
    const band = p10 === undefined || p90 === undefined || p10 === p90 ? '' : ` (${bandOf(unit, p10, p90, units)})`;
    const when = at === undefined ? '' : ` at ${formatMoment(origin, at)}`;
    const plans = alone ? '; alone too, so that no start mends it' : '';
    const word = verdict === 'tight' ? 'tight: ' : '';
    return `${word}${title}, ${part}: ${number}${band} ${shortLimit(limit, unit, units, number)} ${notes.mark(limit.source)}${when}${plans}`;
  };
  const counts = [
    `${count('holds')} hold`,
    ...(count('tight') > 0 ? [`${count('tight')} ${count('tight') === 1 ? 'is' : 'are'} tight`] : []),
    ...(count('fails') > 0 ? [`${count('fails')} fail${count('fails') === 1 ? 's' : ''}`] : []),
    ...(count('unknown') > 0 ? [`${count('unknown')} cannot be told`] : []),
  ].join(', ');
  const head = `The week as planned was simulated and held against the limits of heat, power and sound: ${counts}. ${sampledText(plan)}`;
  return [
    [
      hanging('', head.trim(), io.columns),
      ...told.map((check) =>
        hanging('- ', check.verdict === 'fails' ? ink.alarm(line(check)) : line(check), io.columns),
      ),
    ].join('\n'),
    ...(told.length === 0 ? [] : [notes.list(io.columns)]),
  ];
}

function sampledText({ samples: { asked, ran, faults } }: Plan): string {
  if (asked === 0) return 'Middle values only: --samples 24 gives bands.';
  const rest = faults.length === 0 ? '' : ` (${faults.join('; ')})`;
  return ran < FEWEST_SAMPLES
    ? `Middle values only: ${ran} of ${asked} samples ran${rest}, too few for a band.`
    : `Bands from the 10th to the 90th percentile of ${ran} samples${ran < asked ? ` of ${asked}${rest}` : ''}.`;
}
