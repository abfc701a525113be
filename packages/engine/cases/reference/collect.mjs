// Puts the network cases and their answers into one module, so that the checks need no files:
//   node packages/engine/cases/reference/collect.mjs
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const cases = join(import.meta.dirname, '..');
const target = join(cases, '../src/day/network-cases.data.ts');

const known = ['network', 'frozen']
  .flatMap((folder) => readdirSync(join(cases, folder)).map((name) => join(cases, folder, name)))
  .filter((path) => path.endsWith('.expected.json'))
  .sort()
  .map((path) => {
    const { id, title, answers } = JSON.parse(readFileSync(path, 'utf8'));
    const told = answers.map(({ id, value, unit, method, tolerance_for_tool: tolerance }) => ({
      id,
      value,
      unit,
      method,
      tolerance,
    }));
    return { id, title, yaml: readFileSync(path.replace('.expected.json', '.yaml'), 'utf8'), answers: told };
  });

const text = `// Made by cases/reference/collect.mjs from cases/network and cases/frozen; a test holds the two together.

import type { NetworkCase } from './network-case.ts';

export const networkCases: readonly NetworkCase[] = ${JSON.stringify(known, null, 1)};
`;
writeFileSync(target, text);
