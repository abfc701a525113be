// No document of the repository links to a file, or to a heading of a document, that is not there.

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, it } from 'vitest';

const root = join(import.meta.dirname, '..');
const documents = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter(
  (path) => path.endsWith('.md') && !/(^|\/)(node_modules|dist|coverage|out|\.git|shared)\//.test(path),
);

it('finds the README', () => {
  expect(documents).toContain('README.md');
});

it.each(documents)('%s has no dead link', (path) => {
  const links = [...withoutCode(read(path)).matchAll(/\]\(([^()\s]+(?:\([^()\s]*\)[^()\s]*)*)\)/g)].map(
    ([, target = '']) => target,
  );
  expect(links.filter((target) => isDead(path, target))).toEqual([]);
});

function isDead(path: string, target: string): boolean {
  if (/^[a-z]+:/i.test(target)) return false; // another place: never looked up from a test
  const [file = '', heading] = decodeURIComponent(target).split('#');
  const linked = file === '' ? path : join(dirname(path), file);
  if (!existsSync(join(root, linked))) return true;
  return heading !== undefined && linked.endsWith('.md') && !headingsOf(linked).has(heading);
}

/** Headings as links name them: lower case, blanks to hyphens, punctuation left out. */
function headingsOf(path: string): Set<string> {
  const headings = [...withoutCode(read(path)).matchAll(/^#{1,6} +(.+)$/gm)].map(([, text = '']) => text);
  return new Set(
    headings.map((text) =>
      text
        .trim()
        .toLowerCase()
        .replaceAll(/[^\p{L}\p{N}\s_-]/gu, '')
        .replaceAll(/\s/g, '-'),
    ),
  );
}

function withoutCode(text: string): string {
  return text.replaceAll(/^(```|~~~)[\s\S]*?^\1/gm, '').replaceAll(/`[^`\n]*`/g, '');
}

function read(path: string): string {
  return readFileSync(join(root, path), 'utf8');
}
