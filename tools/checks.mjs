// Prints every comparison with the outside world: what, source, expected, got, difference. `--pairs` counts formula-source pairs.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

const root = join(import.meta.dirname, '../packages');
const files = readdirSync(root, { recursive: true, encoding: 'utf8' })
  .filter((path) => /^\w+\/dist\/.*\.checks\.js$/.test(path))
  .sort();
const modules = await Promise.all(files.map((path) => import(pathToFileURL(join(root, path)).href)));
const checks = modules.flatMap((module) => module.checks);
const digits = (value) => Number(value.toPrecision(6)).toString();

let wrong = 0;
for (const { what, formula, source, known, expected, unit, tolerance, got } of checks) {
  const value = got();
  const holds = Math.abs(value - expected) <= tolerance;
  if (!holds) wrong++;
  const numbers = `expected ${digits(expected)}, got ${digits(value)}, difference ${(value - expected).toExponential(1)} ${unit}`;
  console.log(
    `${holds ? 'agrees' : 'DIFFERS'}  ${formula}: ${what}\n        ${numbers} (allowed ${digits(tolerance)})\n        ${source} [${known}]`,
  );
}
const pairs = new Set(checks.map(({ formula, source }) => `${formula} | ${source}`));
console.log(`\n${checks.length} comparisons over ${pairs.size} distinct formula-source pairs; ${wrong} differ.`);
process.exitCode = wrong === 0 ? 0 : 1;
