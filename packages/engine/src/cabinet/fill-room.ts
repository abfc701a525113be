// The room, outdoors and the people in it, with what is assumed where the file says nothing.

import { dailyProfile, windowsOfDay } from '../units/clock.ts';
import type { Profile } from '../units/profile.ts';
import type { Assumption } from './assumption.ts';
import type { Outdoors, Person, Room, Size } from './cabinet.ts';
import { contaminants } from './contaminants.ts';
import { defaults, ROOM_TEMPERATURE_DOUBT } from './defaults.ts';
import type { Ledger } from './ledger.ts';
import { overrideOf } from './overrides.ts';
import type { FilePath } from './source-tree.ts';
import type { Amounts, Course, FileSpec } from './spec.ts';

/** Working hours of somebody at a desk. */
const DESK_HOURS: readonly (readonly [number, number])[] = [[9 * 3600, 17 * 3600]];

const roomBackground: Readonly<Record<string, Assumption>> = {
  particles: defaults.roomParticles,
  'PM2.5': defaults.roomFineDust,
  TVOC: defaults.roomTvoc,
};
const outdoorBackground: Readonly<Record<string, Assumption>> = {
  particles: defaults.outdoorParticles,
  'PM2.5': defaults.outdoorFineDust,
  TVOC: defaults.outdoorTvoc,
};

export function fillRoom({ room = {}, overrides }: FileSpec, ledger: Ledger): Room {
  const size = fillRoomSize(room.size, ledger);
  const floor = size.width * size.depth;
  const walls = 2 * (floor + (size.width + size.depth) * size.height);
  const loss = defaults.roomLossPerArea.value * walls;
  const capacity = defaults.roomCapacityPerArea;
  return {
    size,
    temperature: fillCourse(
      'room.temperature',
      room.temperature,
      ['room', 'temperature'],
      defaults.roomTemperature,
      ledger,
      ROOM_TEMPERATURE_DOUBT,
    ),
    held: noted(ledger, 'room.held', room.held, ['room', 'held'], false, "the cabinet's heat warms the room"),
    humidity: ledger.number(
      'room.humidity',
      [{ quantity: room.humidity, file: ['room', 'humidity'] }],
      defaults.roomHumidity,
    ),
    airChangesPerHour: ledger.number(
      'room.airChangesPerHour',
      [{ quantity: room['air-changes'], file: ['room', 'air-changes'] }],
      defaults.roomAirChanges,
    ),
    heatLoss: ledger.number(
      'room.heatLoss',
      [
        { quantity: overrideOf({ overrides }, 'room.heat-loss'), file: ['overrides', 'room.heat-loss'] },
        { quantity: room['heat-loss'], file: ['room', 'heat-loss'] },
      ],
      {
        value: loss,
        how: `0.7 W/(m² K) over all faces of the room; ${defaults.roomLossPerArea.why}`,
      },
    ),
    heatCapacity: ledger.number(
      'room.heatCapacity',
      [{ quantity: room['heat-capacity'], file: ['room', 'heat-capacity'] }],
      {
        value: capacity.value * floor,
        how: `24 kJ/K for each m² of floor; ${capacity.why}`,
        spread: {
          p10: capacity.low * floor,
          p50: capacity.value * floor,
          p90: capacity.high * floor,
          shape: 'log-normal',
        },
      },
    ),
    background: fillBackground('room.background', room.background, ['room', 'background'], roomBackground, ledger),
    deposition: ledger.number(
      'room.deposition',
      [{ quantity: room.deposition, file: ['room', 'deposition'] }],
      defaults.roomDeposition,
    ),
    airCleaner: ledger.number('room.airCleaner', [{ quantity: room['air-cleaner'], file: ['room', 'air-cleaner'] }], {
      value: 0,
      how: 'the file names no air cleaner',
    }),
  };
}

export function fillOutdoors({ outdoors = {} }: FileSpec, ledger: Ledger): Outdoors {
  const at = (key: string): FilePath => ['outdoors', key];
  return {
    temperature: fillCourse(
      'outdoors.temperature',
      outdoors.temperature,
      at('temperature'),
      defaults.outdoorTemperature,
      ledger,
    ),
    humidity: ledger.number(
      'outdoors.humidity',
      [{ quantity: outdoors.humidity, file: at('humidity') }],
      defaults.outdoorHumidity,
    ),
    windSpeed: ledger.number(
      'outdoors.windSpeed',
      [{ quantity: outdoors.wind, file: at('wind') }],
      defaults.outdoorWind,
    ),
    background: fillBackground('outdoors.background', outdoors.background, at('background'), outdoorBackground, ledger),
  };
}

/** Without people in the file: one at a desk in front of the cabinet. */
export function fillPeople({ people }: FileSpec, ledger: Ledger, inside: Size): Readonly<Record<string, Person>> {
  const desk = [inside.width / 2, -defaults.personDistance.value, defaults.personHeight.value] as const;
  const written = people ?? { desk: {} };
  return Object.fromEntries(
    Object.entries(written).map(([id, { at, hours }]) => {
      const path = `people.${id}`;
      if (at === undefined) notePlace(ledger, `${path}.at`);
      else ledger.note(`${path}.at`, ledger.given(['people', id, 'at']));
      ledger.note(
        `${path}.hours`,
        hours === undefined
          ? { kind: 'derived', how: 'a working day at a desk, 9:00 to 17:00, as nothing else was given' }
          : ledger.given(['people', id, 'hours']),
      );
      const [x, y, z] = at ?? desk;
      return [id, { at: [x!, y!, z!] as const, hours: windowsOfDay(hours ?? DESK_HOURS) }];
    }),
  );
}

function notePlace(ledger: Ledger, path: string): void {
  const { personDistance, personHeight } = defaults;
  ledger.note(`${path}.0`, { kind: 'derived', how: 'in front of the middle of the cabinet' });
  for (const [axis, { value, low, high, why }, sign] of [
    [1, personDistance, -1],
    [2, personHeight, 1],
  ] as const) {
    const [p10, p90] = sign > 0 ? [low, high] : [-high, -low];
    ledger.note(`${path}.${axis}`, { kind: 'assumed', why, spread: { p10, p50: sign * value, p90, shape: 'normal' } });
  }
}

function fillRoomSize(given: readonly number[] | undefined, ledger: Ledger): Size {
  if (given !== undefined) {
    ledger.note('room.size', ledger.given(['room', 'size']));
    const [width, depth, height] = given;
    return { width: width!, depth: depth!, height: height! };
  }
  return {
    width: ledger.number('room.size.width', [], defaults.roomWidth),
    depth: ledger.number('room.size.depth', [], defaults.roomDepth),
    height: ledger.number('room.size.height', [], defaults.roomHeight),
  };
}

/** A constant becomes one point, whose number may have a spread; a course over the day repeats every day. */
export function fillCourse(
  at: string,
  given: Course | undefined,
  file: FilePath,
  fallback: Assumption | { readonly value: number; readonly how: string },
  ledger: Ledger,
  doubt?: number,
): Profile {
  if (given !== undefined && Array.isArray(given)) {
    ledger.note(at, ledger.given(file));
    return dailyProfile(given as Profile);
  }
  ledger.note(`${at}.0.0`, { kind: 'derived', how: 'the whole day' });
  const quantity = given as Exclude<Course, Profile> | undefined;
  return [[0, ledger.number(`${at}.0.1`, [{ quantity, file }], fallback, doubt)]];
}

function fillBackground(
  at: string,
  given: Amounts | undefined,
  file: FilePath,
  assumed: Readonly<Record<string, Assumption>>,
  ledger: Ledger,
): Readonly<Record<string, number>> {
  return Object.fromEntries(
    contaminants.map((contaminant) => [
      contaminant,
      ledger.number(
        `${at}.${contaminant}`,
        [{ quantity: given?.[contaminant], file: [...file, contaminant] }],
        assumed[contaminant] ?? { value: 0, how: 'none unless given' },
      ),
    ]),
  );
}

/** A choice that is no number. */
export function noted<T>(
  ledger: Ledger,
  at: string,
  given: T | undefined,
  file: FilePath,
  otherwise: T,
  how: string,
): T {
  ledger.note(at, given === undefined ? { kind: 'derived', how } : ledger.given(file));
  return given ?? otherwise;
}
