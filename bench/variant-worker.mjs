// Runs its share of the variants and answers with the highest bay temperature of each.

import { parentPort, workerData } from 'node:worker_threads';
import { simulateDay } from '../packages/engine/dist/index.js';
import { frozenDay } from './frozen.mjs';

const base = frozenDay('day-43');
const bays = base.zones.filter(({ temperature }) => temperature.kind === 'free').map(({ name }) => name);
const peaks = [];
for (let i = 0; i < workerData.count; i += 1) peaks.push(peakOf(simulateDay(variant(workerData.first + i))));
parentPort.postMessage({ peaks });

/** Variant `number` is the same whoever runs it: its factors come from a sequence seeded by its number. */
function variant(number) {
  const factor = factors(number);
  return {
    ...base,
    conductances: base.conductances.map((link) => ({ ...link, conductance: link.conductance * factor() })),
    walls: base.walls.map((wall) => ({ ...wall, filmA: wall.filmA * factor() })),
    paths: base.paths.map((path) => {
      if (path.type === 'crack') return { ...path, coefficient: path.coefficient * factor() };
      return path.type === 'orifice' ? { ...path, area: path.area * factor() } : path;
    }),
    machines: base.machines.map((machine) => ({
      ...machine,
      modes: machine.modes.map((mode) => ({
        ...mode,
        powers: mode.powers.map((power) => ({ ...power, watts: power.watts * factor() })),
      })),
    })),
  };
}

/** Factors from 0.8 to 1.25, by a multiplicative congruential sequence (modulus 2³¹ - 1, multiplier 48271: Park, Miller 1993). */
function factors(seed) {
  let state = seed * 7919 + 1;
  return () => {
    state = (state * 48271) % 2147483647;
    return 0.8 * 1.5625 ** (state / 2147483647);
  };
}

function peakOf({ temperatures: { names, values } }) {
  const columns = bays.map((name) => names.indexOf(name));
  let highest = 0;
  for (let at = 0; at < values.length; at += names.length) {
    for (const column of columns) highest = Math.max(highest, values[at + column]);
  }
  return highest;
}
