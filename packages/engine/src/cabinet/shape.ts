// The words in which the cabinet file's schema is written: quantities, maps, lists, choices. One definition reads the file
// and gives the JSON Schema. zod carries one text for each issue; ours is a fault with its four parts, as JSON.

import * as z from 'zod';
import { parseClock, parseWindow } from '../units/clock.ts';
import { formatQuantity } from '../units/format.ts';
import { type Money, parseMoney } from '../units/money.ts';
import type { Profile } from '../units/profile.ts';
import {
  isFault,
  parsePlace,
  parseQuantity,
  parseRange,
  parseSizes,
  type Quantity,
  type TextFault,
} from '../units/quantity.ts';
import { type KindName, kindOf } from '../units/unit-table.ts';
import { nearest } from './nearest.ts';

export type Schema<T> = z.ZodType<T>;

/** One schema for each key of a spec. */
export type FieldsOf<T> = { readonly [K in keyof T]-?: Schema<T[K]> };

/** A fault on its way through zod. */
export interface Fault {
  readonly code: string;
  readonly what: string;
  readonly allowed: string;
  readonly mend: string;
  /** Characters of the text that are meant; the whole value unless given. */
  readonly at?: number;
  readonly length?: number;
  /** The key is wrong, not its value. */
  readonly onKey?: boolean;
  /** The key below this place that is meant. */
  readonly inside?: string;
  /** Keys that would be right, for a key that is not. */
  readonly keys?: readonly string[];
  /** Which branch of a choice was meant. */
  readonly branch?: number;
}

/** A fault as the text of an issue. */
export const say = (fault: Fault | TextFault): string => JSON.stringify(fault);

/** The fault that an issue's text carries. */
export function faultOf(message: string): Fault {
  try {
    return JSON.parse(message) as Fault;
  } catch {
    return {
      code: 'value-wrong',
      what: message,
      allowed: 'what the format says here',
      mend: 'look up the key in the format',
    };
  }
}

export interface Bounds {
  /** SI; the bound itself belongs to what is allowed, except `above`. */
  readonly above?: number;
  readonly from?: number;
  readonly to?: number;
}

/** A quantity with its unit; an optional spread may follow it. */
export function quantity(kind: KindName, about: string, bounds: Bounds = {}): Schema<Quantity> {
  const { called, offered } = kindOf(kind);
  const allowed = `${called} with ${offered}${boundsText(kind, bounds)}`;
  // A fault that speaks of this kind of quantity tells its bounds too; one of a half width, or of a range, speaks for itself.
  const withBounds = (fault: TextFault): TextFault =>
    fault.allowed === `${called} with ${offered}` ? { ...fault, allowed } : fault;
  const read = (input: unknown): Quantity | TextFault => {
    const quantityRead = parseQuantity(kind, String(input));
    return isFault(quantityRead)
      ? withBounds(quantityRead)
      : within(kind, quantityRead, bounds, String(input), allowed);
  };
  return fromText(read, kind === 'number', about, allowed);
}

/** `0 mm to 520 mm` */
export function range(kind: KindName, about: string): Schema<readonly [number, number]> {
  return fromText(
    (input) => parseRange(kind, String(input)),
    false,
    about,
    `from … to …, with ${kindOf(kind).offered}`,
  );
}

/** Lengths with crosses between, all above 0. */
export function sizes(count: number, about: string): Schema<readonly number[]> {
  const example = ['800 mm', '600 mm', '1750 mm'].slice(0, count).join(' x ');
  return fromText(
    (input) => {
      const text = String(input);
      const read = parseSizes(text, count);
      if (isFault(read) || read.every((length) => length > 0)) return read;
      return {
        code: 'value-out-of-bounds',
        what: `${quote(text)} holds a length that is not above 0`,
        allowed: 'lengths above 0',
        mend: 'measure it again',
        at: 0,
        length: text.length,
      };
    },
    false,
    about,
    `${count} lengths, such as ${example}`,
  );
}

/** Lengths along the axes: a list of them, or a text with commas between. */
export function place(count: number, about: string): Schema<readonly number[]> {
  const example = ['400 mm', '-1500 mm', '1200 mm'].slice(0, count).join(', ');
  const allowed = `${count} lengths, such as [${example}]`;
  const short = fromText((input) => parsePlace(String(input), count), false, about, allowed);
  const long = listOf(quantity('length', about), about).transform((list, context): readonly number[] => {
    if (list.length === count) return list.map(({ value }) => value);
    const what = `${list.length} ${list.length === 1 ? 'length is' : 'lengths are'} given`;
    context.issues.push({
      code: 'custom',
      message: say({ code: 'place-wrong', what, allowed, mend: `give ${count} lengths` }),
      input: list,
    });
    return [];
  });
  return choice([short, long], (input) => (Array.isArray(input) ? 1 : 0), about) as Schema<readonly number[]>;
}

export function clock(about: string): Schema<number> {
  const read = (input: unknown): { value: number } | TextFault => {
    const time = parseClock(String(input));
    return typeof time === 'number' ? { value: time } : time;
  };
  return fromText(read, false, about, 'a time of day, such as 9:00').transform(({ value }) => value);
}

/** `9:00 to 17:00` */
export function window(about: string): Schema<readonly [number, number]> {
  return fromText((input) => parseWindow(String(input)), false, about, 'two times of day, such as 9:00 to 17:00');
}

export function money(about: string): Schema<Money> {
  return fromText(
    (input) => parseMoney(String(input)),
    false,
    about,
    'an amount of money, such as 12 EUR or 10 to 14 EUR',
  );
}

/** A text of the person's own; a number is taken as its text. */
export function text(about: string): Schema<string> {
  const error = typeFault(`a text: ${about}`);
  return z.union([z.string(), z.number()], { error }).transform(String).describe(about) as Schema<string>;
}

/** The id of something else in the file or the catalogue. */
export function name(about: string): Schema<string> {
  const error = typeFault(about);
  return z.union([z.string(), z.number()], { error }).transform(String).describe(about) as Schema<string>;
}

/** One of a few words. */
export function word<const W extends string>(words: readonly W[], about: string): Schema<W> {
  const allowed = oneOf(words);
  const error = ({ input }: { readonly input: unknown }): string => {
    if (typeof input !== 'string') return typeFault(allowed)({ input });
    return say({
      code: 'word-unknown',
      what: `${quote(input)} is none of the words known here`,
      allowed,
      mend: `write ${allowed}`,
      keys: words,
    });
  };
  return z.enum(words as unknown as [W, ...W[]], { error }).describe(about) as Schema<W>;
}

/** yes or no; `true` and `false` too. */
export function yesNo(about: string): Schema<boolean> {
  const allowed = 'yes or no';
  const error = ({ input }: { readonly input: unknown }): string =>
    typeof input === 'string'
      ? say({ code: 'word-unknown', what: `${quote(input)} is neither yes nor no`, allowed, mend: `write ${allowed}` })
      : typeFault(allowed)({ input });
  return z
    .union([z.enum(['yes', 'no']), z.boolean()], { error })
    .transform((input) => input === true || input === 'yes')
    .describe(about) as Schema<boolean>;
}

/** A whole number of things. */
export function count(about: string, most: number = 10_000): Schema<number> {
  const allowed = `a whole number from 1 to ${most}`;
  const error = ({ input }: { readonly input: unknown }): string =>
    typeof input === 'number'
      ? say({
          code: 'value-out-of-bounds',
          what: `${input} is no whole number in that range`,
          allowed,
          mend: 'write a whole number',
        })
      : typeFault(allowed)({ input });
  return z.number({ error }).int({ error }).min(1, { error }).max(most, { error }).describe(about);
}

/** A map with fixed keys; another key is a fault. */
export function thing<S extends z.ZodRawShape>(shape: S, about: string): z.ZodObject<S, z.core.$strict> {
  const keys = Object.keys(shape);
  const error = (issue: { readonly code?: string | undefined; readonly input?: unknown }): string =>
    issue.code === 'unrecognized_keys'
      ? say({ code: 'key-unknown', what: '', allowed: oneOf(keys), mend: '', keys })
      : typeFault(`a map with ${oneOf(keys)}`)({ input: issue.input });
  return z.strictObject(shape, { error }).describe(about);
}

/** A map from ids of the person's own choice. Dots and slashes stand between ids in paths, so that no id may hold them. */
export function mapOf<T>(value: Schema<T>, about: string, what: string): Schema<Record<string, T>> {
  const error = (issue: { readonly code?: string | undefined; readonly input?: unknown }): string =>
    issue.code === 'invalid_key'
      ? say({
          code: 'id-wrong',
          what: 'a dot, a slash or a quotation mark stands in this id',
          allowed: 'letters, digits, spaces and hyphens',
          mend: 'write a hyphen instead',
          onKey: true,
        })
      : typeFault(`a map from the id of each ${what} to the ${what}`)({ input: issue.input });
  return z.record(z.string().regex(/^[^./"\\]{1,80}$/), value, { error }).describe(about) as Schema<Record<string, T>>;
}

/** A map whose keys are known words, such as contaminants. */
export function amounts<T>(
  keys: readonly string[],
  shapeOf: (key: string) => Schema<T>,
  about: string,
): Schema<Partial<Record<string, T>>> {
  const shape = Object.fromEntries(keys.map((key) => [key, shapeOf(key).optional()]));
  return thing(shape, about) as unknown as Schema<Partial<Record<string, T>>>;
}

export function listOf<T>(item: Schema<T>, about: string): Schema<T[]> {
  return z.array(item, { error: typeFault('a list') }).describe(about);
}

/** A list that holds something. */
export function fullList<T>(item: Schema<T>, about: string): Schema<T[]> {
  const allowed = `a list of at least one: ${about}`;
  const empty = (): string =>
    say({ code: 'value-missing', what: 'there is nothing in this list', allowed, mend: 'name at least one' });
  return z
    .array(item, { error: typeFault('a list') })
    .min(1, { error: empty })
    .describe(about);
}

/** Several shapes for one value; `pick` says by the input which one was meant, or what is wrong with it. */
export function choice<const B extends readonly z.ZodType[]>(
  branches: B,
  pick: (input: unknown) => number | Fault,
  about: string,
): Schema<z.output<B[number]>> {
  const error = ({ input }: { readonly input?: unknown }): string => {
    const picked = pick(input);
    return say(
      typeof picked === 'number' ? { code: 'branch', what: '', allowed: '', mend: '', branch: picked } : picked,
    );
  };
  return z.union(branches as unknown as [z.ZodType, z.ZodType], { error }).describe(about) as Schema<
    z.output<B[number]>
  >;
}

/** A short text, or a map that says more. */
export function shortOr<A, B>(short: Schema<A>, long: Schema<B>, about: string): Schema<A | B> {
  return choice([short, long], (input) => (typeof input === 'object' && input !== null ? 1 : 0), about) as Schema<
    A | B
  >;
}

/** Several maps told apart by the one key that only one of them has: `fan: …` or `filter: …`. */
export function byKey<const B extends Readonly<Record<string, z.ZodType>>>(
  branches: B,
  what: string,
  about: string,
): Schema<z.output<B[keyof B & string]>> {
  const keys = Object.keys(branches);
  const allowed = `a map with one of ${oneOf(keys)}`;
  const pick = (input: unknown): number | Fault => {
    if (typeof input !== 'object' || input === null || Array.isArray(input)) return typeFaultOf(allowed, input);
    const found = keys.findIndex((key) => Object.hasOwn(input, key));
    if (found >= 0) return found;
    const given = Object.keys(input).map(quote);
    const slip = Object.keys(input).find((key) => nearest(key, keys) !== undefined);
    return {
      code: 'choice-missing',
      what: `none of the keys here (${given.join(', ') || 'there is none'}) names ${what}`,
      allowed,
      mend: `begin with the one key that names ${what}`,
      keys,
      ...(slip === undefined ? {} : { inside: slip }),
    };
  };
  return choice(Object.values(branches), pick, about) as Schema<z.output<B[keyof B & string]>>;
}

/** A list, or one thing that stands for a list of one. */
export function oneOrMore<T>(item: Schema<T>, about: string): Schema<readonly T[]> {
  const one = item.transform((only): readonly T[] => [only]);
  return choice([one, listOf(item, about)], (input) => (Array.isArray(input) ? 1 : 0), about) as Schema<readonly T[]>;
}

/** A map from one quantity to another: times to temperatures, flows to pressures. Sorted by the first. */
export function points(along: 'clock' | KindName, kind: KindName, about: string, bounds: Bounds = {}): Schema<Profile> {
  const example = along === 'clock' ? '{ 0:00: …, 8:00: … }' : `from ${kindOf(along).called} to ${kindOf(kind).called}`;
  const error = typeFault(`a map ${example}`);
  const cell = quantity(kind, about, bounds);
  return z
    .record(z.string(), cell, { error })
    .transform((map, context) => {
      const read: [number, number][] = [];
      for (const [key, { value }] of Object.entries(map)) {
        const first = along === 'clock' ? parseClock(key) : parseQuantity(along, key);
        if (typeof first === 'object' && isFault(first)) {
          context.issues.push({ code: 'custom', path: [key], message: say({ ...first, onKey: true }), input: key });
        } else read.push([typeof first === 'number' ? first : first.value, value]);
      }
      read.sort((a, b) => a[0] - b[0]);
      if (along === 'clock') {
        const late = Object.keys(map).find((key) => Number(parseClock(key)) > 86_400);
        const last = read.at(-1)?.[0] === 86_400 ? read.at(-1)![1] : undefined;
        const differs = last !== undefined && read[0]![0] === 0 && read[0]![1] !== last;
        if (late !== undefined || differs) {
          const what =
            late === undefined
              ? '0:00 and 24:00 are one moment, but they differ'
              : `${quote(late)} is after the end of the day`;
          const issue = {
            code: 'points-wrong',
            what,
            allowed: 'times from 0:00 to 24:00; the course repeats every day',
            mend: 'give one day',
            onKey: late !== undefined,
          };
          context.issues.push({
            code: 'custom',
            path: late === undefined ? [] : [late],
            message: say(issue),
            input: map,
          });
        }
      }
      const twice = read.findIndex(([x], i) => i > 0 && x === read[i - 1]![0]);
      if (twice >= 0 || read.length === 0) {
        const what = read.length === 0 ? 'there is no point in it' : 'two points stand at the same place';
        context.issues.push({
          code: 'custom',
          message: say({ code: 'points-wrong', what, allowed: `a map ${example}`, mend: 'give each point once' }),
          input: map,
        });
      }
      return read as Profile;
    })
    .describe(about) as Schema<Profile>;
}

/** A constant, or its course over the day. */
export function course(kind: KindName, about: string, bounds: Bounds = {}): Schema<Quantity | Profile> {
  return shortOr(quantity(kind, about, bounds), points('clock', kind, `${about}, by time of day`, bounds), about);
}

/** What a text says once it is parsed; `read` gives the value or what is wrong with which characters. */
export function fromText<T extends object>(
  read: (input: unknown) => T | TextFault,
  numbersToo: boolean,
  about: string,
  allowed: string,
): Schema<T> {
  const error = ({ input }: { readonly input?: unknown }): string => {
    if (typeof input !== 'number') return typeFault(allowed)({ input });
    const result = read(input);
    return say('mend' in result ? (result as TextFault) : typeFaultOf(allowed, input));
  };
  const base = numbersToo ? z.union([z.number(), z.string()], { error }) : z.string({ error });
  return base
    .transform((input, context): T => {
      const result = read(input);
      if (!('mend' in result)) return result as T;
      context.issues.push({ code: 'custom', message: say(result as TextFault), input });
      return z.NEVER;
    })
    .describe(`${about}; ${allowed}`) as Schema<T>;
}

function within(
  kind: KindName,
  read: Quantity,
  { above, from, to }: Bounds,
  written: string,
  allowed: string,
): Quantity | TextFault {
  const values = [read.value, read.low ?? read.value, read.high ?? read.value];
  const fits = (value: number): boolean =>
    (above === undefined || value > above) &&
    (from === undefined || value >= from) &&
    (to === undefined || value <= to);
  if (fits(read.value) && values.every(fits)) return read;
  const edge = (value: number): boolean => (above !== undefined ? value <= above : from !== undefined && value < from);
  const wrong = values.find((value) => !fits(value))!;
  const bound = edge(wrong) ? (above ?? from)! : to!;
  const relation = edge(wrong) ? (above === undefined ? 'below' : 'not above') : 'above';
  const shown = fits(read.value) ? `the spread of ${quote(written)} reaches` : `${quote(written)} is`;
  const what = `${shown} ${relation} ${formatQuantity(kind, bound)}`;
  return {
    code: 'value-out-of-bounds',
    what,
    allowed,
    mend: 'check the number and its unit',
    at: 0,
    length: Math.max(1, written.length),
  };
}

function boundsText(kind: KindName, { above, from, to }: Bounds): string {
  const low = above ?? from;
  const lower = low === undefined ? '' : `${above === undefined ? ' from' : ' above'} ${formatQuantity(kind, low)}`;
  return `${lower}${to === undefined ? '' : ` to ${formatQuantity(kind, to)}`}`.replace(/^(?=.)/, ',');
}

/** Complains of a value of another shape. */
export function typeFault(allowed: string): (issue: { readonly input?: unknown }) => string {
  return ({ input }) => say(typeFaultOf(allowed, input));
}

function typeFaultOf(allowed: string, input: unknown): Fault {
  if (input === undefined) return { code: 'key-missing', what: '', allowed, mend: '' };
  if (input === null)
    return {
      code: 'value-missing',
      what: 'nothing stands behind this key',
      allowed,
      mend: 'write the value, or take the key out',
    };
  const found = Array.isArray(input)
    ? 'a list'
    : typeof input === 'object'
      ? 'a map'
      : typeof input === 'string'
        ? `the text ${quote(input)}`
        : JSON.stringify(input);
  return {
    code: 'value-wrong',
    what: `${found} stands here`,
    allowed,
    mend: `write ${allowed.length > 70 ? 'what is allowed here' : allowed}`,
  };
}

/** `a, b or c` */
export function oneOf(words: readonly string[]): string {
  if (words.length <= 1) return words.join('');
  return `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
}

function quote(written: string): string {
  return written.length > 60 ? `"${written.slice(0, 57)}…"` : `"${written}"`;
}
