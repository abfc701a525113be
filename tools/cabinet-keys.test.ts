// docs/cabinet-file.md tells every key of the format. `UPDATE=1 npx vitest run tools/cabinet-keys.test.ts` writes its table anew.

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { formatComplaint, readCabinet } from '@stillair/engine';
import { describe, expect, it } from 'vitest';
import { keyTable } from './cabinet-keys.ts';

const page = join(import.meta.dirname, '../docs/cabinet-file.md');
const markers = ['<!-- keys: generated -->', '<!-- end of keys -->'] as const;

describe('docs/cabinet-file.md', () => {
  it('exact: its table of keys is that of the schema and the defaults', () => {
    const text = readFileSync(page, 'utf8');
    const [before, rest] = text.split(markers[0]);
    const [, after] = (rest ?? '').split(markers[1]);
    expect(after, 'both markers stand in the page').toBeDefined();
    const fresh = `${before}${markers[0]}\n\n${keyTable()}\n\n${markers[1]}${after}`;
    if (process.env['UPDATE'] === '1') writeFileSync(page, fresh);
    expect(readFileSync(page, 'utf8')).toBe(fresh);
  });

  it('exact: every whole file that it shows can be read', () => {
    const files = [...readFileSync(page, 'utf8').matchAll(/```yaml\n(stillair: 1\n[\s\S]*?)```/g)].map(
      ([, file]) => file!,
    );
    expect(files.length).toBeGreaterThan(0);
    for (const file of files) {
      const answer = readCabinet('page.yaml', file);
      expect(answer.ok ? '' : answer.complaints.map(formatComplaint).join('\n')).toBe('');
    }
  });

  it('exact: every piece that it shows is right beside the first file', () => {
    const [first, ...pieces] = [...readFileSync(page, 'utf8').matchAll(/```yaml\n([\s\S]*?)```/g)].map(
      ([, piece]) => piece!,
    );
    for (const piece of pieces) {
      const keys = [...piece.matchAll(/^([a-z-]+):/gm)].map(([, key]) => key!);
      const rest = keys.reduce(
        (text, key) => text.replace(new RegExp(`^${key}:.*\\n(?:[ #].*\\n|\\n)*`, 'm'), ''),
        first!,
      );
      const answer = readCabinet('page.yaml', `${rest}${piece}`);
      expect(answer.ok ? '' : answer.complaints.map(formatComplaint).join('\n'), piece).toBe('');
    }
  });
});
