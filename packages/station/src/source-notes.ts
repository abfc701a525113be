// Sources of limits as numbered notes under a table, each told once.

import { hanging } from './text.ts';

export interface SourceNotes {
  /** `[2]`, the same for the same source. */
  readonly mark: (source: string) => string;
  /** All that were marked, in the order of their numbers. */
  readonly list: (width: number) => string;
}

export function sourceNotes(): SourceNotes {
  const sources: string[] = [];
  return {
    mark: (source) => {
      if (!sources.includes(source)) sources.push(source);
      return `[${sources.indexOf(source) + 1}]`;
    },
    list: (width) => sources.map((source, at) => hanging(`[${at + 1}] `.padStart(5), source, width)).join('\n'),
  };
}
