import fc from 'fast-check';
import { expect, it } from 'vitest';
import { compileWhen } from '../day/when.ts';
import type { When } from '../network/network.ts';
import type { DayRun } from './measure.ts';
import { courseOn } from './switched.ts';

const times = Float64Array.of(0, 100, 100, 150, 200, 200, 250, 300, 300, 400);
const thermostats = {
  names: ['low', 'high'],
  values: Float64Array.from({ length: 2 * times.length }, (_, at) => (at % 3 === 0 ? 1 : 0)),
};
const machines = ['left', 'right'];
const schedule = [
  { machine: 'left', mode: 'bracket', start: 100, end: 200 },
  { machine: 'left', mode: 'vase', start: 150, end: 300 },
  { machine: 'right', mode: 'idle', start: 200, end: 300 },
];
const record = { times, thermostats, network: { machines: machines.map((name) => ({ name })), schedule } };

const { when } = fc.letrec<{ when: When }>((tie) => ({
  when: fc.oneof(
    { depthSize: 'small' },
    fc.constant<When>('always'),
    fc.record({
      windows: fc.array(fc.tuple(fc.constantFrom(0, 100, 150), fc.constantFrom(150, 200, 400)), { maxLength: 2 }),
    }),
    fc.record({ thermostat: fc.constantFrom('low', 'high') }),
    fc.record({ machine: fc.constantFrom(...machines) }),
    fc.record({ machine: fc.constantFrom(...machines), modes: fc.subarray(['idle', 'bracket', 'vase']) }),
    fc.record({ not: tie('when') }),
    fc.record({ anyOf: fc.array(tie('when'), { maxLength: 3 }) }),
    fc.record({ allOf: fc.array(tie('when'), { maxLength: 3 }) }),
  ),
}));

/** As the day itself asks, a hair before a jump on its left side and at the end. */
function asTheDayAsks(asked: When, row: number): number {
  const time = row + 1 === times.length || times[row + 1] === times[row] ? times[row]! - 1e-6 : times[row]!;
  const modes = machines.map(
    (machine) =>
      schedule.find((each) => each.machine === machine && each.start <= time && time < each.end)?.mode ?? 'idle',
  );
  const on = Uint8Array.from(thermostats.values.subarray(2 * row, 2 * row + 2));
  return compileWhen(asked, { thermostats: thermostats.names, machines })({ time, thermostats: on, modes }) ? 1 : 0;
}

it('cross: things are on in the rows in which the day has them on', () => {
  fc.assert(
    fc.property(when, (asked) => {
      const { values } = courseOn({ record } as unknown as DayRun, asked);
      expect([...values]).toEqual([...times].map((_, row) => asTheDayAsks(asked, row)));
    }),
  );
});
