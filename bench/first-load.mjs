// The scripts that a browser loads before the first remarks: what the page names, the worker, and whatever these import at once.

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';

/** @param {string} dist folder of the built page */
export function firstLoad(dist) {
  const assets = join(dist, 'assets');
  /** @type {Set<string>} */
  const files = new Set();
  const take = (/** @type {string} */ name) => {
    if (files.has(name)) return;
    files.add(name);
    for (const [, below] of text(join(assets, name)).matchAll(/(?:from|import)\s*["`']\.\/([\w-]+\.js)["`']/g))
      take(below ?? '');
  };
  for (const [, name] of text(join(dist, 'index.html')).matchAll(/assets\/([\w-]+\.js)/g)) take(name ?? '');
  for (const name of readdirSync(assets)) if (/^engine-worker-.*\.js$/.test(name)) take(name);
  const bytes = [...files].reduce((sum, name) => sum + gzipSync(readFileSync(join(assets, name))).length, 0);
  return { files: [...files], kilobytes: bytes / 1000 };
}

/** @param {string} path */
function text(path) {
  return readFileSync(path, 'utf8');
}
