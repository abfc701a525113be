// What all trades say of the example cabinet: of each day once the day is known, and of the cabinet whatever the day. No answer of an
// earlier run is found again: each run has a record or a cabinet of its own.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readCabinet, runDay } from '../packages/engine/dist/index.js';
import { trades } from '../packages/engine/dist/trades/trades.js';
import { line, measureFresh } from './measure.mjs';

const file = join(import.meta.dirname, '../examples/tool-library.yaml');

export function run() {
  const read = readCabinet(file, readFileSync(file, 'utf8'));
  if (!read.ok) throw new Error(`${file}: ${read.complaints[0].what}`);
  const { cabinet } = read;
  const ofDays = Object.keys(cabinet.days).map((day) => {
    const known = runDay(cabinet, day);
    const fresh = () => ({ ...known, record: structuredClone(known.record) });
    return lineOf(`tool library, ${day}: all trades, once the day is known`, 5, fresh, (trade, given) =>
      trade.measure?.(given),
    );
  });
  const standing = lineOf(
    'tool library: what no day changes, all trades',
    undefined,
    () => structuredClone(cabinet),
    (trade, given) => trade.standing?.(given),
  );
  return [...ofDays, standing];
}

function lineOf(what, limit, fresh, answerOf) {
  const ask = (asked) => (given) => asked.flatMap((trade) => answerOf(trade, given) ?? []).length;
  const all = measureFresh(fresh, ask(trades));
  const alone = trades.map((trade) => ({ id: trade.id, ...measureFresh(fresh, ask([trade]), { samples: 5 }) }));
  const most = alone.sort((a, b) => b.median - a.median).slice(0, 4);
  const told = most.map(({ id, median }) => `${id} ${median.toFixed(1)}`).join(', ');
  return line(what, all.median, 'ms', {
    ratio: all.ratio,
    limit,
    note: `${ask(trades)(fresh())} measures; least ${all.least.toFixed(1)} ms; most of it, each alone: ${told}`,
  });
}
