// Reading the cabinet file that a person named, with everything that is wrong with it printed.

import { formatComplaint, type ReadSource, readCabinet } from '@stillair/engine';
import type { Io } from './io.ts';

/** The cabinet with its text, or undefined after the complaints have been printed: the command then ends with status 2. */
export async function loadCabinet(file: string, command: string, io: Io): Promise<ReadSource | undefined> {
  const reading = await io.read(file);
  if (!reading.ok) {
    io.err(`stillair ${command}: cannot read ${file}: ${reading.problem}`);
    return undefined;
  }
  return readSource(file, reading.text, io);
}

/** The same of a text that is at hand. */
export function readSource(file: string, text: string, io: Io): ReadSource | undefined {
  const answer = readCabinet(file, text);
  if (answer.ok) return { file, text, cabinet: answer.cabinet, origins: answer.origins };
  const { complaints } = answer;
  io.err(complaints.map(formatComplaint).join('\n\n'));
  io.err(`\n${complaints.length === 1 ? '1 fault' : `${complaints.length} faults`} in ${file}; nothing was computed.`);
  return undefined;
}
