// The power trade: are there sockets enough, do strip, circuit and supply bear the load, which wire and fuse, what does it cost?

import { asks, type Trade } from '../measure.ts';
import { circuit } from './circuit.ts';
import { cost } from './cost.ts';
import { fusePlaces, lowVoltage } from './low-voltage.ts';
import { standingStrips, stripsOnDay } from './strips.ts';
import { switchingOn } from './switching-on.ts';

export const power: Trade = {
  id: 'power',
  title: 'Power',
  standing: asks(standingStrips, switchingOn, fusePlaces),
  measure: (run) => [...circuit(run), ...stripsOnDay(run), ...lowVoltage(run), ...cost(run)],
};
