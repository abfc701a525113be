// What a person asks that takes a while: begun, watched, stopped, read, and followed back to the sheet.

import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect } from 'vitest';
import { root } from './browser.ts';
import { faultsFoundByAxe, journey } from './journeys.ts';

const ask = async (page: Page, question: string): Promise<void> => {
  await page.getByRole('button', { name: 'Ask', exact: true }).first().click();
  await page.getByRole('button', { name: question }).click();
  await page.getByRole('region', { name: question }).getByRole('button', { name: /^Ask/ }).click();
};
const ended = (page: Page) =>
  expect.poll(() => page.locator('.course-end').textContent(), { timeout: 90_000 }).not.toBe('');

describe('asking', () => {
  journey(
    'what if one part fails: watched, read, a row marks its part, a change makes it old; axe finds nothing',
    async ({ page }) => {
      await ask(page, 'What if one part fails?');
      await expect.poll(() => page.locator('.course').textContent()).toMatch(/\d+ of \d+/);
      await ended(page);
      expect(await page.locator('.course-end').textContent()).toBe('Done.');
      const row = page.locator('.part-name').first();
      const part = (await row.getAttribute('data-points-at'))!;
      await row.focus();
      await page.keyboard.press('Enter');
      await expect
        .poll(() => page.locator(`.sheet [data-part="${part}"]`).first().getAttribute('aria-pressed'))
        .toBe('true');
      expect(await faultsFoundByAxe(page)).toEqual([]);
      await page.getByRole('button', { name: 'keep as an option' }).first().click();
      await expect.poll(() => page.locator('.course-end').textContent()).toMatch(/before it was changed/);
      expect(await page.locator('.part-name').count()).toBeGreaterThan(0);
    },
    { open: join(root, 'examples/winter-shed.yaml') },
  );

  journey(
    'what could go: stopped half way, it says what is missing',
    async ({ page }) => {
      await ask(page, 'What could go?');
      await expect.poll(() => page.locator('.course').textContent()).toMatch(/\d+ of \d+/);
      await page.locator('.course').getByRole('button', { name: 'stop' }).click();
      await ended(page);
      expect(await page.locator('.course-end').textContent()).toMatch(/^Stopped: what was not run is missing/);
    },
    { open: join(root, 'examples/winter-shed.yaml') },
  );
});
