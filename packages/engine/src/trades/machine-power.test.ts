import { expect, it } from 'vitest';
import { machinePower } from './machine-power.ts';
import type { DayRun } from './measure.ts';

/** One machine from 100 to 200 s; its bed draws 50 W while it prints. */
const run = {
  record: {
    network: {
      machines: [
        {
          name: 'left',
          bed: { supply: { share: 0.2 } },
          modes: [
            { name: 'idle', powers: [{ watts: 3 }] },
            { name: 'bracket', powers: [{ watts: 30 }, { watts: 10 }] },
          ],
        },
      ],
      schedule: [{ machine: 'left', mode: 'bracket', start: 100, end: 200 }],
    },
    times: Float64Array.of(0, 100, 100, 150, 200, 200, 300),
    bedPowers: { names: ['left'], values: Float64Array.of(0, 0, 50, 50, 50, 0, 0) },
  },
} as unknown as DayRun;

it('exact: bed, loss of the supply and mode, with both sides of each switch', () => {
  expect([...machinePower(run, 'left').values]).toEqual([3, 3, 100, 100, 100, 3, 3]);
});
