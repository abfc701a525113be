// npm run fuzz -- --count 20000 --seed 1: random cabinets through the whole pipeline, over several processes.
// --write keeps the result in docs/fuzz.md (interrupt it, and what was done until then counts); --keep FILE notes every outcome there
// and goes on from those that are there already; --peaks 500 compares the peaks of that many with an exact run;
// --only 28 shows one cabinet and its outcome, --smallest takes out of it whatever its fault does not need.

import { execFileSync, fork } from 'node:child_process';
import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { cabinetText } from './fuzz/cabinet-text.mjs';
import { smallest } from './fuzz/shrink.mjs';
import { report, tooSeldom, totalsOf } from './fuzz/totals.mjs';
import { tryCabinet } from './fuzz/try-cabinet.mjs';
import { root } from './steps.mjs';

const { values } = parseArgs({
  options: {
    count: { type: 'string', default: '1000' },
    seed: { type: 'string', default: '1' },
    peaks: { type: 'string', default: '0' },
    only: { type: 'string' },
    smallest: { type: 'boolean', default: false },
    write: { type: 'boolean', default: false },
    keep: { type: 'string' },
  },
});
/** A day stops itself after 60 s of the processor; who is silent for much longer, however busy the machine, has lost its way, s. */
const SILENCE = 1800;
const [seed, count, peaks] = [values.seed, values.count, values.peaks].map(Number);

if (values.only === undefined) await many();
else one(Number(values.only));

function one(number) {
  const text = cabinetText(seed, number);
  console.log(values.smallest ? smallest(text) : text);
  console.log(tryCabinet(seed, number));
}

async function many() {
  const outcomes = await outcomesOf();
  const totals = totalsOf(outcomes);
  const commits = [...new Set(outcomes.map(({ commit }) => commit))].join(', ');
  const page = report(totals, { seed, date: new Date().toISOString().slice(0, 10), commits });
  console.log(page);
  const seldom = tooSeldom(totals);
  if (seldom.length > 0) console.error(`fuzz: met too seldom: ${seldom.join(', ')}`);
  if (values.write) writeFileSync(join(root, 'docs/fuzz.md'), page);
  process.exit(totals.faults.length > 0 || seldom.length > 0 ? 1 : 0);
}

/** One outcome a cabinet; interrupted, those that there are. A worker that no longer answers is ended and its cabinet counted as a fault. */
function outcomesOf() {
  const outcomes = keptOutcomes();
  const known = new Set(outcomes.map(({ number }) => number));
  const left = Array.from({ length: count }, (_, number) => number).filter((number) => !known.has(number));
  const commit = version();
  return new Promise((resolve, reject) => {
    const keep = (answer) => {
      const outcome = { ...answer, commit };
      outcomes.push(outcome);
      if (values.keep !== undefined) appendFileSync(values.keep, `${JSON.stringify({ seed, ...outcome })}\n`);
      if (outcome.faults.length > 0) console.error(`${outcome.number}: ${outcome.faults[0].slice(0, 160)}`);
      if (outcomes.length % 500 === 0) console.error(`fuzz: ${outcomes.length} of ${count}`);
      if (outcomes.length === count) resolve(outcomes);
    };
    const hire = () => {
      const worker = fork(join(import.meta.dirname, 'fuzz/worker.mjs'), [String(seed)]);
      let watch;
      const hand = () => {
        const number = left.shift();
        if (number === undefined) return void worker.disconnect();
        worker.send({ number, peaks: number < peaks });
        watch = setTimeout(() => {
          worker.kill('SIGKILL');
          keep({ number, faults: [`hung: no answer after ${SILENCE} s`], met: [] });
          hire();
        }, 1000 * SILENCE);
      };
      worker.on('error', reject);
      worker.on('exit', (code) => {
        if (code !== null && code !== 0) reject(new Error(`A process that tried cabinets ended with ${code}`));
      });
      worker.on('message', (outcome) => {
        clearTimeout(watch);
        keep(outcome);
        hand();
      });
      hand();
    };
    if (left.length === 0) resolve(outcomes);
    for (let k = 0; k < Math.min(left.length, availableParallelism()); k += 1) hire();
    process.once('SIGINT', () => resolve([...outcomes]));
  });
}

/** Outcomes of this seed that an earlier run noted; a last line that was cut short is run anew. */
function keptOutcomes() {
  if (values.keep === undefined || !existsSync(values.keep)) return [];
  const kept = new Map();
  for (const line of readFileSync(values.keep, 'utf8').split('\n')) {
    const { seed: of, ...outcome } = parsed(line);
    const compared = outcome.apart !== undefined || outcome.faults?.length > 0;
    if (of === seed && outcome.number < count && (outcome.number >= peaks || compared))
      kept.set(outcome.number, outcome);
  }
  return [...kept.values()];
}

function parsed(line) {
  try {
    return JSON.parse(line);
  } catch {
    return {};
  }
}

function version() {
  return execFileSync('git', ['rev-parse', '--short', 'HEAD'], { cwd: root, encoding: 'utf8' }).trim();
}
