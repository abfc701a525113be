import { mkdirSync, readFileSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { LARGEST_FILE } from '../read-file.ts';
import { type Workbench, workbenchApp } from './app.ts';
import { changesOf, type Hear } from './changes.ts';
import { etagOf } from './disk-file.ts';
import { hostsAt, securityHeaders } from './security.ts';
import type { Session } from './session.ts';
import { eventsOf, SECRET, type Trial, trial } from './trial.ts';

let scratch: Trial;
let ended: AbortController;
beforeEach(() => {
  scratch = trial();
  ended = new AbortController();
});
afterEach(() => {
  ended.abort();
  scratch.remove();
});

const markOf = (text: string) => etagOf(new TextEncoder().encode(text));

function app(other: Partial<Workbench> = {}) {
  const session: Session = { folder: scratch.folder, only: undefined };
  return workbenchApp({
    session,
    examples: { folder: scratch.places.examples, only: undefined },
    changes: changesOf(session),
    page: scratch.places.page,
    hosts: hostsAt(4180),
    ended: ended.signal,
    confess: () => {},
    ...other,
  });
}

async function ask(path: string, init: RequestInit = {}, other: Partial<Workbench> = {}): Promise<Response> {
  const headers = { host: '127.0.0.1:4180', ...(init.headers as Record<string, string>) };
  return app(other).request(`http://127.0.0.1:4180${path}`, { ...init, headers });
}

const put = (
  name: string,
  body: string | Uint8Array<ArrayBuffer>,
  headers: Record<string, string>,
  other: Partial<Workbench> = {},
) => ask(`/api/file?name=${encodeURIComponent(name)}`, { method: 'PUT', body, headers }, other);

describe('/api/session', () => {
  it('tells the files, the examples and what may be done', async () => {
    scratch.write('a.yaml', 'title: A\n');
    scratch.write('b.yaml', 'title: B\n');
    const answer = await ask('/api/session');
    expect(answer.headers.get('content-type')).toBe('application/json');
    expect(await answer.json()).toEqual({
      version: 1,
      files: [
        { name: 'a.yaml', changed: expect.any(Number), bytes: 9 },
        { name: 'b.yaml', changed: expect.any(Number), bytes: 9 },
      ],
      open: null,
      examples: [{ name: 'shed.yaml', title: 'A shed' }],
      writable: true,
    });
  });

  it('opens a file that is alone', async () => {
    scratch.write('a.yaml', 'title: A\n');
    expect(await (await ask('/api/session')).json()).toMatchObject({ open: 'a.yaml' });
    const session = { folder: scratch.folder, only: 'b.yaml' };
    expect(await (await ask('/api/session', {}, { session })).json()).toMatchObject({ open: 'b.yaml', files: [] });
  });

  it('offers the examples, and nothing to write, when nothing was opened', async () => {
    const facts = await (await ask('/api/session', {}, { session: undefined, changes: undefined })).json();
    expect(facts).toMatchObject({ files: [], open: null, examples: [{ name: 'shed.yaml' }], writable: false });
  });
});

describe('GET /api/file', () => {
  it('gives the bytes with their mark, once', async () => {
    scratch.write('a.yaml', 'title: Übung\n');
    const answer = await ask('/api/file?name=a.yaml');
    expect(answer.headers.get('content-type')).toBe('text/plain; charset=utf-8');
    expect(answer.headers.get('etag')).toBe(markOf('title: Übung\n'));
    expect(await answer.text()).toBe('title: Übung\n');
    const again = await ask('/api/file?name=a.yaml', { headers: { 'if-none-match': markOf('title: Übung\n') } });
    expect({ status: again.status, body: await again.text() }).toEqual({ status: 304, body: '' });
  });

  it('exact: the mark of "abc" is its SHA-256 (FIPS 180-4, example)', async () => {
    scratch.write('abc.yaml', 'abc');
    expect((await ask('/api/file?name=abc.yaml')).headers.get('etag')).toBe(
      '"ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"',
    );
  });

  it.each([
    '',
    '?name=',
    '?name=missing.yaml',
    '?name=../secret.yaml',
    '?name=..%2fsecret.yaml',
    '?name=%2e%2e%2fsecret.yaml',
    '?name=..%5csecret.yaml',
    '?name=opened/../../secret.yaml',
    '?name=out.yaml',
    '?name=up/secret.yaml',
    '?name=secret.yaml%00.yaml',
    '?name=%00',
    '?name=%ff',
    '?name=/etc/hostname',
    '?name=folder.yaml',
  ])('finds nothing at %s', async (query) => {
    symlinkSync('../secret.yaml', join(scratch.folder, 'out.yaml'));
    symlinkSync('..', join(scratch.folder, 'up'));
    mkdirSync(join(scratch.folder, 'folder.yaml'));
    const answer = await ask(`/api/file${query}`);
    expect(answer.status).toBe(404);
    expect(await answer.json()).toEqual({ version: 1, problem: 'there is no such file' });
  });

  it('says what is wrong with a file that is no text, or too much of it', async () => {
    scratch.write('old.yaml', new Uint8Array([0x74, 0x0a, 0xfc]));
    scratch.write('big.yaml', new Uint8Array(LARGEST_FILE + 1).fill(97));
    const [old, big] = await Promise.all(['old', 'big'].map((name) => ask(`/api/file?name=${name}.yaml`)));
    expect(old!.status).toBe(422);
    expect(await old!.json()).toMatchObject({
      problem: 'old.yaml cannot be read: it is not UTF-8 text (line 2); save it again as UTF-8 in your editor',
    });
    expect(big!.status).toBe(422);
  });
});

describe('PUT /api/file', () => {
  const onDisk = (name: string) => readFileSync(join(scratch.folder, name), 'utf8');

  it('saves over the text that is expected', async () => {
    scratch.write('a.yaml', 'old');
    const answer = await put('a.yaml', 'new', { 'if-match': markOf('old') });
    expect({ status: answer.status, etag: answer.headers.get('etag') }).toEqual({ status: 204, etag: markOf('new') });
    expect(onDisk('a.yaml')).toBe('new');
  });

  it('never over another: 412 with the mark of what is there', async () => {
    scratch.write('a.yaml', 'newer');
    const answer = await put('a.yaml', 'mine', { 'if-match': markOf('old') });
    expect({ status: answer.status, etag: answer.headers.get('etag') }).toEqual({ status: 412, etag: markOf('newer') });
    expect(await answer.json()).toEqual({ version: 1, problem: 'a.yaml was not saved: another text is on disk' });
    expect(onDisk('a.yaml')).toBe('newer');
  });

  it('makes a new file, once', async () => {
    const anew = { 'if-none-match': '*' };
    expect((await put('new.yaml', 'first', anew)).status).toBe(204);
    const second = await put('new.yaml', 'second', anew);
    expect({ status: second.status, etag: second.headers.get('etag') }).toEqual({ status: 412, etag: markOf('first') });
    expect(onDisk('new.yaml')).toBe('first');
  });

  it('says when the file has gone', async () => {
    const answer = await put('gone.yaml', 'mine', { 'if-match': markOf('old') });
    expect({ status: answer.status, etag: answer.headers.get('etag') }).toEqual({ status: 412, etag: null });
    expect(await answer.json()).toMatchObject({ problem: 'gone.yaml was not saved: it is no longer there' });
  });

  it.each([
    {},
    { 'if-match': '*' },
    { 'if-match': 'W/"a"' },
    { 'if-match': '"a", "b"' },
    { 'if-none-match': '"a"' },
    { 'if-match': '"a"', 'if-none-match': '*' },
  ])('saves nothing on %j', async (headers: Record<string, string>) => {
    scratch.write('a.yaml', 'old');
    expect((await put('a.yaml', 'new', headers)).status).toBe(428);
    expect(onDisk('a.yaml')).toBe('old');
  });

  it.each(['../secret.yaml', 'notes.txt', '.hidden.yaml', 'inner/a.yaml', 'a.yaml\0', ''])(
    'has no file %j',
    async (name) => {
      expect((await put(name, 'new', { 'if-none-match': '*' })).status).toBe(404);
    },
  );

  it('takes only the one file when only that was opened', async () => {
    const session = { folder: scratch.folder, only: 'a.yaml' };
    expect((await put('b.yaml', 'new', { 'if-none-match': '*' }, { session })).status).toBe(404);
    expect((await put('a.yaml', 'new', { 'if-none-match': '*' }, { session })).status).toBe(204);
  });

  it('takes nothing when nothing was opened, not even over an example', async () => {
    const answer = await put('shed.yaml', 'new', { 'if-none-match': '*' }, { session: undefined });
    expect(answer.status).toBe(403);
    expect(await answer.json()).toMatchObject({ problem: 'the examples are only to look at' });
  });

  it('takes no more than a cabinet file may have, told beforehand or not', async () => {
    const most = new Uint8Array(LARGEST_FILE).fill(97);
    const more = new Uint8Array(LARGEST_FILE + 1).fill(97);
    const anew = { 'if-none-match': '*' };
    expect((await put('a.yaml', more, { ...anew, 'content-length': String(more.length) })).status).toBe(413);
    expect((await put('a.yaml', more, anew)).status).toBe(413);
    expect((await put('a.yaml', most, anew)).status).toBe(204);
  });

  it('takes UTF-8 text only', async () => {
    scratch.write('a.yaml', 'old');
    const match = { 'if-match': markOf('old') };
    const latin = await put('a.yaml', new Uint8Array([0x61, 0xfc]), match);
    expect(latin.status).toBe(422);
    expect(await latin.json()).toMatchObject({ problem: expect.stringContaining('it is not UTF-8 text (line 1)') });
    expect((await put('a.yaml', new Uint8Array([0x61, 0]), match)).status).toBe(422);
    expect((await put('a.yaml', 'x', { ...match, 'content-type': 'text/plain; charset=latin1' })).status).toBe(415);
    expect((await put('a.yaml', 'x', { ...match, 'content-encoding': 'gzip' })).status).toBe(415);
    expect((await put('a.yaml', '', { ...match, 'content-type': 'text/plain;charset="UTF-8"' })).status).toBe(204);
    expect(onDisk('a.yaml')).toBe('');
  });

  it('takes nothing from pages of other sites', async () => {
    const answer = await put('a.yaml', 'x', { 'if-none-match': '*', origin: 'http://evil.example' });
    expect(answer.status).toBe(403);
  });
});

describe('/api/example', () => {
  it('gives the text of an example', async () => {
    expect(await (await ask('/api/example?name=shed.yaml')).text()).toBe('title: A shed\n');
    expect((await ask('/api/example?name=../secret.yaml')).status).toBe(404);
    expect((await ask('/api/example?name=shed.yaml', { method: 'PUT', body: 'x' })).status).toBe(405);
  });
});

describe('/api/changes', () => {
  it('tells what the files are and what they become, until the server closes', async () => {
    scratch.write('a.yaml', 'one');
    const answer = await ask('/api/changes');
    expect(answer.headers.get('content-type')).toBe('text/event-stream');
    const events = eventsOf(answer.body!);
    expect((await events.next()).value).toEqual({ version: 1, name: 'a.yaml', etag: markOf('one') });
    scratch.write('a.yaml', 'two');
    expect((await events.next()).value).toEqual({ version: 1, name: 'a.yaml', etag: markOf('two') });
    ended.abort();
    expect((await events.next()).done).toBe(true);
  });

  it('stops looking when the reader leaves', async () => {
    let listeners = 0;
    const listen = () => {
      listeners++;
      return () => {
        listeners--;
      };
    };
    const answer = await ask('/api/changes', {}, { changes: { listen } });
    expect(listeners).toBe(1);
    await answer.body!.cancel();
    expect(listeners).toBe(0);
    expect((await ask('/api/changes', { method: 'HEAD' }, { changes: { listen } })).status).toBe(405);
    expect(listeners).toBe(0);
  });

  it('lets a reader go who reads no more', async () => {
    let hear: Hear = () => {};
    let left = false;
    const listen = (each: Hear) => {
      hear = each;
      return () => {
        left = true;
      };
    };
    await ask('/api/changes', {}, { changes: { listen } });
    for (let at = 0; at < 2000; at++) hear({ name: 'a.yaml', etag: `"${at}"` });
    expect(left).toBe(true);
  });

  it('stays silent when nothing was opened', async () => {
    const answer = await ask('/api/changes', {}, { session: undefined, changes: undefined });
    ended.abort();
    expect(await answer.text()).toBe('retry: 1000\n\n');
  });
});

describe('the page', () => {
  it('is told the mark of its style elements, another each time', async () => {
    const nonces = await Promise.all(
      [1, 2].map(async () => {
        const answer = await ask('/');
        expect(answer.headers.get('cache-control')).toBe('no-cache');
        const nonce = /<meta name="style-nonce" nonce="([^"]+)" \/>/.exec(await answer.text())?.[1];
        expect(answer.headers.get('content-security-policy')).toContain(`style-src 'self' 'nonce-${nonce}'`);
        return nonce;
      }),
    );
    expect(nonces[0]).not.toBe(nonces[1]);
  });

  it.each([
    ['/', 'text/html; charset=utf-8', 'no-cache'],
    ['/index.html', 'text/html; charset=utf-8', 'no-cache'],
    ['/assets/index-AbCd_1-9.js', 'text/javascript; charset=utf-8', 'public, max-age=31536000, immutable'],
    ['/assets/plain.css', 'text/css; charset=utf-8', 'no-cache'],
    ['/lines.wasm', 'application/wasm', 'no-cache'],
    ['/workbench.webmanifest', 'application/manifest+json', 'no-cache'],
  ])('%s is %s, to be kept: %s', async (path, type, keep) => {
    const answer = await ask(path);
    expect(answer.status).toBe(200);
    expect(answer.headers.get('content-type')).toBe(type);
    expect(answer.headers.get('cache-control')).toBe(keep);
    expect((await ask(path, { method: 'HEAD' })).status).toBe(200);
  });

  it('is sent once when it stays the same', async () => {
    const etag = (await ask('/assets/plain.css')).headers.get('etag')!;
    expect((await ask('/assets/plain.css', { headers: { 'if-none-match': etag } })).status).toBe(304);
  });

  it.each([
    '/assets',
    '/assets/',
    '/.hidden.js',
    '/notes.md',
    '/missing.js',
    '/..%2fsecret.yaml',
    '/%2e%2e/secret.yaml',
    '/..%5csecret.yaml',
    '/assets/..%2f..%2fsecret.yaml',
    '/assets/out.js',
    '/index.html%00.js',
    '/%69ndex.html',
    '//etc/hostname',
    '/C:/hosts.txt',
    '/%ff.js',
    '/%.js',
  ])('has nothing at %s', async (path) => {
    symlinkSync('../../secret.yaml', join(scratch.places.page, 'assets/out.js'));
    const answer = await ask(path);
    expect(answer.status).toBe(404);
    expect(await answer.text()).not.toContain(SECRET);
  });
});

it.each([
  ['GET', '/', 200],
  ['GET', '/assets/index-AbCd_1-9.js', 200],
  ['GET', '/nothing', 404],
  ['GET', '/api/session', 200],
  ['GET', '/api/nothing', 404],
  ['GET', '/api/file?name=x', 404],
  ['PUT', '/api/file?name=a.yaml', 428],
  ['POST', '/api/file', 405],
  ['DELETE', '/api/session', 405],
  ['OPTIONS', '/api/file', 405],
  ['POST', '/', 405],
  ['GET', '/api/changes', 200],
])('%s %s is answered with %d and with every security header', async (method, path, status) => {
  const answer = await ask(path, { method });
  expect(answer.status).toBe(status);
  for (const [name, value] of Object.entries(securityHeaders())) {
    const want = path === '/' && method === 'GET' && name === 'Content-Security-Policy' ? /'nonce-/ : value;
    expect(answer.headers.get(name)).toEqual(want === value ? value : expect.stringMatching(want));
  }
  expect(answer.headers.get('access-control-allow-origin')).toBeNull();
  if (status !== 200) expect(await answer.json()).toMatchObject({ version: 1, problem: expect.any(String) });
});

it('tells a fault to the terminal, and no more than that there was one to the page', async () => {
  const told: string[] = [];
  const confess = (error: Error) => told.push(error.message);
  const listen = () => {
    throw new Error('inner workings');
  };
  const answer = await ask('/api/changes', {}, { changes: { listen }, confess });
  expect(answer.status).toBe(500);
  expect(await answer.json()).toEqual({
    version: 1,
    problem: 'a fault of the program, not of your file; the terminal tells more',
  });
  expect(answer.headers.get('content-security-policy')).toContain("default-src 'none'");
  expect(told).toEqual(['inner workings']);
});
