// Runs the bundled program from the machine's own form of it, which was kept when it was set up: of a small check's time a
// quarter went into compiling what is the same at every start. Node's own cache of compiled code is newer than Node 20, and
// keeps nothing of the functions that only ran later.

import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import vm from 'node:vm';

/** Code kept by another release of Node, or for another processor, would be refused: each has its own. */
const KEPT = `${process.version}-${process.arch}.code`;

/** Where the kept code of a file of the bundle is. */
export function keptCode(folder, name) {
  return join(folder, `${name}.${KEPT}`);
}

/**
 * @param folder - That of the bundle; its files are CommonJS and hold no character beyond ASCII.
 * @returns `load` runs a file of it once, and those that it asks for; `keep` writes what was compiled of all that ran.
 */
export function openBundle(folder) {
  const modules = new Map();
  const scripts = new Map();

  const load = (name) => {
    const known = modules.get(name);
    if (known !== undefined) return known.exports;
    const filename = join(folder, name);
    const script = new vm.Script(
      // On the first line, so that places in messages stay right.
      `(function (exports, require, module, __filename, __dirname) {${readFileSync(filename, 'latin1')}\n})`,
      { filename, cachedData: read(keptCode(folder, name)) },
    );
    scripts.set(name, script);
    const module = { exports: {} };
    modules.set(name, module);
    const outside = createRequire(filename);
    const require = (id) => (id.startsWith('./') ? load(id.slice(2)) : outside(id));
    require.resolve = outside.resolve;
    script.runInThisContext()(module.exports, require, module, filename, folder);
    return module.exports;
  };

  const keep = () => {
    for (const [name, script] of scripts) writeFileSync(keptCode(folder, name), script.createCachedData());
  };
  return { load, keep };
}

function read(file) {
  try {
    return readFileSync(file);
  } catch {
    return undefined; // kept by no one for this Node: it is compiled
  }
}
