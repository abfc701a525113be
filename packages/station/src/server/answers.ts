// The shapes of what the server says. What is JSON carries a version, and a version only gains keys.

export const VERSION = 1;

const TEXT = 'text/plain; charset=utf-8';

type Headers_ = Readonly<Record<string, string>>;

export function told(facts: object): Response {
  return Response.json({ version: VERSION, ...facts }, { headers: { 'Cache-Control': 'no-store' } });
}

/** Why something was not done, in words for the person at the page. */
export function problem(status: number, words: string, headers: Headers_ = {}): Response {
  return Response.json(
    { version: VERSION, problem: words },
    { status, headers: { 'Cache-Control': 'no-store', ...headers } },
  );
}

/** A file's text, to be asked for again at each use; unsent when the asker holds it already. */
export function text(bytes: Uint8Array<ArrayBuffer>, etag: string, held: string | null): Response {
  return entity(bytes, { 'Content-Type': TEXT, 'Cache-Control': 'no-cache', ETag: etag }, held);
}

export function entity(
  bytes: Uint8Array<ArrayBuffer>,
  headers: Headers_ & { ETag: string },
  held: string | null,
): Response {
  if (held !== null && held === headers.ETag) return new Response(null, { status: 304, headers });
  return new Response(bytes, { headers });
}
