// stillair shut-off FILE: when the socket of each machine may be switched off after each job, and a rule for a switch.

import {
  formatClock,
  formatDuration,
  type JobShutOff,
  listed,
  type MachineSwitch,
  queueAsDays,
  type ReadSource,
  SHUT_OFF_CAUTION,
  type ShutOffOptions,
  type ShutOffs,
  shutOffs,
  type UnitSystem,
} from '@stillair/engine';
import { quantity } from '../finding-text.ts';
import { inkFor } from '../ink.ts';
import type { ExitCode, Io } from '../io.ts';
import { loadCabinet } from '../load-cabinet.ts';
import { progressLine } from '../progress.ts';
import { table } from '../table.ts';
import { hanging } from '../text.ts';
import { unknownName } from '../unknown-name.ts';
import { jobsWait, noJobWaits, withJobFiles } from '../with-job-files.ts';

export interface ShutOffCommandOptions {
  readonly day?: string;
  /** Jobs that wait, each alone, in place of the days. */
  readonly queue?: boolean;
  readonly json?: boolean;
  readonly units: UnitSystem;
}

export async function shutOff(file: string, options: ShutOffCommandOptions, io: Io): Promise<ExitCode> {
  const loaded = await loadCabinet(file, 'shut-off', io);
  if (loaded === undefined) return 2;
  if (options.queue === true) return ofQueue(loaded, options, io);
  const source = loaded;
  const known = Object.keys(source.cabinet.days);
  const { day } = options;
  if (day !== undefined && !known.includes(day)) {
    io.err(`stillair shut-off: ${unknownName('day', day, known)}`);
    return 2;
  }
  return told(source, day === undefined ? {} : { days: [day] }, options, io);
}

async function ofQueue(loaded: ReadSource, options: ShutOffCommandOptions, io: Io): Promise<ExitCode> {
  if (options.day !== undefined || !jobsWait(loaded.cabinet)) {
    const problem =
      options.day === undefined ? noJobWaits(loaded.file) : '--queue is of jobs that wait: it goes without --day';
    io.err(`stillair shut-off: ${problem}`);
    return 2;
  }
  const source = await withJobFiles(loaded, io);
  if (typeof source === 'number') return source;
  return told({ ...source, cabinet: queueAsDays(source.cabinet) }, {}, options, io);
}

function told(source: ReadSource, only: ShutOffOptions, options: ShutOffCommandOptions, io: Io): ExitCode {
  const { file } = source;
  const progress = progressLine(io, 'running days');
  const found = shutOffs(source, { ...only, progress, stop: () => io.stop.aborted });
  io.progress('');
  const { title } = source.cabinet;
  if (options.json) io.out(JSON.stringify({ ...found, file, cabinet: title }, null, 2));
  else io.out(inWords(title, found, options, io));
  if (io.stop.aborted) return 130;
  return found.jobs.some(isUnknown) || found.switches.some(({ threshold }) => threshold === undefined) ? 3 : 0;
}

const QUEUE_SAYS =
  'Each job that waits is begun alone at 9:00, on every machine on which it may run: what counts is the time after its start. Of a whole week, stillair plan says it.';

const isUnknown = ({ off, next }: JobShutOff): boolean => off === undefined && next === undefined;

function inWords(title: string, found: ShutOffs, { units, queue }: ShutOffCommandOptions, io: Io): string {
  const ink = inkFor(io);
  const paragraph = (text: string): string => hanging('', text, io.columns);
  const { bed, hotEnd, reserve } = found.limits;
  const opening = `A socket may go off when the bed is below ${quantity('temperature', bed.value, units)} (${bed.source}) and the hot end below ${quantity('temperature', hotEnd.value, units)} (${hotEnd.source}), reckoned in the bay's own air, and ${Math.round(100 * reserve.value)} % more time, or what a bed that loses least and a heavy hot end take where that is longer.`;
  const jobs =
    found.jobs.length === 0
      ? ['Nothing is printed on these days.']
      : [jobTable(found, found.days.length > 1 && queue !== true, units, io)];
  return [
    `${ink.strong(title)}\n${paragraph(opening)}\n${paragraph(SHUT_OFF_CAUTION)}`,
    ...(queue === true ? [paragraph(QUEUE_SAYS)] : []),
    ...jobs,
    ...unseen(found).map(paragraph),
    ...(found.switches.length === 0
      ? []
      : [
          `${ink.strong('For a switch that measures power')}\n${paragraph('Once more than the first figure was drawn for a minute: off when less than the threshold is drawn for the whole delay. A machine that rests between two heatings of its bed draws more than the threshold, and no bed rests as long as the delay.')}`,
          switchTable(found.switches, units, io.columns),
        ]),
    ...remarksOf(found.switches).map((text) => hanging('- ', text, io.columns)),
  ].join('\n\n');
}

function jobTable({ jobs }: ShutOffs, withDay: boolean, units: UnitSystem, io: Io): string {
  const columns = [
    { head: 'job', least: 8 },
    ...(withDay ? [{ head: 'day', least: 9 }] : []),
    { head: 'ends', align: 'right', least: 5 },
    { head: 'bed\nthen', align: 'right', least: 6 },
    { head: 'cool after\nbed', align: 'right', least: 6 },
    { head: 'hot end', align: 'right', least: 6 },
    { head: 'at the latest', align: 'right', least: 6 },
    { head: 'off from', least: 8 },
    { head: 'after its start', least: 9 },
  ] as const;
  const rows = jobs.map((job) => [
    job.part,
    ...(withDay ? [job.day] : []),
    formatClock(job.end),
    quantity('temperature', job.bed.first, units),
    minutes(job.bed.after),
    minutes(job.hotEnd.after),
    minutes(job.spread?.[1]),
    job.off !== undefined
      ? formatClock(job.off)
      : job.next !== undefined
        ? `stays on: ${job.next.job} at ${formatClock(job.next.start)}`
        : 'not known',
    job.afterStart === undefined ? '' : formatDuration(job.afterStart),
  ]);
  return table(columns, rows, io.columns);
}

const minutes = (seconds: number | undefined): string =>
  seconds === undefined ? '–' : formatDuration(Math.round(seconds / 60) * 60);

function unseen({ jobs }: ShutOffs): string[] {
  return jobs
    .filter(isUnknown)
    .map(
      ({ part, day, bed }) =>
        `${part} on ${day}: ${bed.after === undefined ? 'the bed' : 'the hot end'} is not seen to cool down in the six hours after the day; the bay stays warm. Leave its power on until somebody has looked.`,
    );
}

function switchTable(switches: readonly MachineSwitch[], units: UnitSystem, width: number): string {
  const watts = (value: number): string => quantity('power', value, units);
  return table(
    [
      { head: 'machine', least: 7 },
      { head: 'at rest', align: 'right', least: 6 },
      { head: 'least while\nprinting', align: 'right', least: 6 },
      { head: 'bed rests\nat most', align: 'right', least: 6 },
      { head: 'once above', align: 'right', least: 6 },
      { head: 'threshold', align: 'right', least: 6 },
      { head: 'delay', align: 'right', least: 6 },
    ],
    switches.map(({ machine, rest, least, lull, armed, threshold, delay }) => [
      machine,
      watts(rest),
      watts(least),
      lull === undefined ? '–' : formatDuration(Math.round(lull)),
      armed === undefined ? '–' : watts(armed),
      threshold === undefined ? 'none' : watts(threshold),
      delay === undefined ? '–' : formatDuration(delay),
    ]),
    width,
  );
}

function remarksOf(switches: readonly MachineSwitch[]): string[] {
  const strips = new Map<string, { machines: string[]; rest: readonly string[] }>();
  const fans = new Map<string, { machines: string[]; seconds: number }>();
  for (const { machine, shares, runOn } of switches) {
    if (shares !== undefined) {
      const known = strips.get(shares.strip) ?? { machines: [], rest: [] };
      const rest = [...shares.machines, ...shares.fans.map((fan) => `the fans of ${fan}`), ...shares.others];
      strips.set(shares.strip, {
        machines: [...known.machines, machine],
        rest: [...new Set([...known.rest, ...rest])],
      });
    }
    for (const { path, seconds } of runOn)
      if (seconds > 0) fans.set(path, { machines: [...(fans.get(path)?.machines ?? []), machine], seconds });
  }
  return [
    ...switches.flatMap(({ machine, why }) => (why === undefined ? [] : [`${machine}: no threshold; ${why}.`])),
    ...[...strips].flatMap(([strip, { machines, rest }]) => {
      const others = rest.filter((other) => !machines.includes(other));
      return machines.length + others.length < 2
        ? []
        : [
            `Switch the plug of ${machines.join(' or ')}, not ${strip}, which feeds ${listed([...machines, ...others])}: fans must run on, and others may still print.`,
          ];
    }),
    ...[...fans].map(
      ([path, { machines, seconds }]) =>
        `The fan of ${path} runs on for ${formatDuration(seconds)} after jobs of ${listed(machines)}: whatever switches and feeds it keeps its power.`,
    ),
  ];
}
