// npm start: the main job on an example. Sets up, checks a cabinet, compares what might be done, and draws its day.

import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { setup } from './setup.mjs';
import { ran, root } from './steps.mjs';

const example = 'examples/tool-library.yaml';
const picture = 'out/tool-library-day.svg';

process.exitCode = setup() ? show() : 1;

function show() {
  const checked = stillair('check', example);
  const compared = stillair('compare', example);
  mkdirSync(join(root, 'out'), { recursive: true });
  const drawn = stillair('day', example, '--svg', picture);
  return checked && compared && drawn ? 0 : 1;
}

/** Runs the command as a person would; a verdict is an answer, only a wrong command or a fault is not. */
function stillair(...words) {
  console.log(`\n$ npx stillair ${words.join(' ')}`);
  return ran(process.execPath, [join(root, 'packages/station/bin/stillair.mjs'), ...words], { well: [0, 1, 3] });
}
