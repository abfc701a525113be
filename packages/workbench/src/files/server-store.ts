// Files through the local server that serves this page.

import type { OpenedText, SaveAnswer, Store } from './store.ts';

interface Session {
  readonly version: 1;
  readonly files: readonly { readonly name: string }[];
  readonly open: string | null;
  readonly examples: readonly { readonly name: string; readonly title: string }[];
  readonly writable: boolean;
}

/** The store of the server, or nothing when this page is not served by one. */
export async function serverStore(): Promise<Store | undefined> {
  const session = await sessionHere();
  if (session === undefined) return undefined;
  return {
    kind: 'server',
    files: session.files,
    examples: session.examples,
    ...(session.open === null ? {} : { first: session.open }),
    writable: session.writable,
    open: (name) => read(`api/file?name=${encodeURIComponent(name)}`, name),
    openExample: (name) => read(`api/example?name=${encodeURIComponent(name)}`, name),
    save,
    watch: (changed) => {
      const events = new EventSource('api/changes');
      events.onmessage = ({ data }: MessageEvent<string>) => {
        const change = JSON.parse(data) as { name?: string; etag?: string };
        if (change.name !== undefined && change.etag !== undefined) changed(change.name, change.etag);
      };
      return () => events.close();
    },
  };
}

/** The server marks the page that it serves; any other place has only files. */
export function isServed(): boolean {
  return document.querySelector('meta[name="style-nonce"]') !== null;
}

async function sessionHere(): Promise<Session | undefined> {
  if (!isServed()) return undefined;
  try {
    const answer = await fetch('api/session');
    if (!answer.ok || !(answer.headers.get('content-type') ?? '').includes('json')) return undefined;
    return (await answer.json()) as Session;
  } catch {
    return undefined;
  }
}

async function read(address: string, name: string): Promise<OpenedText> {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`${name} cannot be read: ${await problemOf(answer)}`);
  const tag = answer.headers.get('etag');
  return { name, text: await answer.text(), ...(tag === null ? {} : { tag }) };
}

/** Refusals say what is the matter in words. */
async function problemOf(answer: Response): Promise<string> {
  try {
    return ((await answer.json()) as { readonly problem?: string }).problem ?? answer.statusText;
  } catch {
    return answer.statusText;
  }
}

async function save(name: string, text: string, tag: string | undefined): Promise<SaveAnswer> {
  const address = `api/file?name=${encodeURIComponent(name)}`;
  const guard: Record<string, string> = tag === undefined ? { 'If-None-Match': '*' } : { 'If-Match': tag };
  try {
    const answer = await fetch(address, {
      method: 'PUT',
      body: text,
      headers: { 'Content-Type': 'text/plain; charset=utf-8', ...guard },
    });
    if (answer.status === 412) return { ok: false, newer: await read(address, name) };
    if (!answer.ok) return { ok: false, why: await problemOf(answer) };
    const fresh = answer.headers.get('etag');
    return fresh === null ? { ok: true } : { ok: true, tag: fresh };
  } catch {
    return { ok: false, why: 'the local server does not answer; is it still running?' };
  }
}
