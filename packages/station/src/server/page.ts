// The built page and what belongs to it, and nothing else of the disk.

import { randomBytes } from 'node:crypto';
import { readFile, realpath } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { entity, problem } from './answers.ts';
import { etagOf } from './disk-file.ts';
import { securityHeaders } from './security.ts';
import { isInside } from './session.ts';

/** Only what is listed is served. */
const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.wasm': 'application/wasm',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.txt': 'text/plain; charset=utf-8',
};

/** Names that cannot lead out of the folder: no piece begins with a dot, and nothing stands for another character. */
const PLAIN_PATH = /^(?:\/[A-Za-z0-9_-][A-Za-z0-9._-]*)+$/;

/** The bundler puts a digest of the content into these names: what they name never changes. */
const NAMED_BY_CONTENT = /^\/assets\/.+-[A-Za-z0-9_-]{8}\.\w+$/;

/** Answers for `path`, as it stands in the address, undecoded. */
export async function pageFile(folder: string, path: string, held: string | null): Promise<Response> {
  const name = path === '/' ? '/index.html' : path;
  const type = types[extname(name)];
  const bytes = type !== undefined && PLAIN_PATH.test(name) ? await bytesIn(folder, name) : undefined;
  if (bytes === undefined || type === undefined) return problem(404, 'there is no such page');
  if (name === '/index.html') return index(new TextDecoder().decode(bytes), type);
  const lasting = NAMED_BY_CONTENT.test(name) ? 'public, max-age=31536000, immutable' : 'no-cache';
  return entity(bytes, { 'Content-Type': type, 'Cache-Control': lasting, ETag: etagOf(bytes) }, held);
}

/** The page is told the mark that its style elements must carry, and each answer has another. */
function index(html: string, type: string): Response {
  const nonce = randomBytes(16).toString('base64');
  const marked = html.replace('<head>', () => `<head>\n    <meta name="style-nonce" nonce="${nonce}" />`);
  const headers = { 'Content-Type': type, 'Cache-Control': 'no-cache', ...securityHeaders(nonce) };
  return new Response(marked, { headers });
}

async function bytesIn(folder: string, name: string): Promise<Uint8Array<ArrayBuffer> | undefined> {
  try {
    const [home, path] = await Promise.all([realpath(folder), realpath(join(folder, name))]);
    return isInside(home, path) ? new Uint8Array(await readFile(path)) : undefined;
  } catch {
    return undefined;
  }
}
