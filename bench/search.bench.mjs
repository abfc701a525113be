// How surely a search finds the best of 50,000 variants in fewer than 1,000 runs, over twenty seeds, with random search beside it; how far it
// stays from known fronts; and how long variants of a real cabinet take.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { readCabinet } from '../packages/engine/dist/index.js';
import { pointAt, pointsIn } from '../packages/engine/dist/numerics/choice-space.js';
import { coupledParts, lockAndKey, lowestOf, tabulated } from '../packages/engine/dist/numerics/named-spaces.js';
import * as problems from '../packages/engine/dist/numerics/published-problems.js';
import { randomStream, shuffled } from '../packages/engine/dist/numerics/random.js';
import { costsFound, distanceFrom, ruledShare } from '../packages/engine/dist/numerics/seek.checks.js';
import { seek } from '../packages/engine/dist/numerics/seek.js';
import { choicesOf, editsAt, spaceOf } from '../packages/engine/dist/studies/search/choices.js';
import { searchRunner } from '../packages/engine/dist/studies/search/run-search.js';
import { cpuMilliseconds } from './clock.mjs';
import { line } from './measure.mjs';

const SEEDS = Array.from({ length: 20 }, (_, at) => at + 1);
const MOST = 1000;

export async function run() {
  return [...(await spaces()), ...(await fronts()), ...variants()];
}

async function spaces() {
  const lines = [];
  for (const named of [coupledParts(1), lockAndKey(1), smallBox()]) {
    const lowest = lowestOf(named);
    const runs = [];
    for (const seed of SEEDS) runs.push(await runsUntil(named, lowest.cost, seed));
    const found = runs.filter((count) => count !== undefined);
    const random = SEEDS.filter((seed) => randomFinds(named, lowest.cost, seed)).length;
    const shown = runs.map((count) => count ?? 'missed').join(' ');
    lines.push(
      line(`${named.name}: seeds of 20 that miss the best of 50000 in ${MOST - 1} runs`, 20 - found.length, '', {
        limit: 1,
        note: `runs until it was found, by seed: ${shown}; random search finds it with ${random} of 20 seeds`,
      }),
    );
  }
  return lines;
}

async function runsUntil({ space, cost }, lowest, seed) {
  const { runs } = await seek({
    space,
    most: MOST - 1,
    seed,
    evaluate: async (points) => points.map(cost),
    score: (costs) => costs.map((each) => ({ violation: 0, costs: [each] })),
    enough: (all) => all.some(({ result }) => result === lowest),
  });
  const at = runs.findIndex(({ result }) => result === lowest);
  return at < 0 ? undefined : at + 1;
}

/** As many different points, drawn at random. */
function randomFinds({ space, cost }, lowest, seed) {
  return shuffled(pointsIn(space), randomStream(seed))
    .slice(0, MOST - 1)
    .some((number) => cost(pointAt(space, number)) === lowest);
}

function smallBox() {
  const { choices } = box();
  const packed = gunzipSync(readFileSync(join(import.meta.dirname, 'spaces/small-box.ranks.gz')));
  const ranks = new Uint16Array(packed.buffer, packed.byteOffset, packed.byteLength / 2);
  return tabulated('small box (a real cabinet, tabulated)', spaceOf(choices), ranks);
}

function box() {
  const file = join(import.meta.dirname, 'spaces/small-box.yaml');
  const text = readFileSync(file, 'utf8');
  const read = readCabinet(file, text);
  if (!read.ok) throw new Error(read.complaints[0].what);
  return { file, text, choices: choicesOf({ file, text, ...read }) };
}

async function fronts() {
  const { g6, rastrigin, zdt1, zdt2, zdt3, zdt6, binhKorn, constrEx, osyczkaKundu } = problems;
  const least = (costs, place = 0) => Math.min(...costs.map((each) => each[place]));
  const lines = [];
  for (const problem of [zdt1(30), zdt2(30), zdt3(30), zdt6(10)]) {
    const costs = await costsFound(problem, 800);
    lines.push(
      line(`${problem.name}: mean distance from the front, 800 runs`, distanceFrom(problem.name, costs), '', {
        limit: 0.05,
        note: `${costs.length} members, ${problem.space.length} choices`,
      }),
    );
  }
  for (const problem of [binhKorn, constrEx]) {
    const costs = await costsFound(problem, 500);
    lines.push(
      line(
        `${problem.name}: share of the known front's area that is missed, 500 runs`,
        1 - ruledShare(problem.name, costs),
        '',
        {
          limit: 0.02,
          note: `${costs.length} members`,
        },
      ),
    );
  }
  const ends = await costsFound(osyczkaKundu, 800);
  lines.push(
    line(
      'Osyczka and Kundu: ends missed, of (-274, 76) and (-42, 4), 800 runs',
      Number(least(ends) !== -274) + Number(least(ends, 1) !== 4),
      '',
      { limit: 0 },
    ),
    line('G6: above the best of -6961.8, 500 of 1681 runs', least(await costsFound(g6, 500)) + 6961.81388, '', {
      limit: 25,
      note: 'the grid costs up to 25',
    }),
    line(
      'Rastrigin, four choices: above the best of 0, 800 of 2.8 million runs',
      least(await costsFound(rastrigin(4), 800)),
      '',
      { limit: 1 },
    ),
  );
  return lines;
}

/** Processor time of a variant of the box, every day and every trade; one after another as a search runs them. */
function variants() {
  const { file, text, choices } = box();
  const space = spaceOf(choices);
  const lines = [];
  for (const [what, bound] of [
    ['each run to its end', undefined],
    ['left off at the first limit that the cabinet as it stands keeps', 'base'],
  ]) {
    const runner = searchRunner({ file, text });
    const random = randomStream(4);
    const one = (point) => ({
      edits: editsAt(choices, point),
      inputs: {},
      ...(bound === undefined ? {} : { givenUp: standing }),
    });
    const whole = runner({ edits: [], inputs: {} });
    const standing = Object.keys(whole.broken);
    const drawn = () => pointAt(space, Math.floor(random() * pointsIn(space)));
    for (let at = 0; at < 60; at += 1) runner(one(drawn()));
    const before = cpuMilliseconds();
    const COUNT = 300;
    let abandoned = 0;
    for (let at = 0; at < COUNT; at += 1) if (runner(one(drawn())).abandoned) abandoned += 1;
    const each = (cpuMilliseconds() - before) / COUNT;
    lines.push(
      line(`a variant of the small box, ${what}`, each, 'ms', {
        limit: 16,
        note: `10000 of them on 2 processors: ${(each * 5).toFixed(0)} s; ${abandoned} of ${COUNT} left off`,
      }),
    );
  }
  return lines;
}
