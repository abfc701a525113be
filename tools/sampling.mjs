// How much surer even samples are than random ones at equal counts, on a real cabinet: the scatter of percentiles and chances over seeds,
// against that of plain random samples. Prints rows for docs/spread.md.
//   node tools/sampling.mjs FILE [SAMPLES] [SEEDS]
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

const root = join(import.meta.dirname, '../packages');
const of = (path) => import(pathToFileURL(join(root, path)).href);
const { assumedInputs, readCabinet, measureDays } = await of('engine/dist/index.js');
const { sampleColumn, valueAt } = await of('engine/dist/judge/samples.js');
const { quantile, keeps } = await of('engine/dist/judge/bands.js');
const { randomStream, textSeed } = await of('engine/dist/numerics/random.js');
const { evenColumn } = await of('engine/dist/numerics/owen-scramble.js');
const { evenShares } = await of('engine/dist/studies/spread/even-samples.js');
const { chanceOf, estimatedBand } = await of('engine/dist/studies/spread/estimate.js');
const { openEvaluator } = await of('station/dist/workers.js');

const [file, samples = 64, seeds = 16] = process.argv.slice(2).map((word, at) => (at === 0 ? word : Number(word)));
const text = readFileSync(file, 'utf8');
const read = readCabinet(file, text);
if (!read.ok) throw new Error(read.complaints[0].what);
const inputs = assumedInputs(read.origins);
const paths = inputs.map(({ path }) => path);
const columnsOf = (column) => new Map(paths.map((path, at) => [path, column(path, at)]));
const seedOf = (path, seed) => (textSeed(path) ^ Math.imul(seed, 0x9e3779b9)) >>> 0;
const methods = {
  plain: (seed) => columnsOf((path) => Array.from({ length: samples }, randomStream(seedOf(`plain ${path}`, seed)))),
  'Latin hypercube': (seed) => columnsOf((path) => sampleColumn(path, samples, seed)),
  // What eight sets cost that are scrambled apart, and so tell their error without bias.
  'even, eight sets apart': (seed) =>
    columnsOf((path, at) => {
      const sets = Array.from({ length: 8 }, (_, set) =>
        evenColumn(at, Math.ceil(samples / 8), seedOf(`${path} ${set}`, seed)),
      );
      return Array.from({ length: samples }, (_, row) => sets[row % 8][Math.floor(row / 8)]);
    }),
  'even (ours)': (seed) => evenShares(paths, samples, seed),
};

const { measures } = measureDays(read.cabinet);
const evaluator = openEvaluator({ file, text }, { stop: new AbortController().signal });
const days = Object.keys(read.cabinet.days).slice(0, 1);
const found = {};
const begun = Date.now();
let ran = 0;
for (const [method, design] of Object.entries(methods)) {
  found[method] = [];
  for (let seed = 1; seed <= seeds; seed += 1) {
    const columns = design(seed);
    const variants = Array.from({ length: samples }, (_, row) => ({
      edits: [],
      inputs: Object.fromEntries(inputs.map(({ path, spread }) => [path, valueAt(spread, columns.get(path)[row])])),
      days,
    }));
    const outcomes = await evaluator.evaluate(variants, { finished: () => {}, stop: () => false });
    ran += outcomes.length;
    found[method].push(outcomes.filter(({ fault }) => fault === undefined).map(({ values }) => values));
  }
}
await evaluator.close();

const statistics = {
  p10: (values) => quantile(values, 0.1),
  p50: (values) => quantile(values, 0.5),
  p90: (values) => quantile(values, 0.9),
  mean: (values) => values.reduce((sum, value) => sum + value, 0) / values.length,
  chance: (values, limit) => values.filter((value) => keeps(limit, value)).length / values.length,
};
const scatter = (values) => {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
};
const moved = [...measures.values()].filter(({ id, limit, day }) => {
  const values = found.plain.flat().map((each) => each[id]);
  const share = limit === undefined ? 0 : statistics.chance(values, limit);
  return (
    values.every((value) => value !== undefined) &&
    (day === days[0] || day === 'standing') &&
    share > 0.02 &&
    share < 0.98
  );
});
const middle = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
console.log(
  `${file}, day ${days[0]}, ${samples} samples, ${seeds} seeds, ${moved.length} open verdicts, ${inputs.length} inputs`,
);
console.log(
  `${ran} variants in ${((Date.now() - begun) / 1000).toFixed(0)} s: ${((1000 * ran) / (Date.now() - begun)).toFixed(1)} a second`,
);
console.log(`| samples | ${Object.keys(statistics).join(' | ')} |`);
for (const method of Object.keys(methods)) {
  const cells = Object.values(statistics).map((statistic) => {
    // What no seed moves at all says nothing.
    const ratios = moved.flatMap(({ id, limit }) => {
      const over = (runs) =>
        scatter(
          runs.map((run) =>
            statistic(
              run.map((values) => values[id]),
              limit,
            ),
          ),
        );
      const plain = over(found.plain);
      return plain > 0 ? [over(found[method]) / plain] : [];
    });
    return `${middle(ratios).toFixed(2)}`;
  });
  console.log(`| ${method} | ${cells.join(' | ')} |`);
}

// What is said to be the error, against what the seeds scatter by.
const said = (of) =>
  middle(
    moved.flatMap(({ id, limit }) => {
      const runs = found['even (ours)'].map((run) =>
        of(
          run.map((values) => values[id]),
          limit,
        ),
      );
      const real = scatter(runs.map(({ value }) => value));
      const errors = Math.sqrt(runs.reduce((sum, { error }) => sum + error * error, 0) / runs.length);
      return real > 0 ? [errors / real] : [];
    }),
  );
const end = (key) => (values) => {
  const band = estimatedBand(values);
  return { value: band[key], error: band.errors[key] };
};
console.log(
  `said error by real one: p10 ${said(end('p10')).toFixed(1)}, p50 ${said(end('p50')).toFixed(1)}, p90 ${said(end('p90')).toFixed(1)}, ` +
    `chance ${said((values, limit) => chanceOf(values.map((value) => keeps(limit, value)))).toFixed(1)}`,
);
