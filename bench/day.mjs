// How long the solver takes for a day, and for reading and preparing it.

import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { readNetwork, simulateDay } from '../packages/engine/dist/index.js';

const text = (name) =>
  readFileSync(fileURLToPath(new URL(`../packages/engine/cases/frozen/${name}`, import.meta.url)), 'utf8');

export const benches = ['day-43.yaml', 'day-43-switching.yaml'].flatMap((name) => {
  const file = text(name);
  const { network } = readNetwork(name, file);
  const steps = simulateDay(network).work.steps;
  return [
    { what: `simulate ${name} (${steps} steps)`, run: () => simulateDay(network) },
    { what: `read ${name}`, run: () => readNetwork(name, file) },
  ];
});
