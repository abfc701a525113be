// npm run logs: writes the invented logs of examples/ anew, with fixed seeds. Nothing in them was measured.

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { inventedLog } from '../packages/engine/dist/index.js';
import { root } from './steps.mjs';

const file = 'examples/winter-shed.yaml';
const source = { file, text: readFileSync(join(root, file), 'utf8') };
const KELVIN = 273.15;

const box = {
  header: 'Temp box (°C)',
  place: { what: 'bay', id: 'box' },
  kind: 'temperature',
  spread: 0.25,
  carry: 0.1,
};
const room = { header: 'room (°C)', place: { what: 'room', id: '' }, kind: 'temperature', spread: 0.05, carry: 0 };
const power = {
  header: 'power heron (W)',
  place: { what: 'machine', id: 'heron' },
  kind: 'power',
  spread: 2,
  carry: 0,
};

/** The shed as it is in these logs: a bed that loses more, thinner boards, cooler electronics than the file takes them to be. */
const truth = { 'bed-loss': 1.15, 'wall-loss': 1.25, 'heat.heron': 30 };
const shed = (date) => {
  const morning = 5 + 1.5 * Math.sin(1.9 * date) + KELVIN;
  return [
    [0, morning + 0.5],
    [6 * 3600, morning],
    [14.5 * 3600, morning + 2.5],
    [24 * 3600, morning + 0.5],
  ];
};
const day = { day: 'frost', hours: [7, 22] };

const logs = {
  'winter-shed-log.csv': [
    {
      ...day,
      seed: 3,
      firstDay: 20_770,
      dates: 1,
      every: 300,
      columns: [box, room, power],
      truth: () => truth,
      room: shed,
    },
    'Invented for the cabinet winter-shed.yaml, not measured; written by npm run logs.',
  ],
  'winter-shed-later.csv': [
    {
      ...day,
      seed: 4,
      firstDay: 20_798,
      dates: 8,
      every: 900,
      columns: [box, room],
      // From the sixth day on dust fills the filter.
      truth: (date) => (date < 5 ? truth : { ...truth, 'loading.exhaust': 1.8 }),
      room: shed,
    },
    'Invented for the cabinet winter-shed.yaml, not measured: dust from the sixth day on; written by npm run logs.',
  ],
};

for (const [name, [invention, says]] of Object.entries(logs))
  writeFileSync(join(root, 'examples', name), inventedLog(source, invention, says));
