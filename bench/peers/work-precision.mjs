// CPU time of a day against its largest error, ours beside general-purpose solvers: node work-precision.mjs [--write] [--without-ours]

import { writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { largestDifference, timeAt } from './curve.mjs';
import { byCvode, byScipy, byUs, days, prepare, root } from './programs.mjs';

const OURS = 'Stillair';
const STATES = 43;
const full = ['jacobian=full'];
/** Each peer with the settings that were quickest for it among those tried. */
const solvers = [
  {
    name: OURS,
    tolerances: [0.3, 0.1, 0.05, 0.02, 0.01, 0.003, 0.001, 0.0003],
    run: (day, tolerance, words) => byUs(day, tolerance, [...words, 'repeat=40']),
  },
  {
    name: 'CVODE, KLU',
    tolerances: [1, 0.3, 0.1, 0.03, 0.01, 1e-3, 1e-4, 1e-5, 1e-6],
    run: (day, tolerance, words) => byCvode(day, tolerance, [...full, ...words, 'linear=klu', 'repeat=15']),
  },
  {
    name: 'CVODE, dense',
    tolerances: [0.3, 0.1, 0.01, 1e-3, 1e-4],
    run: (day, tolerance, words) => byCvode(day, tolerance, [...full, ...words, 'linear=dense', 'repeat=8']),
  },
  ...['BDF', 'LSODA', 'Radau'].map((method) => ({
    name: `SciPy ${method}`,
    tolerances: [0.3, 0.1, 0.01, 1e-3, 1e-4, 1e-5],
    run: (day, tolerance, words) => byScipy(day, tolerance, method, [...full, ...words, 'repeat=3']),
  })),
];
const chosen = process.argv.includes('--without-ours') ? solvers.filter(({ name }) => name !== OURS) : solvers;

prepare();
const text = [
  heading(),
  ...Object.keys(days).map((day) => {
    const reference = findReference(day);
    return [reference.text, ...measure(day, reference)].join('\n');
  }),
  closing(),
].join('\n');
console.log(text);
if (process.argv.includes('--write')) writeFileSync(join(root, 'docs/bench-peers.md'), text);

function findReference(day) {
  const cvode = byCvode(day, 1e-10, [...full, 'linear=klu', 'repeat=0']);
  const scipy = byScipy(day, 1e-10, 'LSODA', [...full, 'repeat=0']);
  const apart = largestDifference(cvode.samples, scipy.samples);
  const peaks = highest(cvode.peaks, cvode.samples);
  const agrees = apart <= 1e-6;
  if (!agrees) process.exitCode = 1;
  return {
    samples: cvode.samples,
    peaks,
    text: `
## ${days[day].title}: ${cvode.events} switches of thermostats and beds

Reference: CVODE at 1e-10 K (${cvode.steps} steps). SciPy's LSODA at 1e-10 K, reading the file by itself, ${agrees ? 'agrees' : '**differs**'}:
largest difference ${apart.toExponential(1)} K over ${cvode.samples.length} samples (every temperature, every minute). Peaks of the bays: ${peaks
      .map((peak) => `${(peak - 273.15).toFixed(3)} °C`)
      .join(', ')}.
`,
  };
}

/** Peaks of the bays, which are the first states: over the steps that the solver took and over the samples between them. */
function highest(peaks, samples) {
  const peaked = [...peaks];
  for (let at = 0; at < samples.length; at += STATES) {
    for (let i = 0; i < peaked.length; i += 1) peaked[i] = Math.max(peaked[i], samples[at + i]);
  }
  return peaked;
}

function measure(day, reference) {
  const rows = [
    '| solver | tolerance, K | CPU, ms a day | largest error, K | error of peaks, K | steps | events |',
    '| --- | ---: | ---: | ---: | ---: | ---: | ---: |',
  ];
  const curves = new Map();
  const firsts = [];
  for (const { name, tolerances, run } of chosen) {
    const points = tolerances.map((tolerance) => {
      const { samples, peaks, cpuMs, firstMs, steps, events } = run(day, tolerance, []);
      if (firstMs !== undefined) firsts.push(firstMs);
      const error = largestDifference(samples, reference.samples);
      const peakError = Math.max(...highest(peaks, samples).map((peak, i) => Math.abs(peak - reference.peaks[i])));
      rows.push(
        `| ${name} | ${[tolerance, milliseconds(cpuMs), kelvin(error), kelvin(peakError), steps, events].join(' | ')} |`,
      );
      return { error, cpuMs };
    });
    curves.set(name, points);
  }
  if (firsts.length > 0) {
    const range = `${milliseconds(Math.min(...firsts))} to ${milliseconds(Math.max(...firsts))} ms`;
    rows.push('', `Not in these times is our warm-up: the first day of a fresh process takes ${range} of CPU.`);
  }
  return [...rows, '', ...atEqualError(curves)];
}

function atEqualError(curves) {
  const levels = [0.05, 0.02, 0.01, 0.005, 0.002, 0.001];
  const names = [...curves.keys()];
  const rows = [
    'CPU time at equal largest error (straight between neighbours in logarithms), and how many times ours that is:',
    '',
    `| largest error, K | ${names.join(' | ')} |`,
    `| ---: | ${names.map(() => '---:').join(' | ')} |`,
  ];
  for (const level of levels) {
    const ours = curves.has(OURS) ? timeAt(curves.get(OURS), level) : undefined;
    const cells = names.map((name) => {
      const time = timeAt(curves.get(name), level);
      if (time === undefined) return '–';
      if (name === OURS || ours === undefined) return `${milliseconds(time)} ms`;
      return `${milliseconds(time)} ms (${(time / ours).toPrecision(3)} ×)`;
    });
    rows.push(`| ${level} | ${cells.join(' | ')} |`);
  }
  return rows;
}

function heading() {
  const date = new Date().toISOString().slice(0, 10);
  return `# The day's solver beside general-purpose solvers

Measured ${date} by \`npm run peers\` on ${cpus().length} × ${cpus()[0]?.model.trim()}, Node ${process.versions.node}; the machine may have been shared.
The days are \`packages/engine/cases/frozen\`: two stacked bays with a printing machine in each, 43 temperatures, 2 solved
pressures, 7 to 8 air paths, two beds, 24 h. Their figures are invented; what is measured is solvers, not cabinets.

The peers are written anew from the laws (\`bench/peers/frozen_day.c\`, \`frozen_day.py\`), with an analytic Jacobian that
carries the flows' dependence on temperature, located events, a restart at every switch, absolute tolerance only, and an air
network solved no tighter than the tolerance needs. CVODE: BDF up to order 5, -O3 -march=native, sparse KLU or dense.
SciPy: conduction as a matrix product in NumPy, the air in plain Python; no compiled right side. CPU time is that of the quickest of a few batches; the
peers' without set-up and output, ours with compiling the network and with the record of every step and flow, after 400 runs of warm-up.
Peaks are over the steps taken and the samples; ours also where the record's cubic turns between two rows.
`;
}

function closing() {
  return `
Tried for the peers, and slower or no quicker: a difference Jacobian, one without the flows' dependence on temperature (CVODE),
a tighter air network, -Ofast. Not tried: CVODE with LAPACK, other orders or safety factors; SciPy with a sparse Jacobian or a
compiled right side, which would change its ratios much. Another network would give other ratios too.
`;
}

function milliseconds(value) {
  return value >= 100 ? value.toFixed(0) : value.toPrecision(3);
}

function kelvin(value) {
  return value.toPrecision(2);
}
