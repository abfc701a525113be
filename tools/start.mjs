// npm start: the main job on an example. Sets up, judges a cabinet, then opens the workbench and serves it until stopped.
// Where nobody can stop it (CI), it compares the options and draws the day instead.

import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { setup } from './setup.mjs';
import { ran, root } from './steps.mjs';

const example = 'examples/tool-library.yaml';
const picture = 'out/tool-library-day.svg';

process.exitCode = setup() ? show() : 1;

function show() {
  const checked = stillair('check', example);
  if (process.env.CI === undefined) return stillair('workbench') && checked ? 0 : 1;
  const compared = stillair('compare', example);
  mkdirSync(join(root, 'out'), { recursive: true });
  const drawn = stillair('day', example, '--svg', picture);
  return checked && compared && drawn ? 0 : 1;
}

/** Runs the command as a person would; a verdict is an answer, only a wrong command or a fault is not. */
function stillair(...words) {
  console.log(`\n$ npx stillair ${words.join(' ')}`);
  return ran(process.execPath, [join(root, 'packages/station/bin/stillair.mjs'), ...words], { well: [0, 1, 3, 130] });
}
