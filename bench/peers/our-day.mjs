// The frozen day by our own solver, told in the same words as the peers: node our-day.mjs FILE TOLERANCE_K [repeat=N] [samples=FILE] [every=S]
// CPU time of a whole day: compiling the network, solving it, and its record with every step and flow.

import { readFileSync, writeFileSync } from 'node:fs';
import { readNetwork, simulateDay } from '../../packages/engine/dist/index.js';
import { highestOf, sampleRecord, stateNames } from './sample-record.mjs';

const WARM = 400;
const BATCHES = 8;

const [file, tolerance, ...words] = process.argv.slice(2);
const options = { repeat: 1, samples: '', every: 60, ...Object.fromEntries(words.map((word) => word.split('='))) };
const { network } = readNetwork(file, readFileSync(file, 'utf8'));
const run = () => simulateDay(network, { tolerance: Number(tolerance) });

const cpuOf = (times) => {
  const start = process.cpuUsage();
  for (let i = 0; i < times; i += 1) record = run();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1e3 / times;
};
let record;
const firstMs = cpuOf(1);
if (options.samples !== '') writeFileSync(options.samples, sampleRecord(record, Number(options.every)));
let cpuMs = 0;
const repeat = Number(options.repeat);
if (repeat > 0) {
  // The compiler needs its warm-up, as a C program needs its -O3: a search runs thousands of days in one process.
  cpuOf(WARM);
  // The quickest of a few batches, as of the peers: other programs can only slow one down.
  cpuMs = Math.min(...Array.from({ length: BATCHES }, () => cpuOf(repeat)));
}
const peaks = network.zones
  .filter(({ temperature }) => temperature.kind === 'free')
  .map(({ name }) => highestOf(record, name));
console.log(
  JSON.stringify({
    cpuMs,
    firstMs,
    peaks,
    events: record.events.length,
    ...record.work,
    states: stateNames(network).length,
  }),
);
