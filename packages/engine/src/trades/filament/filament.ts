// The filament trade: does it run freely from spool to nozzle, does the spool stay cool and dry, does it last?

import { asks, type Trade } from '../measure.ts';
import { air } from './air.ts';
import { pull } from './pull.ts';
import { shape } from './shape.ts';

export const filament: Trade = {
  id: 'filament',
  title: 'Filament',
  standing: asks(pull, shape),
  measure: air,
};
