// The fit trade: does everything that moves, hangs, opens and must be reached have its room?

import { asks, type Trade } from '../measure.ts';
import { doors } from './doors.ts';
import { gaps } from './gaps.ts';
import { hands } from './hands.ts';
import { needs } from './need.ts';
import { openings } from './openings.ts';
import { things } from './things.ts';
import { waysOut } from './way-out.ts';

export const fit: Trade = {
  id: 'fit',
  title: 'Fit',
  standing: asks(gaps, openings, things, waysOut, hands, doors, needs),
};
