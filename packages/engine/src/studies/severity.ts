// How bad it is when a limit is passed: four classes, as an analysis of failure modes and their effects asks for (IEC 60812 leaves
// the scale to whoever makes it). A matter of judgement; the table is the judgement.

export type Severity = 'people' | 'machine' | 'print' | 'upkeep';

/** Worst first. */
export const severities: readonly Severity[] = ['people', 'machine', 'print', 'upkeep'];

const ofTrade: Readonly<Record<string, Severity>> = {
  fire: 'people',
  'air-quality': 'people',
  power: 'people',
  structure: 'people',
  heat: 'print',
  draught: 'print',
  filament: 'print',
  light: 'print',
  vibration: 'print',
  fit: 'print',
  airflow: 'upkeep',
  fittings: 'upkeep',
  sound: 'upkeep',
  cost: 'upkeep',
};

/** Quantities that are worse, or less bad, than their trade. */
const ofQuantity: Readonly<Record<string, Severity>> = {
  'hottest-bed': 'people',
  'hottest-board': 'people',
  'back-by-itself': 'people',
  'prints-lost': 'print',
  'touch-temperature': 'people',
  'electronics-air': 'machine',
  'frame-air': 'machine',
  'peak-air': 'machine',
  'dew-margin': 'machine',
  'room-rise': 'upkeep',
  'energy-day': 'upkeep',
  'link-margin': 'upkeep',
  'thermostat-margin': 'upkeep',
  'heat-detector-peak': 'upkeep',
  'heat-detector-long': 'upkeep',
  // A share of what is given off, not a level: what people breathe of it is judged in the room.
  'unguarded-release': 'upkeep',
  'filter-life': 'upkeep',
  'carbon-life': 'upkeep',
  'bracket-warmth': 'machine',
  'strip-air': 'people',
  'job-cost': 'upkeep',
  'day-cost': 'upkeep',
  'month-cost': 'upkeep',
  'lamp-flicker': 'upkeep',
};

export function severityOf({ trade, quantity }: { readonly trade: string; readonly quantity: string }): Severity {
  return ofQuantity[quantity] ?? ofTrade[trade] ?? 'upkeep';
}

/** 0 for the worst. */
export const rankOfSeverity = (severity: Severity): number => severities.indexOf(severity);
