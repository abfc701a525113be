// The fittings trade: a place, a reach and a material for everything that is neither board, air nor machine.

import { asks, type Trade } from '../measure.ts';
import { brackets } from './brackets.ts';
import { cables } from './cables.ts';
import { cameraArms } from './camera-arms.ts';
import { extinguishers } from './extinguisher.ts';
import { places } from './places.ts';

export const fittings: Trade = {
  id: 'fittings',
  title: 'Fittings',
  standing: asks(places, cables, cameraArms, extinguishers),
  measure: brackets,
};
