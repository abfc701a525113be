// From the text of a quantity ("820 mm", "3 ft 2 in", "35 °C ± 2 K", "20 to 40 m3/h") to SI, or to what is wrong with it and where.

import { type Kind, type KindName, kindOf, kindsWithUnit, type Unit, unitOf } from './unit-table.ts';

/** A quantity in SI, with the 10th and 90th percentile when the text gives a spread. */
export interface Quantity {
  readonly value: number;
  readonly low?: number;
  readonly high?: number;
}

/** What is wrong with a text, and which characters of it. */
export interface TextFault {
  readonly code: string;
  readonly what: string;
  readonly allowed: string;
  readonly mend: string;
  /** First character, from 0, and how many. */
  readonly at: number;
  readonly length: number;
}

export function isFault(result: object): result is TextFault {
  return 'mend' in result;
}

/** A number and the unit behind it, as written. */
interface Term {
  readonly number: number;
  readonly unit: string;
  readonly at: number;
  readonly unitAt: number;
  readonly end: number;
}

const NUMBER = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?(?![\d.])/;
/** A unit ends before a space and a digit; a foot mark ends itself. A leading `1/` belongs to it. */
const UNIT = /^(?:1\s*\/\s*(?=[a-z]))?(?:['"]|(?:(?!\s+[+-]?[\d.]|['"]).)*)/i;
const LETTERS = /^[a-z]*/i;
const FRACTION = /^(?:(\d+)[\s-]+)?(\d+)\/(\d+)(?=\s*(?:in|inch|inches|ft|"|')(?:\s|$))/;

/** Brackets with "to" inside hold a spread; those of a unit, as in W/(m2 K), never do, but may stand inside. */
const BRACKETED = /^\s*(.+?)\s*\(((?:[^()]|\([^()]*\))+\s(?:to|\.\.)\s(?:[^()]|\([^()]*\))+)\)\s*(.*?)\s*$/;
/** No quantity is as long as this; what looks for brackets in a longer text could look for very long. */
const LONGEST = 300;

/**
 * Reads a quantity of a kind.
 *
 * A spread may follow: `± 10 %`, `± 2 K` (also `+-`), which is the half width from the 10th to the 90th percentile;
 * `20 to 40 m3/h`, whose middle is the mean (the geometric mean for kinds that span decades); or `30 (20 to 40) m3/h`.
 *
 * @example Lengths
 * ```ts
 * parseQuantity('length', '820 mm').value; // => 0.82
 * parseQuantity('length', '3 ft 2 in').value; // => 0.9652
 * parseQuantity('temperature', '35 °C').value; // => 308.15
 * parseQuantity('temperature', '35').mend; // => write 35 °C if that is what is meant
 * ```
 */
export function parseQuantity(kind: KindName, text: string): Quantity | TextFault {
  const comma = decimalComma(text);
  if (comma !== undefined) return comma;
  const bracketed = text.length > LONGEST ? null : BRACKETED.exec(text);
  if (bracketed !== null) return withBracket(kind, text, bracketed[1]!, bracketed[2]!, bracketed[3]!);
  const plusMinus = /\s*(?:±|\+\/?-)\s*(?=[\d.])/.exec(text);
  if (plusMinus !== null && plusMinus.index > 0) {
    return withHalfWidth(kind, text, plusMinus.index, plusMinus.index + plusMinus[0].length);
  }
  const range = splitRange(text);
  if (range === undefined) return single(kind, text, 0);
  const ends = rangeEnds(kind, text, range);
  if (isFault(ends)) return ends;
  const [low, high] = ends;
  if (high < low) return backwards(text);
  return { value: middle(kindOf(kind), low, high), low, high };
}

/**
 * Reads a stretch from one value to another: `0 mm to 520 mm`, `0 to 520 mm`.
 *
 * @example One unit for both
 * ```ts
 * parseRange('length', '0 to 520 mm')[1]; // => 0.52
 * ```
 */
export function parseRange(kind: KindName, text: string): readonly [number, number] | TextFault {
  const comma = decimalComma(text);
  if (comma !== undefined) return comma;
  const range = splitRange(text);
  if (range === undefined) {
    return wholeText(
      'range-wrong',
      text,
      `${show(text)} has no "to"`,
      `from … to …, with ${kindOf(kind).offered}`,
      'write both ends with "to" between them',
    );
  }
  const ends = rangeEnds(kind, text, range);
  if (isFault(ends)) return ends;
  return ends[1] <= ends[0] ? backwards(text) : ends;
}

/**
 * Reads lengths with crosses between: `800 mm x 600 mm x 1750 mm`; a unit at the end alone counts for all.
 *
 * @example The unit at the end counts for all
 * ```ts
 * parseSizes('800 x 600 x 1750 mm', 3)[2]; // => 1.75
 * ```
 */
export function parseSizes(text: string, count: number): readonly number[] | TextFault {
  const comma = decimalComma(text);
  if (comma !== undefined) return comma;
  return listed(text, /\s*[x×*]\s*/gi, count, 'x', 'size-wrong');
}

/** Reads a place: lengths with commas between, `400 mm, -200 mm`. */
export function parsePlace(text: string, count: number): readonly number[] | TextFault {
  return listed(text, /\s*,\s+/g, count, ', ', 'place-wrong');
}

function listed(
  text: string,
  separator: RegExp,
  count: number,
  sign: string,
  code: string,
): readonly number[] | TextFault {
  const pieces: { text: string; at: number }[] = [];
  let at = 0;
  for (const match of text.matchAll(separator)) {
    pieces.push({ text: text.slice(at, match.index), at });
    at = match.index + match[0].length;
  }
  pieces.push({ text: text.slice(at), at });
  const example = Array.from({ length: count }, (_, i) => `${(i + 2) * 100} mm`).join(sign === 'x' ? ' x ' : sign);
  if (pieces.length !== count) {
    const lengths = count === 1 ? 'one length' : `${count} lengths`;
    return wholeText(
      code,
      text,
      `${show(text)} holds ${pieces.length}`,
      `${lengths}, such as ${example}`,
      `give ${lengths}`,
    );
  }
  const last = /[a-z"'µ]+\s*$/i.exec(pieces.at(-1)!.text)?.[0] ?? '';
  const values: number[] = [];
  for (const piece of pieces) {
    const bare = /^[\d.\s]+$/.test(piece.text);
    const read = single('length', bare ? `${piece.text}${last}` : piece.text, piece.at);
    if (isFault(read)) return { ...read, length: Math.min(read.length, text.length - read.at) };
    values.push(read.value);
  }
  return values;
}

/** Value, ± and half width. */
function withHalfWidth(kind: KindName, text: string, end: number, from: number): Quantity | TextFault {
  const center = single(kind, text.slice(0, end), 0);
  if (isFault(center)) return center;
  const width = text.slice(from);
  const percent = /^([\d.]+(?:e[+-]?\d+)?)\s*%\s*$/i.exec(width);
  if (percent !== null && kind !== 'share') {
    const half = Math.abs(center.value) * (Number(percent[1]) / 100);
    return { value: center.value, low: tidy(center.value - half), high: tidy(center.value + half) };
  }
  const half = single(kindOf(kind).difference ?? kind, width, from);
  if (isFault(half)) return half;
  return { value: center.value, low: tidy(center.value - half.value), high: tidy(center.value + half.value) };
}

/** `30 m3/h (20 to 40 m3/h)` or `30 (20 to 40) m3/h`. */
function withBracket(kind: KindName, text: string, center: string, inside: string, unit: string): Quantity | TextFault {
  const bare = (piece: string): boolean => /^[\s\d.eE+-]+$/.test(piece);
  const unitOfCenter = bare(center) ? unit : (/^[\s\d.eE+-]+(.*)$/.exec(center)?.[1] ?? '');
  const value = single(kind, bare(center) ? `${center} ${unit}` : center, 0);
  if (isFault(value)) return { ...value, at: 0, length: text.length };
  const spread = parseQuantity(
    kind,
    bare(inside.split(/\s(?:to|\.\.)\s/).at(-1)!) ? `${inside} ${unitOfCenter}` : inside,
  );
  if (isFault(spread)) return { ...spread, at: text.indexOf(inside) - 1, length: inside.length + 2 };
  if (!(spread.low! <= value.value && value.value <= spread.high!)) {
    return wholeText(
      'range-wrong',
      text,
      `${center.trim()} lies outside ${inside}`,
      'a value inside its own spread',
      'mend the value or the spread',
    );
  }
  return { value: value.value, low: spread.low!, high: spread.high! };
}

function splitRange(text: string): { low: string; high: string; highAt: number } | undefined {
  const sign = /\s+to\s+|\s*(?:\.\.+|…)\s*|\s*–\s*/.exec(text);
  if (sign === null || sign.index === 0) return undefined;
  const highAt = sign.index + sign[0].length;
  return { low: text.slice(0, sign.index), high: text.slice(highAt), highAt };
}

function rangeEnds(
  kind: KindName,
  text: string,
  { low, high, highAt }: { low: string; high: string; highAt: number },
): readonly [number, number] | TextFault {
  const upper = single(kind, high, highAt);
  if (isFault(upper)) return upper;
  const bare = /^[+-]?[\d.]+(?:e[+-]?\d+)?\s*$/i.test(low);
  const unit = bare ? (/^\s*[+-]?[\d.]+(?:e[+-]?\d+)?(.*)$/i.exec(high)?.[1] ?? '') : '';
  const lower = single(kind, low + unit, 0);
  return isFault(lower) ? { ...lower, length: Math.min(lower.length, text.length) } : [lower.value, upper.value];
}

/** One quantity without spread; several terms add up (`2 h 30 min`, `3 ft 2 in`). */
function single(kind: KindName, text: string, offset: number): Quantity | TextFault {
  const terms = termsOf(kind, text, offset);
  if (isFault(terms)) return terms;
  let value = 0;
  let before = Infinity;
  for (const term of terms) {
    const unit = unitOf(kind, term.unit);
    if (unit === undefined) return wrongUnit(kind, text, term, offset);
    if (terms.length > 1 && (unit.before !== undefined || unit.factor >= before)) {
      return fault(
        'several-quantities',
        offset + term.at,
        term.end - term.at,
        `${show(text.slice(term.at, term.end))} follows another quantity`,
        `${kindOf(kind).called} once, with ${kindOf(kind).offered}`,
        'leave one of them',
      );
    }
    before = unit.factor;
    const part = toSi(term.number, unit);
    value = terms.length > 1 ? tidy(value + part) : part;
  }
  if (!Number.isFinite(value))
    return fault(
      'number-too-large',
      offset,
      text.length,
      `${show(text)} is no number that can be computed with`,
      `${kindOf(kind).called} with ${kindOf(kind).offered}`,
      'check its exponent',
    );
  return { value };
}

function termsOf(kind: KindName, text: string, offset: number): Term[] | TextFault {
  const terms: Term[] = [];
  let at = text.length - text.trimStart().length;
  const end = text.trimEnd().length;
  while (at < end) {
    const rest = text.slice(at, end);
    const fraction = FRACTION.exec(rest);
    const written = fraction ?? NUMBER.exec(rest);
    if (written === null) return notANumber(kind, text, at, end, offset);
    const number =
      fraction === null ? Number(written[0]) : Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3]);
    const afterNumber = at + written[0].length;
    const unitAt =
      afterNumber + (text.slice(afterNumber, end).length - text.slice(afterNumber, end).trimStart().length);
    const unit = unitText(kind, text.slice(unitAt, end));
    if (unit === '' && unitAt < end) return notANumber(kind, text, unitAt, end, offset);
    terms.push({ number, unit, at, unitAt, end: unitAt + unit.length });
    at = unitAt + unit.length;
    at += text.slice(at, end).length - text.slice(at, end).trimStart().length;
  }
  return terms.length === 0 ? notANumber(kind, text, 0, Math.max(1, text.length), offset) : terms;
}

function unitText(kind: KindName, text: string): string {
  const whole = UNIT.exec(text)![0].trimEnd();
  const letters = LETTERS.exec(text)![0];
  // `2h30min` needs no space, as no unit of time holds a digit.
  return kind === 'duration' && unitOf(kind, whole) === undefined && unitOf(kind, letters) !== undefined
    ? letters
    : whole;
}

/** Small factors divide by their inverse, so that 820 mm is 0.82 and not its neighbour. */
function toSi(number: number, { factor, before = 0 }: Unit): number {
  const inverse = 1 / factor;
  const whole = Math.round(inverse);
  if (before !== 0) return tidy((number + before) * factor);
  return factor < 1 && Math.abs(inverse - whole) < 1e-9 * inverse ? number / whole : number * factor;
}

/** Sums of decimal fractions without their last binary digit: 35 °C is 308.15 K. */
function tidy(value: number): number {
  return Number(value.toPrecision(14));
}

function middle({ logarithmic }: Kind, low: number, high: number): number {
  return logarithmic === true && low > 0 ? Math.sqrt(low * high) : (low + high) / 2;
}

export function decimalComma(text: string): TextFault | undefined {
  const comma = /\d+,\d+/.exec(text);
  if (comma === null) return undefined;
  const point = comma[0].replace(',', '.');
  const mend = /,\d{3}$/.test(comma[0])
    ? `write ${point}, or ${comma[0].replace(',', '')} if thousands are meant`
    : `write ${point}`;
  return fault(
    'decimal-comma',
    comma.index,
    comma[0].length,
    `${show(comma[0])} has a comma inside the number`,
    'a decimal point',
    mend,
  );
}

function notANumber(kind: KindName, text: string, at: number, end: number, offset: number): TextFault {
  const { called, offered } = kindOf(kind);
  const rest = text.slice(at, end).trim();
  const what = rest === '' ? 'there is no number' : `${show(rest)} is no number`;
  return fault(
    'number-wrong',
    offset + at,
    Math.max(1, end - at),
    what,
    `${called} with ${offered}`,
    `write a number and its unit`,
  );
}

function wrongUnit(kind: KindName, text: string, { number, unit, unitAt, at, end }: Term, offset: number): TextFault {
  const { called, offered } = kindOf(kind);
  const allowed = `${called} with ${offered}`;
  const first = offered.split(/,| or /)[0]!;
  if (unit === '') {
    const mend =
      kind === 'share' && number <= 1
        ? `write ${tidy(number * 100)} %`
        : `write ${number} ${first} if that is what is meant`;
    return fault('unit-missing', offset + at, end - at, `${show(text.trim())} has no unit`, allowed, mend);
  }
  const other = kindsWithUnit(unit)[0];
  if (other === undefined) {
    const mend = kind === 'number' ? `write ${number}` : `write it with ${offered}`;
    return fault('unit-unknown', offset + unitAt, unit.length, `${show(unit)} is no unit known here`, allowed, mend);
  }
  const mend = kind === 'number' ? `write ${number} without a unit` : `did you mean ${number} ${first}?`;
  return fault(
    'unit-wrong',
    offset + at,
    end - at,
    `${show(text.slice(at, end))} is ${kindOf(other).called}, but ${called} is wanted`,
    allowed,
    mend,
  );
}

function backwards(text: string): TextFault {
  return wholeText(
    'range-wrong',
    text,
    `${show(text)} ends before it begins`,
    'the smaller value first',
    'turn the two round',
  );
}

function wholeText(code: string, text: string, what: string, allowed: string, mend: string): TextFault {
  return fault(code, 0, Math.max(1, text.length), what, allowed, mend);
}

export function fault(
  code: string,
  at: number,
  length: number,
  what: string,
  allowed: string,
  mend: string,
): TextFault {
  return { code, what, allowed, mend, at, length };
}

/** A person's own words in quotation marks, short enough for one line. */
export function show(text: string): string {
  return text.length > 60 ? `"${text.slice(0, 57)}…"` : `"${text}"`;
}
