// Studies that were asked for: of which text, how far they are, and what they say. A study of an older text stays to be read, as old.

import type { Answer, Progress, Results, StudyName } from '../engine/protocol.ts';

export interface Asked<Result> {
  /** The text it is a study of. */
  readonly text: string;
  readonly state: 'running' | 'whole' | 'stopped' | 'left';
  readonly progress?: Progress;
  readonly result?: Result;
  /** Why there is none. */
  readonly why?: string;
}

export type AllAsked = { readonly [Name in StudyName]?: Asked<Results[Name]> };

type OfStudy = Extract<Answer, { readonly kind: 'studying' | 'told' | 'broke' }>;

/** One study runs at a time: another that runs is left. */
export function askedAnew(all: AllAsked, study: StudyName, text: string): AllAsked {
  return { ...leftAll(all), [study]: { text, state: 'running' } };
}

export function leftAll(all: AllAsked): AllAsked {
  const entries = Object.entries<Asked<unknown>>(all).map(([name, asked]) => [name, left(asked)]);
  return Object.fromEntries(entries) as AllAsked;
}

function left<Result>(asked: Asked<Result>): Asked<Result> {
  return asked.state === 'running' ? { ...asked, state: 'left' } : asked;
}

export function heardOfStudy(all: AllAsked, answer: OfStudy): AllAsked {
  const { study } = answer;
  const before = all[study];
  if (before === undefined) return all;
  switch (answer.kind) {
    case 'studying':
      return { ...all, [study]: { ...before, progress: answer.progress } };
    case 'told':
      return {
        ...all,
        [study]: { ...before, result: answer.result, state: answer.ended === 'not yet' ? before.state : answer.ended },
      };
    case 'broke':
      return { ...all, [study]: { ...before, state: 'stopped', why: answer.why } };
  }
}
