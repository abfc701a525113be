import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import * as z from 'zod';
import { cabinetSchema } from './schema.ts';

const cases = join(import.meta.dirname, '../../cases');
const schema = cabinetSchema();
// The validator at hand does not apply a map's own values beside a pattern, so that the pattern for notes is left out here.
const strict = JSON.parse(JSON.stringify(schema), (_key, value: unknown) => {
  if (typeof value !== 'object' || value === null || !('patternProperties' in value)) return value;
  const { patternProperties: _, ...rest } = value;
  return rest;
}) as Parameters<typeof z.fromJSONSchema>[0];
const validator = z.fromJSONSchema(strict);
const fits = (file: string): boolean => validator.safeParse(parse(readFileSync(join(cases, file), 'utf8'))).success;

describe('the JSON Schema', () => {
  it('cross: it lets the readable files through', () => {
    expect(fits('cabinet/first.yaml')).toBe(true);
    const { _note: _, ...everything } = parse(readFileSync(join(cases, 'cabinet/everything.yaml'), 'utf8')) as Record<
      string,
      unknown
    >;
    expect(validator.safeParse(everything).success).toBe(true);
  });

  it('cross: it refuses keys and words that the reader refuses', () => {
    for (const file of [
      'room-key-misspelt',
      'top-key-foreign',
      'face-unknown',
      'blows-unknown',
      'machine-key-unknown',
      'cabinet-missing',
      'version-2',
      'unit-missing',
    ]) {
      expect(fits(`broken/${file}.yaml`), file).toBe(false);
    }
  });

  it('property: every key says what it is', () => {
    const silent: string[] = [];
    walk(schema, '', (path, node) => {
      if (typeof node['description'] !== 'string') silent.push(path);
    });
    expect(silent).toEqual([]);
  });

  it('exact: notes of one’s own are allowed in every map', () => {
    expect(JSON.stringify(schema).match(/"type":"object"/g)?.length).toBe(
      JSON.stringify(schema).match(/"\^_"/g)?.length,
    );
    expect(readdirSync(join(cases, 'broken')).length).toBeGreaterThan(100);
  });
});

function walk(node: unknown, path: string, see: (path: string, node: Record<string, unknown>) => void): void {
  if (typeof node !== 'object' || node === null) return;
  const { properties, additionalProperties, items, anyOf } = node as Record<string, unknown>;
  for (const [key, inner] of Object.entries(properties ?? {})) {
    see(`${path}.${key}`, inner as Record<string, unknown>);
    walk(inner, `${path}.${key}`, see);
  }
  walk(additionalProperties, `${path}.*`, see);
  walk(items, `${path}[]`, see);
  for (const branch of (anyOf ?? []) as unknown[]) walk(branch, path, see);
}
