// Reads a job file piece by piece, in memory that does not grow with it: `openJob`, `takeBytes` for each piece, `endJob`.
// What is said in a line is obeyed in `obey-line.ts`; the times come from `move-queue.ts`.

import type { JobAnswer, JobRules } from './job.ts';
import { complainOf, lineComplaint } from './job-complaint.ts';
import { type JobState, openState } from './job-state.ts';
import { emptyLine, readLine } from './line-words.ts';
import { obeyLine } from './obey-line.ts';
import { summary } from './summary.ts';

/** The longest line that a job file may have, bytes: it must be held whole. */
const LONGEST_LINE = 1_000_000;
/** Complaints told of one file; further ones are counted. */
const MOST_COMPLAINTS = 5;
const NEWLINE = 10;
const BYTE_ORDER_MARK = [0xef, 0xbb, 0xbf];

export interface OpenJob {
  readonly state: JobState;
  readonly words: ReturnType<typeof emptyLine>;
  /** The beginning of a line whose end has not come yet. */
  rest: Uint8Array;
  bytes: number;
  /** Nothing more is read: the job has ended, or the file cannot be read. */
  done: boolean;
  checksums: boolean;
}

export function openJob(file: string, rules: JobRules): OpenJob {
  return {
    state: openState(file, rules),
    words: emptyLine(),
    rest: new Uint8Array(0),
    bytes: 0,
    done: false,
    checksums: false,
  };
}

/** The next piece of the file, of any length; it is not kept. */
export function takeBytes(job: OpenJob, piece: Uint8Array): void {
  const first = job.bytes === 0 && BYTE_ORDER_MARK.every((byte, at) => piece[at] === byte) ? 3 : 0;
  job.bytes += piece.length;
  if (job.done) return;
  const last = piece.lastIndexOf(NEWLINE) + 1;
  if (last === 0) {
    keep(job, piece.subarray(first));
    return;
  }
  let from = first;
  if (job.rest.length > 0) {
    from = piece.indexOf(NEWLINE) + 1;
    takeLines(job, joined(job.rest, piece.subarray(0, from)));
    job.rest = new Uint8Array(0);
  }
  if (from < last) takeLines(job, from === 0 && last === piece.length ? piece : piece.subarray(from, last));
  if (last < piece.length) keep(job, piece.subarray(last));
}

/** After the last piece. */
export function endJob(job: OpenJob): JobAnswer {
  const { state } = job;
  if (!job.done && job.rest.length > 0) {
    const cut = cutOff(job);
    if (!cut) state.notes.add('its last line has no end: if more was meant to follow, the file has been cut off');
    takeLines(job, joined(job.rest, Uint8Array.of(NEWLINE)), cut);
  }
  if (state.complaints.length === 0 && state.queue.added === 0) {
    const place = { file: state.file, line: 1, bytes: new Uint8Array(0), start: 0 };
    state.complaints.push(
      complainOf(place, 0, {
        code: 'job-empty',
        what: state.line === 0 ? 'the file is empty' : `nothing moves in its lines, of which there are ${state.line}`,
        allowed: 'a job file: lines such as G1 X12.5 Y30 E0.4 F1800',
        mend: 'name the file that you would give to the machine',
      }),
    );
  }
  if (state.complaints.length > 0) {
    const { complaints } = state;
    return {
      ok: false,
      complaints: complaints.slice(0, MOST_COMPLAINTS),
      more: Math.max(0, complaints.length - MOST_COMPLAINTS),
    };
  }
  return { ok: true, job: summary(state, job.bytes) };
}

/** Whole lines; `cut` when they are the beginning of one that is not there. */
function takeLines(job: OpenJob, bytes: Uint8Array, cut = false): void {
  const { state, words } = job;
  const { length } = bytes;
  for (let at = 0; at < length && !job.done; ) {
    const start = at;
    at = readLine(bytes, at, words);
    state.line++;
    if (words.fault !== undefined && !cut) {
      state.complaints.push(lineComplaint({ file: state.file, line: state.line, bytes, start }, words));
      job.done = words.fault === 'binary' || state.complaints.length > MOST_COMPLAINTS;
      continue;
    }
    if (words.checksum) job.checksums = true;
    if (cut) {
      state.complaints.push(
        complainOf({ file: state.file, line: state.line, bytes, start }, length - 1, {
          code: 'job-cut-off',
          what: 'the file ends within this line: its rest is missing',
          allowed: 'a file that ends with a whole line',
          mend: 'copy the file again, or make it anew',
        }),
      );
      return;
    }
    if (words.unknown !== undefined) count(state.unknown, words.unknown);
    if (words.count > 0 || words.given > 0) obeyLine(state, words, bytes, start);
    job.done = state.ended || state.complaints.length > MOST_COMPLAINTS;
  }
}

/** Words that are not known are counted, up to so many different ones; the others under one name. */
const MOST_UNKNOWN = 200;
const OTHERS = 'others';

function count(unknown: Map<string, number>, word: string): void {
  const name = unknown.size < MOST_UNKNOWN || unknown.has(word) ? word : OTHERS;
  unknown.set(name, (unknown.get(name) ?? 0) + 1);
}

/** The last line has no newline: has it been cut within a word, a comment, or before the checksum that the others have? */
function cutOff({ rest, checksums }: OpenJob): boolean {
  const text = String.fromCharCode(...rest.subarray(-200)).trimEnd();
  const whole = String.fromCharCode(...rest.subarray(0, 200));
  if (/^\s*[;%]/.test(whole)) return false;
  const said = text.replace(/;.*$/, '').replaceAll(/\([^)]*\)/g, '');
  if (said.trim() === '') return false;
  if (said.includes('(')) return true;
  if (checksums && !/\*\d+\s*$/.test(said)) return true;
  if (/^\s*(N\d+\s*)?(G28|M1[78]|M84)\b/i.test(said) || /[A-Z]{2}/i.test(said)) return false; // letters alone are usual there
  return /[A-Z*+.-]\s*$/i.test(said);
}

function keep(job: OpenJob, piece: Uint8Array): void {
  if (job.done) return;
  job.rest = joined(job.rest, piece);
  if (job.rest.length <= LONGEST_LINE) return;
  const place = { file: job.state.file, line: job.state.line + 1, bytes: job.rest, start: 0 };
  const binary = job.rest.findIndex((byte) => byte < 9);
  job.state.complaints.push(
    complainOf(place, Math.max(0, binary), {
      code: binary < 0 ? 'job-line-long' : 'job-binary',
      what:
        binary < 0
          ? 'this line is longer than a million bytes'
          : `the byte 0x${job.rest[binary]!.toString(16).padStart(2, '0')} stands in no text: this is a binary file, or a damaged one`,
      allowed: 'a job file in plain text, as RS-274 and ISO 6983 have it',
      mend: 'let the program that made it write plain text, or unpack the file first',
    }),
  );
  job.rest = new Uint8Array(0);
  job.done = true;
}

function joined(first: Uint8Array, second: Uint8Array): Uint8Array {
  const both = new Uint8Array(first.length + second.length);
  both.set(first);
  both.set(second, first.length);
  return both;
}
