#!/usr/bin/env node
// What npm links as `stillair`: the compiled program, or advice while it is not compiled yet.

import { existsSync } from 'node:fs';

const program = new URL('../dist/main.js', import.meta.url);
if (existsSync(program)) {
  await import(program.href);
} else {
  console.error('stillair: the program is not built yet; run this in its folder first: npm run setup');
  process.exitCode = 2;
}
