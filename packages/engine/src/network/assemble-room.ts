// The room and the outdoors. A given room temperature is the room without the cabinet: the cabinet's heat raises it through
// the room's own balance C dθ/dt = Q − Gθ, with θ the rise above the given course.

import { AIR_HEAT_CAPACITY, REFERENCE_DENSITY } from '@stillair/physics';
import type { Cabinet, Day } from '../cabinet/cabinet.ts';
import type { Draft } from './draft.ts';
import { repeatDaily } from './repeat-daily.ts';

export const ROOM = 'room';
export const OUTDOORS = 'outdoors';
/** The room's given course: where its own heating, walls and fresh air would hold it. */
const COURSE = 'room without cabinet';

export function assembleRoom(draft: Draft, { room, outdoors, factors, overrides }: Cabinet, day: Day): void {
  const middle = room.size.height / 2;
  const volume = room.size.width * room.size.depth * room.size.height;
  const course = repeatDaily(day.roomTemperature ?? room.temperature, day.length);
  const outside = repeatDaily(day.outdoorTemperature ?? outdoors.temperature, day.length);
  const fresh = (room.airChangesPerHour / 3600) * volume;
  const fixed = { kind: 'fixed' as const, value: 0 };

  draft.zones.push({
    name: OUTDOORS,
    temperature: { kind: 'fixed', profile: outside },
    pressure: fixed,
    zRef: middle,
    volume: 1,
    concentrations: 'fixed',
  });
  draft.zones.push({
    name: COURSE,
    temperature: { kind: 'fixed', profile: course },
    pressure: fixed,
    zRef: middle,
    volume: 1,
    concentrations: 'fixed',
  });
  draft.zones.push({
    name: ROOM,
    temperature: room.held
      ? { kind: 'fixed', profile: course }
      : { kind: 'free', initial: course[0]![1], heatCapacity: room.heatCapacity },
    pressure: fixed,
    zRef: middle,
    volume,
    concentrations: 'free',
  });
  // Fresh air comes at the temperature that the given course already accounts for, with the outdoors' concentrations;
  // what a path blows outdoors is made up by air as cold as it is.
  draft.exchanges.push({
    name: 'fresh air of the room',
    a: ROOM,
    b: COURSE,
    active: 'always',
    law: { kind: 'constant', flow: fresh },
  });
  draft.airChanges.push({ zone: ROOM, with: OUTDOORS, perSecond: 0 });
  if (room.held) return;

  const loss = room.heatLoss * factors.roomHeatLoss;
  draft.conductances.push({ a: ROOM, b: COURSE, conductance: loss });
  draft.derivations.push({
    what: 'heat the room loses per kelvin of rise',
    text: 'heat loss through its walls plus its air change',
    value: loss + fresh * REFERENCE_DENSITY * AIR_HEAT_CAPACITY,
    unit: 'heat-conductance',
    source: 'steady balance of the room: G = UA + ρ cp V n',
    inputs: ['room.heatLoss', 'room.airChangesPerHour', 'factors.roomHeatLoss'],
  });
  if (overrides['room.heatLoss'] !== undefined) draft.overridesUsed.push('room.heatLoss');
  for (const [index, [start, from]] of course.entries()) {
    const next = course[index + 1];
    if (next === undefined || next[0] <= start || next[1] === from) continue;
    draft.heatSources.push({
      name: `course of the room ${index + 1}`,
      node: ROOM,
      watts: (room.heatCapacity * (next[1] - from)) / (next[0] - start),
      active: { windows: [[start, next[0]]] },
    });
  }
}

/** Concentration that fresh air must bring so that the room without the cabinet stays at its background. */
export function freshConcentration(background: number, airChangesPerSecond: number, loss: number): number {
  return airChangesPerSecond > 0 ? (background * (airChangesPerSecond + loss)) / airChangesPerSecond : background;
}

/** Zone of an end outdoors that the wind presses on: a node of its own when the wind matters. */
export function windyZone(draft: Draft, path: string, pressure: number): string {
  if (pressure === 0) return OUTDOORS;
  const calm = draft.zones.find(({ name }) => name === OUTDOORS)!;
  const name = `${OUTDOORS} at ${path}`;
  draft.zones.push({ ...calm, name, pressure: { kind: 'fixed', value: pressure } });
  return name;
}
