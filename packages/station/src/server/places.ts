// Where the page and the examples lie, seen from this module: it runs from the sources, compiled, or bundled.

import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export interface Places {
  /** Folder of the built page. */
  readonly page: string;
  readonly examples: string;
}

export function placesOfRepository(): Places {
  let root = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(root, 'packages/station/package.json')) && dirname(root) !== root) root = dirname(root);
  return { page: join(root, 'packages/workbench/dist'), examples: join(root, 'examples') };
}
