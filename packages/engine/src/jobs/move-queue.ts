// Moves in their order, timed: each corner is taken as fast as it and the ways behind and before it allow. A window of moves is looked
// ahead over: going backward from a stop at its end gives what can still be braked from, going forward what can be reached.
// A queue is filled and emptied in place, so that a file of any length takes the same memory.

import { cornerSpeed, moveTime, reachedSpeed } from '@stillair/physics';

/** A move sees so many others before it at least; they are timed so many at once. */
const AHEAD = 256;
const AT_ONCE = 256;

/** What a move does: 0 prints, 1 goes elsewhere, 2 only feeds or draws back filament. */
type MoveKind = 0 | 1 | 2;

/** Places in `sums`, s unless said otherwise. */
export const SUM = { printing: 0, travelling: 1, filament: 2, atSpeed: 3, stopAndGo: 4, fan: 5, clock: 6 } as const;

export interface MoveQueue {
  readonly deviation: number;
  readonly length: Float64Array;
  readonly speed: Float64Array;
  readonly acceleration: Float64Array;
  /** Highest speed at the beginning of each move; of the first the speed that it has. */
  readonly corner: Float64Array;
  /** Speed at the beginning of each move, as far as is known; one more than there are moves, the last a stop. */
  readonly begin: Float64Array;
  readonly kind: Uint8Array;
  readonly fan: Float64Array;
  readonly sums: Float64Array;
  /** Direction in which the last move ends; none after a stop. */
  readonly direction: Float64Array;
  moving: boolean;
  count: number;
  added: number;
  timed: number;
  /** Told when the move of this number begins, counted from the first of the file. */
  nextMark: number;
  readonly onMark: (clock: number) => number;
}

export interface QueueOptions {
  readonly deviation: number;
  readonly ahead?: number;
  /** Called when the move of `nextMark` begins or would begin; gives the next one, or Infinity. */
  readonly onMark?: (clock: number) => number;
}

export function openQueue({ deviation, ahead = AHEAD, onMark = () => Infinity }: QueueOptions): MoveQueue {
  const size = ahead + AT_ONCE;
  return {
    deviation,
    length: new Float64Array(size),
    speed: new Float64Array(size),
    acceleration: new Float64Array(size),
    corner: new Float64Array(size),
    begin: new Float64Array(size + 1),
    kind: new Uint8Array(size),
    fan: new Float64Array(size),
    sums: new Float64Array(7),
    direction: new Float64Array(3),
    moving: false,
    count: 0,
    added: 0,
    timed: 0,
    nextMark: Infinity,
    onMark,
  };
}

/** A move that begins in one direction and ends in another; all zero for one that is filament only, which stops before and after. */
export function addMove(
  queue: MoveQueue,
  kind: MoveKind,
  length: number,
  asked: number,
  speed: number,
  acceleration: number,
  fan: number,
  beginX: number,
  beginY: number,
  beginZ: number,
  endX: number,
  endY: number,
  endZ: number,
): void {
  const { direction, corner, sums } = queue;
  const at = queue.count;
  if (at === 0) corner[0] = 0;
  else if (kind === 2 || !queue.moving) corner[at] = 0;
  else {
    const together = direction[0]! * beginX + direction[1]! * beginY + direction[2]! * beginZ;
    const slower = Math.min(queue.acceleration[at - 1]!, acceleration);
    const turn = cornerSpeed(slower, queue.deviation, Math.min(1, Math.max(-1, together)));
    corner[at] = Math.min(turn, speed, queue.speed[at - 1]!);
  }
  queue.length[at] = length;
  queue.speed[at] = speed;
  queue.acceleration[at] = acceleration;
  queue.kind[at] = kind;
  queue.fan[at] = fan;
  direction[0] = endX;
  direction[1] = endY;
  direction[2] = endZ;
  queue.moving = kind !== 2;
  queue.count = at + 1;
  queue.added++;
  sums[SUM.atSpeed]! += length / asked;
  sums[SUM.stopAndGo]! += moveTime(length, speed, acceleration, 0, 0);
  if (queue.count === queue.length.length) time(queue, AT_ONCE);
}

/** Comes to a stop: everything is timed, and the next move begins at rest. */
export function stop(queue: MoveQueue): void {
  time(queue, queue.count);
  queue.moving = false;
  tellMarks(queue);
}

/** A pause of known length, after what came before. */
export function rest(queue: MoveQueue, seconds: number): void {
  stop(queue);
  queue.sums[SUM.clock]! += seconds;
}

/** Times the first `most` moves and takes them out. */
function time(queue: MoveQueue, most: number): void {
  const { length, speed, acceleration, corner, begin, kind, fan, sums, count } = queue;
  begin[count] = 0;
  for (let at = count - 1; at > 0; at--) {
    begin[at] = Math.min(corner[at]!, reachedSpeed(begin[at + 1]!, acceleration[at]!, length[at]!));
  }
  let entry = corner[0]!; // where the moves that are gone have ended: that is so already
  for (let at = 0; at < most; at++) {
    if (queue.timed >= queue.nextMark) tellMarks(queue);
    const exit = Math.min(begin[at + 1]!, reachedSpeed(entry, acceleration[at]!, length[at]!));
    const seconds = moveTime(length[at]!, speed[at]!, acceleration[at]!, entry, exit);
    sums[kind[at]!]! += seconds;
    sums[SUM.clock]! += seconds;
    sums[SUM.fan]! += seconds * fan[at]!;
    queue.timed++;
    entry = exit;
  }
  length.copyWithin(0, most, count);
  speed.copyWithin(0, most, count);
  acceleration.copyWithin(0, most, count);
  corner.copyWithin(0, most, count);
  corner[0] = entry;
  kind.copyWithin(0, most, count);
  fan.copyWithin(0, most, count);
  queue.count = count - most;
}

function tellMarks(queue: MoveQueue): void {
  while (queue.timed >= queue.nextMark) queue.nextMark = queue.onMark(queue.sums[SUM.clock]!);
}
