// The moment of a day that stands nearest to a time.

import type { ShownDay } from '../engine/protocol.ts';

export function momentOf({ sheet: { times } }: ShownDay, time: number): number {
  return momentIn(times, time);
}

/** Times are even. */
export function momentIn(times: readonly number[], time: number): number {
  const last = times.length - 1;
  return Math.min(last, Math.max(0, Math.round((time / times[last]!) * last)));
}
