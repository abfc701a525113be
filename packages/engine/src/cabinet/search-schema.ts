// What a search may change: a value of the file by its path, and which options it may take.

import * as z from 'zod';
import { type CatalogueFree, type FreeSpec, type RangeFree, SEARCH_GROUPS, type SearchSpec } from './search-spec.ts';
import { choice, fullList, listOf, name, type Schema, text, thing, word } from './shape.ts';

export function searchSchema(): Schema<SearchSpec> {
  const values = fullList(z.unknown().describe('a value as it would stand in the file'), 'values to be tried');
  const written = (about: string): Schema<string> => text(about);
  const range = thing(
    {
      from: written('least value, such as 40 %'),
      to: written('greatest value'),
      step: written('from one value to the next'),
    },
    'values in equal steps',
  ) as unknown as Schema<RangeFree>;
  const catalogue = thing(
    {
      catalogue: word(SEARCH_GROUPS, 'kinds of the catalogue and of parts:'),
      named: text('only those whose name holds all these words').optional(),
    },
    'kinds of the catalogue',
  ) as unknown as Schema<CatalogueFree>;
  const pick = (input: unknown): number =>
    Array.isArray(input) ? 0 : typeof input === 'object' && input !== null && Object.hasOwn(input, 'catalogue') ? 2 : 1;
  const free = choice([values, range, catalogue], pick, 'values that it may take') as unknown as Schema<FreeSpec>;
  return thing(
    {
      free: z.record(z.string(), free).describe('what may take other values, by its path').optional(),
      options: listOf(name('option'), 'options that may be taken or left').optional(),
    },
    'what a search may change',
  ) as unknown as Schema<SearchSpec>;
}
