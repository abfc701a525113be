// Each fan with its path: how much it moves, whether it is starved and by what, whether it is stable, how air runs back when it rests.

import { formatClock } from '../../units/format.ts';
import { fanShares, pathOf, volumeFlow } from '../air-ways.ts';
import { type Cause, causes } from '../causes.ts';
import { largest } from '../course.ts';
import type { DayRun, Measure, Remedy, Step } from '../measure.ts';
import { anyTurns } from '../moments.ts';
import { connectedBays, type FanPart, fansIn, intakesOf, OUTSIDE, turnsAirRound } from '../plant.ts';
import { flapIn, largerFilter, largerInlet, noStall, strongerFan } from '../remedies.ts';
import { ENDS, type FanPoint, fanPoint, type PressureUse } from './fan-point.ts';
import { fanShareLimit, singlePointLimit } from './limits.ts';

/** Back flow below this is none: 0.1 m³/h. */
const NO_BACK_FLOW = 0.1 / 3600;

export function fans(run: DayRun): Measure[] {
  const { cabinet, assembly } = run;
  return Object.entries(cabinet.paths)
    .filter(([id, path]) => fansIn(path).length > 0 && !turnsAirRound(path) && assembly.paths[id]?.kind === 'path')
    .flatMap(([id]) => [...workingPoint(run, id), ...stability(run, id), ...backFlow(run, id)]);
}

function workingPoint(run: DayRun, id: string): Measure[] {
  const point = fanPoint(run, id);
  const kinds = fansIn(run.cabinet.paths[id]!)
    .map(({ kind }) => kind)
    .join(' and ');
  const shared = {
    trade: 'airflow',
    part: `air.${id}`,
    remedies: [],
    weight: 0.1,
    better: 'higher',
    compared: false,
  } as const;
  const flow: Measure = {
    ...shared,
    quantity: 'fan-flow',
    title: 'air that the fan moves while it runs',
    value: point?.flow ?? 0,
    unit: 'flow',
    get steps(): readonly Step[] {
      return point === undefined ? [{ text: `${kinds}: does not run on this day` }] : pointSteps(run, id, point);
    },
    compared: true,
  };
  if (point === undefined) return [flow];
  const stages = point.uses.filter(({ what }) => isStage(what));
  return [
    flow,
    ...(stages.length === 0 || !(point.pressure > 0)
      ? []
      : [
          {
            ...shared,
            quantity: 'stage-pressure-share',
            title: 'share of the fan’s pressure that filter and carbon take',
            value: spentBy(stages) / spentBy(point.uses),
            unit: 'share',
            get steps(): readonly Step[] {
              return pointSteps(run, id, point);
            },
            better: 'lower' as const,
          },
        ]),
    {
      ...shared,
      quantity: 'fan-share',
      title: 'share of its free delivery that the fan reaches',
      value: point.flow / point.free,
      unit: 'share',
      ...(fansIn(run.cabinet.paths[id]!).some(mayStall) ? { limit: fanShareLimit(run.cabinet) } : {}),
      get steps(): readonly Step[] {
        return [...pointSteps(run, id, point), { text: starvation(run, id, point).says }];
      },
      get remedies(): readonly Remedy[] {
        return starvation(run, id, point).remedies;
      },
      get cause(): Cause {
        return starvation(run, id, point).cause;
      },
      weight: 0.3,
    },
  ];
}

function pointSteps({ cabinet, day }: DayRun, id: string, point: FanPoint): Step[] {
  const path = cabinet.paths[id]!;
  const inputOf = (what: string): string[] =>
    path.parts.flatMap((part, at) =>
      what.startsWith(part.part) || ('what' in part && part.what === what) ? [`paths.${id}.parts.${at}`] : [],
    );
  return [
    {
      text: `${fansIn(path)
        .map(({ kind }) => kind)
        .join(' and ')}: free delivery at the speed it runs at`,
      value: point.free,
      unit: 'flow',
      inputs: path.parts.flatMap((part, at) => (part.part === 'fan' ? [`paths.${id}.parts.${at}.curve`] : [])),
    },
    { text: `runs on the day ${day} for`, value: point.timeOn, unit: 'duration' },
    ...(point.speed < 0.999
      ? [{ text: 'mean share of full speed while it runs', value: point.speed, unit: 'share' }]
      : []),
    { text: 'moves', value: point.flow, unit: 'flow', formula: 'fan curve meets its path: P(Q) = Σ losses(Q)' },
    { text: 'with a pressure of', value: point.pressure, unit: 'pressure' },
    ...point.uses.map(({ what, pressure }) => ({
      text: what === ENDS ? endsWords(pressure) : `of which for ${what}`,
      value: pressure,
      unit: 'pressure',
      inputs: inputOf(what),
    })),
  ];
}

/** Pressure that is spent; where the difference between the ends helps the fan, it is none. */
function spentBy(uses: readonly PressureUse[]): number {
  return uses.reduce((sum, { pressure }) => sum + Math.max(pressure, 0), 0);
}

function isStage(what: string): boolean {
  return what.startsWith('filter') || what.startsWith('carbon');
}

function endsWords(pressure: number): string {
  return pressure >= 0
    ? 'of which against the pressure between its ends: what inlets and gaps take'
    : 'with help from the pressure between its ends: the warm air inside rises';
}

/** Below a third of its flow an axial fan stalls; a blower, whose pressure hardly falls until there, does not. */
function mayStall({ curve }: FanPart): boolean {
  const free = Math.max(...curve.map(([flow]) => flow));
  const most = Math.max(...curve.map(([, pressure]) => pressure));
  const middle = curve.find(([flow]) => flow >= 0.4 * free)?.[1] ?? 0;
  return middle < 0.8 * most;
}

/** What takes most of the pressure, in words, and what would mend it. */
function starvation(run: DayRun, id: string, { uses }: FanPoint): { cause: Cause; remedies: Remedy[]; says: string } {
  const { cabinet } = run;
  const path = cabinet.paths[id]!;
  const [most] = uses;
  const bay = OUTSIDE.includes(path.from) ? path.to : path.from;
  if (most === undefined || most.what === ENDS) {
    const served = connectedBays(cabinet, bay);
    const inlets = intakesOf(cabinet).filter((inlet) => inlet !== id && served.includes(cabinet.paths[inlet]!.to));
    return {
      cause: causes.starvedByInlet,
      remedies: [...largerInlet(cabinet, bay), ...strongerFan(cabinet, id)],
      says:
        inlets.length === 0
          ? 'most of it is spent at the gaps: there is no inlet, the fan starves; a filter would not be to blame'
          : `most of it is spent where air comes in: ${inlets.join(', ')}; past about the exhaust’s own width a larger inlet brings little`,
    };
  }
  const filter = isStage(most.what);
  return {
    cause: filter ? causes.starvedByFilter : causes.starvedByPath,
    remedies: [...(filter ? largerFilter(cabinet, id) : []), ...strongerFan(cabinet, id)],
    says: filter
      ? `most of it is spent in the ${most.what}: a filter wants pressure, so a bigger, slower fan can be worse against it`
      : `most of it is spent in ${most.what}`,
  };
}

/** A fan that may settle at several flows. */
function stability(run: DayRun, id: string): Measure[] {
  const { name } = run.assembly.paths[id]!;
  const warning = run.record.warnings.find(({ code, what }) => code === 'several-operating-points' && what === name);
  if (warning === undefined) return [];
  return [
    {
      trade: 'airflow',
      quantity: 'operating-points',
      part: `air.${id}`,
      title: 'flows at which the fan may settle',
      value: 2,
      unit: 'number',
      limit: singlePointLimit,
      get steps(): readonly Step[] {
        return [
          { text: warning.message },
          { text: 'two stable flows or more: which one is reached depends on how it started; the day took the larger' },
        ];
      },
      get remedies(): readonly Remedy[] {
        return noStall(run.cabinet, id);
      },
      cause: causes.unstableFan,
      weight: 0.4,
      better: 'lower',
    },
  ];
}

/** Air that runs the wrong way while every fan of the path rests. */
function backFlow(run: DayRun, id: string): Measure[] {
  const path = pathOf(run, run.assembly.paths[id]!.name);
  const shares = fanShares(run, id);
  const { times, values: flow } = volumeFlow(run, path);
  const turns = anyTurns(run.record, shares).values;
  const back = largest({ times, values: flow.map((forth, row) => (turns[row]! > 0 ? 0 : -forth)) });
  if (!(back.value > NO_BACK_FLOW)) return [];
  const flap = run.cabinet.paths[id]!.parts.some(({ part }) => part === 'flap');
  return [
    {
      trade: 'airflow',
      quantity: 'back-flow',
      part: `air.${id}`,
      title: 'air that runs backwards through the stopped fan, at most',
      value: back.value,
      unit: 'flow',
      at: back.time,
      get steps(): readonly Step[] {
        return [
          {
            text: `most at ${formatClock(back.time)}: warm air rises and draws the other way`,
            value: back.value,
            unit: 'flow',
          },
          {
            text: flap ? 'its flap is shut and leaks' : 'nothing shuts it: a stopped rotor is an open hole to slow air',
          },
        ];
      },
      get remedies(): readonly Remedy[] {
        return flap ? [] : flapIn(run.cabinet, id);
      },
      cause: causes.backFlow,
      weight: 0.2,
      better: 'lower',
    },
  ];
}
