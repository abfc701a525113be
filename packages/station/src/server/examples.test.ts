import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readCabinet } from '@stillair/engine';
import { expect, it } from 'vitest';
import { listExamples } from './examples.ts';
import { placesOfRepository } from './places.ts';

const { examples } = placesOfRepository();

it('cross: the titles are those of the cabinets when they are read in full', async () => {
  const listed = await listExamples({ folder: examples, only: undefined });
  expect(listed.length).toBeGreaterThan(0);
  for (const { name, title } of listed) {
    const answer = readCabinet(name, readFileSync(join(examples, name), 'utf8'));
    expect(answer).toMatchObject({ ok: true, cabinet: { title } });
  }
});

it('has none where there is no such folder', async () => {
  expect(await listExamples({ folder: join(examples, 'none'), only: undefined })).toEqual([]);
});
