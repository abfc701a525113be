// The peers as programs: built, run with a tolerance, and answering with CPU time, work and samples of every temperature.

import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const here = import.meta.dirname;
export const root = join(here, '../..');
const scratch = join(root, 'node_modules/.cache/peers');
const cases = join(root, 'packages/engine/cases/frozen');
const cvodeProgram = join(scratch, 'frozen_day');

export const days = {
  base: { file: join(cases, 'day-43.yaml'), title: 'frozen day' },
  switching: { file: join(cases, 'day-43-switching.yaml'), title: 'frozen day with a narrow thermostat' },
};

/** Compiles the C program and dumps the days for it. */
export function prepare() {
  mkdirSync(scratch, { recursive: true });
  const libraries = ['cvode', 'nvecserial', 'sunmatrixdense', 'sunmatrixsparse', 'sunlinsoldense', 'sunlinsolklu'];
  run('cc', [
    ...['-O3', '-march=native', '-I/usr/include/suitesparse', '-o', cvodeProgram, join(here, 'frozen_day.c')],
    ...libraries.map((name) => `-lsundials_${name}`),
    '-lm',
  ]);
  for (const [name, { file }] of Object.entries(days)) {
    writeFileSync(dumpOf(name), run(process.execPath, [join(here, 'dump-network.mjs'), file]));
  }
}

/** One day by CVODE; `words` are its options, such as linear=klu. */
export function byCvode(day, tolerance, words) {
  return answer((samples) => run(cvodeProgram, [dumpOf(day), tolerance, ...words, samples]));
}

/** One day by a method of SciPy. */
export function byScipy(day, tolerance, method, words) {
  const python = existsSync('/usr/bin/python3') ? '/usr/bin/python3' : 'python3';
  const program = join(here, 'frozen_day.py');
  return answer((samples) => run(python, [program, days[day].file, tolerance, method, ...words, samples]));
}

/** One day by our own solver. */
export function byUs(day, tolerance, words) {
  return answer((samples) =>
    run(process.execPath, [join(here, 'our-day.mjs'), days[day].file, tolerance, ...words, samples]),
  );
}

function answer(program) {
  const file = join(scratch, 'samples.bin');
  const told = JSON.parse(program(`samples=${file}`));
  const bytes = readFileSync(file);
  return { ...told, samples: new Float64Array(bytes.buffer, bytes.byteOffset, bytes.length / 8) };
}

function dumpOf(name) {
  return join(scratch, `${name}.txt`);
}

function run(program, words) {
  // One thread each: what is compared is CPU time.
  const env = { ...process.env, OPENBLAS_NUM_THREADS: '1', OMP_NUM_THREADS: '1' };
  return execFileSync(program, words, { encoding: 'utf8', env, maxBuffer: 1e8, stdio: ['ignore', 'pipe', 'inherit'] });
}
