// What a person asks that takes a while: begun, watched, stopped, read, and followed back to the sheet.

import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect } from 'vitest';
import { root } from './browser.ts';
import { faultsFoundByAxe, journey } from './journeys.ts';

const ask = async (page: Page, question: string): Promise<void> => {
  if ((await page.locator('.ask-pane').count()) === 0)
    await page.getByRole('button', { name: 'Ask', exact: true }).click();
  await page.getByRole('button', { name: question }).click();
  await page.locator('.ask-pane .begin').click();
};
const ended = (page: Page) =>
  expect.poll(() => page.locator('.course-end').textContent(), { timeout: 90_000 }).not.toBe('');

/** The shed with one job of its queue taken from a job file beside it. */
const filed = join(mkdtempSync(join(tmpdir(), 'stillair-filed-')), 'shed.yaml');
const shed = readFileSync(join(root, 'examples/winter-shed.yaml'), 'utf8');
writeFileSync(
  filed,
  shed.replace('material: PLA, for: 1 h, mass: 12 g,', 'material: PLA, job-file: parts/labels.gcode,'),
);
mkdirSync(join(dirname(filed), 'parts'));
writeFileSync(
  join(dirname(filed), 'parts/labels.gcode'),
  `M140 S60\nM104 S210\nM83\n${'G1 X60 Y60 E3 F600\nG1 X90\n'.repeat(600)}`,
);
const DIARY = `diary: 1
began: 2026-01-01
jobs: [{ on: 2026-11-02, job: mount, machine: heron, material: ABS, for: 7 h, mass: 130 g, times: 3, failed: 1 }]
`;

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
    { open: join(root, 'examples/tool-library.yaml') },
  );

  journey(
    'a job file is read and put into a day; sockets, care and papers are told; axe finds nothing in any of them',
    async ({ page }) => {
      const seen: string[] = [];
      const look = async (what: string): Promise<void> => {
        await ended(page);
        seen.push(...(await faultsFoundByAxe(page)).map((fault) => `${what}: ${fault}`));
      };
      await page.getByRole('button', { name: 'Ask', exact: true }).click();
      await page.getByRole('button', { name: 'What does a job file come to?' }).click();
      expect(await page.locator('.ask-pane .begin').isDisabled()).toBe(true);
      await page.getByLabel('job file', { exact: true }).setInputFiles({
        name: 'hook.gcode',
        mimeType: 'text/plain',
        buffer: Buffer.from(`M140 S60\nM104 S210\nM190 S60\nM83\n${'G1 X60 Y60 E3 F3000\nG1 X90\n'.repeat(300)}`),
      });
      await page.locator('.ask-pane .begin').click();
      await look('job');
      await page.getByRole('button', { name: 'put it in' }).click();
      await expect
        .poll(() => page.evaluate<string | null>("localStorage.getItem('stillair draft')"))
        .toMatch(/hook:[^:]*machine:/);
      await page.getByRole('button', { name: 'Undo' }).click();

      await ask(page, 'When may a socket go off?');
      await look('socket');
      expect(await page.locator('.answered table tbody tr').count()).toBeGreaterThan(0);

      await page.getByRole('button', { name: 'What is due?' }).click();
      await page.getByLabel('diary').setInputFiles(join(root, 'examples/winter-shed.diary.yaml'));
      await page.locator('.ask-pane .begin').click();
      await look('care');
      expect(await page.locator('.answered').textContent()).toMatch(/by the diary since \d{4}/);

      await ask(page, 'What do I build it from?');
      await look('papers');
      const [taken] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name: 'take out all sheets as one file' }).click(),
      ]);
      expect((await readFile((await taken.path())!)).subarray(0, 2).toString()).toBe('PK');
      expect(seen).toEqual([]);
    },
    { open: join(root, 'examples/winter-shed.yaml') },
  );

  journey(
    'how sure is it: chances, differences, what to measure; the remarks take their spreads from it',
    async ({ page }) => {
      await page.getByRole('button', { name: 'Ask', exact: true }).click();
      await page.getByRole('button', { name: 'How sure is it?' }).click();
      await page.getByLabel('samples').selectOption('32');
      await page.locator('.ask-pane .begin').click();
      await ended(page);
      expect(await page.locator('.answered').textContent()).toMatch(/32 of 32 samples of \d+ uncertain inputs/);
      expect(await page.locator('.answered .spread-bar').count()).toBeGreaterThan(0);
      expect(await faultsFoundByAxe(page)).toEqual([]);
    },
    { open: join(root, 'examples/winter-shed.yaml') },
  );

  journey(
    'what would be better: the front is seen while it grows; stopped, its winner becomes an option',
    async ({ page }) => {
      await page.getByRole('button', { name: 'Ask', exact: true }).click();
      await page.getByRole('button', { name: 'What would be better?' }).click();
      await page.getByLabel('cheaper').check();
      await page.locator('.ask-pane .begin').click();
      await expect.poll(() => page.locator('.answered .paper img').count(), { timeout: 90_000 }).toBe(1);
      await page.locator('.course').getByRole('button', { name: 'stop' }).click();
      await ended(page);
      expect(await page.locator('.answered').textContent()).toMatch(/variants were run/);
      expect(await faultsFoundByAxe(page)).toEqual([]);
    },
    { open: join(root, 'examples/winter-shed.yaml') },
  );

  journey(
    'when each job runs, and what a part costs; axe finds nothing in either',
    async ({ page }) => {
      await ask(page, 'When does each job run?');
      await ended(page);
      expect(await page.locator('.answered').textContent()).toMatch(/jobs have a place|no plan|No plan/);
      const seen = await faultsFoundByAxe(page);
      await ask(page, 'What does a part cost?');
      await ended(page);
      expect(await page.locator('.answered table').count()).toBeGreaterThan(0);
      expect([...seen, ...(await faultsFoundByAxe(page))]).toEqual([]);
    },
    { open: join(root, 'examples/winter-shed.yaml') },
  );

  journey(
    'a plan is made anew with what has begun; a job file that the queue names comes from the server; the week and a month are priced',
    async ({ page }) => {
      const said = async (): Promise<string> => (await page.locator('.answered').textContent()) ?? '';
      await ask(page, 'When does each job run?');
      await ended(page);
      expect(await said()).toContain('6 jobs have a place');
      expect(await said()).toContain('Bands from the 10th to the 90th percentile');
      await page.getByLabel('plan from').fill('Tue 12:00');
      await page.locator('.ask-pane .begin').click();
      await expect.poll(said, { timeout: 90_000 }).toMatch(/Against the earlier plan: [\w-]+.* begun and stays?,/);
      const seen = await faultsFoundByAxe(page);

      await ask(page, 'What does a part cost?');
      await ended(page);
      await page.locator('.ask-controls select').first().selectOption('the queue, as it would be planned');
      await page.locator('.ask-pane .begin').click();
      await expect.poll(said, { timeout: 90_000 }).toContain('a month of such weeks');
      await page.locator('.ask-controls select').first().selectOption('a month of the diary');
      expect(await page.locator('.ask-pane .begin').isDisabled()).toBe(true);
      await page.getByLabel('diary', { exact: true }).setInputFiles({
        name: 'shed.diary.yaml',
        mimeType: 'text/yaml',
        buffer: Buffer.from(DIARY),
      });
      await page.getByLabel('month', { exact: true }).fill('2026-11');
      await page.locator('.ask-pane .begin').click();
      await expect.poll(said, { timeout: 90_000 }).toMatch(/by the diary: 3 jobs, of which 1 failed/);
      expect([...seen, ...(await faultsFoundByAxe(page))]).toEqual([]);
    },
    { open: filed },
  );

  journey(
    'a log puts the file right: told, read, written into the text, laid over the day, taken back; a later one has drifted',
    async ({ page }) => {
      const seen: string[] = [];
      const draft = (): Promise<string | null> =>
        page.evaluate<string | null>("localStorage.getItem('stillair draft')");
      await page.getByRole('button', { name: 'Ask', exact: true }).click();
      await page.getByRole('button', { name: 'What does a log put right?' }).click();
      expect(await page.locator('.ask-pane .begin').isDisabled()).toBe(true);
      await page.getByLabel('readings by hand').fill('14:05 attic 41 °C');
      await page.locator('.ask-pane .begin').click();
      await ended(page);
      expect(await page.locator('.answered').textContent()).toMatch(/no place "attic".*name one of box/);
      await page.getByLabel('readings by hand').fill('');
      await page.getByLabel('log', { exact: true }).setInputFiles(join(root, 'examples/winter-shed-log.csv'));
      await page.locator('.ask-pane .begin').click();
      await expect.poll(() => page.locator('.answered table').count(), { timeout: 90_000 }).toBe(2);
      expect(await page.locator('.answered').textContent()).toMatch(/cannot tell .* apart/);
      expect(await page.locator('.answered .paper img').getAttribute('alt')).toMatch(/measured as dots/);
      seen.push(...(await faultsFoundByAxe(page)));
      const before = await draft();
      await page.getByRole('button', { name: 'write the values into the text' }).click();
      await expect.poll(draft).toMatch(/calibration:.*winter-shed-log\.csv/s);
      await expect.poll(() => page.locator('.course-end').textContent()).toMatch(/before it was changed/);
      await page.getByRole('button', { name: 'Day', exact: true }).click();
      expect(await page.locator('.day-strip .panel-title').first().textContent()).toMatch(/dots: measured, Temp box/);
      expect((await page.locator('.day-strip .measured').first().getAttribute('d'))!.match(/M/g)!.length).toBe(180);
      await page.getByRole('button', { name: 'Undo' }).click();
      await expect.poll(draft).toBe(before);

      await page.getByRole('button', { name: 'Has it drifted?' }).click();
      await page.getByLabel('log', { exact: true }).setInputFiles(join(root, 'examples/winter-shed-later.csv'));
      await page.locator('.ask-pane .begin').click();
      await expect
        .poll(() => page.locator('.answered').textContent(), { timeout: 90_000 })
        .toMatch(/Drifted since about day 6/);
      seen.push(...(await faultsFoundByAxe(page)));
      expect(seen).toEqual([]);
    },
    { open: join(root, 'examples/winter-shed.yaml') },
  );
});
