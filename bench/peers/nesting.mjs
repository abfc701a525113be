// Nesting: how many sheets plans take against optima that are known, by an exact search or because the sheets were cut up to make
// the list; how many of them the planner itself proves, and how long it takes. `--write` keeps it in docs/bench-nesting.md.

import { writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { cpuMilliseconds } from '../clock.mjs';

const root = join(import.meta.dirname, '../..');
const inside = (name) => import(pathToFileURL(join(root, 'packages/engine/dist/numerics', name)).href);
const { nest, fewest } = await inside('guillotine/plan.js');
const { randomStream } = await inside('random.js');
const { sheetsFor } = await import(pathToFileURL(join(root, 'packages/physics/dist/index.js')).href);

/** Millimetres: 2500 by 1250 with 5 mm trimmed off each edge. */
const stock = { length: 2490, width: 1240, kerf: 3 };
const SMALLEST = 60;

/** Whole millimetres from `low` up to `high`. */
const between = (random, low, high) => low + Math.floor(random() * (high - low + 1));

function drawn(random, count, turned) {
  return Array.from({ length: count }, () => ({
    length: between(random, 150, 2100),
    width: between(random, 100, 1100),
    turned,
  }));
}

/** A whole sheet, cut at random into so many pieces, from edge to edge of what is cut, the kerf between: nothing but kerf is lost. */
function cutUp(random, count, turned) {
  const pieces = [{ length: stock.length, width: stock.width }];
  while (pieces.length < count) {
    const room = ({ length, width }, way) => (way === 'across' ? length : width) - stock.kerf - 2 * SMALLEST;
    const open = pieces
      .flatMap((piece) => ['across', 'along'].map((way) => ({ piece, way })))
      .filter(({ piece, way }) => room(piece, way) >= 0);
    const { piece, way } = open[between(random, 0, open.length - 1)];
    const at = SMALLEST + between(random, 0, room(piece, way));
    pieces.splice(pieces.indexOf(piece), 1);
    if (way === 'across') pieces.push({ ...piece, length: at }, { ...piece, length: piece.length - at - stock.kerf });
    else pieces.push({ ...piece, width: at }, { ...piece, width: piece.width - at - stock.kerf });
  }
  return pieces.map((piece) => ({ ...piece, turned }));
}

const sets = [
  ...[5, 7, 9].map((count) => ({
    what: `${count} boards drawn at random`,
    optimum: 'exact search',
    make: (random, turned) => drawn(random, count, turned),
    least: (pieces) => fewest(pieces, stock).length,
  })),
  ...[18, 24].map((count) => ({
    what: `${count} boards drawn at random`,
    optimum: 'not known',
    make: (random, turned) => drawn(random, count, turned),
    least: () => undefined,
  })),
  ...[4, 6, 8, 10, 12, 16, 24].map((count) => ({
    what: `one sheet cut at random into ${count}`,
    optimum: 'by construction',
    make: (random, turned) => cutUp(random, count, turned),
    least: () => 1,
  })),
  {
    what: 'three sheets cut at random into 6 each',
    optimum: 'by construction',
    make: (random, turned) => [1, 2, 3].flatMap(() => cutUp(random, 6, turned)),
    least: () => 3,
  },
];

const LISTS = 40;
const rows = [
  '| list | boards may turn | optimum known | lists | as few as can be | one more | two or more | proven | quick plan: one more | two or more | ms, median | slowest |',
  '| --- | --- | --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |',
];
for (const { what, optimum, make, least } of sets)
  for (const turned of [false, true]) {
    const random = randomStream(2026);
    const over = [0, 0, 0];
    const quickOver = [0, 0, 0];
    const times = [];
    let proven = 0;
    for (let list = 0; list < LISTS; list += 1) {
      const pieces = make(random, turned);
      const begun = cpuMilliseconds();
      const plan = nest(pieces, stock);
      times.push(cpuMilliseconds() - begun);
      const best = least(pieces);
      if (plan.atLeast === plan.sheets.length) proven += 1;
      if (best !== undefined && plan.sheets.length < best) throw new Error('fewer sheets than the optimum');
      if (best !== undefined && plan.atLeast > best) throw new Error('a bound above the optimum');
      if (best !== undefined) over[Math.min(2, plan.sheets.length - best)] += 1;
      const quick = sheetsFor(pieces, { ...stock, trim: 0, turned: false }).planned;
      quickOver[Math.min(2, quick - plan.sheets.length)] += 1;
    }
    times.sort((a, b) => a - b);
    const known = optimum === 'not known' ? ['', '', ''] : over;
    const numbers = [...known, proven, ...quickOver.slice(1), times[LISTS / 2].toFixed(1), times.at(-1).toFixed(0)];
    rows.push(`| ${what} | ${turned ? 'yes' : 'no'} | ${optimum} | ${LISTS} | ${numbers.join(' | ')} |`);
    console.log(rows.at(-1));
  }

const text = `# Nesting

Measured ${new Date().toISOString().slice(0, 10)} by \`npm run peers -- nesting --write\` on ${cpus()[0]?.model.trim()}, Node ${process.versions.node}; the machine was shared.
Sheets of 2500 x 1250 mm, 5 mm trimmed off each edge, a kerf of 3 mm; lists are drawn from one seed, in whole millimetres. Processor time of one plan.

- _Optimum known_: by the exact search over every guillotine plan, or because the list is what sheets were cut up into, so that nothing but kerf is lost.
- _As few as can be_, _one more_, _two or more_: sheets of the plan against that optimum.
- _Proven_: the planner knew itself that no plan does with fewer sheets, by its bound or its exact search.
- _Quick plan_: what the bill of \`check\` counts, against the plan of the papers.

${rows.join('\n')}

Lists whose boards fill whole sheets without waste are the hardest there are; no cabinet's list is one. Published instances with
their pieces (gcut1, cgcut1) are among \`npm run checks\`; gcut2 to gcut4 could not be run, as only their optima were at hand.
`;
if (process.argv.includes('--write')) writeFileSync(join(root, 'docs/bench-nesting.md'), text);
