// Every view and every answer, on paper light and dark, on a desk and on a phone: axe finds nothing, keys reach everything, nothing
// runs off to the side.

import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect } from 'vitest';
import { root } from './browser.ts';
import { journey } from './journeys.ts';
import { smallCabinet } from './small-cabinet.ts';

let folder: string;
let file: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'stillair-looks-'));
  file = join(folder, 'small.yaml');
  await writeFile(file, smallCabinet);
});

afterAll(() => rm(folder, { recursive: true, force: true }));

const small = {
  get open() {
    return file;
  },
};

const DESK = { place: 'desk', width: 1280, height: 800, colorScheme: 'light' } as const;
const PHONE = { place: 'phone', width: 390, height: 844, colorScheme: 'dark' } as const;

const answered = (page: Page) =>
  expect.poll(() => page.locator('.course-end').textContent(), { timeout: 90_000 }).toMatch(/^(Done|Stopped)/);

async function faultsIn(page: Page, part: string): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page })
    .include(part)
    .withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'])
    .analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`);
}

/** Looks at a part of the page on a desk in the light and on a phone in the dark; tells what is wrong, and where it was seen. */
async function look(page: Page, what: string, part: string): Promise<string[]> {
  const seen: string[] = [];
  // Colours do not hang on the size, nor places on the colours: two of the four show all.
  for (const { place, colorScheme, ...size } of [DESK, PHONE]) {
    await page.setViewportSize(size);
    await page.emulateMedia({ colorScheme });
    await expect.poll(() => page.locator('html').getAttribute('data-paper')).toBe(colorScheme);
    seen.push(...(await faultsIn(page, part)).map((fault) => `${what}, ${place}, ${colorScheme}: ${fault}`));
    const over = await page.evaluate<number>(
      'document.documentElement.scrollWidth - document.documentElement.clientWidth',
    );
    if (over > 0) seen.push(`${what}, ${place}: runs off by ${over} pixels`);
  }
  await page.setViewportSize(DESK);
  return seen;
}

const log = (name: string) => (page: Page) =>
  page.getByLabel('log', { exact: true }).setInputFiles({ name: 'log.csv', mimeType: 'text/csv', buffer: logOf(name) });

/** An invented log of a day: a thermometer that rises a little more than the file says. */
function logOf(name: string): Buffer {
  const rows = Array.from({ length: 48 }, (_, at) => {
    const hour = at / 2;
    const warm = 20 + (hour > 9 && hour < 12 ? 9 : 1.5);
    return `2026-11-13 ${String(Math.floor(hour)).padStart(2, '0')}:${hour % 1 === 0 ? '00' : '30'},${warm}`;
  });
  return Buffer.from([`time,${name}`, ...rows].join('\n'));
}

interface Asked {
  readonly question: string;
  readonly prepare?: (page: Page) => Promise<unknown>;
}

const questions: readonly (readonly Asked[])[] = [
  [
    { question: 'How sure is it?', prepare: (page) => page.getByLabel('samples').selectOption('32') },
    { question: 'What would be better?', prepare: (page) => page.getByLabel('cheaper').check() },
    { question: 'What if one part fails?' },
  ],
  [
    { question: 'What could go?' },
    {
      question: 'What does a job file come to?',
      prepare: (page) =>
        page.getByLabel('job file', { exact: true }).setInputFiles({
          name: 'hook.gcode',
          mimeType: 'text/plain',
          buffer: Buffer.from(`M140 S60\nM104 S210\nM83\n${'G1 X60 Y60 E3 F3000\nG1 X90\n'.repeat(50)}`),
        }),
    },
    { question: 'When may a socket go off?' },
    { question: 'When does each job run?' },
  ],
  [
    { question: 'What does a part cost?' },
    { question: 'What is due?' },
    { question: 'What does a log put right?', prepare: log('Temp top') },
    { question: 'Has it drifted?', prepare: log('Temp top') },
    { question: 'What do I build it from?' },
  ],
];

describe('every answer', () => {
  for (const asked of questions) {
    journey(
      `axe finds nothing, on a light desk and a dark phone: ${asked.map(({ question }) => question).join(' ')}`,
      async ({ page }) => {
        const seen: string[] = [];
        await page.getByRole('button', { name: 'Ask', exact: true }).click();
        for (const { question, prepare } of asked) {
          await page.getByRole('button', { name: question }).click();
          await prepare?.(page);
          await page.locator('.ask-pane .begin').click();
          await answered(page);
          expect((await page.locator('.answered').textContent())!.length, question).toBeGreaterThan(200);
          seen.push(...(await look(page, question, '.ask-pane')));
        }
        expect(seen).toEqual([]);
      },
      small,
    );
  }
});

describe('every view', () => {
  journey(
    'axe finds nothing in sheets, day, options, text, part and questions, on a light desk and a dark phone',
    async ({ page }) => {
      const seen: string[] = [];
      for (const view of ['Front', 'Side', 'Plan']) {
        await page.getByRole('button', { name: view, exact: true }).click();
        seen.push(...(await look(page, view, 'body')));
      }
      for (const pane of ['Day', 'Options', 'Text', 'Part']) {
        await page.getByRole('button', { name: pane, exact: true }).click();
        await page.waitForSelector(
          { Day: '.time-cursor', Options: '.option-list', Text: '.cm-editor', Part: '.part-pane' }[pane]!,
        );
      }
      seen.push(...(await look(page, 'all unfolded', 'body')));
      expect(seen).toEqual([]);
    },
    small,
  );

  journey(
    'in space: a thing with a name that keys turn',
    async ({ page }) => {
      await page.getByRole('button', { name: 'Space', exact: true }).click();
      await page.waitForSelector('.space canvas, .space.without');
      expect(await look(page, 'Space', '.drawing')).toEqual([]);
    },
    { ...small, open: join(root, 'examples/winter-shed.yaml'), graphics: true },
  );

  journey(
    'Tab alone goes through all of it, every stop has a name and is seen to be one, and the way ends',
    async ({ page }) => {
      for (const pane of ['Day', 'Ask']) await page.getByRole('button', { name: pane, exact: true }).click();
      await page.waitForSelector('.time-cursor');
      await page.waitForSelector('.ask-side');
      await page.evaluate('document.body.tabIndex = -1; document.body.focus()');
      const stops: string[] = [];
      const unseen: string[] = [];
      for (let at = 0; at < 150; at++) {
        await page.keyboard.press('Tab');
        const stop = await page.evaluate<{ name: string; seen: boolean } | null>(FOCUSED);
        if (stop === null) break;
        if (stops.includes(stop.name) && stop.name === stops[0]) break;
        stops.push(stop.name);
        if (!stop.seen) unseen.push(stop.name);
      }
      expect(unseen).toEqual([]);
      expect(stops.every((name) => name.length > 0)).toBe(true);
      expect(stops.length).toBeLessThan(150);
      for (const name of [
        'To the remarks',
        'My own cabinet',
        'Front',
        'time of day shown on the sheet',
        'How sure is it?',
      ])
        expect(stops).toContain(name);
      expect(stops.some((name) => name.startsWith('machine wren'))).toBe(true);
    },
    small,
  );

  journey(
    'whoever wants less motion gets none',
    async ({ page }) => {
      await page.emulateMedia({ reducedMotion: 'reduce' });
      const moving = await page.evaluate<string[]>(
        `[...document.querySelectorAll('*')].filter((each) => {
          const { transitionDuration, animationName } = getComputedStyle(each);
          return transitionDuration !== '0s' || animationName !== 'none';
        }).map((each) => each.tagName + '.' + each.getAttribute('class'))`,
      );
      expect(moving).toEqual([]);
    },
    small,
  );
});

/** Of the focused thing: its name, and whether a line about it tells that it is the one. Nothing when the page itself has the focus. */
const FOCUSED = `(() => {
  const on = document.activeElement;
  if (on === null || on === document.body || on === document.documentElement) return null;
  const accent = getComputedStyle(document.documentElement).getPropertyValue('--accent').trim();
  const probe = document.createElement('i');
  probe.style.color = accent;
  document.body.append(probe);
  const colour = getComputedStyle(probe).color;
  probe.remove();
  const ringed = getComputedStyle(on).outlineStyle !== 'none' && parseFloat(getComputedStyle(on).outlineWidth) >= 2;
  const drawn = on instanceof SVGElement && [...on.querySelectorAll('*')].some((each) => getComputedStyle(each).stroke === colour && parseFloat(getComputedStyle(each).strokeWidth) >= 2);
  const box = on.getBoundingClientRect();
  const inside = box.width > 0 && box.height > 0 && box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth;
  const label = on.labels?.[0]?.textContent ?? '';
  const name = on.getAttribute('aria-label') ?? document.getElementById(on.getAttribute('aria-labelledby') ?? '')?.textContent ?? (label || on.textContent || on.getAttribute('placeholder') || '');
  return { name: name.trim(), seen: (ringed || drawn) && inside };
})()`;

describe('the day strip', () => {
  journey(
    'lines get their bands once the samples are in, and the bands are told in words',
    async ({ page }) => {
      await page.getByRole('button', { name: 'Day', exact: true }).click();
      await expect.poll(() => page.locator('.readings').textContent()).toMatch(/at 12:00/);
      await expect.poll(() => page.locator('.panel .spread').count(), { timeout: 90_000 }).toBeGreaterThan(1);
      const words = page.locator('.readings');
      expect(await words.textContent()).toMatch(/10th to 90th percentile of 24 samples/);
      const reading = (await words.locator('dd').first().textContent())!;
      const [, value, low, high] = /(-?[\d.]+) \((-?[\d.]+) to (-?[\d.]+)\)/.exec(reading)!.map(Number);
      expect(low).toBeLessThan(high!);
      expect(value).toBeGreaterThan(low! - 5);
      expect(await page.getByRole('slider').getAttribute('aria-describedby')).toBe('day-readings');
      await page.getByRole('button', { name: 'mm, °C' }).click();
      await expect.poll(() => page.locator('.readings dt').first().textContent()).toMatch(/°F/);
      await expect.poll(() => page.locator('.panel .spread').count(), { timeout: 90_000 }).toBeGreaterThan(1);
    },
    small,
  );
});

describe('papers', () => {
  journey(
    'with the local server the whole set is taken out: PDF, pictures, flat shapes and solids; it can be stopped',
    async ({ page }) => {
      await page.getByRole('button', { name: 'Ask', exact: true }).click();
      await page.getByRole('button', { name: 'What do I build it from?' }).click();
      await page.locator('.ask-pane .begin').click();
      await answered(page);
      const all = page.getByRole('button', { name: 'take out all papers' });
      await all.click();
      await page.getByRole('button', { name: 'stop the papers' }).click();
      await expect.poll(() => page.locator('.answered').textContent()).toMatch(/Stopped: no papers were made/);
      const download = page.waitForEvent('download', { timeout: 100_000 });
      const end = page.locator('.papers-end');
      // The server needs a moment to see that nobody listens any more.
      for (let tries = 0; tries < 20; tries++) {
        await all.click();
        await expect.poll(() => all.isEnabled(), { timeout: 90_000 }).toBe(true);
        if (/^Done: /.test((await end.textContent())!)) break;
        expect(await end.textContent()).toMatch(/being made already/);
        await page.waitForTimeout(500);
      }
      const taken = await download;
      const files = unzipSync(new Uint8Array(await readFile((await taken.path())!)));
      const names = Object.keys(files);
      expect(names).toContain('cut-list.pdf');
      expect(Buffer.from(files['cut-list.pdf']!.subarray(0, 5)).toString()).toBe('%PDF-');
      for (const ending of [/^svg\/.*\.svg$/, /\.dxf$/, /\.3mf$/, /\.stl$/, /\.csv$/])
        expect(
          names.some((name) => ending.test(name)),
          String(ending),
        ).toBe(true);
    },
    small,
  );
});

journey(
  'a line from a remark ends in its part, at whatever size the sheet is',
  async ({ page }) => {
    const amiss = () =>
      page.evaluate<string[]>(`[...document.querySelectorAll('.leader')].flatMap((leader) => {
        const { left, top, width, height } = leader.querySelector('circle').getBoundingClientRect();
        const [x, y] = [left + width / 2, top + height / 2];
        const parts = [...document.querySelectorAll('.remark[data-part-of]')].map(({ dataset }) => dataset.partOf);
        const inside = parts.some((part) => {
          const box = document.querySelector('.sheet [data-part="' + part + '"]')?.getBoundingClientRect();
          return box !== undefined && x >= box.left - 2 && x <= box.right + 2 && y >= box.top - 2 && y <= box.bottom + 2;
        });
        return inside ? [] : [x + ' ' + y];
      })`);
    for (const [width, height] of [
      [1280, 800],
      [1920, 1080],
      [1366, 768],
    ] as const) {
      await page.setViewportSize({ width, height });
      await expect.poll(amiss).toEqual([]);
      expect(await page.locator('.leader').count()).toBeGreaterThan(0);
    }
  },
  small,
);
