// Turns the catalogue's YAML files into one TypeScript data file, so that nothing parses YAML at start-up and the browser
// needs no file. `--check` changes nothing and fails when the data file is out of step.

import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';

const folder = fileURLToPath(new URL('../packages/engine/src/cabinet/catalogue/', import.meta.url));
const target = join(folder, '../catalogue.data.ts');

/** The text of the data file: one line an entry, so that a change is one line of a diff. */
export function catalogueData() {
  const groups = new Map();
  for (const file of readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .sort()) {
    for (const [group, entries] of Object.entries(parse(readFileSync(join(folder, file), 'utf8')))) {
      if (groups.has(group)) throw new Error(`${file}: the group ${group} stands in another file too`);
      groups.set(group, Object.entries(entries));
    }
  }
  const body = [...groups].map(([group, entries]) => {
    const lines = entries.map(([kind, entry]) => `    ${JSON.stringify(kind)}: ${JSON.stringify(entry)},`);
    return `  ${JSON.stringify(group)}: {\n${lines.join('\n')}\n  },`;
  });
  return `// Generated from catalogue/*.yaml by tools/catalogue.mjs: change those and run \`node tools/catalogue.mjs\`.\n
export const catalogueData: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {\n${body.join('\n')}\n};\n`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const fresh = catalogueData();
  if (!process.argv.includes('--check')) writeFileSync(target, fresh);
  else if (readFileSync(target, 'utf8') !== fresh) {
    console.error('catalogue.data.ts is out of step: run node tools/catalogue.mjs');
    process.exitCode = 1;
  }
}
