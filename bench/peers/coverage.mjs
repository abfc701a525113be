// npm run peers -- coverage: do 95 % intervals of a calibration hold the truth as often as they say? Logs with known truth and noise
// that remembers, each fitted as `stillair calibrate` fits; the day is linearised about the truth, so that thousands of logs can be
// asked. `--write` keeps the table in docs/bench-calibrate.md.

import { readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

const root = join(import.meta.dirname, '../..');
const dist = join(root, 'packages/engine/dist');
const load = (path) => import(pathToFileURL(join(dist, path)).href);
const { readCabinet, logRunner, unknownNamed, calibrate, inventedLog, readLog } = await load('index.js');
const { fitLog, halvesOf } = await load('studies/calibrate/fit-log.js');
const { binomialRegion } = await load('numerics/distributions.js');
const { normalQuantile } = await load('numerics/normal.js');
const { randomStream } = await load('numerics/random.js');
const { valueAway } = await load('studies/calibrate/unknowns.js');

const number = (name, usual) =>
  Number(process.argv.find((word) => word.startsWith(`--${name}=`))?.split('=')[1] ?? usual);
const TRIALS = number('trials', 2000);
const WHOLE = number('whole', 60);
const file = 'examples/winter-shed.yaml';
const text = readFileSync(join(root, file), 'utf8');
const answer = readCabinet(file, text);
const source = { file, text, cabinet: answer.cabinet, origins: answer.origins };
const ids = ['bed-loss', 'wall-loss', 'heat.heron'];
const unknowns = ids.map((id) => unknownNamed(id, source));
const truth = [0.7, -0.5, -0.8];
const SLOT = 300;
const times = Array.from({ length: (15 * 3600) / SLOT }, (_, at) => 7 * 3600 + SLOT * (at + 0.5));
const probes = [
  { place: { what: 'bay', id: 'box' }, kind: 'temperature', times },
  { place: { what: 'machine', id: 'heron' }, kind: 'power', times },
];
const run = logRunner(source, { day: 'frost', days: [{ probes }], grid: { places: [], times: [] } });
const at = (widths) =>
  run({
    date: 0,
    values: Object.fromEntries(ids.map((id, k) => [id, valueAway(unknowns[k], widths[k])])),
    grid: false,
  }).values.flat();
const moved = (k, by) => at(truth.map((each, other) => (other === k ? each + by : each)));
const slopes = ids.map((_, k) => {
  const [low, high] = [moved(k, -0.25), moved(k, 0.25)];
  return low.map((each, row) => (high[row] - each) / 0.5);
});
const clean = at(truth);
const slots = times.map((_, each) => each);
const channels = probes.map(({ kind, place }, which) => ({
  name: kind,
  kind,
  place,
  date: slots.map(() => 0),
  time: times,
  slot: slots,
  value: clean.slice(which * times.length, (which + 1) * times.length),
  count: slots.map(() => 1),
}));

const rows = [];
for (const hourly of [0, 0.1, 0.3]) {
  const began = performance.now();
  const { held, narrow } = await linear(hourly);
  const [low, high] = binomialRegion(TRIALS, 0.95, 0.001);
  const seconds = (performance.now() - began) / 1000;
  rows.push([`0.25 K, over an hour ${hourly}`, held, low, high, TRIALS, narrow]);
  console.log(rows.at(-1), `${seconds.toFixed(0)} s`);
}
const whole = WHOLE === 0 ? undefined : await wholeDays();
if (process.argv.includes('--write')) writeFileSync(join(root, 'docs/bench-calibrate.md'), page());

async function linear(hourly) {
  const held = ids.map(() => 0);
  const widths = ids.map(() => 0);
  for (let trial = 0; trial < TRIALS; trial += 1) {
    const random = randomStream(900_000 + trial);
    const draw = () => normalQuantile(random());
    const noise = [
      [0.25, hourly, 0.1],
      [2, 0, 0.1],
    ].flatMap(([spread, carry, step], which) => {
      const kept = carry ** (SLOT / 3600);
      let last = draw();
      return times.map((_, row) => {
        last = kept * last + Math.sqrt(1 - kept * kept) * draw();
        const true_ = clean[which * times.length + row];
        return Math.round((true_ + spread * last) / step) * step - true_;
      });
    });
    const residuals = (point) =>
      Float64Array.from(
        noise,
        (each, row) => slopes.reduce((sum, slope, k) => sum + slope[row] * (point[k] - truth[k]), 0) - each,
      );
    const fit = await fitLog(async (points) => points.map(residuals), unknowns, { channels }, { prior: false });
    const halves = halvesOf(fit);
    for (const [k, wanted] of truth.entries()) {
      if (Math.abs(fit.at[k] - wanted) <= halves[k]) held[k] += 1;
      widths[k] += halves[k] / TRIALS;
    }
  }
  return { held, narrow: widths };
}

/** The whole day simulated at every step of every fit, from the text of the log on. */
async function wholeDays() {
  const held = ids.map(() => 0);
  for (let trial = 0; trial < WHOLE; trial += 1) {
    const values = Object.fromEntries(ids.map((id, k) => [id, valueAway(unknowns[k], truth[k])]));
    const csv = inventedLog(
      source,
      {
        day: 'frost',
        seed: 950_000 + trial,
        firstDay: 20_770,
        dates: 1,
        every: SLOT,
        hours: [7, 22],
        columns: [
          { header: 'box (°C)', place: probes[0].place, kind: 'temperature', spread: 0.25, carry: 0.1 },
          { header: 'power heron (W)', place: probes[1].place, kind: 'power', spread: 2, carry: 0 },
        ],
        truth: () => values,
      },
      'Invented.',
    );
    const study = await calibrate(source, readLog('log.csv', csv, source.cabinet), { day: 'frost', fit: ids });
    for (const [k, { low, high }] of study.unknowns.entries())
      if (low <= values[ids[k]] && values[ids[k]] <= high) held[k] += 1;
    if (trial % 10 === 9) console.log(`${trial + 1} whole days`, held.join(' '));
  }
  const [low, high] = binomialRegion(WHOLE, 0.95, 0.001);
  return { held, low, high };
}

function page() {
  const share = (count, of) => `${((100 * count) / of).toFixed(1)} %`;
  const line = ([what, held, low, high, of, narrow]) => {
    const inside = held.every((each) => each >= low && each <= high);
    return `| ${what} | ${held.map((each) => `${each} (${share(each, of)})`).join(' | ')} | ${low} to ${high} | ${inside ? 'yes' : '**no**'} | ${narrow.map((each) => each.toFixed(2)).join(', ')} |`;
  };
  return `# Do intervals of a calibration hold the truth?

Measured ${new Date().toISOString().slice(0, 10)} by \`npm run peers -- coverage --write\` on ${cpus().length} × ${cpus()[0]?.model.trim()}, Node ${process.versions.node}; the machine may have been shared.
How noise is estimated and when a fit stops were settled on other seeds; those of this table were run after that, once.
Everything here is invented: the cabinet is \`${file}\`, the logs are made with known values of three unknowns (${ids.join(', ')}), a
thermometer in the box and a power meter, a value every five minutes from 7:00 to 22:00, shown to 0.1 K and 0.1 W. Noise of the thermometer remembers: its correlation over an
hour stands in the first column; the power meter's is 2 W and white. Each log is fitted as \`stillair calibrate\` fits: noise and its memory are not known to it. Seeds are fixed.

${TRIALS} logs a row, the day linearised about the truth: how often the 95 % interval holds it. A fair 95 % lies in the exact 99.9 % region of the binomial.

| noise of the thermometer | ${ids.join(' | ')} | region | all inside | mean half width, in prior widths |
| --- | ---: | ---: | ---: | ---: | --- | --- |
${rows.map(line).join('\n')}
${
  whole === undefined
    ? ''
    : `
The same from the text of the log on, with the whole day simulated at every step of the fit (correlation over an hour 0.1): of ${WHOLE} logs ${whole.held.map((each, k) => `${each} for ${ids[k]}`).join(', ')}; a fair 95 % lies in ${whole.low} to ${whole.high}.
`
}`;
}
