// What people in the room breathe, contaminant by contaminant, against published guidelines over their own averaging times.

import { formatClock } from '../../units/format.ts';
import { levelOf } from '../air-ways.ts';
import { type Cause, causes } from '../causes.ts';
import { meanOf } from '../course.ts';
import { largestMean } from '../largest-mean.ts';
import type { DayRun, Measure, Remedy, Step } from '../measure.ts';
import { limitFor } from '../person-limit.ts';
import { cleanerAir } from '../remedies.ts';
import { concentrationUnit, contaminantKey, contaminantWords, familyOf, isParticulate } from './contaminants.ts';
import { emittedOf, type Release } from './emitted.ts';
import { type Guideline, guidelines, limitOf } from './limits.ts';
import { intoRoom, type Ways } from './ways.ts';

/** Weight of a health guideline for people who live in the room, and of one for trained workers. */
const WEIGHT = { 'living room': 1, occupational: 0.4, trade: 0.5, own: 1 } as const;

export function room(run: DayRun, releases: readonly Release[], ways: ReadonlyMap<string, Ways>): Measure[] {
  // Of two spellings of one contaminant the later counts: those that materials give off stand behind the usual ones.
  const named = new Map(Object.keys(run.record.concentrations).map((name) => [contaminantKey(name), name] as const));
  return guidelines.flatMap((guideline) => {
    const contaminant = named.get(guideline.contaminant);
    return contaminant === undefined ? [] : [against(run, contaminant, guideline, releases, ways.get(contaminant))];
  });
}

function against(
  run: DayRun,
  contaminant: string,
  guideline: Guideline,
  releases: readonly Release[],
  ways: Ways | undefined,
): Measure {
  const { cabinet, assembly, day } = run;
  const level = levelOf(run, contaminant, assembly.room);
  const repeated = cabinet.days[day]!.repeated;
  const highest = largestMean(level, guideline.window, repeated);
  const unit = concentrationUnit(contaminant);
  const background = cabinet.room.background[contaminant];
  const living = guideline.standing === 'living room';
  const steps = (): Step[] => [
    ...releaseSteps(run, contaminant, releases, ways),
    {
      text: 'air that the room exchanges with outdoors',
      value:
        (cabinet.room.airChangesPerHour / 3600) *
        cabinet.room.size.width *
        cabinet.room.size.depth *
        cabinet.room.size.height,
      unit: 'flow',
      inputs: ['room.airChangesPerHour', 'room.size.width', 'room.size.depth', 'room.size.height'],
    },
    ...(background === undefined
      ? []
      : [
          {
            text: 'the room without the printers',
            value: background,
            unit,
            inputs: [`room.background.${contaminant}`],
          },
        ]),
    { text: 'mean of the day', value: meanOf(level), unit },
    {
      text: `${guideline.over}: highest, ending at ${formatClock(highest.time)}${repeated ? '; the day repeats' : ''}`,
      value: highest.value,
      unit,
      formula: 'mean over the window that gives most; room air well mixed',
      source: 'two-zone mass balance of cabinet and room',
    },
    { text: `other published values: ${guideline.others}` },
    ...(living
      ? [{ text: 'the figure for the filament spans a factor of ten and more either way: the band says how much' }]
      : [
          {
            text: 'an occupational value is for trained workers on shift: never the target for a room that people live in',
          },
        ]),
  ];
  return {
    trade: 'air-quality',
    quantity: guideline.id,
    part: 'room',
    title: `${contaminantWords(contaminant)} in the room, ${guideline.over}${living ? '' : ', against an occupational value'}`,
    value: highest.value,
    unit,
    logarithmic: true,
    limit: limitFor(cabinet, limitOf(guideline)),
    at: highest.time,
    get steps(): readonly Step[] {
      return steps();
    },
    get remedies(): readonly Remedy[] {
      return living ? cleanerAir(cabinet, familyOf(contaminant)) : [];
    },
    get cause(): Cause {
      return causeOf(run, contaminant, ways);
    },
    weight: WEIGHT[guideline.standing],
    better: 'lower',
    compared: living,
  };
}

function releaseSteps(run: DayRun, contaminant: string, releases: readonly Release[], ways: Ways | undefined): Step[] {
  const emitted = emittedOf(releases, contaminant);
  if (!(emitted > 0)) return [{ text: 'nothing printed on this day gives it off' }];
  const materials = new Set(
    releases
      .filter((release) => release.contaminant === contaminant)
      .map(({ mode }) => run.cabinet.days[run.day]!.jobs[mode]?.material ?? mode),
  );
  return [
    {
      text: `given off over the day by ${[...materials].join(', ')}, ${contaminantKey(contaminant) === 'particles' ? 'number of particles' : 'µg'}`,
      value: emitted,
      unit: 'number',
      source: 'published emission rates, which span decades; start burst and tail by judgement',
      inputs: [
        ...[...materials].map((material) => `materials.${material}.emissions.${contaminant}`),
        isParticulate(contaminant) ? 'factors.emissionParticles' : 'factors.emissionVapours',
      ],
    },
    ...(ways === undefined
      ? []
      : [
          {
            text: 'of which reaches the room; with an open machine it would be all',
            value: intoRoom(ways) / emitted,
            unit: 'share',
          },
        ]),
  ];
}

/** What lets most of it into the room. */
function causeOf({ cabinet }: DayRun, contaminant: string, ways: Ways | undefined): Cause {
  if (ways === undefined) return causes.strongSource;
  const filtered = Object.values(cabinet.paths).some(({ parts }) =>
    parts.some(
      (part) =>
        (part.part === 'filter' || part.part === 'carbon') &&
        Object.entries(part.efficiency).some(
          ([name, share]) => contaminantKey(name) === contaminantKey(contaminant) && share > 0.2,
        ),
    ),
  );
  const { leaksFansOn, leaksFansOff, doors, openPaths, filteredExhaust } = ways;
  const leaks = leaksFansOn + leaksFansOff + doors;
  if (!filtered) return isParticulate(contaminant) ? causes.noFilter : causes.noCarbon;
  if (leaks + openPaths > filteredExhaust) return leaksFansOff > leaksFansOn ? causes.lateFan : causes.leaksOut;
  return causes.strongSource;
}
