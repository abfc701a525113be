// Shape of a diary file, version 1. A version once published only gains keys.

import * as z from 'zod';
import { type CareAction, careActions } from '../cabinet/care.ts';
import {
  clock,
  count,
  fromText,
  listOf,
  name,
  quantity,
  type Schema,
  say,
  text,
  thing,
  word,
} from '../cabinet/shape.ts';
import type { Given } from '../cabinet/spec.ts';
import { parseDate, parsePeriod } from '../units/calendar.ts';

export type DoneWord = (typeof careActions)[CareAction] | 'measured';

export const DONE_WORDS: readonly DoneWord[] = [...Object.values(careActions), 'measured'];

export interface DoneSpec {
  readonly on: number;
  readonly part: string;
  readonly did: DoneWord;
  readonly reading?: Given;
  readonly note?: string | undefined;
}

export interface RunSpec {
  readonly on: readonly [first: number, last: number];
  readonly job: string;
  readonly machine?: string | undefined;
  readonly material?: string | undefined;
  readonly start?: number | undefined;
  readonly for?: Given;
  readonly mass?: Given;
  readonly times?: number | undefined;
  readonly failed?: number | undefined;
}

export interface DiarySpec {
  readonly diary: 1;
  readonly title?: string | undefined;
  readonly began: number;
  readonly done?: readonly DoneSpec[] | undefined;
  readonly jobs?: readonly RunSpec[] | undefined;
}

const LONGEST = 35 * 86_400;

let sections: Readonly<Record<keyof DiarySpec, Schema<unknown>>> | undefined;

export function diarySections(): Readonly<Record<keyof DiarySpec, Schema<unknown>>> {
  sections ??= {
    diary: z.literal(1, { error: versionFault }).describe('version of the format') as Schema<unknown>,
    title: text('whose diary it is').optional(),
    began: date('from when the cabinet was used, with every part new'),
    done: listOf(doneSchema(), 'what was done to it').optional(),
    jobs: listOf(runSchema(), 'jobs that ran').optional(),
  };
  return sections;
}

function versionFault({ input }: { readonly input?: unknown }): string {
  return say({
    code: input === undefined ? 'key-missing' : 'version-unknown',
    what: `version ${String(input)} is not known here`,
    allowed: 'diary: 1',
    mend: input === undefined ? '' : 'write 1, or use a newer program',
  });
}

function date(about: string): Schema<number> {
  const read = (input: unknown): { value: number } | Exclude<ReturnType<typeof parseDate>, number> => {
    const day = parseDate(String(input));
    return typeof day === 'number' ? { value: day } : day;
  };
  return fromText(read, false, about, 'a date as year-month-day, such as 2026-03-01').transform(({ value }) => value);
}

function period(about: string): Schema<readonly [first: number, last: number]> {
  return fromText(
    (input) => parsePeriod(String(input)),
    false,
    about,
    'a date, or two with "to" between: 2026-03-01 to 2026-03-31',
  );
}

function doneSchema(): Schema<DoneSpec> {
  return thing(
    {
      on: date('when'),
      part: text('part as "stillair care" names it'),
      did: word(DONE_WORDS, 'what was done to it'),
      reading: quantity('pressure', 'pressure loss that was read', { from: 0, to: 5000 }).optional(),
      note: text('anything else').optional(),
    },
    'what was done',
  ) as unknown as Schema<DoneSpec>;
}

function runSchema(): Schema<RunSpec> {
  return thing(
    {
      on: period('when it ran'),
      job: name('its name; one of the days of the cabinet file brings its length, mass and material with it'),
      machine: name('machine').optional(),
      material: name('material').optional(),
      start: clock('when its heating began').optional(),
      for: quantity('duration', 'how long it took', { above: 0, to: LONGEST }).optional(),
      mass: quantity('mass', 'filament used', { above: 0, to: 100 }).optional(),
      times: count('how often, spread evenly over the time').optional(),
      failed: count('how many of them failed').optional(),
    },
    'a job that ran',
  ) as unknown as Schema<RunSpec>;
}
