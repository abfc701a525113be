// The cabinets of the repository that a person may look at and begin from. They are only read.

import { textOf } from '../read-file.ts';
import { findFile } from './disk-file.ts';
import { listFiles, type Session } from './session.ts';

export interface Example {
  readonly name: string;
  readonly title: string;
}

export async function listExamples(examples: Session): Promise<Example[]> {
  const files = await listFiles(examples);
  return Promise.all(files.map(async ({ name }) => ({ name, title: (await titleOf(examples, name)) ?? name })));
}

/** Read off its line: reading whole cabinets would keep the first page waiting for most of a second. */
async function titleOf(examples: Session, name: string): Promise<string | undefined> {
  const found = await findFile(examples, name);
  const reading = found.kind === 'file' ? textOf(found.bytes) : undefined;
  return reading?.ok ? /^title: *(.*\S)/m.exec(reading.text)?.[1] : undefined;
}
