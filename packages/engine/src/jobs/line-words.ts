// One line of a job file, taken apart into words: a letter and a number each (RS-274, ISO 6983). Works on bytes and writes into a
// line that is used again and again: files have millions of lines, and an object for each would take longer than all the rest.

import { codeOf, isKnown } from './code-words.ts';

/** Place of each letter that matters in the alphabet, and its bit in a mask. */
export const LETTER = {
  E: 4,
  F: 5,
  G: 6,
  I: 8,
  J: 9,
  M: 12,
  N: 13,
  P: 15,
  R: 17,
  S: 18,
  T: 19,
  X: 23,
  Y: 24,
  Z: 25,
} as const;
export const bit = (letter: number): number => 1 << letter;

export type LineFault =
  | 'binary'
  | 'letter-without-number'
  | 'not-a-word'
  | 'number-too-large'
  | 'comment-open'
  | 'checksum-wrong'
  | 'checksum-missing';

export interface LineWords {
  /** Number behind each letter, by its place in the alphabet; only those whose bit is in `given` are of this line. */
  readonly value: Float64Array;
  given: number;
  /** Letters that stand without a number, as in `G28 X`. */
  bare: number;
  /** What the line asks for, in its order: see `codeOf`. */
  readonly codes: Int32Array;
  count: number;
  /** First word that is not known; the rest of its line is not looked at. */
  unknown: string | undefined;
  checksum: boolean;
  fault: LineFault | undefined;
  /** Where that is, bytes from the beginning of the line. */
  faultAt: number;
  /** Letter before a number that is missing or too large; what a checksum comes to. */
  faultOf: number;
}

/** More codes than anybody writes on one line; further ones are not obeyed. */
const MOST_CODES = 16;
/** No machine goes farther, mm, nor has such a set-point. */
const LARGEST = 1e7;
const LONGEST_NAME = 40;
const TENS = Float64Array.from({ length: 23 }, (_, power) => 10 ** power);

const NEWLINE = 10;
const TAB = 9;
const RETURN = 13;
const SPACE = 32;
const SEMICOLON = 59;
const STAR = 42;
const PERCENT = 37;
const OPEN = 40;
const CLOSE = 41;
const PLUS = 43;
const MINUS = 45;
const POINT = 46;

export function emptyLine(): LineWords {
  return {
    value: new Float64Array(26),
    given: 0,
    bare: 0,
    codes: new Int32Array(MOST_CODES),
    count: 0,
    unknown: undefined,
    checksum: false,
    fault: undefined,
    faultAt: 0,
    faultOf: 0,
  };
}

/**
 * Takes the line apart that begins at `start`. A newline must follow it: nothing else ends the search.
 *
 * @returns Where the next line begins.
 */
export function readLine(bytes: Uint8Array, start: number, line: LineWords): number {
  const { value, codes } = line;
  let at = start;
  let given = 0;
  let bare = 0;
  let count = 0;
  line.unknown = undefined;
  line.fault = undefined;
  line.checksum = false;
  for (;;) {
    const byte = bytes[at++]!;
    if (byte === SPACE) continue;
    if (byte === NEWLINE) break;
    const letter = (byte | 32) - 97;
    if (letter < 0 || letter > 25 || byte < 65) {
      if (byte === TAB || byte === RETURN) continue;
      if (byte === SEMICOLON) {
        at = skip(bytes, at, start, line);
        break;
      }
      if (byte === OPEN) {
        at = skipInside(bytes, at, start, line);
        if (line.fault !== undefined) break;
        continue;
      }
      if (byte === STAR) {
        at = readChecksum(bytes, at, start, line);
        break;
      }
      if (byte === PERCENT && given === 0 && count === 0) {
        at = skip(bytes, at, start, line);
        break;
      }
      if (count === 0 && given === 0 && bare === 0 && byte > SPACE) {
        at = skipText(bytes, at - 1, start, line);
        break;
      }
      fail(line, byte < TAB || (byte > RETURN && byte < SPACE) ? 'binary' : 'not-a-word', at - 1 - start, byte);
      at = toEnd(bytes, at);
      break;
    }
    const letterAt = at - 1 - start;
    // The number: digits are gathered as a whole number and divided once, which rounds as correctly as any reader does.
    let next = bytes[at]!;
    while (next === SPACE || next === TAB) next = bytes[++at]!;
    const sign = next === MINUS ? -1 : 1;
    if (next === MINUS || next === PLUS) next = bytes[++at]!;
    let whole = 0;
    let digits = 0;
    let decimals = -1;
    for (; ; next = bytes[++at]!) {
      if (next >= 48 && next <= 57) {
        whole = whole * 10 + (next - 48);
        digits++;
        if (decimals >= 0) decimals++;
      } else if (next === POINT && decimals < 0) decimals = 0;
      else break;
    }
    if (digits === 0) {
      if (count === 0 && given === 0 && bare === 0 && isLetter(next)) {
        at = skipText(bytes, at - 1, start, line); // a command in words, of whoever wrote the machine's own
        break;
      }
      bare |= 1 << letter;
      if (decimals < 0 && sign > 0 && next !== PLUS) continue;
      fail(line, 'letter-without-number', letterAt, letter);
      at = toEnd(bytes, at);
      break;
    }
    const number = sign * (decimals > 0 ? scaled(whole, decimals) : whole);
    if (letter === LETTER.G || letter === LETTER.M || (letter === LETTER.T && count === 0)) {
      const code = codeOf(letter, number);
      if (!isKnown(code)) {
        line.unknown = `${String.fromCharCode(65 + letter)}${number}`;
        at = skip(bytes, at, start, line);
        break;
      }
      if (count < MOST_CODES) codes[count++] = code;
      continue;
    }
    if (!(number <= LARGEST && number >= -LARGEST) && letter !== LETTER.N) {
      fail(line, 'number-too-large', letterAt, letter);
      at = toEnd(bytes, at);
      break;
    }
    value[letter] = number;
    if (letter !== LETTER.N) given |= 1 << letter;
  }
  line.given = given;
  line.bare = bare;
  line.count = count;
  return at;
}

function scaled(whole: number, decimals: number): number {
  return decimals < 23 ? whole / TENS[decimals]! : whole * 10 ** -decimals;
}

function isLetter(byte: number): boolean {
  const letter = (byte | 32) - 97;
  return (letter >= 0 && letter <= 25) || byte === 95;
}

function fail(line: LineWords, fault: LineFault, at: number, of: number): void {
  if (line.fault !== undefined) return;
  line.fault = fault;
  line.faultAt = at;
  line.faultOf = of;
}

function toEnd(bytes: Uint8Array, from: number): number {
  let at = from;
  while (bytes[at] !== NEWLINE) at++;
  return at + 1;
}

/** Over a comment or a line that is not understood: no matter what it says, as long as it is text. */
function skip(bytes: Uint8Array, from: number, start: number, line: LineWords): number {
  let at = from;
  for (let byte = bytes[at]!; byte !== NEWLINE; byte = bytes[++at]!) {
    if (byte < TAB) fail(line, 'binary', at - start, byte);
  }
  return at + 1;
}

function skipInside(bytes: Uint8Array, from: number, start: number, line: LineWords): number {
  for (let at = from; ; at++) {
    const byte = bytes[at]!;
    if (byte === CLOSE) return at + 1;
    if (byte < TAB) fail(line, 'binary', at - start, byte);
    if (byte !== NEWLINE) continue;
    fail(line, 'comment-open', from - 1 - start, byte);
    return at + 1;
  }
}

function skipText(bytes: Uint8Array, from: number, start: number, line: LineWords): number {
  let end = from;
  while (bytes[end]! > SPACE && end - from < LONGEST_NAME) end++;
  line.unknown = String.fromCharCode(...bytes.subarray(from, end));
  return skip(bytes, from, start, line);
}

/** `*` and the bytes before it, all joined by exclusive or. */
function readChecksum(bytes: Uint8Array, from: number, start: number, line: LineWords): number {
  let sum = 0;
  for (let at = start; at < from - 1; at++) sum ^= bytes[at]!;
  let [said, digits, at] = [0, 0, from];
  for (let byte = bytes[at]!; byte >= 48 && byte <= 57; byte = bytes[++at]!) {
    said = said * 10 + (byte - 48);
    digits++;
  }
  line.checksum = true;
  if (digits === 0) fail(line, 'checksum-missing', from - 1 - start, sum);
  else if (said !== sum) fail(line, 'checksum-wrong', from - 1 - start, sum);
  return skip(bytes, at, start, line);
}
