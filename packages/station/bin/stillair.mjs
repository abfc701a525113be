#!/usr/bin/env node
// What npm links as `stillair`: the bundled program, the compiled one where that is newer, or advice while there is neither.

import { statSync } from 'node:fs';
import module from 'node:module';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openBundle } from './run-bundle.mjs';

const bundled = new URL('../bundle/stillair.js', import.meta.url);
const compiled = new URL('../dist/main.js', import.meta.url);
/** What the compiler writes last in each package that the bundle is made of. */
const marks = ['../dist', '../../engine/dist', '../../physics/dist'].map(
  (folder) => new URL(`${folder}/.tsbuildinfo`, import.meta.url),
);

const program = [bundled, compiled].find(
  (file) => changed(file) > 0 && (file === compiled || changed(file) >= Math.max(...marks.map(changed))),
);
if (program === bundled) {
  openBundle(dirname(fileURLToPath(bundled))).load('stillair.js');
} else if (program === compiled) {
  module.enableCompileCache?.(); // from Node 22 on: what was compiled once is read, not compiled, at the next start
  await import(compiled.href);
} else {
  console.error('stillair: the program is not built yet; run this in its folder first: npm run setup');
  process.exitCode = 2;
}

/** When a file was last changed, ms; 0 when it is not there. */
function changed(file) {
  return statSync(file, { throwIfNoEntry: false })?.mtimeMs ?? 0;
}
