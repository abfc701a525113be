// Air where each machine's electronics and frame stand, over the whole day.

import { formatClock } from '../../units/format.ts';
import { temperatureOf } from '../air-ways.ts';
import { causes } from '../causes.ts';
import { largest, timeAbove } from '../course.ts';
import type { DayRun, Measure, Remedy, Step } from '../measure.ts';
import { coolerBay, electronicsOutside } from '../remedies.ts';
import { balanceSteps } from './balance.ts';
import { electronicsLimit, frameLimit } from './limits.ts';

export function machineAir(run: DayRun): Measure[] {
  return Object.entries(run.cabinet.machines).flatMap(([id, machine]) => {
    const places = run.assembly.machines[id]!;
    const electronics = temperatureOf(run, places.electronicsAir);
    const frame = temperatureOf(run, places.frameAir);
    const hottest = largest(electronics);
    const hottestFrame = largest(frame);
    const limit = electronicsLimit(run.cabinet, machine);
    const standing = machine.electronicsInside ? `in bay ${machine.bay}` : 'outside the cabinet, in the room';
    const shared = { trade: 'heat', part: id, unit: 'temperature', better: 'lower', weight: 0.8 } as const;
    return [
      {
        ...shared,
        quantity: 'electronics-air',
        title: 'hottest air at the electronics',
        value: hottest.value,
        limit,
        at: hottest.time,
        get steps(): readonly Step[] {
          return [
            { text: `electronics stand ${standing}`, inputs: [`machines.${id}.electronicsInside`] },
            { text: `hottest air there, at ${formatClock(hottest.time)}`, value: hottest.value, unit: 'temperature' },
            { text: 'time above the limit', value: timeAbove(electronics, limit.value), unit: 'duration' },
            ...(machine.electronicsInside ? balanceSteps(run, machine.bay, hottest.time) : []),
          ];
        },
        get remedies(): readonly Remedy[] {
          return machine.electronicsInside
            ? [...electronicsOutside(run.cabinet, id), ...coolerBay(run.cabinet, machine.bay)]
            : [];
        },
        cause: causes.electronicsInWarmAir,
        compared: true,
      },
      {
        ...shared,
        quantity: 'frame-air',
        title: 'hottest air around the machine itself',
        value: hottestFrame.value,
        limit: frameLimit(run.cabinet, machine),
        at: hottestFrame.time,
        get steps(): readonly Step[] {
          return [
            {
              text: `hottest air around frame and motors, at ${formatClock(hottestFrame.time)}`,
              value: hottestFrame.value,
              unit: 'temperature',
            },
            ...balanceSteps(run, machine.bay, hottestFrame.time),
          ];
        },
        get remedies(): readonly Remedy[] {
          return coolerBay(run.cabinet, machine.bay);
        },
        cause: causes.notEnoughAir,
        weight: 0.6,
      },
    ];
  });
}
