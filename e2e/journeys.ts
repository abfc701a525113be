// How a journey through the page is walked: opened, walked, and nothing complained of at its end.

import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { type Bench, browserProgram, openBench } from './browser.ts';

const LONG = 120_000;

export function journey(
  name: string,
  walk: (bench: Bench) => Promise<void>,
  options: Parameters<typeof openBench>[0] = {},
): void {
  it.skipIf(browserProgram === undefined)(
    name,
    async () => {
      const bench = await openBench(options);
      try {
        await walk(bench);
        // A refusal is an answer; the browser logs it all the same.
        expect(bench.errors.filter((error) => !/status of (412|429)/.test(error))).toEqual([]);
      } finally {
        await bench.close();
      }
    },
    LONG,
  );
}

export async function faultsFoundByAxe(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'])
    .analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`);
}
