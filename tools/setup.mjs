// npm run setup: installs, generates and builds what is missing or older than what it is made from; else does nothing.
// Uses Node's own modules only, since it runs before anything is installed.

import { existsSync, mkdirSync, readdirSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { keptCode } from '../packages/station/bin/run-bundle.mjs';
import { isMain, ran, ranTool, root } from './steps.mjs';

const catalogue = 'packages/engine/src/cabinet/catalogue';
const builtMark = join(root, 'node_modules/.cache/stillair-built');
/** Packages that the compiler writes; the page is built by its bundler, which reads their sources. */
const compiled = ['physics', 'engine', 'station'].map((name) => join(root, 'packages', name));

/** Brings the checkout to a state in which `stillair` runs. Tells whether that succeeded. */
export function setup({ quiet = false } = {}) {
  const say = quiet ? () => {} : (text) => console.log(text);
  let worked = false;
  for (const step of [checkNode, install, generateCatalogue, build, bundle, buildPage, bringReaders]) {
    const result = step(say);
    if (result === false) return false;
    worked ||= result === true;
  }
  if (!worked) say('setup: nothing to do');
  return true;
}

// Each step returns true when it did something, undefined when there was nothing to do, false when it failed.

function checkNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) return undefined;
  console.error(`setup: this is Node ${process.versions.node}, but Stillair needs Node 20.19 or newer`);
  return false;
}

function install(say) {
  const lock = join(root, 'package-lock.json');
  const installed = join(root, 'node_modules/.package-lock.json');
  if (existsSync(installed) && modified(installed) >= modified(lock)) return undefined;
  say('setup: installing what the lock file lists (npm ci)');
  // npm names its own script in the environment of every script it runs; without it, npm is looked up on the PATH.
  const npm = process.env.npm_execpath;
  const words = ['ci', '--no-audit', '--no-fund'];
  if (npm?.endsWith('.js')) return ran(process.execPath, [npm, ...words]);
  return process.platform === 'win32' ? ran('cmd', ['/c', 'npm', ...words]) : ran('npm', words);
}

function generateCatalogue(say) {
  const tool = join(root, 'tools/catalogue.mjs');
  const generated = join(root, `${catalogue}.data.ts`);
  if (!existsSync(tool) || !existsSync(join(root, catalogue))) return undefined;
  const sources = newest(join(root, catalogue), /\.yaml$/);
  if (existsSync(generated) && modified(generated) >= Math.max(sources, modified(tool))) return undefined;
  say('setup: writing the catalogue as data');
  return ran(process.execPath, [tool]);
}

function build(say) {
  const settings = [join(root, 'tsconfig.base.json'), ...compiled.map((folder) => join(folder, 'tsconfig.json'))];
  const newestSettings = Math.max(...settings.map(modified));
  const newestSource = Math.max(...compiled.map((folder) => newest(join(folder, 'src'), /\.ts$/)));
  const built = compiled.every((folder) => existsSync(join(folder, 'dist/index.js')));
  const builtAt = built && existsSync(builtMark) ? modified(builtMark) : 0;
  if (builtAt >= Math.max(newestSource, newestSettings)) return undefined;
  say('setup: compiling (tsc -b)');
  compiled.forEach(sweepOrphans);
  const started = new Date();
  // The compiler does not see that the settings which others extend have changed.
  const force = builtAt < newestSettings ? ['--force'] : [];
  if (!ranTool('typescript/bin/tsc', ['-b', 'packages/station', ...force])) return false;
  mkdirSync(join(builtMark, '..'), { recursive: true });
  writeFileSync(builtMark, '');
  utimesSync(builtMark, started, started); // a source saved while the compiler ran is newer than the mark
  return true;
}

function bundle(say) {
  const tool = join(root, 'tools/bundle.mjs');
  const place = join(root, 'packages/station/bundle');
  const bundled = join(place, 'stillair.js');
  // What the compiler writes last in each package: `bin/stillair.mjs` asks the same.
  const marks = compiled.map((folder) => join(folder, 'dist/.tsbuildinfo'));
  const loader = join(root, 'packages/station/bin/run-bundle.mjs');
  const newestInput = Math.max(...[tool, loader, join(root, 'package-lock.json'), ...marks].map(modified));
  // What another Node compiled is of no use to this one.
  const fresh = existsSync(bundled) && existsSync(keptCode(place, 'stillair.js'));
  if (fresh && modified(bundled) >= newestInput) return undefined;
  say('setup: bundling the command');
  return ran(process.execPath, [tool]);
}

function buildPage(say) {
  const folder = join(root, 'packages/workbench');
  const page = join(folder, 'dist/index.html');
  const inputs = ['package.json', 'vite.config.ts', 'file-schema.ts', 'offline.ts', 'index.html'].map((name) =>
    modified(join(folder, name)),
  );
  const sources = ['workbench', 'engine', 'physics'].map((name) =>
    newest(join(root, 'packages', name, 'src'), /\.(?:tsx?|css)$/),
  );
  const examples = newest(join(root, 'examples'), /\.yaml$/);
  const newestInput = Math.max(...inputs, ...sources, examples, modified(join(root, 'package-lock.json')));
  if (existsSync(page) && modified(page) >= newestInput) return undefined;
  say('setup: building the workbench page');
  return ranTool('vite/bin/vite.js', ['build', '--logLevel', 'warn', 'packages/workbench']);
}

/** Programs of the system that some tests hold results against; everything but those tests works without them. */
const readers = [
  {
    what: 'the browser tests need Chromium',
    packages: ['chromium'],
    missing: () => existsSync(join(root, 'e2e')) && findBrowser() === undefined,
    else: 'or name its program in the environment variable CHROMIUM',
  },
  {
    what: 'tests of papers read PDF with poppler and DXF with ezdxf',
    packages: ['poppler-utils', 'python3-ezdxf'],
    missing: () => !existsSync('/usr/bin/pdftotext') || !existsSync('/usr/lib/python3/dist-packages/ezdxf'),
    else: 'without them those tests are left out',
  },
  {
    what: 'tests of printed parts read 3MF with lib3mf and its XML schema with xmllint, STL with admesh',
    packages: ['python3', 'lib3mf1', 'libxml2-utils', 'admesh'],
    missing: () =>
      !['/usr/bin/python3', '/usr/bin/xmllint', '/usr/bin/admesh'].every((path) => existsSync(path)) ||
      !hasLibrary('lib3MF.so.1'),
    else: 'without them those tests are left out',
  },
];

function hasLibrary(name) {
  return listed('/usr/lib', false).some((folder) => existsSync(join('/usr/lib', folder, name)));
}

function bringReaders(say) {
  const missing = readers.filter((reader) => reader.missing());
  if (missing.length === 0) return undefined;
  const packages = missing.flatMap((reader) => reader.packages);
  const mayInstall = process.platform === 'linux' && existsSync('/usr/bin/apt-get') && process.getuid?.() === 0;
  if (!mayInstall) {
    for (const reader of missing) {
      console.error(`setup: ${reader.what}; on Debian: sudo apt-get install ${reader.packages.join(' ')}`);
      console.error(`       (${reader.else})`);
    }
    return undefined;
  }
  say(`setup: installing ${packages.join(', ')} for the tests (apt-get)`);
  const unattended = { environment: { DEBIAN_FRONTEND: 'noninteractive' } };
  const words = ['install', '-y', '-q', '--no-install-recommends', ...packages];
  return ran('apt-get', ['update', '-q'], unattended) && ran('apt-get', words, unattended);
}

function findBrowser() {
  const named = process.env.CHROMIUM;
  const places = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/local/bin/chromium'];
  return [named, ...places].find((path) => path !== undefined && existsSync(path));
}

/** Takes compiled files away whose source is gone: tools that read `dist` by pattern would still find them. */
function sweepOrphans(folder) {
  const dist = join(folder, 'dist');
  for (const path of listed(dist)) {
    const source = /^(.*)\.(?:js|d\.ts)(?:\.map)?$/.exec(path)?.[1];
    if (source !== undefined && !existsSync(join(folder, 'src', `${source}.ts`))) rmSync(join(dist, path));
  }
}

/** Time of the newest change among the files of a tree; a removed file shows as a change of its folder. */
function newest(folder, pattern) {
  return listed(folder)
    .filter((path) => pattern.test(path) || statSync(join(folder, path)).isDirectory())
    .reduce((latest, path) => Math.max(latest, modified(join(folder, path))), modified(folder));
}

function listed(folder, recursive = true) {
  return existsSync(folder) ? readdirSync(folder, { recursive, encoding: 'utf8' }) : [];
}

function modified(path) {
  return statSync(path).mtimeMs;
}

if (isMain(import.meta.url)) process.exitCode = setup({ quiet: process.argv.includes('--quiet') }) ? 0 : 1;
