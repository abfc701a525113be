// The keys of one part of the file, with what is written and, where nothing is, where the number in use comes from.

import fileSchema from 'virtual:file-schema';
import { type Origins, readCabinet } from '@stillair/engine';
import { type JsonSchema, keysAt, schemasAt, wordsAt } from '../text/schema-at.ts';
import { originWords } from './look.ts';
import type { Field } from './protocol.ts';

const schema = fileSchema as JsonSchema;

/** Maps in maps are told one level down: `bed.height`. */
const DEPTH = 2;

export function inspect(text: string, path: string): readonly Field[] {
  const answer = readCabinet('cabinet', text);
  if (!answer.ok) return [];
  const { origins, document } = answer;
  const written = (segments: readonly string[]): unknown => document.document.getIn(segments, false);
  return fieldsAt(schema, path.split('.'), [], written, origins);
}

function fieldsAt(
  root: JsonSchema,
  path: readonly string[],
  below: readonly string[],
  written: (segments: readonly string[]) => unknown,
  origins: Origins,
): Field[] {
  const at = [...path, ...below];
  return [...keysAt(root, at)].flatMap(([key, about]): Field[] => {
    const segments = [...at, key];
    const value = plainText(written(segments));
    const maps = schemasAt(root, segments).filter(({ properties }) => properties !== undefined);
    const singles = schemasAt(root, segments).some(({ type }) => type !== 'object' && type !== 'array');
    const lists = schemasAt(root, segments).some(({ type }) => type === 'array');
    if (maps.length > 0 && !singles && !lists && below.length + 1 < DEPTH)
      return fieldsAt(root, path, [...below, key], written, origins);
    const named = [...below, key].join('.');
    const words = wordsAt(root, segments);
    return [
      {
        path: segments.join('.'),
        key: named,
        about,
        editable: singles,
        ...(value === undefined ? {} : { written: value }),
        ...(words.length === 0 ? {} : { words }),
        origin: originOf(origins, path, named),
      },
    ];
  });
}

/** A single value as text; maps and lists are not edited here. */
function plainText(value: unknown): string | undefined {
  if (value === undefined || value === null) return undefined;
  if (typeof value === 'string' || typeof value === 'number') return String(value);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return '(more than one value: see the text)';
}

/** The file says `bed.heat-capacity` where the cabinet says `bed.heatCapacity`. */
function originOf(origins: Origins, path: readonly string[], named: string): string {
  const inCabinet = [path[0] === 'air' ? 'paths' : path[0]!, ...path.slice(1), ...named.split('.').map(camel)].join(
    '.',
  );
  return originWords(origins.get(inCabinet));
}

function camel(key: string): string {
  return key.replaceAll(/-(\w)/g, (_, letter: string) => letter.toUpperCase());
}
