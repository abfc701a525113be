import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { careTasksOf } from '../cabinet/care-tasks.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { ageingOf } from './ageing.ts';
import type { Criterion } from './care-due.ts';

const examples = join(import.meta.dirname, '../../../../examples');
const over: readonly Criterion[] = [{ by: 'calendar', used: 500, of: 365, share: 500 / 365 }];

function cabinetOf(text: string) {
  const answer = readCabinet('cabinet.yaml', text);
  if (!answer.ok) throw new Error(answer.complaints[0]!.what);
  return answer.cabinet;
}

describe('worn parts as edits', () => {
  it.each(readdirSync(examples).filter((name) => /(?<!\.diary)\.yaml$/.test(name)))(
    'property: every worn part of %s can be written into the file',
    (name) => {
      const text = readFileSync(join(examples, name), 'utf8');
      const cabinet = cabinetOf(text);
      const worn = careTasksOf(cabinet).flatMap((task) => ageingOf(task, over, cabinet) ?? []);
      expect(worn.length).toBeGreaterThan(2);
      const reads = (edits: (typeof worn)[number]['edits'] | undefined): boolean =>
        edits !== undefined && readCabinet(name, text, edits).ok;
      expect(worn.filter(({ edits, otherwise }) => !reads(edits) && !reads(otherwise))).toEqual([]);
    },
  );

  it('exact: a filter is as loaded as its interval is used; by a reading of 40 Pa of 20 Pa clean, once over', () => {
    const text = readFileSync(join(examples, 'winter-shed.yaml'), 'utf8');
    const cabinet = cabinetOf(text);
    const filter = careTasksOf(cabinet).find(({ id }) => id === 'filter exhaust change')!;
    const loading = (criteria: readonly Criterion[]): unknown =>
      Object.values(ageingOf(filter, criteria, cabinet)!.edits[0]!.set!)[0];
    expect(loading(over)).toBe('137 %');
    expect(loading([{ by: 'printing', used: 9, of: 1, share: 9 }])).toBe('200 %');
    expect(loading([{ by: 'pressure', used: 40, of: 40, share: 1 }, ...over])).toBe('100 %');
    expect(loading([{ by: 'pressure', used: 30, of: 40, share: 0.75 }, ...over])).toBe('58 %');
  });
});
