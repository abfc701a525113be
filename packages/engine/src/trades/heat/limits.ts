// Every limit that the heat trade holds against a day: value, over what it is taken, where it comes from.

import type { Cabinet, Machine, Material } from '../../cabinet/cabinet.ts';
import type { Limit } from '../measure.ts';
import { limitFor } from '../person-limit.ts';

type Band = 'bandWell' | 'bandBest';

const BAND_SOURCE: Readonly<Record<Band, string>> = {
  bandWell: 'trade practice for printing this material, from memory, no printed source; overrule it under materials',
  bandBest:
    'trade practice for large parts of this material, from memory, no printed source; overrule it under materials',
};

/** Air around the part, any moment while printing. */
export function bandLimit(material: Material, name: string, band: Band, end: 'low' | 'high'): Limit {
  const [low, high] = material[band];
  return {
    id: `${band === 'bandWell' ? 'print-air' : 'print-air-best'}-${end}`,
    kind: end === 'low' ? 'at-least' : 'at-most',
    value: end === 'low' ? low : high,
    source: `${name}: ${BAND_SOURCE[band]}`,
    standing: 'trade',
  };
}

/** Air where the electronics stand, any moment of the day. */
export function electronicsLimit(cabinet: Cabinet, machine: Machine): Limit {
  return limitFor(cabinet, {
    id: 'electronics-air',
    kind: 'at-most',
    value: machine.electronicsLimit,
    source: 'the machine’s papers, or 45 °C: usual for boards and supplies rated to 50 °C, from memory',
    standing: 'trade',
  });
}

/** Air around frame, motors and printed parts of the machine itself, any moment of the day. */
export function frameLimit(cabinet: Cabinet, machine: Machine): Limit {
  return limitFor(cabinet, {
    id: 'frame-air',
    kind: 'at-most',
    value: machine.frameLimit,
    source: 'the machine’s papers, or what its printed parts and motors bear, from memory',
    standing: 'trade',
  });
}

/**
 * Outer surfaces, any moment. EN ISO 13732-1 (2008), burn thresholds for any material: 51 °C for 1 minute of contact, 48 °C for
 * 10 minutes, 43 °C for 8 hours (from memory). A hand that rests on a door is there for minutes.
 */
export function touchLimit(cabinet: Cabinet): Limit {
  return limitFor(cabinet, {
    id: 'touch-temperature',
    kind: 'at-most',
    value: 273.15 + 48,
    source:
      'EN ISO 13732-1 (2008), burn threshold for 10 minutes of contact, from memory; 51 °C for 1 minute, 43 °C for 8 hours',
    standing: 'living room',
  });
}

/** Coldest inner surface above the dew point of the air before it, any moment. */
export function dewLimit(cabinet: Cabinet): Limit {
  return limitFor(cabinet, {
    id: 'dew-margin',
    kind: 'at-least',
    value: 0,
    source: 'water condenses where a surface is colder than the dew point (ASHRAE Handbook of Fundamentals, chapter 1)',
    standing: 'trade',
  });
}
