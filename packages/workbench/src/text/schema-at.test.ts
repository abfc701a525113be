import { cabinetSchema } from '@stillair/engine';
import { describe, expect, it } from 'vitest';
import { type JsonSchema, keysAt, meaningAt, wordsAt } from './schema-at.ts';

const schema = cabinetSchema() as JsonSchema;

describe('what may stand at a place of the file', () => {
  it('exact: keys of maps, of maps by id, and of items of lists', () => {
    expect([...keysAt(schema, []).keys()]).toContain('machines');
    expect([...keysAt(schema, ['machines', 'any-id']).keys()]).toEqual(expect.arrayContaining(['kind', 'bay', 'at']));
    expect([...keysAt(schema, ['air', 'out', 'parts', '0']).keys()]).toEqual(
      expect.arrayContaining(['fan', 'filter', 'duct']),
    );
    expect(keysAt(schema, ['no', 'such', 'way']).size).toBe(0);
  });

  it('exact: words where only a few are known, and what a key means', () => {
    expect(wordsAt(schema, ['cabinet', 'faces', 'back', 'against'])).toEqual(['room', 'wall', 'floor']);
    expect(meaningAt(schema, ['room', 'air-changes'])).toMatch(/exchange with outdoors/);
  });
});
