// The cabinet with what the job files say that its queue names; each is looked for from the folder of the cabinet file on.

import { dirname, join } from 'node:path';
import { type Cabinet, formatComplaint, type ReadSource, readQueueFiles } from '@stillair/engine';
import type { Io } from './io.ts';
import { progressLine } from './progress.ts';

/** Whether any job waits in the queue, its job file read or not. */
export function jobsWait({ queue }: Cabinet): boolean {
  return Object.keys({ ...queue?.jobs, ...queue?.unread }).length > 0;
}

export function noJobWaits(file: string): string {
  return `there is no job that waits in ${file}: give it a queue: with from: and jobs: (docs/plan.md)`;
}

/** Or, after complaints, the status that the command ends with. */
export async function withJobFiles(source: ReadSource, io: Io): Promise<ReadSource | 2 | 130> {
  const progress = progressLine(io, 'reading job files, MB');
  const answer = await readQueueFiles(source, {
    open: (path) => io.stream(join(dirname(source.file), path)),
    progress: (done, all) => progress(Math.floor(done), Math.ceil(all)),
    stop: () => io.stop.aborted,
  });
  io.progress('');
  if (answer.ok) return answer.source;
  if ('stopped' in answer) {
    io.err('Stopped: the job files were not read to their end.');
    return 130;
  }
  const { complaints } = answer;
  io.err(complaints.map(formatComplaint).join('\n\n'));
  io.err(
    `\n${complaints.length === 1 ? '1 fault' : `${complaints.length} faults`} in ${source.file} or its job files; nothing was computed.`,
  );
  return 2;
}
