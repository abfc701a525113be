// The frozen days as networks.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readNetwork } from '../packages/engine/dist/index.js';

export function frozenDay(name) {
  const file = join(import.meta.dirname, '../packages/engine/cases/frozen', `${name}.yaml`);
  const read = readNetwork(file, readFileSync(file, 'utf8'));
  if ('complaints' in read) throw new Error(`${file}: ${read.complaints[0].what}`);
  return read.network;
}
