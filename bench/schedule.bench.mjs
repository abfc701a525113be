// The scheduler: published instances proved, and the week of an example planned and simulated.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { plan, readCabinet } from '../packages/engine/dist/index.js';
import { calibrate } from './calibration.mjs';
import { cpuMilliseconds as computed } from './clock.mjs';

const root = join(import.meta.dirname, '..');
const inside = (name) => import(pathToFileURL(join(root, 'packages/engine/dist/numerics/schedule', name)).href);

export async function run() {
  const { jobShop, project } = await inside('instances.js');
  const { shortestSchedule } = await inside('shortest.js');
  const rows = [];
  for (const [what, make] of [
    ['job shop ft06, proved (55)', () => jobShop(100)],
    ['project j30_1_1, proved (43)', () => project(80)],
  ]) {
    const reference = calibrate();
    const times = [];
    let found;
    for (let round = 0; round < 5; round += 1) {
      const begun = computed();
      found = shortestSchedule(make());
      times.push(computed() - begun);
    }
    const value = times.sort((a, b) => a - b)[2];
    rows.push({
      what,
      value,
      unit: 'ms',
      ratio: value / reference,
      note: `${found.length} slots, ${found.nodes} nodes`,
    });
  }
  const file = join(root, 'examples/tool-library.yaml');
  const source = readCabinet(file, readFileSync(file, 'utf8'));
  const reference = calibrate();
  const begun = computed();
  const made = await plan(source);
  const value = computed() - begun;
  const proved = made.aims.every((aim) => aim.proved) ? 'all aims proved' : 'not all aims proved';
  const note = `${made.jobs.length} jobs, ${made.trials.length} trials, ${made.nodes} nodes, ${proved}; trials and simulated weeks counted`;
  rows.push({ what: 'tool library: a week planned', value, unit: 'ms', ratio: value / reference, note });
  return rows;
}
