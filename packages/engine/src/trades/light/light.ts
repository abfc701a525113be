// Light: bright and even on each print, enough for the camera, no flicker, the whole print in the picture.

import { asks, type Trade } from '../measure.ts';
import { cameraMeasures } from './cameras.ts';
import { coverage } from './coverage.ts';
import { flicker } from './flicker.ts';
import { litHours } from './lit-hours.ts';
import { printLight } from './print-light.ts';

export const light: Trade = {
  id: 'light',
  title: 'Light',
  standing: asks(printLight, cameraMeasures, coverage, flicker),
  measure: (run) => litHours(run),
};
