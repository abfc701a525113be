// Who notices: smoke detectors where smoke goes, one in the room, and heat detectors of a class that bears the bay's air.

import { fireForAnswer, heatDetectorFor, heatDetectors, longestExposure } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Detector } from '../../cabinet/protection.ts';
import { formatClock, formatQuantity } from '../../units/format.ts';
import { temperatureOf } from '../air-ways.ts';
import { causes } from '../causes.ts';
import { largest } from '../course.ts';
import { largestMean } from '../largest-mean.ts';
import type { DayRun, Measure, Remedy, Step } from '../measure.ts';
import { bayOfEnd, machinesIn } from '../plant.ts';
import { addDetector, detectorBeforeFilter, setDetectorClass, slowDetector } from '../remedy-edits.ts';
import { fanAir } from './feed.ts';
import {
  afterFilterLimit,
  bayAlarmLimit,
  caution,
  detectorLongLimit,
  detectorPeakLimit,
  rateOfRiseLimit,
  roomAlarmLimit,
} from './limits.ts';
import { spacesOf } from './spaces.ts';

const CELSIUS = 273.15;
/** A detector is hung for years: hours on end count, not the moment. */
const LONG = 4 * 3600;

const base = { trade: 'fire', cause: causes.notNoticed, unit: 'number' } as const;

/** Bay whose air a detector feels. */
export function bayOf(cabinet: Cabinet, { where }: Detector): string | undefined {
  const path = cabinet.paths[where];
  return cabinet.bays[where] === undefined
    ? path === undefined
      ? undefined
      : (bayOfEnd(cabinet, path.from) ?? bayOfEnd(cabinet, path.to))
    : where;
}

export function detectors(cabinet: Cabinet): Measure[] {
  const { detectors: given } = cabinet.protection;
  if (given === undefined)
    return [
      {
        ...base,
        cause: causes.protectionUntold,
        quantity: 'smoke-in-room',
        part: 'room',
        title: 'smoke alarms in the room, and detectors in the bays',
        missing:
          'who notices smoke is not said: give protection.detectors, each with what and where (a bay, an air path, room); {} when there is none',
        limit: roomAlarmLimit(cabinet),
        steps: [
          { text: 'smoke comes first: a smouldering fault smokes for minutes to hours before it warms a bay' },
          caution('detection'),
        ],
        remedies: [],
        weight: 1,
        better: 'higher',
      },
    ];
  const smoke = Object.entries(given).filter(([, { what }]) => what === 'smoke');
  const heat = Object.entries(given).filter(([, { what }]) => what === 'heat');
  const senses = (detector: Detector, bay: string): boolean =>
    detector.filter !== 'after' && bayOf(cabinet, detector) === bay;
  const bays = Object.keys(cabinet.bays).filter((bay) => machinesIn(cabinet, bay).length > 0);
  // With one that notices some bay, smoke from the others is noticed late; with none, hardly at all.
  const some = Object.keys(cabinet.bays).some((bay) => smoke.some(([, detector]) => senses(detector, bay)));
  return [
    ...bays.map((bay): Measure => {
      const here = smoke.filter(([, detector]) => senses(detector, bay));
      return {
        ...base,
        quantity: 'smoke-in-bay',
        part: bay,
        title: 'smoke detectors that notice this bay',
        value: here.length,
        limit: bayAlarmLimit(cabinet),
        get steps(): readonly Step[] {
          return [
            ...here.map(([id, { where }]) => ({ text: `${id} in ${where}`, inputs: [`protection.detectors.${id}`] })),
            { text: 'it hangs at the highest point, or in the exhaust before the filter' },
            caution('detection'),
          ];
        },
        get remedies(): readonly Remedy[] {
          return here.length > 0
            ? []
            : [
                {
                  says: `a smoke detector at the top of ${bay}`,
                  edits: [addDetector(`${bay}-smoke`, { what: 'smoke', where: bay })],
                },
              ];
        },
        weight: some ? 0.7 : 0.9,
        better: 'higher',
      };
    }),
    roomAlarm(cabinet, smoke.filter(([, { where }]) => where === 'room').length),
    afterFilter(cabinet, smoke),
    ...fastRise(cabinet, heat),
  ];
}

function roomAlarm(cabinet: Cabinet, count: number): Measure {
  return {
    ...base,
    quantity: 'smoke-in-room',
    part: 'room',
    title: 'smoke alarms in the room',
    value: count,
    limit: roomAlarmLimit(cabinet),
    steps: [
      { text: 'it wakes and warns people by itself: an alarm that needs the computer is none' },
      { text: 'near the exhaust, not in its line; where people sleep behind the door, one there too' },
      caution('detection'),
    ],
    get remedies(): readonly Remedy[] {
      return count > 0
        ? []
        : [{ says: 'a smoke alarm in the room', edits: [addDetector('room-smoke', { what: 'smoke', where: 'room' })] }];
    },
    weight: 1,
    better: 'higher',
  };
}

function afterFilter(cabinet: Cabinet, smoke: readonly (readonly [string, Detector])[]): Measure {
  const behind = smoke.filter(([, { filter }]) => filter === 'after').map(([id]) => id);
  return {
    ...base,
    quantity: 'smoke-after-filter',
    part: 'cabinet',
    title: 'smoke detectors that sit behind a filter',
    value: behind.length,
    limit: afterFilterLimit(cabinet),
    steps: [...behind.map((id) => ({ text: id, inputs: [`protection.detectors.${id}`] })), caution('detection')],
    get remedies(): readonly Remedy[] {
      return behind.map((id) => ({ says: `put ${id} before the filter`, edits: [detectorBeforeFilter(id)] }));
    },
    weight: 0.8,
    better: 'lower',
  };
}

function fastRise(cabinet: Cabinet, heat: readonly (readonly [string, Detector])[]): Measure[] {
  if (heat.length === 0) return [];
  const near = heat.filter(
    ([, detector]) =>
      detector.rateOfRise &&
      machinesIn(cabinet, bayOf(cabinet, detector) ?? '').length > 0 &&
      detector.where in cabinet.bays,
  );
  return [
    {
      ...base,
      cause: causes.wrongDetector,
      quantity: 'rate-of-rise-at-bed',
      part: 'cabinet',
      title: 'heat detectors beside a bed that answer to a fast rise',
      value: near.length,
      limit: rateOfRiseLimit(cabinet),
      steps: [
        { text: 'beside a heated bed air may rise by more than 10 K in a minute with nothing wrong' },
        ...near.map(([id]) => ({ text: id, inputs: [`protection.detectors.${id}`] })),
        caution('detection'),
      ],
      get remedies(): readonly Remedy[] {
        return near.map(([id]) => ({
          says: `${id} as one that answers to its temperature alone`,
          edits: [slowDetector(id)],
        }));
      },
      weight: 0.5,
      better: 'lower',
    },
  ];
}

/** Heat detectors against the day's air, and the fire that each needs while fans carry the heat off. */
export function heatDetectorsOn(run: DayRun): Measure[] {
  const { cabinet } = run;
  return Object.entries(cabinet.protection.detectors ?? {}).flatMap(([id, detector]): Measure[] => {
    const bay = bayOf(cabinet, detector);
    if (detector.what !== 'heat' || bay === undefined) return [];
    const part = `protection.${id}`;
    const { heatClass } = detector;
    const shared = { trade: 'fire', part, cause: causes.wrongDetector, better: 'lower' } as const;
    const top = temperatureOf(run, run.assembly.bays[bay]!.zones.at(-1)!);
    const peak = largest(top);
    const long = largestMean(top, LONG, cabinet.days[run.day]!.repeated);
    const suits = heatDetectorFor(long.value - CELSIUS);
    if (heatClass === undefined)
      return [
        {
          ...shared,
          quantity: 'heat-detector-peak',
          title: 'hottest air at the heat detector',
          missing: `the class of ${id} is not said: give protection.detectors.${id}.class, A1 to G by EN 54-5`,
          unit: 'temperature',
          steps: [
            { text: `hottest air at the top of ${bay}`, value: peak.value, unit: 'temperature' },
            ...(suits === undefined ? [] : [{ text: `class ${suits} suits the warmest four hours` }]),
            caution('detection'),
          ],
          remedies: [],
          weight: 0.7,
        },
      ];
    const { answersFrom, answersTo } = heatDetectors[heatClass];
    const remedies = (): readonly Remedy[] =>
      suits === undefined || suits === heatClass || (suits === 'A2' && heatClass === 'A1')
        ? []
        : [{ says: `${id} of class ${suits}`, edits: [setDetectorClass(id, suits)] }];
    const space = spacesOf(cabinet).find(({ bays }) => bays.includes(bay))!;
    const moved = largest(fanAir(run, space));
    return [
      {
        ...shared,
        quantity: 'heat-detector-peak',
        title: 'hottest air at the heat detector',
        value: peak.value,
        unit: 'temperature',
        limit: detectorPeakLimit(cabinet, heatClass),
        at: peak.time,
        get steps(): readonly Step[] {
          return [
            {
              text: `hottest air at the top of ${bay}, at ${formatClock(peak.time)}`,
              value: peak.value,
              unit: 'temperature',
            },
            {
              text: `class ${heatClass} answers between ${answersFrom} and ${answersTo} °C: any warmer and it alarms without a fire`,
              source: 'EN 54-5, second-hand',
              inputs: [`protection.detectors.${id}`],
            },
            caution('detection'),
          ];
        },
        get remedies(): readonly Remedy[] {
          return remedies();
        },
        weight: 0.8,
      },
      {
        ...shared,
        quantity: 'heat-detector-long',
        title: 'air at the heat detector for hours, mean of the warmest four',
        value: long.value,
        unit: 'temperature',
        limit: detectorLongLimit(cabinet, heatClass, longestExposure(heatClass)),
        get steps(): readonly Step[] {
          return [
            { text: `mean of the warmest four hours at the top of ${bay}`, value: long.value, unit: 'temperature' },
            {
              text: suits === undefined ? 'no class suits it' : `class ${suits} suits it`,
              source: 'EN 54-5, second-hand',
            },
            caution('detection'),
          ];
        },
        get remedies(): readonly Remedy[] {
          return remedies();
        },
        weight: 0.6,
      },
      {
        ...shared,
        quantity: 'heat-detector-fire',
        title: 'fire that the heat detector needs before it answers, fans running',
        value: fireForAnswer(moved.value, peak.value, CELSIUS + answersFrom),
        unit: 'power',
        get steps(): readonly Step[] {
          return [
            {
              text: 'air that fans carry off at most',
              value: moved.value / 1.2,
              unit: 'flow',
              source: 'the day as simulated',
            },
            {
              text: `warmed from ${formatQuantity('temperature', peak.value)} to ${answersFrom} °C, the earliest that class ${heatClass} answers`,
              formula: 'Q = ṁ cp (T_answer − T_air)',
              source: 'heat balance of air',
            },
            { text: 'a heat detector alone is late: smoke first' },
            caution('detection'),
          ];
        },
        remedies: [],
        weight: 0.3,
      },
    ];
  });
}
