// The layers of ARCHITECTURE.md as a test: who may import whom. A new arrow is an edit here, seen in review.

import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { expect, it } from 'vitest';

const root = join(import.meta.dirname, '../packages');

const mayImport: Record<string, readonly string[]> = {
  physics: [],
  engine: ['physics'],
  workbench: ['engine'],
  station: ['engine'],
};

/** Inside the engine, a folder may import itself and the ones before it. */
const engineOrder = [
  'units',
  'numerics',
  'cabinet',
  'joinery',
  'jobs',
  'logs',
  'network',
  'day',
  'trades',
  'judge',
  'studies',
  'running',
  'papers',
];

const files = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter((path) =>
  /^\w+\/src\/.*\.tsx?$/.test(path),
);

it('every import goes down the layers, stays in its package and is declared', () => {
  expect(files.flatMap(wrongImports)).toEqual([]);
});

it('every file of the engine lies in a known folder', () => {
  const strays = files.filter((path) => {
    const [owner, , folder = ''] = path.split('/');
    return owner === 'engine' && path.split('/').length > 3 && !engineOrder.includes(folder);
  });
  expect(strays).toEqual([]);
});

it('neither physics nor engine reads a clock, throws dice or touches a machine', () => {
  const forbidden = /\bDate\.now\(|\bnew Date\(|\bMath\.random\(|\bprocess\.|\bglobalThis\.|\bconsole\./;
  const sinners = files.filter(
    (path) => /^(physics|engine)\//.test(path) && !isTest(path) && forbidden.test(withoutComments(path)),
  );
  expect(sinners).toEqual([]);
});

it('the test runner takes every test file of the repository', () => {
  const tests = readdirSync(join(root, '..'), { recursive: true, encoding: 'utf8' }).filter(
    (path) => /\.test\.tsx?$/.test(path) && !/node_modules|dist\//.test(path),
  );
  expect(
    tests.filter((path) => !/^(packages\/\w+\/src\/.*\.test\.tsx?|(?:tools|e2e)\/.*\.test\.ts)$/.test(path)),
  ).toEqual([]);
});

function isTest(path: string): boolean {
  return /\.test\.tsx?$/.test(path);
}

function withoutComments(path: string): string {
  return readFileSync(join(root, path), 'utf8')
    .replaceAll(/\/\*[\s\S]*?\*\//g, '')
    .replaceAll(/\/\/.*$/gm, '');
}

function wrongImports(path: string): string[] {
  const [owner = ''] = path.split('/');
  const manifest = JSON.parse(readFileSync(join(root, owner, 'package.json'), 'utf8')) as {
    dependencies?: Record<string, string>;
  };
  const text = readFileSync(join(root, path), 'utf8');
  return [...text.matchAll(/^(?:import|export)\b[^'";]*?\bfrom '([^']+)'|\bimport\('([^']+)'\)/gm)].flatMap(
    ([, by = '', on = '']) => {
      const target = by || on;
      const reason = target.startsWith('.')
        ? wrongInside(path, owner, target)
        : wrongPackage(path, owner, target, Object.keys(manifest.dependencies ?? {}));
      return reason === undefined ? [] : [`${path} imports ${target}: ${reason}`];
    },
  );
}

function wrongInside(path: string, owner: string, target: string): string | undefined {
  const inside = normalize(join(dirname(path), target));
  if (isTest(path)) return undefined; // tests may read examples and tools of the repository
  if (!inside.startsWith(`${owner}/src/`)) return 'it leaves its own package';
  if (owner !== 'engine') return undefined;
  const [from = -1, to = -1] = [path, inside].map((file) => engineOrder.indexOf(file.split('/')[2] ?? ''));
  if (from >= 0 && to > from) return `${engineOrder[to]} lies above ${engineOrder[from]}`;
  const [fromTrade, toTrade] = [path, inside].map((file) => /^engine\/src\/trades\/([^/]+)\//.exec(file)?.[1]);
  if (fromTrade !== undefined && toTrade !== undefined && fromTrade !== toTrade) return 'no trade knows another';
  return undefined;
}

function wrongPackage(path: string, owner: string, target: string, declared: readonly string[]): string | undefined {
  if (isTest(path)) return undefined; // tests may use Node and the root's tools
  if (target.startsWith('node:')) return owner === 'station' ? undefined : 'only the station runs on Node';
  if (target.startsWith('virtual:')) return owner === 'workbench' ? undefined : 'only the page is built by a bundler';
  const ours = /^@stillair\/(.+)$/.exec(target)?.[1];
  if (ours !== undefined && !mayImport[owner]?.includes(ours)) return `${owner} may not know ${ours}`;
  return declared.some((name) => target === name || target.startsWith(`${name}/`))
    ? undefined
    : `it is not among the dependencies of ${owner}`;
}
