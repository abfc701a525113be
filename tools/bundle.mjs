// Joins the compiled station with all that it needs into a few files, so that `stillair` need not open hundreds at each start.
// What only some commands need stays in files of its own, loaded when it is called for. Tests and other packages use `dist`.
// One check is then run, and what Node compiled for it is kept beside the files: `bin/run-bundle.mjs` begins with that.

import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { rolldown } from 'rolldown';
import { root } from './steps.mjs';

const station = join(root, 'packages/station');

/** The program and its worker threads; each is found beside the others by its name. */
const entries = Object.fromEntries(
  Object.entries({ stillair: 'main', 'variant-worker': 'variant-worker', 'papers-worker': 'papers-worker' }).map(
    ([name, module]) => [name, join(station, `dist/${module}.js`)],
  ),
);

/** Licences stay; the rest would only be read at each start. */
const comments = { legal: true, annotation: false, jsdoc: false };

/**
 * A file that needs no more than `require`, in ASCII: it is read as it stands, and takes half the memory. What is written here as
 * `import()` are Node's own modules: asking for them from such a file is an experiment of Node, of which it warns.
 */
function asScript(file) {
  const code = readFileSync(file, 'utf8').replace(/\bimport\(("node:[\w/]+")\)/g, 'Promise.resolve(require($1))');
  if (/\bimport\(|\\[\u0080-\uffff]/.test(code))
    throw new Error(`bundle: ${file} cannot be written as a script in ASCII`);
  const number = (unit) => unit.charCodeAt(0).toString(16).padStart(4, '0');
  const ascii = code.replace(/[\u0080-\uffff]/g, (unit) => `\\u${number(unit)}`);
  writeFileSync(file, ascii);
}

/** Runs a check with the bundle in a folder, for what is compiled on the way; its findings do not matter. */
function keepCode(folder) {
  const words = [join(station, 'bin/keep-code.mjs'), folder, 'check', join(root, 'examples/winter-shed.yaml')];
  const { status, stderr } = spawnSync(process.execPath, words, { encoding: 'utf8' });
  if (![0, 1, 3].includes(status)) throw new Error(`bundle: a check with it ended with ${status}: ${stderr}`);
}

async function writeBundle() {
  const started = new Date();
  const fresh = join(station, `bundle.${process.pid}`);
  const bundle = await rolldown({ input: entries, platform: 'node', logLevel: 'warn' });
  try {
    await bundle.write({ dir: fresh, format: 'cjs', chunkFileNames: '[name].js', comments });
  } finally {
    await bundle.close();
  }
  for (const name of readdirSync(fresh)) asScript(join(fresh, name));
  writeFileSync(join(fresh, 'package.json'), '{ "type": "commonjs" }\n');
  keepCode(fresh);
  // A program that runs at this moment keeps what it has opened; one that starts finds the old bundle or the new one.
  const place = join(station, 'bundle');
  mkdirSync(place, { recursive: true });
  const old = `${fresh}.old`;
  renameSync(place, old);
  renameSync(fresh, place);
  rmSync(old, { recursive: true });
  // What the compiler wrote while the bundle was being made is newer than it.
  utimesSync(join(place, 'stillair.js'), started, started);
}

await writeBundle();
