// The air of each bay: one zone, or a low and a high one that plumes fill from below and that turn over when the upper is colder.

import { AIR_HEAT_CAPACITY, REFERENCE_DENSITY } from '@stillair/physics';
import type { Bay, Cabinet } from '../cabinet/cabinet.ts';
import { bayVolume } from '../cabinet/geometry.ts';
import { ROOM } from './assemble-room.ts';
import type { BayPlaces } from './assembly.ts';
import type { Draft } from './draft.ts';

/** Free share of a bay's plan between its low and high air: the machine stands in the rest. From memory, typical. */
const FREE_SHARE = 0.6;
/** An ordinary sharp-edged opening. NIST SP 1026: 0.60 to 0.70. */
export const DISCHARGE = 0.62;
/** Below this pressure difference flow is taken as proportional to it, Pa: far below any that matters here. */
export const LINEAR_BELOW = 0.002;

export function assembleBays(draft: Draft, cabinet: Cabinet, start: number): Record<string, BayPlaces> {
  return Object.fromEntries(
    Object.entries(cabinet.bays).map(([id, bay]) => [id, assembleBay(draft, cabinet, id, bay, start)]),
  );
}

function assembleBay(draft: Draft, cabinet: Cabinet, id: string, bay: Bay, start: number): BayPlaces {
  const { depth } = cabinet.inside;
  const [bottom, top] = bay.z;
  const volume = bayVolume(bay, depth);
  const split = bay.airZones === 2 ? (bottom + top) / 2 : top;
  const zones = bay.airZones === 2 ? [`${id}.low`, `${id}.high`] : [id];
  for (const [index, name] of zones.entries()) {
    draft.zones.push({
      name,
      temperature: {
        kind: 'free',
        initial: start,
        heatCapacity: (REFERENCE_DENSITY * AIR_HEAT_CAPACITY * volume) / zones.length,
      },
      pressure: { kind: 'solved' },
      zRef: index === 0 ? bottom : split,
      volume: volume / zones.length,
      concentrations: 'free',
    });
  }
  const [low, high] = zones;
  if (low !== undefined && high !== undefined) {
    const plan = (bay.x[1] - bay.x[0]) * depth;
    draft.paths.push({
      type: 'orifice',
      name: `${id} from low to high`,
      from: low,
      to: high,
      z: split,
      open: 'always',
      filterEfficiency: {},
      dischargeCoefficient: DISCHARGE,
      area: FREE_SHARE * plan,
      count: 1,
      linearBelow: LINEAR_BELOW,
    });
    draft.exchanges.push({
      name: `${id} turning over`,
      a: low,
      b: high,
      active: 'always',
      law: { kind: 'horizontal-opening', area: FREE_SHARE * plan, round: false, coefficient: 0.1 },
    });
  }
  return { zones, split, volumes: zones.map(() => volume / zones.length) };
}

/** Zone of a bay at a height above the cabinet's inside floor, or the room or outdoors themselves. */
export function zoneAt(bays: Readonly<Record<string, BayPlaces>>, place: string, z: number): string {
  const bay = bays[place];
  if (bay === undefined) return place === ROOM ? ROOM : place;
  return bay.zones.length === 2 && z >= bay.split ? bay.zones[1]! : bay.zones[0]!;
}
