// The main journeys through the workbench, in a real browser on the built page.

import { copyFile, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { browserProgram, root } from './browser.ts';
import { faultsFoundByAxe, journey } from './journeys.ts';

let folder: string;
let file: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'stillair-files-'));
  file = join(folder, 'shed.yaml');
  await copyFile(join(root, 'examples/winter-shed.yaml'), file);
});

afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});

const part = (page: Page, path: string) => page.locator(`[data-part="${path}"]`);
/** Picks the first machine with the keyboard and moves it by a centimetre. */
async function nudge(page: Page): Promise<void> {
  const machine = page.locator('[data-part^="machines."]').first();
  await machine.focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => machine.getAttribute('aria-pressed')).toBe('true');
  await page.keyboard.press('Shift+ArrowRight');
}

const textOfFile = (page: Page) => page.evaluate<string | null>("localStorage.getItem('stillair draft')");

it('a browser is there for the journeys', () => {
  expect(browserProgram, 'npm run setup says how to bring Chromium').toBeDefined();
});

describe('first visit', () => {
  journey('lands on an example that is answered already, and says what is seen', async ({ page }) => {
    await expect.poll(() => page.locator('.seen').textContent()).toMatch(/invented example/);
    expect(await page.locator('.opening').textContent()).toMatch(/^Of \d+ checks/);
    expect(await page.locator('.sheet [data-part^="machines."]').count()).toBeGreaterThan(0);
    expect(await page.locator('.leader').count()).toBeGreaterThan(0);
    expect(await page.title()).toBe('Stillair');
  });

  journey('one’s own cabinet is drawn while the questions are answered', async ({ page }) => {
    await page.getByRole('button', { name: 'My own cabinet' }).click();
    await page.getByLabel('Inside width x depth x height').fill('900 mm x 600 mm x 1500 mm');
    await page.getByLabel('Which machines, from the lowest up?').selectOption('delta 200');
    await expect
      .poll(() => page.locator('.sheet [data-part="machines.first"]').getAttribute('aria-label'))
      .toMatch(/delta 200/);
    await page.getByRole('button', { name: 'Work with it' }).click();
    await page.getByText('Which numbers', { exact: false }).count();
    await expect.poll(() => page.locator('.assumed summary').textContent()).toMatch(/numbers are assumed/);
  });
});

describe('changing', () => {
  journey(
    'a part that is dragged changes the text, and undo takes it back',
    async ({ page }) => {
      const body = part(page, 'machines.lantern').or(page.locator('.sheet [data-part^="machines."]')).first();
      const path = (await body.getAttribute('data-part'))!;
      const box = (await body.locator('.swept').first().boundingBox())!;
      await page.mouse.move(box.x + box.width / 2, box.y + box.height / 3);
      await page.mouse.down();
      await page.mouse.move(box.x + box.width / 2 + 12, box.y + box.height / 3, { steps: 4 });
      await page.mouse.up();
      await expect.poll(() => textOfFile(page)).toMatch(/at: /);
      await expect
        .poll(async () => (await part(page, path).locator('.swept').first().boundingBox())!.x)
        .toBeGreaterThan(box.x + 6);
      await page.keyboard.press('Control+z');
      await expect
        .poll(async () => (await part(page, path).locator('.swept').first().boundingBox())!.x)
        .toBeLessThan(box.x + 2);
    },
    { open: join(root, 'examples/winter-shed.yaml') },
  );

  journey(
    'an edit of the text that mends a fault mends the remarks; a broken text keeps the last drawing',
    async ({ page }) => {
      await page.getByRole('button', { name: 'Text' }).click();
      const editor = page.getByRole('textbox', { name: 'text of the cabinet file' });
      await editor.click();
      await page.keyboard.press('Control+Home');
      await page.keyboard.type('room: 3\n');
      await expect.poll(() => page.locator('.complaints').textContent()).toMatch(/Line \d+/);
      expect(await page.locator('.sheet [data-part^="machines."]').count()).toBeGreaterThan(0);
      await expect
        .poll(async () => {
          await page.keyboard.press('Control+z'); // slow typing is undone in several steps
          return page.locator('.complaints').count();
        })
        .toBe(0);
    },
  );

  journey('an option is laid over the sheet, set beside it, done, and undone', async ({ page }) => {
    await page.getByRole('button', { name: 'Options' }).click();
    await page.getByRole('button', { name: 'lay over the sheet' }).first().click();
    await expect.poll(() => page.locator('.trace rect').count()).toBeGreaterThan(0);
    await page.getByRole('button', { name: 'set beside' }).first().click();
    await expect.poll(() => page.locator('.sheet svg').count()).toBe(2);
    await page.getByRole('button', { name: 'set beside' }).first().click();
    await page.getByRole('button', { name: 'do it' }).first().click();
    await expect.poll(() => page.getByRole('button', { name: 'Undo' }).isEnabled()).toBe(true);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => page.getByRole('button', { name: 'Undo' }).isEnabled()).toBe(false);
  });

  journey('a part of the catalogue is added, stands on the sheet, and is picked', async ({ page }) => {
    await page.getByRole('button', { name: 'Part', exact: true }).click();
    await page.getByText('Add a part').click();
    await page.getByLabel('what').selectOption('thermometer');
    await page.getByLabel('in bay').selectOption({ index: 0 });
    await page.getByRole('button', { name: 'Add it' }).click();
    await expect
      .poll(() => page.locator('[data-part="sensors.thermometer"]').getAttribute('aria-pressed'))
      .toBe('true');
  });

  journey('the time cursor tints the sheet anew', async ({ page }) => {
    await page.getByRole('button', { name: 'Day', exact: true }).click();
    const cursor = page.getByRole('slider', { name: 'time of day shown on the sheet' });
    const before = await page.locator('.air-temperature').first().textContent();
    await cursor.focus();
    await page.keyboard.press('Home');
    expect(await cursor.getAttribute('aria-valuetext')).toBe('0:00');
    await expect.poll(() => page.locator('.air-temperature').first().textContent()).not.toBe(before);
  });
});

describe('files', () => {
  journey(
    'a change is saved on disk, and is there after a reload; what was not saved is there too',
    async ({ page }) => {
      await nudge(page);
      await expect.poll(() => page.locator('.title-block .name').textContent()).toMatch(/changed/);
      await page.keyboard.press('Control+s');
      await expect.poll(() => readFile(file, 'utf8')).toMatch(/at: /);
      await expect.poll(() => page.locator('.title-block .name').textContent()).not.toMatch(/changed/);
      const saved = await readFile(file, 'utf8');
      expect(saved).toMatch(/^#/);
      await nudge(page);
      await expect.poll(() => textOfFile(page)).not.toBeNull();
      await page.reload();
      await page.waitForSelector('.remark');
      await expect.poll(() => page.locator('.title-block .name').textContent()).toMatch(/changed/);
      expect(await readFile(file, 'utf8')).toBe(saved);
    },
    {
      get open() {
        return file;
      },
    },
  );

  journey(
    'a file that changes outside is taken in, and never written over in silence',
    async ({ page }) => {
      const before = await readFile(file, 'utf8');
      await page.evaluate('localStorage.clear()');
      await page.reload();
      await page.waitForSelector('.remark');
      await writeFile(file, before.replace(/^title: .*/m, 'title: Shed, seen anew'));
      await expect.poll(() => page.locator('h1').textContent(), { timeout: 15_000 }).toBe('Shed, seen anew');
      await nudge(page);
      await expect.poll(() => page.locator('.title-block .name').textContent()).toMatch(/changed/);
      await writeFile(file, before.replace(/^title: .*/m, 'title: Shed, a third time'));
      await expect
        .poll(() => page.locator('.newer').textContent(), { timeout: 15_000 })
        .toMatch(/changed from outside/);
      await page.keyboard.press('Control+s');
      expect(await readFile(file, 'utf8')).toMatch(/a third time/);
      await page.getByRole('button', { name: 'take the newer one' }).click();
      await expect.poll(() => page.locator('h1').textContent()).toBe('Shed, a third time');
    },
    {
      get open() {
        return file;
      },
    },
  );
});

describe('for everyone', () => {
  journey(
    'axe finds nothing, on paper light and dark, in every view',
    async ({ page }) => {
      const seen: string[] = [];
      const look = async (what: string): Promise<void> => {
        seen.push(...(await faultsFoundByAxe(page)).map((fault) => `${what}: ${fault}`));
      };
      await look('first');
      for (const name of ['Day', 'Options', 'Text', 'Part'])
        await page.getByRole('button', { name, exact: true }).click();
      await page.locator('[data-part^="machines."]').first().focus();
      await page.keyboard.press('Enter');
      await page.waitForSelector('.part-pane form .field');
      await page.locator('.remark .head').first().click();
      await look('all unfolded');
      await page.getByRole('button', { name: /^paper/ }).click();
      await page.getByRole('button', { name: /^paper/ }).click();
      await look('dark');
      await page.getByRole('button', { name: 'Plan', exact: true }).click();
      await look('plan');
      await page.getByRole('button', { name: 'My own cabinet' }).click();
      await page.waitForSelector('.questions');
      await look('questions');
      expect(seen).toEqual([]);
    },
    { width: 1440, height: 900 },
  );

  journey('keys alone are enough: pick, move, unfold, read the reason, turn the view', async ({ page }) => {
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.locator('.remark .head').first().focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('.reason').count()).toBe(1);
    await page.keyboard.press('2');
    await expect
      .poll(() => page.getByRole('button', { name: 'Side', exact: true }).getAttribute('aria-pressed'))
      .toBe('true');
    await page.keyboard.press('d');
    await expect.poll(() => page.getByRole('slider').count()).toBe(1);
  });

  journey('at twice the size, and on a phone, nothing runs off to the side', async ({ page }) => {
    for (const [width, height] of [
      [640, 400],
      [390, 844],
    ] as const) {
      await page.setViewportSize({ width, height });
      const wide = await page.evaluate<number>('document.documentElement.scrollWidth');
      expect(wide, `${width} pixels`).toBeLessThanOrEqual(width);
      expect(await page.locator('.remark').count()).toBeGreaterThan(0);
    }
  });

  journey('the drawing is taken out as a picture of its own', async ({ page }) => {
    await page.getByText('Take out').click();
    const [taken] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'drawing as SVG' }).click(),
    ]);
    const svg = await readFile((await taken.path())!, 'utf8');
    expect(svg).toMatch(/^<svg[^>]*xmlns/);
    expect(svg).not.toMatch(/var\(--|NaN|undefined/);
  });
});
