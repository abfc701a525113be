// Runs the whole space of small-box.yaml and keeps the rank of every variant: limits first, then noise, then price (small-box.ranks.gz, a rank
// of two bytes each, in the order of the space). `node bench/spaces/tabulate.mjs` writes it anew; that takes minutes.
//
// How faces look and what the machine stands on move neither air nor heat: variants of these two alone are put together from runs that
// differ in the rest. `--check N` runs N variants of the table whole, and says how many differ.

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { readCabinet } from '../../packages/engine/dist/index.js';
import { pointAt, pointsIn } from '../../packages/engine/dist/numerics/choice-space.js';
import { choicesOf, editsAt, spaceOf } from '../../packages/engine/dist/studies/search/choices.js';
import { searchRunner } from '../../packages/engine/dist/studies/search/run-search.js';
import { scored } from '../../packages/engine/dist/studies/search/scores.js';
import { trades } from '../../packages/engine/dist/trades/trades.js';

const WANTS = ['quiet', 'cheap'];
const LOOKS = ['cabinet.finish', 'machines.finch.stands-on'];
const OF_LOOKS = ['light', 'vibration', 'structure'];
const ASKED = ['heat', 'airflow', 'draught', 'air-quality', 'sound', 'cost', ...OF_LOOKS];

const file = join(import.meta.dirname, 'small-box.yaml');
const text = readFileSync(file, 'utf8');
const read = readCabinet(file, text);
if (!read.ok) throw new Error(read.complaints[0].what);
const choices = choicesOf({ file, text, ...read });
const space = spaceOf(choices);
const base = choices.map(({ base: at }) => at);
const ofTrades = (ids) =>
  searchRunner(
    { file, text },
    trades.filter(({ id }) => ids.includes(id)),
  );
const whole = ofTrades(ASKED);
const airy = ofTrades(ASKED.filter((id) => !OF_LOOKS.includes(id)));
const looking = ofTrades(OF_LOOKS);
const isLook = choices.map(({ id }) => LOOKS.includes(id));
const lined = choices.findIndex(({ id }) => id === 'option lined');

const known = new Map();
function once(run, name, point) {
  const key = `${name} ${point.join(' ')}`;
  if (!known.has(key)) known.set(key, run({ edits: editsAt(choices, point), inputs: {} }));
  return known.get(key);
}

/** Light and standing depend on the looks, on the lining and on nothing else that is free here. */
function together(point) {
  const air = once(
    airy,
    'air',
    point.map((value, at) => (isLook[at] ? base[at] : value)),
  );
  const look = once(
    looking,
    'look',
    point.map((value, at) => (isLook[at] || at === lined ? value : base[at])),
  );
  const bare = once(
    looking,
    'look',
    base.map((value, at) => (at === lined ? point[at] : value)),
  );
  return {
    broken: { ...air.broken, ...look.broken },
    unknown: [...air.unknown, ...look.unknown],
    numbers: air.numbers,
    price: air.price + look.price - bare.price,
  };
}

const size = pointsIn(space);
const outcomes = Array.from({ length: size }, (_, number) => {
  if (number % 5000 === 0) console.error(`${number} of ${size}`);
  return together(pointAt(space, number));
});
// The cabinet as it stands is the first to be told.
const { scores } = scored([whole({ edits: [], inputs: {} }), ...outcomes], WANTS);
const by = (a, b) => a.violation - b.violation || a.costs[0] - b.costs[0] || a.costs[1] - b.costs[1];
const order = outcomes.map((_, at) => at).sort((a, b) => by(scores[a + 1], scores[b + 1]));
const ranks = new Uint16Array(size);
let rank = 0;
for (const [place, at] of order.entries()) {
  if (place > 0 && by(scores[order[place - 1] + 1], scores[at + 1]) !== 0) rank += 1;
  ranks[at] = rank;
}
console.log(
  `${rank + 1} ranks; kept by ${scores.slice(1).filter(({ violation }) => violation === 0).length} variants; best: ${editsText(order[0])}`,
);

const checked = process.argv.indexOf('--check');
if (checked > 0) {
  const count = Number(process.argv[checked + 1]);
  let differ = 0;
  for (let at = 0; at < count; at += 1) {
    const number = Math.floor(((at + 0.5) * 0.6180339887 * size) % size);
    const one = whole({ edits: editsAt(choices, pointAt(space, number)), inputs: {} });
    const same = (a, b) => JSON.stringify(Object.entries(a).sort()) === JSON.stringify(Object.entries(b).sort());
    const other = outcomes[number];
    if (
      !same(one.broken, other.broken) ||
      !same(one.numbers, other.numbers) ||
      Math.abs(one.price - other.price) > 1e-9
    ) {
      differ += 1;
      if (differ < 4)
        console.log(
          number,
          editsText(number),
          JSON.stringify(Object.keys(one.broken)),
          JSON.stringify(Object.keys(other.broken)),
          one.price,
          other.price,
        );
    }
  }
  console.log(`${differ} of ${count} variants that were run whole differ from the table`);
}
writeFileSync(join(import.meta.dirname, 'small-box.ranks.gz'), gzipSync(Buffer.from(ranks.buffer), { level: 9 }));

function editsText(number) {
  return JSON.stringify(editsAt(choices, pointAt(space, number)));
}
