// Why what a line asks for cannot be done, in words.

import type { Complaint } from '../cabinet/complaint.ts';
import { complainOf } from './job-complaint.ts';
import type { JobState } from './job-state.ts';

type Said = Omit<Complaint, 'where'>;

const arcAllowed =
  'G2 and G3 with I and J from the beginning to the middle, or with R, on the way to an end as far from the middle';
const again = 'make the file anew, as it is probably damaged here';
export const arcWithoutMiddle: Said = {
  code: 'job-arc',
  what: 'this arc has no middle: neither I and J nor R says where it is',
  allowed: arcAllowed,
  mend: again,
};
export const arcWithoutEnd: Said = {
  code: 'job-arc',
  what: 'an arc with R ends where it begins: any circle through there would do',
  allowed: arcAllowed,
  mend: 'give its middle with I and J',
};
export const arcTooSmall: Said = {
  code: 'job-arc',
  what: 'no arc of this radius reaches from the beginning to the end',
  allowed: arcAllowed,
  mend: again,
};
export const arcAstray: Said = {
  code: 'job-arc',
  what: 'the end of this arc is not as far from its middle as its beginning',
  allowed: arcAllowed,
  mend: again,
};
export const dwellBelowNothing: Said = {
  code: 'job-dwell',
  what: 'a dwell cannot last less than nothing',
  allowed: 'G4 with P or S of 0 or more',
  mend: again,
};

export function complain(state: JobState, bytes: Uint8Array, start: number, said: Said): void {
  state.complaints.push(complainOf({ file: state.file, line: state.line, bytes, start }, 0, said));
}
