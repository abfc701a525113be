// The JSON Schema of the cabinet file as data of the page. It never changes while the page runs, so it is made when the page is
// built, and the parts of the schema library that make it stay out of what a worker loads.

import { readFile } from 'node:fs/promises';
import { cabinetSchema } from '@stillair/engine';
import type { Plugin } from 'vite';

const DATA = 'virtual:file-schema';
const MAKERS = /[\\/]zod[\\/]v4[\\/]core[\\/](?:json-schema-processors|to-json-schema)\.js$/;

export const fileSchema: Plugin = {
  name: 'file-schema',
  enforce: 'pre',
  resolveId: (id) => (id === DATA ? `\0${DATA}` : undefined),
  load: async (id) => {
    if (id === `\0${DATA}`) return `export default ${JSON.stringify(cabinetSchema())};`;
    return MAKERS.test(id) ? withoutBodies(await readFile(id, 'utf8')) : undefined;
  },
};

/** The same names with nothing behind them: they are called where a schema is made, never where a file is read. */
function withoutBodies(module: string): string {
  const names = [...module.matchAll(/^export (?:const|function) (\w+)/gm)].map(([, name]) => name);
  return names.map((name) => `export const ${name} = undefined;`).join('\n');
}
