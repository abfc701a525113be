// What the chores share: where the repository is, and how one step of a chore runs and is told.

import { spawnSync } from 'node:child_process';
import { realpathSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('..', import.meta.url));

/** Runs a program in the repository with its output shown, and tells whether it ended with one of the statuses that are well. */
export function ran(program, words, { environment = {}, well = [0] } = {}) {
  const { status, error } = spawnSync(program, words, {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, ...environment },
  });
  if (error) console.error(`${program}: ${error.message}`);
  return well.includes(status);
}

/** Runs a program of an installed package with this same Node, so that neither a shell nor the PATH matters. */
export function ranTool(entry, words) {
  return ran(process.execPath, [join(root, 'node_modules', entry), ...words]);
}

/** True when the module at `url` is the program that was started, not one that another imports. */
export function isMain(url) {
  return process.argv[1] !== undefined && realpathSync(process.argv[1]) === fileURLToPath(url);
}
