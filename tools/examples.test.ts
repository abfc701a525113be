// Runs every `@example` in the sources: a line `expression; // => value` must give that value.
// A number is compared to the digits shown, so a docstring shows as many as its author can vouch for.

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '../packages');
const sources = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter((path) =>
  /^\w+\/src\/.*(?<!\.test)\.ts$/.test(path),
);

it('finds sources to read', () => {
  expect(sources.length).toBeGreaterThan(0);
});

for (const path of sources) {
  const text = readFileSync(join(root, path), 'utf8');
  if (!text.includes('@example')) continue;
  const examples = examplesIn(text);
  describe(`examples of ${path}`, () => {
    it('has no @example that this runner cannot read or that shows no value', () => {
      expect(examples.filter(({ code }) => code.includes('// => '))).toHaveLength(text.split('@example').length - 1);
    });

    it.each(examples)('example: $title (line $line)', async ({ code }) => {
      const exports = (await import(join(root, path))) as Record<string, unknown>;
      const body = code.replaceAll(
        /^(.+?);? *\/\/ => (.+)$/gm,
        (_, call: string, value: string) => `check(${call}, ${JSON.stringify(value)});`,
      );
      // oxlint-disable-next-line typescript/no-implied-eval -- the examples are our own sources, and this is a test
      const run = new Function(...Object.keys(exports), 'check', body) as (...values: unknown[]) => void; // our own sources
      run(...Object.values(exports), check);
    });
  });
}

function examplesIn(text: string) {
  return [...text.matchAll(/@example (?<title>.+)\n \* ```ts\n(?<code>(?: \* .*\n)+?) \* ```/g)].map(
    ({ index, groups = {} }) => ({
      title: groups['title'],
      line: text.slice(0, index).split('\n').length,
      code: (groups['code'] ?? '').replaceAll(/^ \* /gm, ''),
    }),
  );
}

function check(actual: unknown, shown: string): void {
  const agrees =
    typeof actual === 'number' ? Math.abs(actual - Number(shown)) <= halfOfLastDigit(shown) : String(actual) === shown;
  expect(agrees, `gave ${String(actual)}, but the example shows ${shown}`).toBe(true);
}

function halfOfLastDigit(shown: string): number {
  const decimals = /\.(\d+)/.exec(shown)?.[1]?.length ?? 0;
  const power = Number(/e([+-]?\d+)$/i.exec(shown)?.[1] ?? 0);
  return 0.5000001 * 10 ** (power - decimals);
}
