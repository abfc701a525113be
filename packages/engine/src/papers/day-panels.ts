// What the picture of a day shows: strips for what happens when, and panels of lines over the same hours. Only choosing, no drawing.

import type { Cabinet, Job } from '../cabinet/cabinet.ts';
import { guidelines } from '../trades/air-quality/limits.ts';
import { fanShares } from '../trades/air-ways.ts';
import type { Course } from '../trades/course.ts';
import { machinePower } from '../trades/machine-power.ts';
import type { DayRun } from '../trades/measure.ts';
import { type Points, straightTrace, temperatureTrace } from './trace.ts';

/** How a line is told from the others without colour. */
export type Pen = 'solid' | 'dashed' | 'dotted' | 'dash-dot' | 'long-dash';

/** Strokes and gaps of each pen, in pixels. */
export const dashes: Readonly<Record<Pen, string | undefined>> = {
  solid: undefined,
  dashed: '7 3',
  dotted: '1.5 3',
  'dash-dot': '9 3 2 3',
  'long-dash': '18 4',
};

export interface Line {
  readonly label: string;
  readonly pen: Pen;
  readonly points: Points;
  /** What lies above this value is drawn in the accent. */
  readonly alarmAbove?: number;
}

/** A range that is wanted for a while. */
export interface Band {
  readonly start: number;
  readonly end: number;
  readonly low: number;
  readonly high: number;
  readonly label: string;
}

export interface Level {
  readonly value: number;
  readonly label: string;
  /** A mean over the day is held against it, not each moment: drawn thinner, so that nobody takes a line above it for a breach. */
  readonly ofMean?: boolean;
}

/** Something that happens at one time and shows in the lines, such as an opened door. */
export interface Mark {
  readonly time: number;
  readonly label: string;
}

export interface Panel {
  readonly title: string;
  readonly unit: string;
  /** What a level is, in more words than its label has room for. */
  readonly note?: string;
  readonly scale: 'straight' | 'decades';
  readonly height: number;
  readonly lines: readonly Line[];
  readonly bands: readonly Band[];
  readonly levels: readonly Level[];
  readonly marks: readonly Mark[];
}

export interface Bar {
  readonly start: number;
  readonly end: number;
  /** 0…1: how tall; a fan at part speed is a lower bar. */
  readonly share: number;
  readonly label?: string;
}

export interface Strip {
  readonly label: string;
  readonly kind: 'job' | 'running' | 'open';
  readonly bars: readonly Bar[];
}

export interface Wording {
  readonly units: 'metric' | 'imperial';
}

export function dayStrips(run: DayRun): Strip[] {
  const { cabinet, day, assembly } = run;
  const { jobs, doorOpenings } = cabinet.days[day]!;
  const machines = [...new Set(Object.values(jobs).map(({ machine }) => machine))];
  const doors = [...new Set(doorOpenings.map(({ door }) => door))];
  const jobStrips = machines.map((machine): Strip => {
    const bars = Object.entries(jobs)
      .filter(([, job]) => job.machine === machine)
      .map(([name, job]) => ({ ...spanOf(job), share: 1, label: `${name}, ${job.material}` }));
    return { label: `${machine} prints`, kind: 'job', bars };
  });
  const fanStrips = Object.keys(assembly.paths).flatMap((path) => {
    const shares = fanShares(run, path);
    return shares.map((share, at): Strip => {
      const label = shares.length === 1 ? `${path} fan` : `${path} fan ${at + 1}`;
      return { label, kind: 'running', bars: runs(share) };
    });
  });
  const doorStrips = doors.map((door): Strip => {
    const bars = doorOpenings
      .filter((opening) => opening.door === door)
      .map((opening) => ({ ...spanOf(opening), share: 1 }));
    return { label: /door/i.test(door) ? `${door} open` : `${door} door open`, kind: 'open', bars };
  });
  return [...jobStrips, ...fanStrips, ...doorStrips];
}

export function dayPanels(run: DayRun, { units }: Wording): Panel[] {
  const bays = Object.keys(run.cabinet.bays);
  const printing = bays.filter((bay) => machinesIn(run.cabinet, bay).length > 0);
  const shown = printing.length > 0 ? printing : bays;
  return [...shown.map((bay) => bayPanel(run, bay, units)), ...contaminantPanels(run), ...powerPanel(run)];
}

function bayPanel({ cabinet, day, assembly, record }: DayRun, bay: string, units: Wording['units']): Panel {
  const shown = temperatureIn(units);
  const inUnits = (points: Points): Points => points.map(([time, kelvin]) => [time, shown(kelvin)]);
  const machines = machinesIn(cabinet, bay);
  const { zones } = assembly.bays[bay]!;
  const limits = machines.filter(([, machine]) => machine.electronicsInside);
  const limit =
    limits.length === 0 ? undefined : Math.min(...limits.map(([, { electronicsLimit }]) => electronicsLimit));
  const electronicsAir = new Set(limits.map(([id]) => assembly.machines[id]!.electronicsAir));
  const zoneLines = zones.map((zone, at): Line => {
    const label = zones.length === 1 ? `air in ${bay}` : at === 0 ? 'low air' : 'high air';
    const line = {
      label,
      points: inUnits(temperatureTrace(record, zone)),
      pen: at === zones.length - 1 ? 'solid' : 'dashed',
    } as const;
    return limit !== undefined && electronicsAir.has(zone) ? { ...line, alarmAbove: shown(limit) } : line;
  });
  const chamberLines = machines.flatMap(([id]): Line[] => {
    const { chamber } = assembly.machines[id]!;
    if (chamber === undefined) return [];
    return [{ label: `inside ${id}`, pen: 'dash-dot', points: inUnits(temperatureTrace(record, chamber)) }];
  });
  const room: Line = { label: 'room', pen: 'dotted', points: inUnits(temperatureTrace(record, assembly.room)) };
  const jobs = Object.values(cabinet.days[day]!.jobs).filter(({ machine }) => machines.some(([id]) => id === machine));
  return {
    title: `Air in bay ${bay}`,
    unit: units === 'imperial' ? '°F' : '°C',
    scale: 'straight',
    height: 150,
    lines: [...zoneLines, ...chamberLines, room],
    bands: jobs.map((job) => materialBand(cabinet, job, shown)),
    levels: limit === undefined ? [] : [{ value: shown(limit), label: 'electronics limit' }],
    marks: doorMarks(cabinet, day, bay),
  };
}

function materialBand(cabinet: Cabinet, job: Job, shown: (kelvin: number) => number): Band {
  const [low, high] = cabinet.materials[job.material]!.bandWell;
  return { ...spanOf(job), low: shown(low), high: shown(high), label: `${job.material} prints well` };
}

/** The picture stays one page: particles, and of what the day's materials give off the first two. */
const MOST_CONTAMINANTS = 3;

/** Particles and vapours where people breathe and where they come from. */
function contaminantPanels({ cabinet, day, assembly, record }: DayRun): Panel[] {
  const emitted = Object.values(cabinet.days[day]!.jobs).flatMap(({ material }) =>
    Object.keys(cabinet.materials[material]!.emissions),
  );
  const shown = [...new Set(['particles', ...emitted])].slice(0, MOST_CONTAMINANTS);
  return record.network.contaminants
    .filter(({ name }) => shown.includes(name) && record.concentrations[name] !== undefined)
    .map(({ name, unit }): Panel => {
      const table = record.concentrations[name]!;
      const perCm3 = name === 'particles';
      const points = (zone: string): Points =>
        straightTrace(record, table, zone).map(([time, value]) => [time, perCm3 ? value / 1e6 : value]);
      const sources = [...new Set(Object.values(assembly.machines).map(({ printAir }) => printAir))];
      const pens: readonly Pen[] = ['solid', 'dashed', 'dash-dot', 'long-dash'];
      const lines = sources.map(
        (zone, at): Line => ({ label: spoken(zone), pen: pens[at % pens.length]!, points: points(zone) }),
      );
      return {
        title: `${name[0]!.toUpperCase()}${name.slice(1)} in the air`,
        unit: perCm3 ? '1/cm³' : unit.replace('m3', 'm³'),
        scale: 'decades',
        height: 110,
        lines: [...lines, { label: assembly.room, pen: 'dotted', points: points(assembly.room) }],
        bands: [],
        ...(perCm3 ? particleLevel(cabinet) : { levels: [] }),
        marks: doorMarks(cabinet, day),
      };
    });
}

/** The room's guideline for the mean of a day; the person's own limit takes its place. */
function particleLevel({ limits }: Cabinet): Pick<Panel, 'levels' | 'note'> {
  const { id, value } = guidelines.find((guideline) => guideline.id === 'room-particles-24h')!;
  const own = limits[id];
  const whose = own === undefined ? 'WHO 2021, good practice' : 'own limit';
  return {
    levels: [
      { value: (own ?? value) / 1e6, label: own === undefined ? 'WHO, 24 h mean' : 'own, 24 h mean', ofMean: true },
    ],
    note: `thin line: ${whose}, for the mean of 24 h in the room`,
  };
}

/** When a door was opened, of one bay or of any. */
function doorMarks({ doors, days }: Cabinet, day: string, bay?: string): Mark[] {
  return days[day]!.doorOpenings.filter(({ door }) => bay === undefined || doors[door]!.bays.includes(bay)).map(
    ({ door, start }) => ({ time: start, label: /door/i.test(door) ? door : `${door} door` }),
  );
}

function powerPanel(run: DayRun): Panel[] {
  const pens: readonly Pen[] = ['solid', 'dashed', 'dash-dot', 'long-dash'];
  const lines = Object.keys(run.cabinet.machines).map((machine, at): Line => {
    const { times, values } = machinePower(run, machine);
    return {
      label: machine,
      pen: pens[at % pens.length]!,
      points: Array.from(times, (time, row) => [time, values[row]!]),
    };
  });
  const panel = { title: 'Power drawn by the machines', unit: 'W', scale: 'straight', height: 90 } as const;
  return lines.length === 0 ? [] : [{ ...panel, lines, bands: [], levels: [], marks: [] }];
}

function machinesIn(cabinet: Cabinet, bay: string) {
  return Object.entries(cabinet.machines).filter(([, machine]) => machine.bay === bay);
}

function spanOf({ start, duration }: { readonly start: number; readonly duration: number }) {
  return { start, end: start + duration };
}

/** Stretches in which a fan turns, split where its speed changes by more than the paper shows. */
function runs({ times, values }: Course): Bar[] {
  const bars: Bar[] = [];
  for (let row = 0; row + 1 < times.length; row++) {
    const [start, end] = [times[row]!, times[row + 1]!];
    const share = Math.min(1, (values[row]! + values[row + 1]!) / 2);
    const last = bars.at(-1);
    if (share <= 0 || end <= start) continue;
    const continues = last !== undefined && last.end === start && Math.abs(last.share - share) < 0.05;
    if (continues) bars[bars.length - 1] = { ...last, end };
    else bars.push({ start, end, share });
  }
  return bars;
}

/** `lower.high` as people say it. */
function spoken(zone: string): string {
  const [owner, part] = zone.split('.');
  if (part === 'chamber') return `inside ${owner}`;
  return part === undefined ? zone : `${owner}, ${part}`;
}

function temperatureIn(units: Wording['units']): (kelvin: number) => number {
  return units === 'imperial' ? (kelvin) => kelvin * 1.8 - 459.67 : (kelvin) => kelvin - 273.15;
}
