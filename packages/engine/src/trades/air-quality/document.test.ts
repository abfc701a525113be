import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { guidelines } from './limits.ts';

const text = readFileSync(join(import.meta.dirname, '../../../../../docs/air-quality.md'), 'utf8');

describe('the air-quality document', () => {
  it.each(guidelines.map((guideline) => [guideline.id, guideline] as const))(
    'cross: lists %s with its source and what others publish',
    (id, { source, others, over }) => {
      const row = text.split('\n').find((line) => line.startsWith(`| \`${id}\` `))!;
      for (const part of [source, others, over]) expect(row).toContain(part);
    },
  );
});
