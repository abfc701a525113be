// Writing a file so that a power cut leaves the old one or the new one, never a piece of either.

import { randomUUID } from 'node:crypto';
import { access, chmod, constants, open, realpath, rename, rm, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';

/** The file is there already; its mode stays. Throws what the operating system refuses. */
export async function replaceWhole(path: string, text: string): Promise<void> {
  const target = await realpath(path);
  await access(target, constants.W_OK); // a change of name would not ask
  await writeWhole(target, text, (await stat(target)).mode & 0o7777);
}

/** The folder is there; whatever has the name is replaced. `mode` is the usual one unless given. */
export async function writeWhole(path: string, content: string | Uint8Array, mode?: number): Promise<void> {
  const fresh = join(dirname(path), `.stillair-${randomUUID()}.tmp`);
  try {
    // Never open to more readers than the old one was.
    const file = await open(fresh, 'wx', mode === undefined ? 0o666 : 0o600);
    try {
      await file.writeFile(content);
      await file.sync();
    } finally {
      await file.close();
    }
    if (mode !== undefined) await chmod(fresh, mode);
    await rename(fresh, path);
  } finally {
    await rm(fresh, { force: true });
  }
}
