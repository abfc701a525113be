// A job file of the person's own, read piece by piece: it never leaves the computer, and memory does not grow with it.

import {
  endJob,
  entryKeys,
  type JobKnown,
  jobReport,
  openJob,
  type ReadSource,
  rulesOn,
  takeBytes,
  usualRules,
} from '@stillair/engine';
import { turn } from './hands.ts';
import type { JobRead, Unreadable, Wishes } from './protocol.ts';

const MEGABYTE = 1e6;

export async function readJobFile(
  { cabinet }: ReadSource,
  { file, machine, material }: Wishes,
  _hands: unknown,
  { progress, stop }: { readonly progress: (done: number, all: number) => void; readonly stop: () => boolean },
): Promise<JobRead | Unreadable> {
  if (file === undefined) throw new Error('no job file was picked');
  const known: JobKnown = {
    ...(material === undefined ? {} : { material }),
    ...(machine === undefined ? {} : { at: { cabinet, machine } }),
  };
  const reading = openJob(file.name, rulesOn(usualRules, known));
  const reader = file.stream().getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    takeBytes(reading, value);
    progress(Math.floor(reading.bytes / MEGABYTE), Math.ceil(file.size / MEGABYTE));
    if (stop()) throw new Error('it was stopped before the file was read');
    if (reading.done) break;
    await turn();
  }
  await reader.cancel();
  const answer = endJob(reading);
  if (!answer.ok) return { unreadable: file.name, complaints: answer.complaints };
  const report = jobReport(file.name, answer.job, known);
  return { file: file.name, job: answer.job, report, keys: entryKeys(report.entry) };
}
