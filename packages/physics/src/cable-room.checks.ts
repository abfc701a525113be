import { CHANNEL_SHARE, cableBend, channelFill } from './cable-room.ts';
import type { OutsideCheck } from './outside-check.ts';

const sheet = 'data sheet of a PVC control cable to EN 50525-2-51';

const bend = (what: string, expected: number, moved: boolean): OutsideCheck => ({
  what,
  formula: 'cableBend',
  source: `${sheet}, ${moved ? 'moved' : 'fixed'}`,
  known: 'read',
  expected,
  unit: 'outside diameters',
  tolerance: 1e-9,
  got: () => cableBend(0.01, moved) / 0.01,
});

export const checks: readonly OutsideCheck[] = [
  bend('laid once', 4, false),
  bend('moved', 7.5, true),
  {
    what: 'cords of 10 mm that fill a channel of 40 by 25 mm as far as allowed',
    formula: 'channelFill',
    source: 'trunking practice: cables take at most 45 % of the section (guidance to BS 7671)',
    known: 'memory',
    expected: 5,
    unit: 'cords',
    tolerance: 0,
    got: () => Math.floor(CHANNEL_SHARE / channelFill([0.01], 0.04 * 0.025)),
  },
];
