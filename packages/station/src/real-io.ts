// The outside of the program: files, the terminal, the person's wish to stop.

import { writeFile } from 'node:fs/promises';
import { createInterface } from 'node:readline/promises';
import type { Io } from './io.ts';
import { fileProblem, readTextFile } from './read-file.ts';
import { streamFile } from './stream-file.ts';
import { replaceWhole } from './write-whole.ts';

/** Text stays readable: wider terminals are not filled, narrower ones get what fits. */
const WIDEST = 100;
const NARROWEST = 40;
const NOT_A_TERMINAL = 80;

const ERASE_LINE = `\r${String.fromCharCode(27)}[2K`;

export function realIo(stop: AbortSignal): Io {
  const { stdin, stdout, stderr, env } = process;
  let shown = '';
  const erase = () => {
    if (shown !== '') stderr.write(ERASE_LINE);
    shown = '';
  };
  const columns = stdout.isTTY
    ? Math.min(WIDEST, Math.max(NARROWEST, stdout.columns || NOT_A_TERMINAL))
    : NOT_A_TERMINAL;
  const complain = (text: string) => {
    erase();
    stderr.write(`${text}\n`);
  };
  return {
    read: readTextFile,
    stream: streamFile,
    async write(path, text, how) {
      try {
        if (how === 'whole') await replaceWhole(path, text);
        else await writeFile(path, text, { flag: how === 'new' ? 'wx' : 'w' });
        return undefined;
      } catch (error) {
        return fileProblem(error);
      }
    },
    writeSet: (folder, files, how) => import('./papers/write-set.ts').then((set) => set.writeSet(folder, files, how)),
    // Only one command needs it, and all others start the quicker without.
    serve: (asked) => import('./server/serve.ts').then(({ serve }) => serve(asked, complain)),
    out(text) {
      erase();
      stdout.write(`${text}\n`);
    },
    err: complain,
    progress(text) {
      if (!stderr.isTTY) return;
      erase();
      shown = text.slice(0, columns - 1);
      stderr.write(shown);
    },
    today() {
      const now = new Date();
      const two = (number: number): string => String(number).padStart(2, '0');
      return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
    },
    ask: stdin.isTTY ? askAtTerminal(stop) : async () => undefined,
    isTerminal: stdout.isTTY === true,
    columns,
    // https://no-color.org: any value but the empty one switches colour off.
    colour: stdout.isTTY === true && !env['NO_COLOR'] && env['TERM'] !== 'dumb',
    stop,
  };
}

function askAtTerminal(stop: AbortSignal): Io['ask'] {
  return async (question) => {
    const lines = createInterface({ input: process.stdin, output: process.stderr });
    const ended = new Promise<undefined>((resolve) => lines.once('close', () => resolve(undefined)));
    lines.once('SIGINT', () => process.emit('SIGINT'));
    try {
      return await Promise.race([lines.question(`${question} `, { signal: stop }), ended]);
    } catch {
      return undefined; // stopped while asking
    } finally {
      lines.close();
    }
  };
}
