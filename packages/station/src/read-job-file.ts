// A job file that a person named, read in pieces, and which machine and material of a cabinet it is for.

import {
  type Cabinet,
  endJob,
  formatComplaint,
  type JobKnown,
  type JobRules,
  type JobSummary,
  materialsOf,
  openJob,
  takeBytes,
} from '@stillair/engine';
import type { Io } from './io.ts';
import { progressLine } from './progress.ts';
import { fileProblem } from './read-file.ts';
import { unknownName } from './unknown-name.ts';

const MEGABYTE = 1e6;

/** What the job comes to; or, after a complaint, the status that the command ends with. */
export async function readJobFile(
  file: string,
  rules: JobRules,
  command: string,
  io: Io,
): Promise<JobSummary | 2 | 130> {
  const refuse = (problem: string): 2 => {
    io.err(`stillair ${command}: ${problem}`);
    return 2;
  };
  const stream = await io.stream(file);
  if (!stream.ok) return refuse(`cannot read ${file}: ${stream.problem}`);
  const reading = openJob(file, rules);
  const progress = progressLine(io, 'reading, MB');
  try {
    for await (const piece of stream.pieces) {
      takeBytes(reading, piece);
      progress(Math.floor(reading.bytes / MEGABYTE), Math.ceil(stream.bytes / MEGABYTE));
      if (reading.done || io.stop.aborted) break;
    }
  } catch (error) {
    return refuse(`cannot read ${file}: ${fileProblem(error)}`);
  } finally {
    io.progress('');
  }
  if (io.stop.aborted) {
    io.err(`Stopped: ${Math.floor(reading.bytes / MEGABYTE)} of ${Math.ceil(stream.bytes / MEGABYTE)} MB were read`);
    return 130;
  }
  const answer = endJob(reading);
  if (!answer.ok) {
    io.err(answer.complaints.map(formatComplaint).join('\n\n'));
    const faults = answer.complaints.length + answer.more;
    io.err(`\n${faults === 1 ? '1 fault' : `${faults} faults or more`} in ${file}; nothing was computed.`);
    return 2;
  }
  return answer.job;
}

/** Machine and material as the person named them, or what is wrong with the names. */
export function knownIn(
  cabinet: Cabinet | undefined,
  { machine, material }: { readonly machine: string | undefined; readonly material: string | undefined },
): JobKnown | string {
  const materials = materialsOf(cabinet);
  if (material !== undefined && !Object.hasOwn(materials, material)) {
    return unknownName('material', material, Object.keys(materials));
  }
  const known: JobKnown = { ...(material && { material }) };
  if (cabinet === undefined) return known;
  const machines = Object.keys(cabinet.machines);
  const chosen = machine ?? (machines.length === 1 ? machines[0]! : undefined);
  if (chosen === undefined) return `--machine: say which of ${machines.join(', ')} runs this job`;
  if (!Object.hasOwn(cabinet.machines, chosen)) return unknownName('machine', chosen, machines);
  return { ...known, at: { cabinet, machine: chosen } };
}
