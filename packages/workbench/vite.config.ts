// The page is built into `dist`, from the packages' sources; it is served by the station, or by any server of plain files.

import { readdirSync, readFileSync } from 'node:fs';
import { defineConfig, type Plugin } from 'vite';
import { fileSchema } from './file-schema.ts';
import { offline } from './offline.ts';
import about from './package.json' with { type: 'json' };

const examples = new URL('../../examples/', import.meta.url);

/** The examples travel with the page, so that it works where nothing but files is served. */
const withExamples: Plugin = {
  name: 'with-examples',
  generateBundle() {
    for (const name of readdirSync(examples).filter((each) => /(?<!\.diary)\.yaml$/.test(each)))
      this.emitFile({ type: 'asset', fileName: `examples/${name}`, source: readFileSync(new URL(name, examples)) });
  },
};

export default defineConfig({
  base: './',
  define: { 'import.meta.env.VERSION': JSON.stringify(about.version) },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  plugins: [fileSchema, withExamples, offline],
  resolve: {
    conditions: ['stillair-source', 'module', 'browser', 'development|production'],
  },
  worker: { format: 'es', plugins: () => [fileSchema], rolldownOptions: { checks: { pluginTimings: false } } },
  build: {
    target: 'es2022',
    // A data: address would need a hole in the page's security policy.
    assetsInlineLimit: 0,
    // Sizes are held by e2e/size.test.ts; whoever sets the program up need not hear of them, nor of what building takes.
    chunkSizeWarningLimit: 1000,
    rolldownOptions: {
      checks: { pluginTimings: false },
      output: {
        codeSplitting: {
          groups: [
            { name: 'three', test: /node_modules[\\/]three/ },
            {
              name: 'editor',
              test: /node_modules[\\/](@codemirror|@lezer|codemirror|style-mod|w3c-keyname|crelt)[\\/]/,
            },
            { name: 'page', test: /node_modules[\\/]preact[\\/]/ },
          ],
        },
      },
    },
  },
});
