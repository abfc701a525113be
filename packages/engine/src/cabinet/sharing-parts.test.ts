import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import type { Cabinet, Edit } from './cabinet.ts';
import { readCabinet } from './read-cabinet.ts';
import { sharingParts } from './sharing-parts.ts';

const text = readFileSync(new URL('../../../../examples/school-locker.yaml', import.meta.url), 'utf8');

function read(edits: readonly Edit[] = []): Cabinet {
  const answer = readCabinet('school-locker.yaml', text, edits);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return answer.cabinet;
}

it('exact: every part that an edit leaves alone is the same object, and what it changes is not', () => {
  const shared = sharingParts();
  const first = shared(read());
  const edited = shared(read([{ set: { 'room.humidity': '61 %' } }]));
  expect(edited).toEqual(read([{ set: { 'room.humidity': '61 %' } }]));
  const others = Object.keys(first).filter((part) => edited[part as keyof Cabinet] !== first[part as keyof Cabinet]);
  expect(others).toEqual(['room']);
  expect(shared(read()).room).toBe(first.room);
});

it('property: a cabinet with its parts shared is the cabinet', () => {
  const shared = sharingParts();
  for (const edits of [[], [{ set: { title: 'another' } }], []]) expect(shared(read(edits))).toEqual(read(edits));
});
