// The example cabinet with all its physics: one day of it, and everything from its text to the measures of every trade.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readCabinet, runDay, simulateDay } from '../packages/engine/dist/index.js';
import { assemble } from '../packages/engine/dist/network/assemble.js';
import { line, measure } from './measure.mjs';

const file = join(import.meta.dirname, '../examples/tool-library.yaml');

export function run() {
  const text = readFileSync(file, 'utf8');
  const read = readCabinet(file, text);
  if (!read.ok) throw new Error(`${file}: ${read.complaints[0].what}`);
  const { cabinet } = read;
  const rows = Object.keys(cabinet.days).flatMap((day) => {
    const { network } = assemble(cabinet, day);
    const simulate = () => simulateDay(network);
    const { median, ratio } = measure(simulate, { warm: 60, samples: 21 });
    const { work, events, temperatures } = simulate();
    const note = `${temperatures.names.length} temperatures, ${network.paths.length} paths, ${network.contaminants.length} contaminants; ${work.steps} steps, ${work.rejected} rejected, ${events.length} events`;
    const whole = measure(() => runDay(cabinet, day), { warm: 20, samples: 11 });
    return [
      line(`tool library, ${day}: one day, solved once`, median, 'ms', { ratio, limit: 8, note }),
      line(`tool library, ${day}: assembled and run as a check runs it`, whole.median, 'ms', { ratio: whole.ratio }),
    ];
  });
  const reading = measure(() => readCabinet(file, text), { warm: 10, samples: 11 });
  return [...rows, line('tool library: its text read and understood', reading.median, 'ms', { ratio: reading.ratio })];
}
