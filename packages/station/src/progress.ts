// How far a long piece of work is: silent in its first second, then one line that is rewritten.

import type { Io } from './io.ts';

const QUIET = 1000;
const EVERY = 200;

/** A function to call with what is done, how much there is, and what else to show; `now` in ms. */
export function progressLine(
  io: Io,
  what: string,
  now: () => number = () => performance.now(),
): (done: number, all: number, more?: string) => void {
  const begun = now();
  let shown = begun;
  return (done, all, more = '') => {
    const time = now();
    if (time - begun < QUIET || time - shown < EVERY) return;
    shown = time;
    const left = ((time - begun) / Math.max(done, 1)) * (all - done);
    io.progress(
      done >= all ? '' : `${what}: ${done} of ${all}, about ${Math.max(1, Math.round(left / 1000))} s left${more}`,
    );
  };
}
