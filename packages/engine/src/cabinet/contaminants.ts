// What the air may carry, under the names that cabinet files, materials and filters use.

import type { KindName } from '../units/unit-table.ts';

/** Counted (`particles`, all sizes above 10 nm or so) or weighed. */
export const contaminants: readonly string[] = [
  'particles',
  'PM2.5',
  'TVOC',
  'styrene',
  'ethylbenzene',
  'caprolactam',
  'lactide',
  'formaldehyde',
  'acetaldehyde',
];

export function concentrationKind(contaminant: string): KindName {
  return contaminant === 'particles' ? 'particle-concentration' : 'mass-concentration';
}

export function rateKind(contaminant: string): KindName {
  return contaminant === 'particles' ? 'particle-rate' : 'vapour-rate';
}
