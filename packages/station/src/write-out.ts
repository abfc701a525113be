// What an option such as --svg OUT asks for: a text into a file, or with `-` printed.

import type { Io } from './io.ts';

/** How it was given out; undefined when it could not be, which was complained of. `command` is who complains. */
export async function writeOut(
  command: string,
  path: string,
  text: string,
  io: Io,
): Promise<'printed' | 'written' | undefined> {
  if (path === '-') {
    // `out` ends the last line: a reader of the pipe gets the bytes of the file.
    io.out(text.replace(/\n$/, ''));
    return 'printed';
  }
  const problem = await io.write(path, text);
  if (problem === undefined) return 'written';
  io.err(`stillair ${command}: cannot write ${path}: ${problem}`);
  return undefined;
}
