// The command `stillair` as a process: the real outside, stopping, exit status, and the last catch.

import { basename } from 'node:path';
import { runProgram } from './program.ts';
import { realIo } from './real-io.ts';

const stopping = new AbortController();

process.on('SIGINT', () => {
  if (stopping.signal.aborted) process.exit(130); // asked twice: no more tidying
  stopping.abort();
});
process.on('SIGTERM', () => process.exit(143));
process.on('uncaughtException', confess);
process.stdout.on('error', leaveQuietly);
process.stderr.on('error', leaveQuietly);

runProgram(process.argv.slice(2), realIo(stopping.signal)).then((status) => {
  process.exitCode = status;
}, confess);

/** The reader of a pipe has gone (`stillair parts | head`): nobody is left to tell. */
function leaveQuietly(error: NodeJS.ErrnoException): void {
  if (error.code !== 'EPIPE') confess(error);
  process.exit();
}

/** One line and status 70 for whatever was not foreseen; never a stack trace. */
function confess(error: unknown): void {
  const [first, ...frames] = (error instanceof Error ? (error.stack ?? error.message) : String(error)).split('\n');
  const at = frames.map((frame) => /([^/\\(]+\.js):(\d+):\d+\)?$/.exec(frame)).find((match) => match !== null);
  const place = at ? ` at ${basename(at[1]!)}:${at[2]}` : '';
  process.stderr.write(
    `stillair: a fault of the program, not of your file (${first}${place}). Report it with this line, the command you gave and the cabinet file.\n`,
  );
  process.exitCode = 70;
  process.exit();
}
