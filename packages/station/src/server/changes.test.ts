import { renameSync, rmSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Change, changesOf, type Noticing, usualNoticing } from './changes.ts';
import { etagOf } from './disk-file.ts';
import { type Trial, trial } from './trial.ts';

let scratch: Trial;
let heard: Change[];
let stop = () => {};
beforeEach(() => {
  scratch = trial();
  heard = [];
});
afterEach(() => {
  stop();
  scratch.remove();
});

const markOf = (text: string) => etagOf(new TextEncoder().encode(text));
const listen = (noticing?: Noticing) => {
  const changes = changesOf({ folder: scratch.folder, only: undefined }, noticing);
  stop = changes.listen((change) => heard.push(change));
  return changes;
};

const ways: [string, Noticing][] = [
  ['by what the folder stirs', { ...usualNoticing, every: 1_000_000 }],
  ['by looking again and again', { stirs: () => undefined, quiet: 1_000_000, every: 20 }],
];

describe.each(ways)('changes are noticed %s', (_, noticing) => {
  it('what the files are, what they become, what comes and what goes', async () => {
    const path = scratch.write('a.yaml', 'one');
    scratch.write('notes.txt', 'no matter');
    listen(noticing);
    await expect.poll(() => heard).toEqual([{ name: 'a.yaml', etag: markOf('one') }]);
    scratch.write('a.yaml', 'two');
    await expect.poll(() => heard.at(-1)).toEqual({ name: 'a.yaml', etag: markOf('two') });
    scratch.write('b.yaml', 'three');
    await expect.poll(() => heard.at(-1)).toEqual({ name: 'b.yaml', etag: markOf('three') });
    rmSync(path);
    await expect.poll(() => heard.at(-1)).toEqual({ gone: 'a.yaml' });
    expect(heard.filter((change) => 'gone' in change)).toHaveLength(1);
  });

  it('a file that another takes the place of, as careful programs save', async () => {
    const path = scratch.write('a.yaml', 'one');
    listen(noticing);
    await expect.poll(() => heard).toHaveLength(1);
    renameSync(scratch.write('a.yaml.new', 'two'), path);
    await expect
      .poll(() => heard)
      .toEqual([
        { name: 'a.yaml', etag: markOf('one') },
        { name: 'a.yaml', etag: markOf('two') },
      ]);
  });
});

it('notices what changes behind a link into a folder below, which stirs nothing', async () => {
  scratch.write('inner/target.yaml', 'one');
  symlinkSync('inner/target.yaml', join(scratch.folder, 'link.yaml'));
  listen({ ...usualNoticing, every: 20 });
  await expect.poll(() => heard).toHaveLength(1);
  scratch.write('inner/target.yaml', 'two');
  await expect.poll(() => heard.at(-1)).toEqual({ name: 'link.yaml', etag: markOf('two') });
});

it('says nothing of a file that was written again with the same text', async () => {
  scratch.write('a.yaml', 'one');
  listen({ stirs: () => undefined, quiet: 1_000_000, every: 20 });
  await expect.poll(() => heard).toHaveLength(1);
  scratch.write('a.yaml', 'one');
  scratch.write('b.yaml', 'mark');
  await expect.poll(() => heard.at(-1)).toEqual({ name: 'b.yaml', etag: markOf('mark') });
  expect(heard).toHaveLength(2);
});

it('tells a later listener how things stand, and looks no more when all have left', async () => {
  let stirring = 0;
  const stirs = () => {
    stirring++;
    return () => {
      stirring--;
    };
  };
  scratch.write('a.yaml', 'one');
  const changes = listen({ stirs, quiet: 0, every: 20 });
  await expect.poll(() => heard).toHaveLength(1);
  const later: Change[] = [];
  const leave = changes.listen((change) => later.push(change));
  expect(later).toEqual(heard);
  expect(stirring).toBe(1);
  leave();
  leave();
  stop();
  expect(stirring).toBe(0);
  stop = changes.listen((change) => later.push(change));
  await expect.poll(() => later).toHaveLength(2);
});
