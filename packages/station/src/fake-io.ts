// An outside made of memory, for the tests of commands: files by name, everything printed kept.

import type { Io, Served, Serving, SetWritten, Stream } from './io.ts';

export interface FakeIo extends Io {
  readonly printed: { out: string; err: string; progress: string[] };
  readonly written: Map<string, string>;
  /** Files of sets, by folder and name. */
  readonly sets: Map<string, string | Uint8Array>;
  /** What was asked to be served, and how often it was closed. */
  readonly served: { asked: Serving[]; closed: number };
}

export interface FakeOutside {
  readonly files?: Readonly<Record<string, string>>;
  /** What the person answers, in order; when they run out there is no more input; without any there is nobody to ask. */
  readonly answers?: readonly string[];
  readonly isTerminal?: boolean;
  readonly columns?: number;
  readonly colour?: boolean;
  readonly stop?: AbortSignal;
  /** The date; one fixed day unless given. */
  readonly today?: string;
  /** Why nothing can be served. */
  readonly deaf?: string;
}

export function fakeIo({ files = {}, answers = [], ...outside }: FakeOutside = {}): FakeIo {
  const printed: FakeIo['printed'] = { out: '', err: '', progress: [] };
  const written = new Map<string, string>();
  const sets = new Map<string, string | Uint8Array>();
  const served: FakeIo['served'] = { asked: [], closed: 0 };
  const waiting = [...answers];
  return {
    printed,
    written,
    sets,
    served,
    async serve(asked): Promise<Served> {
      served.asked.push(asked);
      if (outside.deaf !== undefined) return { ok: false, problem: outside.deaf };
      const close = async () => {
        served.closed++;
      };
      return { ok: true, address: 'http://127.0.0.1:4180/', close };
    },
    async read(path) {
      const text = files[path];
      return text === undefined ? { ok: false, problem: 'there is no such file' } : { ok: true, text };
    },
    async stream(path): Promise<Stream> {
      const text = files[path];
      if (text === undefined) return { ok: false, problem: 'there is no such file' };
      const bytes = new TextEncoder().encode(text);
      return { ok: true, bytes: bytes.length, pieces: piecesOf(bytes) };
    },
    async write(path, text, how) {
      if (path.startsWith('/nowhere/')) return 'its folder does not exist';
      if (how === 'new' && Object.hasOwn(files, path)) return 'it is there already';
      written.set(path, text);
      return undefined;
    },
    async writeSet(folder, set, { force }): Promise<SetWritten> {
      if (folder.startsWith('/nowhere/')) return { ok: false, problem: 'its folder does not exist' };
      const foreign = set.map(({ name }) => name).filter((name) => Object.hasOwn(files, `${folder}/${name}`));
      if (foreign.length > 0 && !force) return { ok: false, foreign };
      for (const { name, content } of set) sets.set(`${folder}/${name}`, content);
      return { ok: true, removed: [] };
    },
    out(text) {
      printed.out += `${text}\n`;
    },
    err(text) {
      printed.err += `${text}\n`;
    },
    progress(text) {
      printed.progress.push(text);
    },
    today: () => outside.today ?? '2026-11-28',
    async ask(question) {
      if (answers.length === 0) return undefined;
      printed.err += `${question}\n`;
      return waiting.shift();
    },
    isTerminal: outside.isTerminal ?? false,
    columns: outside.columns ?? 80,
    colour: outside.colour ?? false,
    stop: outside.stop ?? new AbortController().signal,
  };
}

/** Small pieces, so that lines are broken. */
async function* piecesOf(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += 100) yield bytes.slice(at, at + 100);
}
