// When sockets may go off: after the jobs of the days, or after each job that waits, alone.

import { queueAsDays, type ReadSource, shutOffs } from '@stillair/engine';
import type { Hooks } from './hands.ts';
import type { Results, Wishes } from './protocol.ts';
import { withJobFiles } from './study-queue.ts';

export async function shutOffBy(
  source: ReadSource,
  { days, of, ...wishes }: Wishes,
  _hands: unknown,
  hooks: Hooks,
): Promise<Results['shutOff']> {
  if (of !== 'queue') return shutOffs(source, { ...hooks, ...(days === undefined ? {} : { days }) });
  const read = await withJobFiles(source, wishes, hooks);
  return 'unreadable' in read ? read : shutOffs({ ...read, cabinet: queueAsDays(read.cabinet) }, hooks);
}
