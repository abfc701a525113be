// The vibration trade: does slab and foam keep a machine's shaking in, or make it worse?

import { asks, type Trade } from '../measure.ts';
import { shaking } from './shaking.ts';

export const vibration: Trade = {
  id: 'vibration',
  title: 'Vibration',
  standing: asks((cabinet) => Object.keys(cabinet.machines).flatMap((id) => shaking(cabinet, id))),
};
