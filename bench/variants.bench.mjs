// Ten thousand variants of the frozen day, as a search asks for them: every machine power, conductance and leak its own.

import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { calibrate } from './calibration.mjs';
import { cpuMilliseconds } from './clock.mjs';
import { line } from './measure.mjs';

const VARIANTS = 10_000;
const WORKERS = 2;

export async function run() {
  const share = VARIANTS / WORKERS;
  const before = calibrate();
  const start = performance.now();
  const cpu = cpuMilliseconds();
  const answers = await Promise.all(Array.from({ length: WORKERS }, (_, index) => runVariants(index * share, share)));
  const seconds = (performance.now() - start) / 1e3;
  const used = (cpuMilliseconds() - cpu) / 1e3;
  const ratio = (used * 1e3) / (0.5 * (before + calibrate()));
  const peaks = answers.flatMap(({ peaks }) => peaks).sort((a, b) => a - b);
  const at = (part) => (peaks[Math.floor(part * (peaks.length - 1))] - 273.15).toFixed(2);
  const note = `${WORKERS} worker threads on ${availableParallelism()} processors, ${used.toFixed(1)} s of processor time; peaks of the bays from ${at(0)} to ${at(1)} °C, median ${at(0.5)} °C`;
  return [line(`${VARIANTS} variants of the frozen day`, seconds, 's', { ratio, limit: 40, note })];
}

function runVariants(first, count) {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./variant-worker.mjs', import.meta.url), { workerData: { first, count } });
    worker.on('message', resolve);
    worker.on('error', reject);
  });
}
