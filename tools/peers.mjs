// npm run peers: our day's solver beside general-purpose ones. `--write` keeps the table in docs/bench-peers.md.
// `coverage` asks instead whether intervals of a calibration hold the truth, into docs/bench-calibrate.md; `nesting` how many sheets
// plans take against known optima, into docs/bench-nesting.md.
// The peers need a C compiler, SUNDIALS and SciPy: installed here as root on Debian, otherwise it says what is missing.

import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { ran, root } from './steps.mjs';

const needed = {
  gcc: () => answers('cc', ['--version']),
  'libc6-dev': () => existsSync('/usr/include/math.h'),
  'libsundials-dev': () => existsSync('/usr/include/cvode/cvode.h'),
  'libsuitesparse-dev': () => existsSync('/usr/include/suitesparse/klu.h'),
  'python3-scipy': () => answers('/usr/bin/python3', ['-c', 'import scipy.integrate']),
  'python3-yaml': () => answers('/usr/bin/python3', ['-c', 'import yaml']),
};

// These need no peer.
const alone = ['coverage', 'nesting'].find((name) => process.argv.includes(name));
process.exitCode = (alone === undefined ? install() && compare() : runAlone(alone)) ? 0 : 1;

function runAlone(name) {
  return ran(process.execPath, [join(root, `bench/peers/${name}.mjs`), ...process.argv.slice(2)]);
}

function install() {
  const missing = Object.keys(needed).filter((name) => !needed[name]());
  if (missing.length === 0) return true;
  if (!existsSync('/usr/bin/apt-get') || process.getuid?.() !== 0) {
    console.error(`peers: missing are ${missing.join(', ')} (names of Debian's packages); install them and come again`);
    return false;
  }
  console.log(`peers: installing ${missing.join(', ')} (apt-get)`);
  const environment = { DEBIAN_FRONTEND: 'noninteractive' };
  const words = ['install', '-y', '-q', '--no-install-recommends', ...missing];
  return ran('apt-get', ['update', '-q'], { environment }) && ran('apt-get', words, { environment });
}

function compare() {
  return ran(process.execPath, [join(root, 'bench/peers/work-precision.mjs'), ...process.argv.slice(2)]);
}

function answers(program, words) {
  return spawnSync(program, words, { stdio: 'ignore' }).status === 0;
}
