// What a line of a job file asks for besides moves: units, set-points, fan, waits, tools.

import { CODE, toolOf } from './code-words.ts';
import { goRound, goStraight } from './go.ts';
import { note } from './heat-course.ts';
import type { SetPoint } from './job.ts';
import { INCH, type JobState, MILLIMETRE } from './job-state.ts';
import { arcWithoutMiddle, complain, dwellBelowNothing } from './line-refusals.ts';
import { bit, LETTER, type LineWords } from './line-words.ts';
import { rest, SUM, stop } from './move-queue.ts';

const CELSIUS = 273.15;
/** Set-points that may wait for their time before the moves are timed for their sake. */
const MOST_WAITING = 64;

const [X, Y, Z, E, F, S, P, R, T] = [
  bit(LETTER.X),
  bit(LETTER.Y),
  bit(LETTER.Z),
  bit(LETTER.E),
  bit(LETTER.F),
  bit(LETTER.S),
  bit(LETTER.P),
  bit(LETTER.R),
  bit(LETTER.T),
];
const MIDDLE = bit(LETTER.I) | bit(LETTER.J);
const GOES = X | Y | Z | E;

export function obeyLine(state: JobState, words: LineWords, bytes: Uint8Array, start: number): void {
  const { given, value, codes, count } = words;
  let uses = false; // another code of the line takes its places
  for (let at = 0; at < count; at++) {
    const code = codes[at]!;
    if (code <= CODE.anticlockwise && code >= CODE.rapid) state.motion = code;
    else uses = obeyCode(state, code, words, bytes, start) || uses;
  }
  if (given & F) {
    const feed = (value[LETTER.F]! * state.scale) / 60;
    if (feed > 0) state.feed = feed;
    else state.notes.add('a feed of 0 or less is left out: the one before it holds on');
  }
  if (uses || (given & (GOES | MIDDLE)) === 0 || state.ended) return;
  if (state.motion >= CODE.clockwise && given & (MIDDLE | R)) goRound(state, words, bytes, start);
  else if (given & GOES) {
    if (state.motion >= CODE.clockwise) complain(state, bytes, start, arcWithoutMiddle);
    else goStraight(state, words);
  }
}

/** Everything but moves. Tells whether it took the places that the line names. */
function obeyCode(state: JobState, code: number, words: LineWords, bytes: Uint8Array, start: number): boolean {
  const { given, value } = words;
  switch (code) {
    case CODE.absolute:
    case CODE.incremental:
      state.incremental = code === CODE.incremental;
      return false;
    case CODE.inch:
    case CODE.millimetre:
      state.scale = code === CODE.inch ? INCH : MILLIMETRE;
      return false;
    case CODE.planeXY:
    case CODE.planeXZ:
    case CODE.planeYZ:
      state.flat = code === CODE.planeXY;
      return false;
    case CODE.filamentAbsolute:
    case CODE.filamentRelative:
      state.filamentRelative = code === CODE.filamentRelative;
      return false;
    case CODE.setPosition:
      setPosition(state, words);
      return true;
    case CODE.home:
      goHome(state, words);
      return true;
    case CODE.dwell:
      dwell(state, words, bytes, start);
      return true;
    case CODE.nozzle:
    case CODE.nozzleAndWait:
      return setHeat(state, 'nozzle', code === CODE.nozzleAndWait, words);
    case CODE.bed:
    case CODE.bedAndWait:
      return setHeat(state, 'bed', code === CODE.bedAndWait, words);
    case CODE.chamber:
    case CODE.chamberAndWait:
      return setHeat(state, 'chamber', code === CODE.chamberAndWait, words);
    case CODE.fan:
    case CODE.fanOff:
      if (given & P && value[LETTER.P] !== 0) return true; // another fan than that of the part
      state.fan = code === CODE.fanOff ? 0 : given & S ? Math.min(1, Math.max(0, value[LETTER.S]! / 255)) : 1;
      state.mostFan = Math.max(state.mostFan, state.fan);
      return true;
    case CODE.acceleration:
      setAcceleration(state, words);
      return true;
    case CODE.pause:
    case CODE.pauseIfAsked:
      stop(state.queue);
      state.pauses++;
      return true;
    case CODE.end:
    case CODE.endAndRewind:
    case CODE.emergencyStop:
      stop(state.queue);
      state.ended = true;
      return true;
    default:
      changeTool(state, toolOf(code));
      return false;
  }
}

function setPosition(state: JobState, { given, value }: LineWords): void {
  const every = (given & GOES) === 0;
  if (every || given & E) state.filament = every ? 0 : value[LETTER.E]! * state.scale;
  for (const [axis, letter] of [LETTER.X, LETTER.Y, LETTER.Z].entries()) {
    if (every) state.offset[axis] = state.place[axis]!;
    else if (given & bit(letter)) state.offset[axis] = state.place[axis]! - value[letter]! * state.scale;
  }
}

/** Home is taken for 0 of each axis; the way there and its time are not known. */
function goHome(state: JobState, { given, bare }: LineWords): void {
  stop(state.queue);
  state.homing++;
  const named = (given | bare) & (X | Y | Z);
  for (const [axis, letter] of [LETTER.X, LETTER.Y, LETTER.Z].entries()) {
    if (named !== 0 && !(named & bit(letter))) continue;
    state.place[axis] = 0;
    state.offset[axis] = 0;
  }
}

function dwell(state: JobState, { given, value }: LineWords, bytes: Uint8Array, start: number): void {
  const inP = given & P ? value[LETTER.P]! / (state.rules.dwell === 'seconds' ? 1 : 1000) : 0;
  const seconds = given & S ? value[LETTER.S]! : inP;
  if (seconds < 0) {
    complain(state, bytes, start, dwellBelowNothing);
    return;
  }
  if (!(given & S) && inP > 0) state.dwellsInP++;
  rest(state.queue, seconds);
  state.dwell += seconds;
}

function setHeat(state: JobState, what: SetPoint['what'], waits: boolean, { given, value }: LineWords): boolean {
  if (waits) {
    stop(state.queue);
    state.heatWaits++;
  }
  if (!(given & (S | R))) return true;
  const said = given & S ? value[LETTER.S]! : value[LETTER.R]!;
  const tool = what !== 'nozzle' ? undefined : given & T ? value[LETTER.T]! : state.tool;
  const point: Omit<SetPoint, 'at'> = {
    what,
    ...(tool === undefined ? {} : { tool }),
    ...(said > 0 ? { to: said + CELSIUS } : {}),
    waits,
  };
  const { queue, heat } = state;
  if (heat.waiting.length >= MOST_WAITING) stop(queue);
  if (queue.timed === queue.added) note(heat, { at: queue.sums[SUM.clock]!, ...point });
  else {
    heat.waiting.push({ before: queue.added, point });
    if (heat.waiting.length === 1) queue.nextMark = queue.added;
  }
  return true;
}

function setAcceleration(state: JobState, { given, value }: LineWords): void {
  const said = (letter: number): number | undefined => {
    const acceleration = value[letter]! * MILLIMETRE;
    return given & bit(letter) && acceleration > 0 ? acceleration : undefined;
  };
  const both = said(LETTER.S);
  state.printAcceleration = both ?? said(LETTER.P) ?? state.printAcceleration;
  state.travelAcceleration = both ?? said(LETTER.T) ?? state.travelAcceleration;
}

function changeTool(state: JobState, tool: number | undefined): void {
  if (tool === undefined || tool === state.tool) return;
  stop(state.queue);
  state.tool = tool;
  state.toolChanges++;
}
