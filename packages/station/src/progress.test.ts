import { expect, it } from 'vitest';
import { fakeIo } from './fake-io.ts';
import { progressLine } from './progress.ts';

function ticking(times: readonly number[]) {
  const waiting = [0, ...times];
  return () => waiting.shift() ?? 0;
}

it('exact: says nothing within the first second', () => {
  const io = fakeIo();
  const tell = progressLine(io, 'varying inputs', ticking([300, 999]));
  tell(1, 9);
  tell(2, 9);
  expect(io.printed.progress).toEqual([]);
});

it('exact: then tells how far it is and how long it will take, at most five times a second, and clears at the end', () => {
  const io = fakeIo();
  const tell = progressLine(io, 'varying inputs', ticking([2000, 2100, 4000, 5000]));
  tell(2, 10);
  tell(3, 10);
  tell(4, 10);
  tell(10, 10);
  expect(io.printed.progress).toEqual([
    'varying inputs: 2 of 10, about 8 s left',
    'varying inputs: 4 of 10, about 6 s left',
    '',
  ]);
});
