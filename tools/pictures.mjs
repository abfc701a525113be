// npm run pictures [NAME...]: opens the workbench in Chromium and takes the pictures that docs/workbench.md shows, each as a person would see it.

import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { isMain, root } from './steps.mjs';

const folder = join(root, 'docs/pictures');
const program = [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser'].find(
  (path) => path && existsSync(path),
);

const button = (name) => (page) => page.getByRole('button', { name, exact: true }).click();
const pick = (part) => async (page) => {
  await page.locator(`[data-part="${part}"]`).focus();
  await page.keyboard.press('Enter');
};
const openHours = async (page) => {
  await page.locator('.time-cursor svg').click({ position: { x: 735, y: 40 } });
};
const openRemark = (page) => page.locator('.remark .head').nth(1).click();
const bands = (page) => page.waitForSelector('.pending', { state: 'detached', timeout: 180_000 });
const openExample = (name) => (page) =>
  page
    .locator('select')
    .first()
    .selectOption({ value: `example:${name}.yaml` });
const askOfLog = async (page) => {
  await button('What does a log put right?')(page);
  await page.getByLabel('log', { exact: true }).setInputFiles(join(root, 'examples/winter-shed-log.csv'));
  await page.locator('.ask-pane .begin').click();
  await page.waitForSelector('.answered .paper img', { timeout: 180_000 });
};
const lineBands = (page) => page.waitForSelector('.panel .spread', { timeout: 180_000 });
const ask = (question) => async (page) => {
  await button('Ask')(page);
  await button(question)(page);
  await page.locator('.ask-pane .begin').click();
  await page.getByText('Done.', { exact: true }).waitFor({ timeout: 180_000 });
};
const scrollTo = (part) => (page) =>
  page
    .locator(part)
    .first()
    .evaluate((found) => found.scrollIntoView({ block: 'start' }));
const toAnswer = (page) =>
  page
    .locator('.answered table')
    .first()
    .evaluate((table) => table.scrollIntoView({ block: 'start' }));

const pictures = [
  { name: 'front', does: [bands] },
  { name: 'remark', does: [bands, openRemark] },
  { name: 'day', does: [bands, button('Day'), lineBands, openHours] },
  { name: 'plan', does: [button('Plan'), pick('machines.gable')] },
  { name: 'space', does: [button('Space')] },
  { name: 'part', does: [button('Part'), pick('machines.ridge')] },
  { name: 'text', does: [button('Text')] },
  {
    name: 'options',
    does: [
      bands,
      button('Options'),
      (page) => page.getByRole('button', { name: 'set beside' }).first().click(),
      (page) => page.waitForSelector('.pair .sheet + .sheet'),
    ],
  },
  { name: 'log', height: 1100, does: [openExample('winter-shed'), button('Ask'), askOfLog, button('Day'), toAnswer] },
  { name: 'questions', does: [button('My own cabinet')] },
  { name: 'ask', does: [openExample('school-locker'), bands, ask('What if one part fails?')] },
  { name: 'dark', dark: true, does: [bands, button('Day'), lineBands, openHours] },
  { name: 'ask-dark', dark: true, does: [openExample('winter-shed'), bands, ask('What do I build it from?')] },
  {
    name: 'ask-phone',
    width: 390,
    height: 844,
    does: [openExample('winter-shed'), bands, ask('When may a socket go off?'), scrollTo('.ask-pane')],
  },
  { name: 'phone', width: 390, height: 844, does: [] },
];

async function takeAll() {
  if (program === undefined) {
    console.error('pictures: Chromium is missing; npm run setup says how to bring it');
    return 1;
  }
  mkdirSync(folder, { recursive: true });
  const server = spawn(
    process.execPath,
    [join(root, 'packages/station/bin/stillair.mjs'), 'workbench', '--port', '0'],
    {
      cwd: root,
      stdio: ['ignore', 'pipe', 'inherit'],
    },
  );
  const address = await new Promise((resolve) => {
    let said = '';
    server.stdout.on('data', (data) => {
      said += data;
      const found = /http:\/\/127\.0\.0\.1:\d+\//.exec(said);
      if (found !== null) resolve(found[0]);
    });
  });
  const named = process.argv.slice(2);
  for (const picture of pictures) if (named.length === 0 || named.includes(picture.name)) await take(picture, address);
  server.kill('SIGINT');
  return 0;
}

async function take({ name, does, dark = false, width = 1366, height = 820 }, address) {
  const profile = mkdtempSync(join(tmpdir(), 'stillair-picture-'));
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: program,
    headless: true,
    args: ['--no-sandbox', '--no-first-run', '--disable-background-networking', '--disable-sync'],
    viewport: { width, height },
    colorScheme: dark ? 'dark' : 'light',
    reducedMotion: 'reduce',
  });
  const page = context.pages()[0] ?? (await context.newPage());
  page.setDefaultTimeout(120_000);
  await page.goto(address);
  await page.waitForSelector('.remark');
  for (const step of does) await step(page);
  await page.waitForTimeout(1500);
  await page.screenshot({ path: join(folder, `${name}.png`) });
  await context.close();
  rmSync(profile, { recursive: true, force: true });
  console.log(`docs/pictures/${name}.png`);
}

if (isMain(import.meta.url)) process.exitCode = await takeAll();
