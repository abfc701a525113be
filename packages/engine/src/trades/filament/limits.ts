// Every limit of the filament trade. None has a printed source: they are what those who print agree on, and say so.

import type { Cabinet, Machine, Material } from '../../cabinet/cabinet.ts';
import type { Limit } from '../measure.ts';
import { limitFor } from '../person-limit.ts';

const PRACTICE = 'common practice, no source';
/** N: short pulls may be this much, the drive's own steady pull in proportion. */
const SHORT_PULL = 5 / 3;

export function pullLimit(cabinet: Cabinet, { drive }: Machine): Limit {
  return limitFor(cabinet, {
    id: 'filament-pull',
    kind: 'at-most',
    value: drive.pull,
    source: `${PRACTICE}: plan a steady pull of at most 2 to 3 N; above 10 N drives grind`,
    standing: 'trade',
  });
}

export function startLimit(cabinet: Cabinet, { drive }: Machine): Limit {
  return limitFor(cabinet, {
    id: 'filament-start',
    kind: 'at-most',
    value: SHORT_PULL * drive.pull,
    source: `${PRACTICE}: 5 N at most for a moment, where 3 N is planned`,
    standing: 'trade',
  });
}

export function bendLimit(cabinet: Cabinet, name: string, { bendStrain }: Material): Limit {
  return limitFor(cabinet, {
    id: 'filament-bend',
    kind: 'at-most',
    value: bendStrain,
    source: `${name}: ${PRACTICE}; old dry PLA snaps at 1 to 2 % of strain, so 50 mm of radius at least and better 100 mm`,
    standing: 'trade',
  });
}

export function pushLimit(cabinet: Cabinet, { drive }: Machine): Limit {
  return limitFor(cabinet, {
    id: 'filament-push',
    kind: 'at-least',
    value: drive.push,
    source: `push that the nozzle asks for; ${PRACTICE}: soft filament wants a gap of 5 mm or less`,
    standing: 'trade',
  });
}

export function spoolAirLimit(cabinet: Cabinet, name: string, { spoolLimit }: Material): Limit {
  return limitFor(cabinet, {
    id: 'spool-air',
    kind: 'at-most',
    value: spoolLimit,
    source: `${name}: lower end of what wound spools bear in driers; pages differ by 20 K (second-hand and memory), any moment`,
    standing: 'trade',
  });
}

export function spoolHumidityLimit(cabinet: Cabinet, name: string, { humidityLimit }: Material): Limit {
  return limitFor(cabinet, {
    id: 'spool-humidity',
    kind: 'at-most',
    value: humidityLimit,
    source: `${name}: ${PRACTICE}; boxes for thirsty ones aim at 15 to 20 %; mean of the day, as a strand follows in 7 to 70 h`,
    standing: 'trade',
  });
}

export function restLimit(cabinet: Cabinet): Limit {
  return limitFor(cabinet, {
    id: 'spool-rest',
    kind: 'at-least',
    value: 0,
    source:
      'a spool that ends before the job does stops it; its tail is often hooked in the hub (common practice, no source)',
    standing: 'trade',
  });
}
