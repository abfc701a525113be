// Where a line takes the machine: straight or round, with or without filament. Lengths come in mm or in, and are metres from here on.

import { arcBox, arcMiddle, arcRound, arcSpeed } from '@stillair/physics';
import { CODE } from './code-words.ts';
import type { JobState } from './job-state.ts';
import { arcAstray, arcTooSmall, arcWithoutEnd, arcWithoutMiddle, complain } from './line-refusals.ts';
import { bit, LETTER, type LineWords } from './line-words.ts';
import { addMove } from './move-queue.ts';

/** Speed before the file has said one, m/s; told in a note. */
const FIRST_FEED = 0.025;
/** How much farther the end of an arc may lie from its middle than its beginning: more is a damaged file. */
const ARC_ASTRAY = 0.0005;

const [X, Y, Z, E, R] = [bit(LETTER.X), bit(LETTER.Y), bit(LETTER.Z), bit(LETTER.E), bit(LETTER.R)];

export function goStraight(state: JobState, { given, value }: LineWords): void {
  const { place, offset, scale, incremental, all, printed } = state;
  const fromX = place[0]!;
  const fromY = place[1]!;
  const fromZ = place[2]!;
  let x = fromX;
  let y = fromY;
  let z = fromZ;
  if (given & X) {
    x = incremental ? fromX + value[LETTER.X]! * scale : value[LETTER.X]! * scale + offset[0]!;
    if (x < all[0]!) all[0] = x;
    if (x > all[1]!) all[1] = x;
  }
  if (given & Y) {
    y = incremental ? fromY + value[LETTER.Y]! * scale : value[LETTER.Y]! * scale + offset[1]!;
    if (y < all[2]!) all[2] = y;
    if (y > all[3]!) all[3] = y;
  }
  if (given & Z) {
    z = incremental ? fromZ + value[LETTER.Z]! * scale : value[LETTER.Z]! * scale + offset[2]!;
    if (z < all[4]!) all[4] = z;
    if (z > all[5]!) all[5] = z;
  }
  const push = given & E ? feedFilament(state, value[LETTER.E]!) : 0;
  const dx = x - fromX;
  const dy = y - fromY;
  const dz = z - fromZ;
  place[0] = x;
  place[1] = y;
  place[2] = z;
  const way = Math.sqrt(dx * dx + dy * dy + dz * dz);
  if (way === 0) {
    if (push !== 0) addFilamentMove(state, Math.abs(push));
    return;
  }
  if (dy !== 0) noteDepth(state, dy);
  const prints = push > 0 && (dx !== 0 || dy !== 0);
  if (prints) {
    widen(printed, 0, fromX, x);
    widen(printed, 2, fromY, y);
    widen(printed, 4, fromZ, z);
  }
  const speed = feedOf(state);
  const ux = dx / way;
  const uy = dy / way;
  const uz = dz / way;
  const acceleration = prints ? state.printAcceleration : state.travelAcceleration;
  addMove(state.queue, prints ? 0 : 1, way, speed, speed, acceleration, state.fan, ux, uy, uz, ux, uy, uz);
}

export function goRound(state: JobState, words: LineWords, bytes: Uint8Array, start: number): void {
  const { given, value } = words;
  const { place, offset, scale, incremental, all, printed } = state;
  if (!state.flat) {
    state.notes.add('arcs outside the level plane (G18, G19) are taken for straight moves');
    goStraight(state, words);
    return;
  }
  const fromX = place[0]!;
  const fromY = place[1]!;
  const fromZ = place[2]!;
  const target = (axis: number, letter: number): number =>
    given & bit(letter) ? (incremental ? place[axis]! : offset[axis]!) + value[letter]! * scale : place[axis]!;
  const x = target(0, LETTER.X);
  const y = target(1, LETTER.Y);
  const z = target(2, LETTER.Z);
  const clockwise = state.motion === CODE.clockwise;
  const aside = (letter: number): number => (given & bit(letter) ? value[letter]! * scale : 0);
  const radius = aside(LETTER.R);
  const chord = apart(x, y, fromX, fromY);
  if (given & R && (chord === 0 || chord > 2 * Math.abs(radius) + ARC_ASTRAY)) {
    complain(state, bytes, start, chord === 0 ? arcWithoutEnd : arcTooSmall);
    return;
  }
  const middle =
    given & R
      ? arcMiddle([fromX, fromY], [x, y], radius, clockwise)
      : ([fromX + aside(LETTER.I), fromY + aside(LETTER.J)] as const);
  const reach = apart(fromX, fromY, middle[0], middle[1]);
  if (reach === 0) {
    complain(state, bytes, start, arcWithoutMiddle);
    return;
  }
  if (Math.abs(apart(x, y, middle[0], middle[1]) - reach) > Math.max(ARC_ASTRAY, 0.01 * reach)) {
    complain(state, bytes, start, arcAstray);
    return;
  }
  const arc = arcRound([fromX, fromY], [x, y], middle, clockwise);
  const box = arcBox(arc);
  const push = given & E ? feedFilament(state, value[LETTER.E]!) : 0;
  widen(all, 0, box.x[0], box.x[1]);
  widen(all, 2, box.y[0], box.y[1]);
  if (given & Z) widen(all, 4, z, z);
  if (push > 0) {
    widen(printed, 0, box.x[0], box.x[1]);
    widen(printed, 2, box.y[0], box.y[1]);
    widen(printed, 4, fromZ, z);
  }
  noteArcDepth(state, fromY, y, arc.from, arc.sweep, middle[1], arc.radius);
  place[0] = x;
  place[1] = y;
  place[2] = z;
  const level = arc.radius * Math.abs(arc.sweep);
  const way = z === fromZ ? level : Math.sqrt(level * level + (z - fromZ) * (z - fromZ));
  const asked = feedOf(state);
  const acceleration = push > 0 ? state.printAcceleration : state.travelAcceleration;
  const speed = Math.min(asked, (arcSpeed(acceleration, arc.radius) * way) / level);
  const flat = level / way;
  const up = (z - fromZ) / way;
  const turn = arc.sweep > 0 ? 1 : -1;
  // Across the line from the middle, on the side to which it turns; the end is as far round as it says, not where it lies.
  const share = (turn * flat) / arc.radius;
  const outward = arc.from + arc.sweep;
  const beginX = -(fromY - middle[1]) * share;
  const beginY = (fromX - middle[0]) * share;
  const endX = -Math.sin(outward) * turn * flat;
  const endY = Math.cos(outward) * turn * flat;
  const kind = push > 0 ? 0 : 1;
  addMove(state.queue, kind, way, asked, speed, acceleration, state.fan, beginX, beginY, up, endX, endY, up);
}

function addFilamentMove(state: JobState, way: number): void {
  const speed = feedOf(state);
  addMove(state.queue, 2, way, speed, speed, state.printAcceleration, state.fan, 0, 0, 0, 0, 0, 0);
}

function feedOf(state: JobState): number {
  if (state.feed > 0) return state.feed;
  state.notes.add('moves before any feed (F) are taken at 25 mm/s');
  return FIRST_FEED;
}

/** Gives what is fed, m; below 0 it is drawn back. */
function feedFilament(state: JobState, number: number): number {
  const said = number * state.scale;
  // Where places count from the last one, filament does too, whatever was said of it alone: so most firmwares have it.
  const relative = state.filamentRelative || state.incremental;
  const push = relative ? said : said - state.filament;
  state.filament = relative ? state.filament + said : said;
  const fed = state.fed[state.tool]! + push;
  state.fed[state.tool] = fed;
  if (fed > state.mostFed[state.tool]!) state.mostFed[state.tool] = fed;
  return push;
}

function widen(box: Float64Array, axis: number, one: number, other: number): void {
  const low = Math.min(one, other);
  const high = Math.max(one, other);
  if (low < box[axis]!) box[axis] = low;
  if (high > box[axis + 1]!) box[axis + 1] = high;
}

function noteDepth(state: JobState, way: number): void {
  const sign = way > 0 ? 1 : -1;
  state.depthWay += way * sign;
  if (state.depthSign === -sign) state.reversals++;
  state.depthSign = sign;
}

/** An arc goes to and fro between its outermost points. */
function noteArcDepth(
  state: JobState,
  begin: number,
  end: number,
  from: number,
  sweep: number,
  middle: number,
  radius: number,
): void {
  const forward = sweep > 0;
  const to = from + sweep;
  // Highest and lowest points lie at odd quarters of the turn.
  let k = forward ? Math.ceil(from / Math.PI - 0.5) : Math.floor(from / Math.PI - 0.5);
  let at = begin;
  for (; forward ? (k + 0.5) * Math.PI < to : (k + 0.5) * Math.PI > to; k += forward ? 1 : -1) {
    const next = middle + (k % 2 === 0 ? radius : -radius);
    if (next !== at) noteDepth(state, next - at);
    at = next;
  }
  if (end !== at) noteDepth(state, end - at);
}

function apart(x: number, y: number, u: number, v: number): number {
  return Math.sqrt((x - u) * (x - u) + (y - v) * (y - v));
}
