// What only a fault makes worth asking: how hot a bed gets that nobody stops, how hot the boards, and which prints are lost.

import type { Build, Cabinet } from '../cabinet/cabinet.ts';
import { temperatureOf } from '../trades/air-ways.ts';
import { largest } from '../trades/course.ts';
import type { DayRun, Limit, Measure, Trade } from '../trades/measure.ts';

const CELSIUS = 273.15;

/** Flash ignition of wood, 220 to 264 °C. */
const bedLimit: Limit = {
  id: 'hottest-bed',
  kind: 'at-most',
  value: CELSIUS + 220,
  source:
    'wood gives off what a flame can light from 220 to 264 °C on (after C. J. Hilado, second-hand); the lower end is taken',
  standing: 'trade',
};

const boardLimit: Limit = {
  id: 'hottest-board',
  kind: 'at-most',
  value: CELSIUS + 77,
  source:
    'wood that is kept warm for long: 77 °C (V. Babrauskas, Ignition Handbook, 2003, from memory; rules of other authors lie between 66 and 100 °C)',
  standing: 'trade',
};

const lostLimit: Limit = {
  id: 'prints-lost',
  kind: 'at-most',
  value: 0,
  source: 'a print that loses its power is lost',
  standing: 'own',
};

const shared = { trade: 'faults', better: 'lower', remedies: [] } as const;

const backLimit: Limit = {
  id: 'back-by-itself',
  kind: 'at-most',
  value: 0,
  source: 'no restart by itself after a loss of power (idea of IEC 60204-1, from memory)',
  standing: 'trade',
};

export const faultReach: Trade = {
  id: 'faults',
  title: 'what a fault comes to',
  measure: (run) => [...beds(run), ...boards(run), ...lost(run), backByItself(run)],
};

function beds(run: DayRun): Measure[] {
  return Object.entries(run.assembly.machines).map(([id, { bed }]) => {
    const peak = largest(temperatureOf(run, bed));
    return {
      ...shared,
      quantity: 'hottest-bed',
      part: id,
      title: 'hottest that its bed gets',
      value: peak.value,
      unit: 'temperature',
      limit: bedLimit,
      at: peak.time,
      steps: [],
      weight: 1,
    };
  });
}

/** Inner faces of boards that burn, the hottest of each bay. */
function boards(run: DayRun): Measure[] {
  const { cabinet, assembly } = run;
  return Object.keys(cabinet.bays).flatMap((bay): Measure[] => {
    const peaks = assembly.surfaces
      .filter((surface) => surface.bay === bay && burns(cabinet, surface.part))
      .map(({ node }) => largest(temperatureOf(run, node)));
    if (peaks.length === 0) return [];
    const { value, time } = peaks.reduce((a, b) => (b.value > a.value ? b : a));
    return [
      {
        ...shared,
        quantity: 'hottest-board',
        part: bay,
        title: 'hottest inner face of a board that burns',
        value,
        unit: 'temperature',
        limit: boardLimit,
        at: time,
        steps: [],
        weight: 1,
      },
    ];
  });
}

function burns(cabinet: Cabinet, part: string): boolean {
  const [kind, ...rest] = part.split('.');
  const id = rest.join('.');
  const build: Build | undefined =
    kind === 'faces'
      ? cabinet.faces[id as keyof Cabinet['faces']]?.build
      : kind === 'doors'
        ? cabinet.doors[id]?.build
        : cabinet.partitions[Number(id)]?.build;
  return build?.layers.some(({ material }) => (cabinet.protection.combustion[material] ?? 0) > 0) ?? false;
}

function lost({ cabinet, day }: DayRun): Measure[] {
  const { powerCut, jobs } = cabinet.days[day]!;
  const ended = Object.values(jobs).filter(
    ({ start, duration }) => powerCut !== undefined && start + duration === powerCut[0],
  ).length;
  return [
    {
      ...shared,
      quantity: 'prints-lost',
      part: 'cabinet',
      title: 'prints that are lost',
      value: ended,
      unit: 'number',
      limit: lostLimit,
      ...(powerCut === undefined ? {} : { at: powerCut[0] }),
      steps: [],
      weight: 0.5,
    },
  ];
}

/** A file that says nothing of a latch has none: it is never taken to be there. */
function backByItself({ cabinet, day }: DayRun): Measure {
  const heaters = Object.values(cabinet.heats).filter(({ what }) => what !== 'lamp').length;
  const free = cabinet.days[day]!.powerCut !== undefined && cabinet.protection.latch !== true;
  return {
    ...shared,
    quantity: 'back-by-itself',
    part: 'cabinet',
    title: 'machines and heaters that no latch keeps off when the power is back',
    value: free ? heaters + Object.keys(cabinet.machines).length : 0,
    unit: 'number',
    limit: backLimit,
    steps: [],
    weight: 1,
  };
}
