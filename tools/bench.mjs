// npm run bench: how fast, with ratios to a reference calculation on the same machine. Names after it choose benches
// (npm run bench -- frozen-day); `--write` keeps the table in docs/bench.md.

import { readdirSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { calibrate } from '../bench/calibration.mjs';
import { root } from './steps.mjs';

const write = process.argv.includes('--write');
const wanted = process.argv.slice(2).filter((word) => !word.startsWith('--'));
const all = readdirSync(join(root, 'bench'))
  .filter((name) => name.endsWith('.bench.mjs'))
  .map((name) => name.replace('.bench.mjs', ''));
const unknown = wanted.filter((name) => !all.includes(name));
if (unknown.length > 0) {
  console.error(`bench: there is no ${unknown.join(', ')}; there are ${all.join(', ')}`);
  process.exit(2);
}

if (write && wanted.length > 0) {
  console.error('bench: --write keeps the whole table; leave the names out');
  process.exit(2);
}

const table = ['| what | measured | limit | times the reference | more |', '| --- | ---: | ---: | ---: | --- |'];
console.log(heading());
for (const row of table) console.log(row);
for (const name of wanted.length > 0 ? wanted : all) {
  for (const row of await rowsOf(name)) {
    table.push(row);
    console.log(row);
  }
}
if (write) writeFileSync(join(root, 'docs/bench.md'), `${heading()}\n${table.join('\n')}\n`);

/** A bench that breaks is a row too, so that the others are still measured. */
async function rowsOf(name) {
  try {
    const { run } = await import(pathToFileURL(join(root, 'bench', `${name}.bench.mjs`)).href);
    return (await run()).map(rowOf);
  } catch (fault) {
    process.exitCode = 1;
    return [`| ${name}: not measured | | | | ${String(fault.message).split('\n')[0]} |`];
  }
}

function rowOf({ what, value, unit, ratio, limit, note }) {
  const kept = limit === undefined ? '' : value <= limit ? `${limit} ${unit}: kept` : `${limit} ${unit}: **missed**`;
  const times = ratio === undefined ? '' : `${ratio.toPrecision(3)} ×`;
  return `| ${what} | ${shown(value)} ${unit} | ${kept} | ${times} | ${note} |`;
}

function shown(value) {
  return value >= 100 ? value.toFixed(0) : value.toPrecision(3);
}

function heading() {
  const date = new Date().toISOString().slice(0, 10);
  return `# How fast

Measured ${date} by \`npm run bench\` on ${cpus().length} × ${cpus()[0]?.model.trim()}, Node ${process.versions.node}; the machine may have been shared.
Times are medians after warm-up: processor time where one process computes, the clock on the wall for variants and start-up.
The reference is a dense 43 × 43 system factored and solved a thousand times in plain
JavaScript, taken right before and after each line: ${calibrate().toPrecision(3)} ms just now. Ratios travel between machines, times do not.
`;
}
