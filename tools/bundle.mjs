// Joins the compiled station with all that it needs into a few files, so that `stillair` need not open hundreds at each start.
// What only some commands need stays in files of its own, loaded when it is called for. Tests and other packages use `dist`.

import { mkdirSync, renameSync, rmSync, utimesSync } from 'node:fs';
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

async function writeBundle() {
  const started = new Date();
  const fresh = join(station, `bundle.${process.pid}`);
  const bundle = await rolldown({ input: entries, platform: 'node', logLevel: 'warn' });
  try {
    await bundle.write({ dir: fresh, format: 'esm', chunkFileNames: '[name].js', comments });
  } finally {
    await bundle.close();
  }
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
