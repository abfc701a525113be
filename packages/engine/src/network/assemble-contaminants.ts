// What is carried by the air: particle number, PM2.5, vapours that the day's materials give off, and water.

import { humidityRatioAt, REFERENCE_DENSITY } from '@stillair/physics';
import type { Cabinet, Day } from '../cabinet/cabinet.ts';
import { freshConcentration, OUTDOORS, ROOM } from './assemble-room.ts';
import type { Draft } from './draft.ts';
import type { Contaminant } from './network.ts';

/** Loss of particles to the walls of a bay, 1/s: 0.5 per hour, judgement, 0.1 to 5; little beside a filter's 30 to 120. */
const BAY_DEPOSITION = 0.5 / 3600;
/** Particles of 50 nm meeting: K of dN/dt = −K N², m³/s. Fuchs, 20 °C: 1.0e-9 cm³/s. */
const COAGULATION = 1.0e-15;

interface Kind {
  readonly unit: string;
  readonly scale: number;
  readonly settles: boolean;
}

const kinds: Readonly<Record<string, Kind>> = {
  particles: { unit: '1/m3', scale: 1e9, settles: true },
  'PM2.5': { unit: 'µg/m3', scale: 5, settles: true },
  water: { unit: 'kg/m3', scale: 1e-3, settles: false },
};
const vapour: Kind = { unit: 'µg/m3', scale: 10, settles: false };

export function assembleContaminants(draft: Draft, cabinet: Cabinet, day: Day): void {
  const { room, outdoors } = cabinet;
  // A relative humidity belongs to the temperature of the day it is used on.
  const roomStart = (day.roomTemperature ?? room.temperature)[0]![1];
  const outdoorStart = (day.outdoorTemperature ?? outdoors.temperature)[0]![1];
  const changes = room.airChangesPerHour / 3600;
  const cleaner = room.airCleaner / (room.size.width * room.size.depth * room.size.height);
  const inside = draft.zones.filter(({ concentrations }) => concentrations === 'free').map(({ name }) => name);
  const sensed = draft.thermostats.flatMap(({ sensor }) => (typeof sensor === 'string' ? [] : [sensor.contaminant]));
  for (const name of new Set([...contaminantsOf(cabinet, day), ...sensed])) {
    const { unit, scale, settles } = kinds[name] ?? vapour;
    const inRoom = name === 'water' ? waterOf(roomStart, room.humidity) : (room.background[name] ?? 0);
    const outside = name === 'water' ? waterOf(outdoorStart, outdoors.humidity) : (outdoors.background[name] ?? 0);
    const settling = settles ? room.deposition + cleaner : 0;
    const joining = name === 'particles' ? COAGULATION : 0;
    const contaminant: Contaminant = {
      name,
      unit,
      scale,
      initial: {
        ...Object.fromEntries(inside.map((zone) => [zone, inRoom])),
        ...Object.fromEntries(
          draft.zones.filter(({ name: zone }) => zone.startsWith(OUTDOORS)).map(({ name: zone }) => [zone, outside]),
        ),
        'room without cabinet': freshConcentration(inRoom, changes, settling + joining * inRoom),
      },
      deposition: settles
        ? Object.fromEntries(inside.map((zone) => [zone, zone === ROOM ? settling : BAY_DEPOSITION]))
        : {},
      ...(joining > 0 ? { coagulation: joining } : {}),
    };
    draft.contaminants.push(contaminant);
  }
}

function contaminantsOf(cabinet: Cabinet, day: Day): readonly string[] {
  const emitted = Object.values(day.jobs).flatMap(({ material }) =>
    Object.keys(cabinet.materials[material]?.emissions ?? {}),
  );
  return ['particles', 'PM2.5', 'TVOC', 'water', ...emitted];
}

/** Water in air, kg per m³ of dry air at the reference density. */
function waterOf(kelvin: number, relative: number): number {
  return REFERENCE_DENSITY * humidityRatioAt(kelvin, relative);
}
