// What is wrong with a line of a job file, in words.

import type { Complaint } from '../cabinet/complaint.ts';
import type { LineWords } from './line-words.ts';

/** So much of a line is kept for a message. */
const LINE_SHOWN = 200;

export interface LinePlace {
  readonly file: string;
  readonly line: number;
  readonly bytes: Uint8Array;
  readonly start: number;
}

export function complainOf(
  { file, line, bytes, start }: LinePlace,
  at: number,
  said: Omit<Complaint, 'where'>,
): Complaint {
  let end = bytes.indexOf(10, start);
  if (end < 0) end = bytes.length;
  if (end > start && bytes[end - 1] === 13) end--;
  const shown = bytes.subarray(start, Math.min(end, start + LINE_SHOWN));
  const lineText = String.fromCharCode(...shown);
  return { ...said, where: { file, line, column: at + 1, length: 1, lineText } };
}

/** The fault that taking a line apart has found. */
export function lineComplaint(place: LinePlace, words: LineWords): Complaint {
  const letter = String.fromCharCode(65 + words.faultOf);
  const byte = `0x${words.faultOf.toString(16).padStart(2, '0')}`;
  return complainOf(place, words.faultAt, saidOf(words, letter, byte));
}

function saidOf({ fault, faultOf }: LineWords, letter: string, byte: string): Omit<Complaint, 'where'> {
  switch (fault) {
    case 'binary':
      return {
        code: 'job-binary',
        what: `the byte ${byte} stands in no text: this is a binary file, or a damaged one`,
        allowed: 'a job file in plain text, as RS-274 and ISO 6983 have it',
        mend: 'let the program that made it write plain text, or unpack the file first',
      };
    case 'letter-without-number':
      return {
        code: 'job-number-missing',
        what: `${letter} is followed by a sign or a point, but by no number`,
        allowed: 'a letter and a number, such as X12.5',
        mend: 'make the file anew, as it is probably damaged here',
      };
    case 'number-too-large':
      return {
        code: 'job-number-large',
        what: `the number behind ${letter} is larger than any machine can go`,
        allowed: 'numbers up to ten million',
        mend: 'make the file anew, as it is probably damaged here',
      };
    case 'comment-open':
      return {
        code: 'job-comment-open',
        what: 'this comment is not closed before the line ends',
        allowed: 'a comment in brackets ends on its line; one behind ; needs no end',
        mend: 'write ) at its end',
      };
    case 'checksum-wrong':
      return {
        code: 'job-checksum',
        what: `the line comes to ${faultOf}, not to the number behind *: it is damaged`,
        allowed: 'the exclusive or of all bytes before *',
        mend: 'copy the file again, or make it anew',
      };
    case 'checksum-missing':
      return {
        code: 'job-checksum',
        what: `no number follows *; the line comes to ${faultOf}`,
        allowed: 'the exclusive or of all bytes before *',
        mend: 'copy the file again, or make it anew',
      };
    case 'not-a-word':
    case undefined:
      return {
        code: 'job-word',
        what: 'no word begins with this sign',
        allowed: 'words of a letter and a number, and comments behind ; or in brackets',
        mend: 'take it out, or put ; before it if it is a comment',
      };
  }
}
