// How fast the air is at each print, and which opening is to blame, beside the air that the bed itself sets moving.

import { bedLoss, draughtThreshold, firePlume, virtualOrigin } from '@stillair/physics';
import { describedBed } from '../../cabinet/bed-description.ts';
import { formatClock } from '../../units/format.ts';
import { temperatureOf } from '../air-ways.ts';
import { type Cause, causes } from '../causes.ts';
import { largest, meanOf, within } from '../course.ts';
import type { DayRun, Measure, Remedy, Step } from '../measure.ts';
import { doorsOpen } from '../moments.ts';
import { type Print, printsOf } from '../prints.ts';
import { stillerAir } from '../remedies.ts';
import { zeros } from '../zeros.ts';
import { type Contribution, contributionsTo } from './contributions.ts';
import { draughtLimit } from './limits.ts';

/** A part's wall is about half way between bed and air. Judgement: 0.3 to 0.7. */
const PART_SHARE = 0.5;
/** Where the plume is looked at above the bed, m. */
const PLUME_HEIGHT = 0.1;

export function airSpeed(run: DayRun): Measure[] {
  return printsOf(run).map((print) => measureOf(run, print));
}

function measureOf(run: DayRun, print: Print): Measure {
  const contributions = contributionsTo(run, print);
  const { times } = contributions[0]!.speed;
  const shut = doorsShut(run, print);
  const speeds = zeros(times.length);
  for (let row = 0; row < times.length; row += 1) if (shut[row] === 1) speeds[row] = together(contributions, row);
  const combined = largest({ times, values: speeds });
  const { row } = combined;
  if (!shut.includes(1)) return alwaysOpen(run, print);
  const ranked = contributions
    .map((contribution) => ({ contribution, speed: contribution.speed.values[row]! }))
    .sort((a, b) => b.speed - a.speed);
  const blamed = ranked[0]!.contribution;
  return {
    trade: 'draught',
    quantity: 'air-speed',
    part: print.part,
    title: 'air speed at the print',
    value: combined.value,
    unit: 'speed',
    logarithmic: true,
    limit: draughtLimit(run.cabinet, print),
    at: combined.time,
    get steps(): readonly Step[] {
      return [
        ...ranked
          .filter(({ speed }) => speed >= 5e-4)
          .flatMap(({ contribution, speed }) => contributionSteps(run, contribution, speed, row)),
        {
          text: `together, at ${formatClock(combined.time)}`,
          value: combined.value,
          unit: 'speed',
          formula: 'largest + √(Σ of the others’ squares)',
          source: 'judgement: the others come from other sides and do not add up in full',
        },
        ...ownAir(run, print),
      ];
    },
    get remedies(): readonly Remedy[] {
      return remediesFor(run, blamed);
    },
    cause: causeOf(blamed),
    weight: 0.6,
    better: 'lower',
    compared: true,
  };
}

/** Nothing can be said of a print whose door never shuts. */
function alwaysOpen({ cabinet }: DayRun, print: Print): Measure {
  return {
    trade: 'draught',
    quantity: 'air-speed',
    part: print.part,
    title: 'air speed at the print',
    missing: 'a door is open during the whole job: shut it, or lengthen the job',
    unit: 'speed',
    logarithmic: true,
    limit: draughtLimit(cabinet, print),
    steps: [],
    remedies: [],
    cause: causes.doorOpened,
    weight: 0.6,
    better: 'lower',
    compared: true,
  };
}

/** 1 while all doors are shut, by row of the job: what an open door lets in lasts minutes and is not asked about. */
function doorsShut(run: DayRun, { start, end }: Print): Uint8Array {
  const open = within(doorsOpen(run), start, end).values;
  const shut = new Uint8Array(open.length);
  for (let row = 0; row < open.length; row += 1) shut[row] = open[row]! > 0 ? 0 : 1;
  return shut;
}

/** The largest, and the root of the sum of squares of all others. */
function together(contributions: readonly Contribution[], row: number): number {
  let [most, squares] = [0, 0];
  for (let at = 0; at < contributions.length; at += 1) {
    const speed = contributions[at]!.speed.values[row]!;
    if (speed > most) most = speed;
    squares += speed * speed;
  }
  return most + Math.sqrt(Math.max(squares - most * most, 0));
}

function contributionSteps(
  run: DayRun,
  { kind, from, reach, opening }: Contribution,
  speed: number,
  row: number,
): Step[] {
  if (kind === 'through')
    return [
      { text: `air passing through ${from}, over its smallest section`, value: speed, unit: 'speed', formula: 'V̇/A' },
    ];
  if (kind === 'suction')
    return [
      {
        text: `suction of ${from}: outlets hardly draught`,
        value: speed,
        unit: 'speed',
        formula: 'u = V̇/(0.75 (10 x² + A))',
        source: 'Dalla Valle, as in ACGIH, Industrial Ventilation, from memory',
      },
    ];
  const { place, blows } = run.cabinet.paths[from]!;
  const words = kind === 'jet' ? `air entering by ${from}` : `air that ${from} turns round`;
  return [
    {
      text: `${words}, in its opening in the ${place.face}`,
      value: opening!.values[row]!,
      unit: 'speed',
      inputs: [`paths.${from}.parts`],
    },
    ...(blows === 'in'
      ? []
      : [
          {
            text: `it blows ${blows === 'wall' ? 'along the wall' : 'away from the prints'}`,
            inputs: [`paths.${from}.blows`],
          },
        ]),
    {
      text: 'from there to the part, along the jet',
      value: reach!.along,
      unit: 'length',
      inputs: [`paths.${from}.place`],
    },
    { text: 'and beside it', value: reach!.beside, unit: 'length' },
    ...(reach!.shielded ? [{ text: 'the bed lies between: it spreads the jet before it meets the part' }] : []),
    {
      text: reach!.inCore
        ? 'at the part: a jet from so wide an opening keeps its core and does not slow down inside the cabinet at all'
        : 'at the part',
      value: speed,
      unit: 'speed',
      formula: 'u = u0 min(1, 6.2 d/x) · 2^(−(r/0.094x)²); slots 2.47 √(h/x)',
      source: 'Rajaratnam 1976, Schlichting, from memory; slow jets spread sooner, so this is an upper bound',
    },
  ];
}

/** What the print moves by its own warmth, and from which speed on a draught outweighs it. */
function ownAir(run: DayRun, print: Print): Step[] {
  const { bed, size } = print.machine;
  const air = meanOf(
    within(temperatureOf(run, run.assembly.machines[print.machineId]!.printAir), print.start, print.end),
  );
  const excess = print.job.bed - air;
  if (!(excess > 1) || !(print.job.partSize > 0) || !(size.width > 0)) return [];
  const loss = bedLoss(describedBed(bed), print.job.bed, air, air);
  const diameter = Math.sqrt((4 * bed.width * bed.depth) / Math.PI);
  const heat = Math.max(loss.topConvection, 0.1);
  const origin = virtualOrigin(heat, diameter, air);
  const warmth = PART_SHARE * excess;
  return [
    {
      text: 'the bed’s own plume moves the air above its middle at about',
      value: firePlume(heat, PLUME_HEIGHT - origin, air).velocity,
      unit: 'speed',
      formula: 'u = 3.4 (g/(cp ρ T))^(1/3) Q^(1/3) z^(−1/3)',
      source: 'Heskestad, as in NIST SP 1026: made for fires, an extrapolation at these powers',
      inputs: [`days.${run.day}.jobs.${print.id}.bed`],
    },
    {
      text: 'a draught begins to cool this part more than its own warmth does from',
      value: draughtThreshold(print.job.partSize, warmth, air + warmth / 2),
      unit: 'speed',
      formula: 'U = √(g ΔT L/T): Richardson number 1; the part taken half way between bed and air',
      inputs: [`days.${run.day}.jobs.${print.id}.partSize`],
    },
    ...(bed.motion > 0
      ? [
          {
            text: 'the bed itself moves at about',
            value: bed.motion,
            unit: 'speed',
            inputs: [`machines.${print.machineId}.bed.motion`],
          },
        ]
      : []),
  ];
}

function causeOf({ kind }: Contribution): Cause {
  return kind === 'jet' ? causes.inletBlows : kind === 'turned' ? causes.turnedAirBlows : causes.tooMuchAir;
}

function remediesFor({ cabinet }: DayRun, { kind, from }: Contribution): Remedy[] {
  return kind === 'jet' || kind === 'turned' ? stillerAir(cabinet, from) : [];
}
