// What an option such as --svg OUT asks for: a text into a file, or with `-` printed.

import type { Io } from './io.ts';

/** What may be printed by a command, by the name of its option: `true`, or `-` for a file. */
export interface Outs {
  readonly json?: boolean | undefined;
  readonly network?: boolean | undefined;
  readonly csv?: string | undefined;
  readonly svg?: string | undefined;
  readonly ics?: string | undefined;
}

/** What of it goes to whoever reads what is printed. */
function printedOf({ json, network, csv, svg, ics }: Outs): string[] {
  const flags = Object.entries({ json, network }).flatMap(([name, on]) => (on === true ? [`--${name}`] : []));
  const files = Object.entries({ csv, svg, ics }).flatMap(([name, path]) => (path === '-' ? [`--${name} -`] : []));
  return [...flags, ...files];
}

/** Complains when two things would be printed one after the other: no reader could tell where one ends. */
export function printsTwice(command: string, outs: Outs, io: Io): boolean {
  const printed = printedOf(outs);
  if (printed.length < 2) return false;
  io.err(
    `stillair ${command}: ${printed.join(' and ')} cannot both be printed, as nobody could take them apart; write one of them into a file`,
  );
  return true;
}

/** Says that a file was written where it does not get into what another program reads. */
export function tellWritten(path: string, outs: Outs, io: Io): void {
  if (printedOf(outs).length > 0) io.err(`wrote ${path}`);
  else io.out(`wrote ${path}`);
}

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
