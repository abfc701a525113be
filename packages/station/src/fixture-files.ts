// The small files of `fixtures/`, read for the tests of commands.

import { readFileSync } from 'node:fs';

export function fixture(name: string): string {
  return readFileSync(new URL(`../fixtures/${name}`, import.meta.url), 'utf8');
}
