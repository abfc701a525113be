import { describe, expect, it } from 'vitest';
import type { Network } from '../network/network.ts';
import { newDay } from './day.ts';
import { freeZone, heldZone, networkOf, orifice, solid } from './network-of.ts';
import { compile } from './plant.ts';
import { ROS34PW2 } from './rosenbrock.ts';
import { evaluateEnd, newStep, startStep, tryStep } from './step.ts';
import { settle } from './switching.ts';

/** State after `duration` in equal steps: temperatures by slot, then concentrations. */
function march(network: Network, duration: number, steps: number): number[] {
  const day = newDay(compile(network));
  day.air.nearly = 1e-8;
  settle(day, true);
  const step = newStep(day, ROS34PW2);
  for (let k = 0; k < steps; k += 1) {
    startStep(day, step);
    tryStep(day, step, duration / steps, 1, 1);
    evaluateEnd(day, step, duration / steps);
    day.y.set(step.endY);
    day.c.set(step.endC);
    day.heatRate.set(step.endHeat);
    day.transportRate.set(step.endCells);
    day.moment.time += duration / steps;
  }
  return [...day.y.subarray(0, day.plant.heat.layout.unknowns), ...day.c];
}

/** log2 of the ratio of errors when the number of steps doubles, from coarse to fine; errors against 16 times finer steps. */
function slopes(network: Network, duration: number, counts: readonly number[]): number[] {
  const exact = march(network, duration, counts.at(-1)! * 16);
  const errors = counts.map((count) => {
    const state = march(network, duration, count);
    return Math.max(...state.map((value, i) => Math.abs(value - exact[i]!) / Math.max(1, Math.abs(exact[i]!))));
  });
  return errors.slice(1).map((error, i) => Math.log2(errors[i]! / error));
}

// A warm bay of two zones cools through a stack whose flow falls with it, by radiation and into a moving room; a contaminant
// that joins with itself is carried along and given off in a fading burst.
const stack = networkOf({
  zones: [
    heldZone('room', 20, {
      temperature: {
        kind: 'fixed',
        profile: [
          [0, 293.15],
          [1e5, 393.15],
        ],
      },
    }),
    freeZone('low', 70, 20000, { zRef: 0.2, volume: 0.3, concentrations: 'free' }),
    freeZone('high', 40, 15000, { zRef: 1, volume: 0.2, concentrations: 'free' }),
  ],
  nodes: [solid('mass', 90, 3000), solid('wall', 30, 9000)],
  conductances: [
    { a: 'mass', b: 'low', conductance: 2 },
    { a: 'wall', b: 'high', conductance: 4 },
    { a: 'wall', b: 'room', conductance: 3 },
  ],
  radiation: [{ a: 'mass', b: 'wall', area: 0.2, emissivity: 0.9, factor: 1 }],
  paths: [
    orifice('in', 'room', 'low', 0, 0.004, { filterEfficiency: { dust: 0.5 } }),
    orifice('hole', 'low', 'high', 0.8, 0.005),
    orifice('out', 'high', 'room', 1.6, 0.004),
  ],
  exchanges: [
    {
      name: 'mix',
      a: 'low',
      b: 'high',
      active: 'always',
      law: { kind: 'vertical-opening', dischargeCoefficient: 0.4, width: 0.05, height: 0.1 },
    },
  ],
  contaminants: [
    {
      name: 'dust',
      unit: '1',
      scale: 1,
      initial: { low: 5, high: 2, room: 1 },
      deposition: { low: 1e-3 },
      coagulation: 1e-3,
    },
  ],
  emissions: [{ contaminant: 'dust', zone: 'low', rate: 0.01, active: 'always', burst: { ratio: 5, time: 300 } }],
});

describe('the integrator', () => {
  it('order: 3 on a smooth day whose flows, exchanges and boundaries change all the time', () => {
    const found = slopes(stack, 600, [20, 40, 80, 160]);
    // Asymptotic: the last slopes agree with one another and with the order.
    for (const slope of found.slice(-2)) {
      expect(slope).toBeGreaterThan(2.8);
      expect(slope).toBeLessThan(3.25);
    }
  });

  it('order: the error estimate falls with the third power of the step, as an estimate of order 2 must', () => {
    const day = newDay(compile(stack));
    settle(day, true);
    const step = newStep(day, ROS34PW2);
    startStep(day, step);
    const [coarse, fine] = [2, 1].map((length) => tryStep(day, step, length, 1, 1));
    expect(Math.log2(coarse! / fine!)).toBeGreaterThan(2.7);
    expect(Math.log2(coarse! / fine!)).toBeLessThan(3.3);
  });
});
