// From a change on the sheet to new remarks, in Chromium: a fixed script of 100 edits of the tool library, half of them of
// machines, half of ways for air; the size of what the page loads; whether the page stays free while a part is dragged.

import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root } from '../tools/steps.mjs';
import { browserTime } from './browser-time.mjs';
import { firstLoad } from './first-load.mjs';

const program = [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser'].find(
  (path) => path && existsSync(path),
);
const EDITS = 100;
/** Parts, and the keys that move each to and fro: seen from the front, an opening in a side wall goes only up and down. */
const script = [
  ['machines.gable', ['ArrowRight', 'ArrowLeft']],
  ['air.west-intake', ['ArrowUp', 'ArrowDown']],
  ['machines.ridge', ['ArrowRight', 'ArrowLeft']],
  ['air.east-intake', ['ArrowUp', 'ArrowDown']],
];
/** ms after which an edit counts as never answered. */
const PATIENCE = 20_000;

export async function run() {
  if (program === undefined) throw new Error('Chromium is missing; npm run setup says how to bring it');
  const { chromium } = await import('playwright-core');
  const { server, address } = await serve();
  const profile = mkdtempSync(join(tmpdir(), 'stillair-bench-'));
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: program,
    headless: true,
    args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
    viewport: { width: 1366, height: 820 },
  });
  try {
    const page = context.pages()[0];
    const opened = performance.now();
    await page.goto(address);
    await page.waitForSelector('.remark');
    const interactive = performance.now() - opened;
    await page.waitForSelector('.pending', { state: 'detached', timeout: 300_000 });
    const edits = [];
    const before = browserTime(profile);
    for (let at = 0; at < EDITS; at++) {
      const [part, keys] = script[at % script.length];
      edits.push(await edit(page, part, keys[(at >> 2) % 2]));
    }
    const used = usedAnEdit(before, browserTime(profile));
    const bandsFrom = performance.now();
    await page.waitForSelector('.pending', { state: 'detached', timeout: 300_000 });
    const bands = performance.now() - bandsFrom;
    const longest = await dragged(page);
    edits.sort((a, b) => a - b);
    return [
      {
        what: 'workbench: first remarks from a cold load',
        value: interactive,
        unit: 'ms',
        limit: 1500,
        note: 'local server, empty cache',
      },
      {
        what: `workbench: edit to new remarks, 95 of ${EDITS}`,
        value: edits[Math.floor(0.95 * EDITS) - 1],
        unit: 'ms',
        limit: 50,
        note: `median ${edits[EDITS / 2].toFixed(0)} ms, worst ${edits.at(-1).toFixed(0)} ms`,
      },
      ...(used === undefined
        ? []
        : [
            {
              what: 'workbench: processor time of an edit, page and busiest worker',
              value: used.page + used.worker,
              unit: 'ms',
              limit: 50,
              note: `page ${used.page.toFixed(1)} ms, busiest worker ${used.worker.toFixed(1)} ms, all workers ${used.workers.toFixed(1)} ms; mean of ${EDITS}, what moves the pointer between edits included`,
            },
          ]),
      {
        what: 'workbench: bands and tried remedies after the last edit',
        value: bands,
        unit: 'ms',
        limit: 1000,
        note: 'pause of 250 ms included',
      },
      {
        what: 'workbench: longest task of the page while dragging',
        value: longest,
        unit: 'ms',
        limit: 50,
        note: '0: none above 50 ms',
      },
      {
        what: 'workbench: JavaScript before the first remarks, gzip',
        value: firstLoad(join(root, 'packages/workbench/dist')).kilobytes,
        unit: 'kB',
        limit: 300,
        note: 'page and worker; nothing above 345 kB is let in',
      },
    ];
  } finally {
    await context.close();
    server.kill('SIGINT');
    rmSync(profile, { recursive: true, force: true });
  }
}

/** Means of an edit, ms; workers stand in one order as long as none is started or ended. */
function usedAnEdit(before, after) {
  if (before === undefined || after === undefined || before.workers.length !== after.workers.length) return undefined;
  const workers = after.workers.map((used, at) => (used - before.workers[at]) / EDITS);
  return {
    page: (after.page - before.page) / EDITS,
    worker: Math.max(...workers),
    workers: workers.reduce((sum, used) => sum + used, 0),
  };
}

/** One movement by a millimetre, until the remarks of the new text are on the page. */
async function edit(page, part, key) {
  await page.locator(`[data-part="${part}"]`).first().focus();
  await page.keyboard.press('Enter');
  await page.waitForSelector(`[data-part="${part}"][aria-pressed="true"]`);
  return page.evaluate(
    ([name, which, patience]) =>
      new Promise((resolve, reject) => {
        setTimeout(() => reject(new Error(`${name} does not move by ${which}`)), patience);
        const answered = document.querySelector('[data-answered]');
        const began = performance.now();
        new MutationObserver((_, observer) => {
          observer.disconnect();
          requestAnimationFrame(() => resolve(performance.now() - began));
        }).observe(answered, { attributes: true, attributeFilter: ['data-answered'] });
        document
          .querySelector(`[data-part="${name}"]`)
          .dispatchEvent(new KeyboardEvent('keydown', { key: which, bubbles: true, cancelable: true }));
      }),
    [part, key, PATIENCE],
  );
}

/** Milliseconds of the longest task above 50 ms while a machine is dragged to and fro for two seconds; 0 when there is none. */
async function dragged(page) {
  await page.evaluate(() => {
    window.longTasks = [];
    new PerformanceObserver((list) =>
      window.longTasks.push(...list.getEntries().map(({ duration }) => duration)),
    ).observe({ type: 'longtask' });
  });
  const box = await page.locator('[data-part="machines.gable"] .swept').first().boundingBox();
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let step = 0; step < 60; step++) await page.mouse.move(x + 20 * Math.sin(step / 5), y);
  await page.mouse.up();
  return page.evaluate(() => Math.max(0, ...window.longTasks));
}

function serve() {
  const server = spawn(
    process.execPath,
    [join(root, 'packages/station/bin/stillair.mjs'), 'workbench', '--port', '0'],
    {
      cwd: root,
      stdio: ['ignore', 'pipe', 'inherit'],
    },
  );
  return new Promise((resolve) => {
    let said = '';
    server.stdout.on('data', (data) => {
      said += data;
      const found = /http:\/\/127\.0\.0\.1:\d+\//.exec(said);
      if (found !== null) resolve({ server, address: found[0] });
    });
  });
}
