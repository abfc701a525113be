// All papers as the command makes them, PDF, DXF, 3MF and STL among them: the local server makes them of the text that it is sent.
// It answers in lines of JSON, how far it is; the last of them tells the size of the zip that follows it.

import type { UnitSystem } from '@stillair/engine';

export interface PapersProgress {
  readonly done: number;
  readonly all: number;
  readonly what: string;
}

interface Said extends Partial<PapersProgress> {
  readonly zip?: number;
  readonly problem?: string;
}

const LINE_END = 10;

/** The zip; throws with words for the person when there is none, and as fetch does when it is stopped. */
export async function papersOfServer(
  text: string,
  units: UnitSystem,
  stop: AbortSignal,
  progress: (progress: PapersProgress) => void,
): Promise<Blob> {
  const answer = await fetch(`api/papers?units=${units}`, {
    method: 'POST',
    body: text,
    headers: { 'Content-Type': 'text/plain; charset=utf-8' },
    signal: stop,
  });
  if (!answer.ok) throw new Error(((await answer.json()) as Said).problem ?? answer.statusText);
  const pieces = linesThenBytes(answer.body!);
  for await (const { said, rest } of pieces) {
    if (said.problem !== undefined) throw new Error(said.problem);
    if (said.zip !== undefined) return whole(await rest(), said.zip);
    if (said.all !== undefined) progress(said as PapersProgress);
  }
  throw new Error('the server went away before it was done');
}

function whole(parts: readonly Uint8Array<ArrayBuffer>[], bytes: number): Blob {
  const zip = new Blob([...parts], { type: 'application/zip' });
  if (zip.size !== bytes) throw new Error('the server went away before all of it was sent');
  return zip;
}

/** Each line, and a way to take all that follows it as it is. */
async function* linesThenBytes(body: ReadableStream<Uint8Array<ArrayBuffer>>): AsyncGenerator<{
  readonly said: Said;
  readonly rest: () => Promise<readonly Uint8Array<ArrayBuffer>[]>;
}> {
  const reader = body.getReader();
  let held = new Uint8Array();
  const rest = async (): Promise<readonly Uint8Array<ArrayBuffer>[]> => {
    const parts = [held];
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return parts;
      parts.push(value);
    }
  };
  for (;;) {
    const end = held.indexOf(LINE_END);
    if (end >= 0) {
      const said = JSON.parse(new TextDecoder().decode(held.subarray(0, end))) as Said;
      held = held.slice(end + 1);
      yield { said, rest };
      continue;
    }
    const { done, value } = await reader.read();
    if (done) return;
    const joined = new Uint8Array(held.length + value.length);
    joined.set(held);
    joined.set(value, held.length);
    held = joined;
  }
}
