// What all trades say of one day of the example cabinet, once the day is known. Nothing is kept from one run to the next.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readCabinet, runDay } from '../packages/engine/dist/index.js';
import { trades } from '../packages/engine/dist/trades/trades.js';
import { line, measureFresh } from './measure.mjs';

const file = join(import.meta.dirname, '../examples/tool-library.yaml');

export function run() {
  const read = readCabinet(file, readFileSync(file, 'utf8'));
  if (!read.ok) throw new Error(`${file}: ${read.complaints[0].what}`);
  return Object.keys(read.cabinet.days).map((day) => {
    const known = runDay(read.cabinet, day);
    const ask = (asked) => (given) => {
      let count = 0;
      for (const trade of asked)
        count += (trade.standing?.(given.cabinet).length ?? 0) + (trade.measure?.(given).length ?? 0);
      return count;
    };
    const fresh = () => structuredClone(known);
    const alone = trades.map((trade) => ({ id: trade.id, ...measureFresh(fresh, ask([trade]), { samples: 5 }) }));
    const most = alone.sort((a, b) => b.median - a.median).slice(0, 4);
    const all = measureFresh(fresh, ask(trades));
    const told = most.map(({ id, median }) => `${id} ${median.toFixed(1)}`).join(', ');
    return line(`tool library, ${day}: all trades`, all.median, 'ms', {
      ratio: all.ratio,
      limit: 5,
      note: `${ask(trades)(fresh())} measures; least ${all.least.toFixed(1)} ms; most of it, each alone: ${told}`,
    });
  });
}
