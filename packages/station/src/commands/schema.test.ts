import { expect, it } from 'vitest';
import { fakeIo } from '../fake-io.ts';
import { schema } from './schema.ts';

it('stillair schema prints one JSON Schema that knows the keys of a cabinet file', async () => {
  const io = fakeIo();
  expect(await schema(io)).toBe(0);
  const { $schema, properties } = JSON.parse(io.printed.out) as {
    $schema: string;
    properties: Record<string, unknown>;
  };
  expect($schema).toMatch(/json-schema\.org/);
  expect(Object.keys(properties)).toEqual(
    expect.arrayContaining(['stillair', 'room', 'bays', 'machines', 'days', 'options']),
  );
});
