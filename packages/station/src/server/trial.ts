// A workbench to try in tests: a scratch folder with a page, an example, an opened folder, and a file that nobody may reach.

import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Places } from './places.ts';

export interface Trial {
  /** The opened folder; beside it, out of reach, lies `secret.yaml`. */
  readonly folder: string;
  readonly places: Places;
  /** Puts a file into the opened folder. */
  readonly write: (name: string, text: string | Uint8Array) => string;
  readonly remove: () => void;
}

/** What no answer may hold. */
export const SECRET = 'nobody may read this';

export function trial(): Trial {
  const root = realpathSync(mkdtempSync(join(tmpdir(), 'stillair-server-')));
  const folder = join(root, 'opened');
  const places = { page: join(root, 'page'), examples: join(root, 'examples') };
  const files = {
    'secret.yaml': SECRET,
    'page/index.html': '<!doctype html>\n<html lang="en">\n  <head>\n    <title>Page</title>\n  </head>\n</html>\n',
    'page/.hidden.js': SECRET,
    'page/notes.md': SECRET,
    'page/assets/index-AbCd_1-9.js': 'export {};\n',
    'page/assets/plain.css': 'p { margin: 0 }\n',
    'page/lines.wasm': '\0asm',
    'page/workbench.webmanifest': '{}\n',
    'examples/shed.yaml': 'title: A shed\n',
  };
  for (const each of ['opened/inner', 'page/assets', 'examples']) mkdirSync(join(root, each), { recursive: true });
  for (const [name, text] of Object.entries(files)) writeFileSync(join(root, name), text);
  return {
    folder,
    places,
    write: (name, text) => {
      const path = join(folder, name);
      writeFileSync(path, text);
      return path;
    },
    remove: () => rmSync(root, { recursive: true }),
  };
}

/** The changes that a stream of server-sent events tells, as they come. */
export async function* eventsOf(stream: ReadableStream<Uint8Array>): AsyncGenerator<unknown, undefined> {
  const decoder = new TextDecoder();
  let text = '';
  for await (const bytes of stream) {
    text += decoder.decode(bytes, { stream: true });
    const pieces = text.split('\n\n');
    text = pieces.pop()!;
    for (const piece of pieces) if (piece.startsWith('data: ')) yield JSON.parse(piece.slice('data: '.length));
  }
  return undefined;
}
