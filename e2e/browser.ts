// A real browser on the built page, served by the real command.

import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright-core';

export const root: string = join(import.meta.dirname, '..');

const places = [process.env['CHROMIUM'], '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/local/bin/chromium'];
export const browserProgram: string | undefined = places.find((path) => path !== undefined && existsSync(path));

export interface Bench {
  readonly page: Page;
  readonly address: string;
  /** What the page complained of. */
  readonly errors: readonly string[];
  readonly close: () => Promise<void>;
}

export interface BenchOptions {
  /** File or folder that the server opens; without one it offers the examples. */
  readonly open?: string;
  readonly width?: number;
  readonly height?: number;
  readonly dark?: boolean;
  readonly graphics?: boolean;
}

/** Starts the command, waits for its address, opens a browser on it. */
export async function openBench({
  open,
  width = 1280,
  height = 800,
  dark = false,
  graphics = false,
}: BenchOptions = {}): Promise<Bench> {
  const server = await serve(open);
  const folder = await mkdtemp(join(tmpdir(), 'stillair-browser-'));
  const context: BrowserContext = await chromium.launchPersistentContext(folder, {
    executablePath: browserProgram!,
    headless: true,
    args: [
      '--no-sandbox',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-sync',
      ...(graphics ? [] : ['--disable-gpu']),
    ],
    viewport: { width, height },
    colorScheme: dark ? 'dark' : 'light',
    acceptDownloads: true,
  });
  const page = context.pages()[0] ?? (await context.newPage());
  page.setDefaultTimeout(45_000);
  const errors: string[] = [];
  page.on('pageerror', ({ message }) => errors.push(message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  await page.goto(server.address);
  await page.waitForSelector('.remark');
  return {
    page,
    address: server.address,
    errors,
    close: async () => {
      await context.close();
      server.child.kill('SIGINT');
      await rm(folder, { recursive: true, force: true });
    },
  };
}

async function serve(open: string | undefined): Promise<{ readonly child: ChildProcess; readonly address: string }> {
  const words = [
    join(root, 'packages/station/bin/stillair.mjs'),
    'workbench',
    ...(open === undefined ? [] : [open]),
    '--port',
    '0',
  ];
  const child = spawn(process.execPath, words, { cwd: root, stdio: ['ignore', 'pipe', 'inherit'] });
  let said = '';
  const address = await new Promise<string>((resolve, reject) => {
    child.stdout!.on('data', (data: Buffer) => {
      said += data.toString();
      const found = /http:\/\/127\.0\.0\.1:\d+\//.exec(said);
      if (found !== null) resolve(found[0]);
    });
    child.on('exit', (code) => reject(new Error(`the server ended with ${String(code)}: ${said}`)));
  });
  return { child, address };
}
