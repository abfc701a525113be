// npm test: sets up, then checks types, style and every test. All of them run, whichever fails first.
// The last line is always "N passed, N failed"; a step that fails counts as one failed test.

import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setup } from './setup.mjs';
import { ranTool, root } from './steps.mjs';

const report = join(root, 'node_modules/.cache/vitest-report.json');

const steps = [
  ['types', () => ranTool('typescript/bin/tsc', ['-b'])],
  ['format and lint', () => ranTool('@biomejs/biome/bin/biome', ['check', '--error-on-warnings', '.'])],
  [
    'lint with types',
    () => ranTool('oxlint/bin/oxlint', ['--type-aware', '-c', '.oxlintrc.json', 'packages', 'tools', 'e2e']),
  ],
];

const wrong = setup() ? [] : ['setup'];
let tests = { passed: 0, failed: 0, skipped: 0 };
if (existsSync(join(root, 'node_modules/vitest'))) {
  for (const [name, step] of steps) {
    console.log(`test: ${name}`);
    if (!step()) wrong.push(name);
  }
  console.log('test: tests');
  tests = runTests();
}

if (wrong.length > 0) console.log(`Failed before or beside the tests: ${wrong.join(', ')}.`);
const failed = tests.failed + wrong.length;
const skipped = tests.skipped > 0 ? `, ${tests.skipped} skipped` : '';
console.log(`${tests.passed} passed, ${failed} failed${skipped}`);
process.exitCode = failed === 0 && tests.passed > 0 ? 0 : 1;

function runTests() {
  mkdirSync(join(report, '..'), { recursive: true });
  rmSync(report, { force: true });
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  const ok = ranTool('vitest/vitest.mjs', ['run', ...reporters, ...process.argv.slice(2)]);
  if (!existsSync(report)) return { passed: 0, failed: 1, skipped: 0 };
  const { numPassedTests, numFailedTests, numPendingTests, numTodoTests } = JSON.parse(readFileSync(report, 'utf8'));
  // A file that cannot be loaded, or an error outside any test, fails the run without a failed test in it.
  return {
    passed: numPassedTests,
    failed: ok ? numFailedTests : Math.max(1, numFailedTests),
    skipped: numPendingTests + numTodoTests,
  };
}
