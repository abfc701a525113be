// Light: bright and even on each print, enough for the camera, no flicker, the whole print in the picture.

import type { Trade } from '../measure.ts';
import { cameraMeasures } from './cameras.ts';
import { coverage } from './coverage.ts';
import { flicker } from './flicker.ts';
import { litHours } from './lit-hours.ts';
import { printLight } from './print-light.ts';

export const light: Trade = {
  id: 'light',
  title: 'Light',
  standing: (cabinet) => [
    ...printLight(cabinet),
    ...cameraMeasures(cabinet),
    ...coverage(cabinet),
    ...flicker(cabinet),
  ],
  measure: (run) => litHours(run),
};
