// Writing a text in place of another so that a power cut leaves the old one or the new one, never a piece of either.

import { randomUUID } from 'node:crypto';
import { access, chmod, constants, open, realpath, rename, rm, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';

/** The file is there already; its mode stays. Throws what the operating system refuses. */
export async function writeWhole(path: string, text: string): Promise<void> {
  const target = await realpath(path);
  await access(target, constants.W_OK); // a change of name would not ask
  const fresh = join(dirname(target), `.stillair-${randomUUID()}.tmp`);
  try {
    const file = await open(fresh, 'wx', 0o600);
    try {
      await file.writeFile(text);
      await file.sync();
    } finally {
      await file.close();
    }
    await chmod(fresh, (await stat(target)).mode & 0o7777);
    await rename(fresh, target);
  } finally {
    await rm(fresh, { force: true });
  }
}
