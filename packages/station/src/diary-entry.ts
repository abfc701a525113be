// From the words of a command to an entry of the diary. Quantities are left as the person wrote them: the diary's reader judges them.

import {
  type CareTask,
  DONE_WORDS,
  deedOf,
  type Entry,
  type EntryList,
  formatDate,
  nearest,
  parsePeriod,
} from '@stillair/engine';

export interface EntryOptions {
  readonly done?: string;
  readonly reading?: string;
  readonly note?: string;
  readonly ran?: string;
  readonly machine?: string;
  readonly material?: string;
  readonly start?: string;
  readonly for?: string;
  readonly mass?: string;
  readonly times?: string;
  readonly failed?: string;
  readonly on?: string;
}

export interface MadeEntry {
  readonly list: EntryList;
  readonly entry: Entry;
  /** Its first day. */
  readonly first: number;
}

/** Words that people say for the ones of the diary. */
const SYNONYMS: Readonly<Record<string, string>> = {
  replaced: 'changed',
  renewed: 'changed',
  inspected: 'checked',
  tightened: 'checked',
  washed: 'cleaned',
  oiled: 'lubricated',
  greased: 'lubricated',
  regenerated: 'dried',
  read: 'measured',
};

/** The entry, or what is wrong with the words. */
export function entryFrom(options: EntryOptions, tasks: readonly CareTask[], today: number): MadeEntry | string {
  const { done, ran, on } = options;
  if (done !== undefined && ran !== undefined) return 'one entry at a time: --done or --ran';
  const period = on === undefined ? ([today, today] as const) : parsePeriod(on);
  if (!Array.isArray(period) && 'what' in period) return `--on: ${period.what}; ${period.allowed}`;
  const [first, last] = period as readonly [number, number];
  const when = first === last ? formatDate(first) : `${formatDate(first)} to ${formatDate(last)}`;
  if (done !== undefined) {
    if (first !== last) return '--on: what was done has one day';
    return doneEntry(done, options, tasks, when, first);
  }
  return ranEntry(ran!, options, when, first);
}

function doneEntry(
  words: string,
  { reading, note }: EntryOptions,
  tasks: readonly CareTask[],
  on: string,
  first: number,
): MadeEntry | string {
  const split = /^\s*(.+?)\s+(\S+)\s*$/.exec(words);
  const said = split?.[2] ?? '';
  const did = SYNONYMS[said] ?? said;
  if (split === null || deedOf(did) === undefined)
    return `--done: "${words}" does not end with what was done: ${DONE_WORDS.join(', ')}`;
  const part = split[1]!;
  const parts = [...new Set(tasks.map((task) => task.part))];
  if (!parts.includes(part)) {
    const guess = nearest(part, parts);
    return `--done: nothing in this cabinet is called "${part}"; ${
      guess === undefined ? 'look at "stillair care FILE --all"' : `did you mean "${guess} ${did}"?`
    }`;
  }
  return { list: 'done', first, entry: { on, part, did, reading, note } };
}

function ranEntry(job: string, options: EntryOptions, on: string, first: number): MadeEntry | string {
  const { machine, material, start, for: duration, mass, note, reading } = options;
  if (note !== undefined || reading !== undefined) return '--note and --reading belong to --done';
  const counted = [countOf('times', options.times), countOf('failed', options.failed)];
  const wrong = counted.find((count) => typeof count === 'string');
  if (typeof wrong === 'string') return wrong;
  const [times, failed] = counted as (number | undefined)[];
  return { list: 'jobs', first, entry: { on, job, machine, material, start, for: duration, mass, times, failed } };
}

function countOf(name: string, text: string | undefined): number | string | undefined {
  if (text === undefined) return undefined;
  return /^\d{1,5}$/.test(text) && Number(text) > 0 ? Number(text) : `--${name}: "${text}" is no whole number above 0`;
}
