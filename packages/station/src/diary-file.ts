// The diary beside a cabinet file: where it lies, reading it with everything that is wrong with it printed, and adding to it.

import {
  appendEntry,
  type Cabinet,
  type Diary,
  type Entry,
  type EntryList,
  entryLine,
  formatComplaint,
  formatDate,
  isFault,
  newDiary,
  parseDate,
  readDiary,
} from '@stillair/engine';
import type { Io } from './io.ts';

/** `cabinet.diary.yaml` beside `cabinet.yaml`. */
export function diaryBeside(file: string): string {
  return `${file.replace(/\.ya?ml$/, '')}.diary.yaml`;
}

export type Found = { readonly text: string; readonly diary: Diary } | 'none' | undefined;

/** The day that an option names, or today; undefined after a complaint. */
export function dayFrom(text: string | undefined, option: string, command: string, io: Io): number | undefined {
  const day = parseDate(text ?? io.today());
  if (typeof day === 'number') return day;
  if (!isFault(day)) return undefined;
  io.err(`stillair ${command}: ${option}: ${day.what}; ${day.allowed}`);
  return undefined;
}

/** `asked`: the person named it, so that it must be there. Undefined after complaints. */
export async function loadDiary(
  path: string,
  asked: boolean,
  cabinet: Cabinet,
  today: number,
  command: string,
  io: Io,
): Promise<Found> {
  const reading = await io.read(path);
  if (!reading.ok) {
    if (!asked && /^there is no such file/.test(reading.problem)) return 'none';
    io.err(`stillair ${command}: cannot read ${path}: ${reading.problem}`);
    return undefined;
  }
  const answer = readDiary(path, reading.text, cabinet, today);
  if (answer.ok) return { text: reading.text, diary: answer.diary };
  const { complaints } = answer;
  io.err(complaints.map(formatComplaint).join('\n\n'));
  io.err(`\n${complaints.length === 1 ? '1 fault' : `${complaints.length} faults`} in ${path}; nothing was computed.`);
  return undefined;
}

export interface Entering {
  readonly path: string;
  readonly list: EntryList;
  readonly entry: Entry;
  /** For a diary that is not there yet. */
  readonly title: string;
  readonly began: number;
}

/** Writes an entry into a diary; the line that was written, or undefined after a complaint. */
export async function enterInDiary(
  { path, list, entry, title, began }: Entering,
  found: Exclude<Found, undefined>,
  cabinet: Cabinet,
  today: number,
  command: string,
  io: Io,
): Promise<string | undefined> {
  const line = entryLine(entry);
  const text = found === 'none' ? newDiary(title, formatDate(began)) : found.text;
  const written = appendEntry(text, list, entry);
  if (written === undefined) {
    io.err(`stillair ${command}: ${path} is written so that nothing can be put in; add this below ${list}: yourself:`);
    io.err(`  ${line}`);
    return undefined;
  }
  // What this program would complain of tomorrow is not written today.
  const answer = readDiary(path, written, cabinet, today);
  if (!answer.ok) {
    io.err(answer.complaints.map(formatComplaint).join('\n\n'));
    io.err(`\nNothing was written into ${path}.`);
    return undefined;
  }
  const problem = await io.write(path, written, found === 'none' ? 'new' : 'whole');
  if (problem === undefined) return line;
  io.err(`stillair ${command}: cannot write ${path}: ${problem}`);
  return undefined;
}
