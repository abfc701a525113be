// Every limit that the airflow trade holds against a day.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Limit } from '../measure.ts';
import { limitFor } from '../person-limit.ts';

/** Mean flow of an axial fan while it runs, as share of what it would deliver without any resistance. */
export function fanShareLimit(cabinet: Cabinet): Limit {
  return limitFor(cabinet, {
    id: 'fan-share',
    kind: 'at-least',
    value: 0.3,
    source:
      'common practice, no source: below about a third of its free delivery an axial fan stalls, is louder and moves little',
    standing: 'trade',
  });
}

/** Operating points of a fan with its path, at any moment. */
export const singlePointLimit: Limit = {
  id: 'operating-points',
  kind: 'at-most',
  value: 1,
  source: 'a fan with several operating points may jump between them (fan handbooks, from memory)',
  standing: 'trade',
};

/** Pressure of a bay against the room at its highest gap, largest while a job in it gives something off and a fan draws. */
export function leakPressureLimit(cabinet: Cabinet): Limit {
  return limitFor(cabinet, {
    id: 'leak-pressure',
    kind: 'at-most',
    value: 0,
    source:
      'containment: air must flow inward at every gap (ACGIH, Industrial Ventilation, enclosing hoods, from memory)',
    standing: 'trade',
  });
}
