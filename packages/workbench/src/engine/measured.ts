// What a log measured, laid over the panels of the day strip: each column in the panel that has its place, in the unit that is drawn there.

import type { Cabinet, CalibratedColumn, CalibrationStudy, UnitSystem } from '@stillair/engine';
import type { Measured } from './protocol.ts';

const DAY = 86_400;

export function measuredOver(
  cabinet: Pick<Cabinet, 'sensors' | 'days'>,
  { columns, day }: Pick<CalibrationStudy, 'columns' | 'day'>,
  units: UnitSystem,
): Measured[] {
  // Each date of the log is one run of the day; a longer day takes the dates that follow.
  const span = DAY * Math.ceil(cabinet.days[day]!.length / DAY);
  return columns.flatMap((column): Measured[] => {
    const drawn = drawnIn(column, cabinet, units);
    if (drawn === undefined) return [];
    const { times, measured } = column.course;
    const points = times.map((time, at) => [time % span, drawn.of(measured[at]!)] as const);
    return [{ name: column.name, panel: drawn.panel, unit: drawn.unit, points }];
  });
}

interface Drawn {
  readonly panel: string;
  readonly unit: string;
  readonly of: (si: number) => number;
}

function drawnIn(
  { place, kind }: Pick<CalibratedColumn, 'place' | 'kind'>,
  { sensors }: Pick<Cabinet, 'sensors'>,
  units: UnitSystem,
): Drawn | undefined {
  if (kind === 'power' && place.what === 'machine')
    return { panel: 'Power drawn by the machines', unit: 'W', of: (watts) => watts };
  const bay = place.what === 'sensor' ? sensors[place.id]?.bay : place.what === 'bay' ? place.id : undefined;
  if (kind !== 'temperature' || bay === undefined) return undefined;
  const panel = `Air in bay ${bay}`;
  return units === 'imperial'
    ? { panel, unit: '°F', of: (kelvin) => kelvin * 1.8 - 459.67 }
    : { panel, unit: '°C', of: (kelvin) => kelvin - 273.15 };
}
