import { describe, expect, it } from 'vitest';
import { appendEntry, newDiary } from './append-diary.ts';

const entry = { on: '2026-11-28', part: 'filter exhaust', did: 'changed', reading: '21 Pa', note: undefined };
const LINE = '- { on: 2026-11-28, part: filter exhaust, did: changed, reading: 21 Pa }';

const diary = `# mine
diary: 1
began: 2025-01-01   # new
done:   # by hand
  - { on: 2026-01-02, part: seal door, did: checked }   # cold day
  # nothing since

jobs:
    - on: 2026-02-03
      job: mount   # long
`;

describe('adding to a diary', () => {
  it('property: adds one line below the last entry and leaves every other character alone', () => {
    const lines = diary.split('\n');
    const written = appendEntry(diary, 'done', entry)!.split('\n');
    expect(written.toSpliced(5, 1)).toEqual(lines);
    expect(written[5]).toBe(`  ${LINE}`);
  });

  it('indents as the entries above do, after one of several lines too', () => {
    const written = appendEntry(diary, 'jobs', { on: '2026-02-04', job: 'mount', start: '9:00', times: 2 })!;
    expect(written).toBe(`${diary}    - { on: 2026-02-04, job: mount, start: 9:00, times: 2 }\n`);
  });

  it('begins a list that is not there, is empty, or stands in brackets with nothing inside', () => {
    const head = 'diary: 1\nbegan: 2025-01-01\n';
    expect(appendEntry(head, 'done', entry)).toBe(`${head}done:\n  ${LINE}\n`);
    expect(appendEntry(head.trimEnd(), 'done', entry)).toBe(`${head}done:\n  ${LINE}\n`);
    expect(appendEntry(`${head}done: # none yet\njobs: []\n`, 'done', entry)).toBe(
      `${head}done: # none yet\n  ${LINE}\njobs: []\n`,
    );
    expect(appendEntry(`${head}done: [] # none yet\n`, 'done', entry)).toBe(`${head}done: # none yet\n  ${LINE}\n`);
  });

  it('leaves a list in brackets, and what is no YAML, to the person', () => {
    expect(appendEntry('diary: 1\ndone: [{ on: 2026-01-02 }]\n', 'done', entry)).toBeUndefined();
    expect(appendEntry('diary: 1\ndone: [\n', 'done', entry)).toBeUndefined();
    expect(appendEntry('{ diary: 1 }\n', 'done', entry)).toBeUndefined();
  });

  it('writes a person’s words so that they are read back as they are', () => {
    const note = 'grey: "one side" # and {dust}';
    const written = appendEntry(newDiary('Shed: one', '2025-01-01'), 'done', { ...entry, note })!;
    expect(written).toContain(`note: ${JSON.stringify(note)}`);
    expect(written).toContain('title: "Shed: one"');
  });
});
