// The server over a real port, asked as browsers, other programs and attackers ask.

import { readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Served } from '../io.ts';
import { LARGEST_FILE } from '../read-file.ts';
import { etagOf } from './disk-file.ts';
import { securityHeaders } from './security.ts';
import { serve } from './serve.ts';
import { eventsOf, SECRET, type Trial, trial } from './trial.ts';

type Open = Extract<Served, { ok: true }>;

let scratch: Trial;
let open: Open[];
let complaints: string;
beforeEach(() => {
  scratch = trial();
  open = [];
  complaints = '';
});
afterEach(async () => {
  await Promise.all(open.map(({ close }) => close()));
  scratch.remove();
  expect(complaints).toBe('');
});

async function serveAt(port: number | undefined, path: string | undefined): Promise<Served> {
  const complain = (text: string) => {
    complaints += text;
  };
  const served = await serve({ path, port }, complain, scratch.places);
  if (served.ok) open.push(served);
  return served;
}

/** The address of a server at some free port, on the scratch folder or on the examples alone. */
async function started(on: 'folder' | 'examples' = 'folder'): Promise<string> {
  const served = await serveAt(0, on === 'folder' ? scratch.folder : undefined);
  if (!served.ok) throw new Error(served.problem);
  return served.address;
}

const markOf = (text: string) => etagOf(new TextEncoder().encode(text));
const put = (address: string, name: string, body: string | ReadableStream, headers: Record<string, string>) =>
  fetch(`${address}api/file?name=${name}`, { method: 'PUT', body, headers, duplex: 'half' } as RequestInit);

/** Sends bytes that no well-meaning program would send, and gives what comes back. */
function send(address: string, text: string): Promise<string> {
  return new Promise((resolve, reject) => {
    let answer = '';
    const socket = connect(Number(new URL(address).port), '127.0.0.1', () => socket.write(text));
    socket.setEncoding('utf8').on('data', (piece: string) => {
      answer += piece;
    });
    socket.on('end', () => resolve(answer)).on('error', reject);
  });
}

const request = (line: string, host: string, ...headers: string[]) =>
  `${[`${line} HTTP/1.1`, `Host: ${host}`, 'Connection: close', ...headers].join('\r\n')}\r\n\r\n`;

describe('a working session', () => {
  it('opens, saves, refuses to overwrite, and hears of changes from outside', async () => {
    const path = scratch.write('a.yaml', 'one');
    const address = await started();
    expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
    const events = eventsOf((await fetch(`${address}api/changes`)).body!);
    expect((await events.next()).value).toEqual({ version: 1, name: 'a.yaml', etag: markOf('one') });

    const mine = (await fetch(`${address}api/file?name=a.yaml`)).headers.get('etag')!;
    const saved = await put(address, 'a.yaml', 'two', { 'If-Match': mine });
    expect({ status: saved.status, etag: saved.headers.get('etag') }).toEqual({ status: 204, etag: markOf('two') });
    expect(readFileSync(path, 'utf8')).toBe('two');
    expect((await events.next()).value).toMatchObject({ name: 'a.yaml', etag: markOf('two') });

    writeFileSync(path, 'three, from an editor');
    expect((await events.next()).value).toMatchObject({ etag: markOf('three, from an editor') });
    const late = await put(address, 'a.yaml', 'four', { 'If-Match': markOf('two') });
    expect({ status: late.status, etag: late.headers.get('etag') }).toEqual({
      status: 412,
      etag: markOf('three, from an editor'),
    });
    expect(readFileSync(path, 'utf8')).toBe('three, from an editor');

    renameSync(path, join(scratch.folder, 'b.yaml'));
    expect([(await events.next()).value, (await events.next()).value]).toEqual([
      { version: 1, name: 'b.yaml', etag: markOf('three, from an editor') },
      { version: 1, gone: 'a.yaml' },
    ]);
  });

  it('lets one of two saves at once win', async () => {
    const path = scratch.write('a.yaml', 'one');
    const address = await started();
    const answers = await Promise.all(
      ['left', 'right'].map((text) => put(address, 'a.yaml', text, { 'If-Match': markOf('one') })),
    );
    expect(answers.map(({ status }) => status).sort((a, b) => a - b)).toEqual([204, 412]);
    const won = answers.find(({ status }) => status === 204)!;
    expect(won.headers.get('etag')).toBe(markOf(readFileSync(path, 'utf8')));
  });

  it('shows the examples when nothing is opened', async () => {
    const address = await started('examples');
    const session: unknown = await (await fetch(`${address}api/session`)).json();
    expect(session).toMatchObject({ files: [], writable: false, examples: [{ name: 'shed.yaml', title: 'A shed' }] });
    expect(await (await fetch(`${address}api/example?name=shed.yaml`)).text()).toBe('title: A shed\n');
  });
});

describe('what is too large', () => {
  it.each([
    ['told beforehand', (text: string) => text],
    ['in pieces', (text: string) => new Blob([text]).stream()],
  ])('is refused when %s, and the file stays', async (_, bodyOf) => {
    const path = scratch.write('a.yaml', 'one');
    const address = await started();
    const answer = await put(address, 'a.yaml', bodyOf('a'.repeat(LARGEST_FILE + 1)), { 'If-Match': markOf('one') });
    expect(answer.status).toBe(413);
    expect(await answer.json()).toMatchObject({ problem: expect.stringContaining('larger than 8 MB') });
    expect(readFileSync(path, 'utf8')).toBe('one');
    expect((await put(address, 'a.yaml', 'two', { 'If-Match': markOf('one') })).status).toBe(204);
  });

  it('is refused in headers too, with those of every answer', async () => {
    const address = await started();
    const answer = await send(address, request('GET /', new URL(address).host, `X: ${'a'.repeat(20_000)}`));
    expect(answer).toMatch(/^HTTP\/1\.1 431 /);
    expect(answer).toContain("default-src 'none'");
  });
});

describe('who may ask', () => {
  it.each(['evil.example', 'evil.example:PORT', 'localhost', '127.0.0.1:1', '', 'a@127.0.0.1:PORT', '0.0.0.0:PORT'])(
    'is not Host: %s',
    async (name) => {
      const address = await started();
      const answer = await send(address, request('GET /api/session', name.replace('PORT', new URL(address).port)));
      expect(answer).toMatch(/^HTTP\/1\.1 40[03] /);
      expect(answer).not.toContain('"files"');
      expect(answer).toContain("default-src 'none'");
    },
  );

  it('is whoever names this machine', async () => {
    const address = await started();
    const answer = await send(address, request('GET /api/session', `localhost:${new URL(address).port}`));
    expect(answer).toMatch(/^HTTP\/1\.1 200 /);
  });

  it.each([
    ['no host at all', 'GET /api/session HTTP/1.1\r\nConnection: close\r\n\r\n'],
    [
      'an address of another host',
      'GET http://evil.example/api/session HTTP/1.1\r\nHost: HOST\r\nConnection: close\r\n\r\n',
    ],
    ['no HTTP', 'hello\r\n\r\n'],
    ['an expectation', 'GET /api/session HTTP/1.1\r\nHost: HOST\r\nExpect: the-worst\r\nConnection: close\r\n\r\n'],
    ['another verb', 'TRACE /api/session HTTP/1.1\r\nHost: HOST\r\nConnection: close\r\n\r\n'],
  ])('is answered with a refusal and every header on %s', async (_, text) => {
    const address = await started();
    const answer = await send(address, text.replace('HOST', new URL(address).host));
    expect(answer).toMatch(/^HTTP\/1\.1 4\d\d /);
    for (const [name, value] of Object.entries(securityHeaders())) {
      expect(answer.toLowerCase()).toContain(`${name}: ${value}`.toLowerCase());
    }
  });

  it('is no page of another site', async () => {
    scratch.write('a.yaml', 'one');
    const address = await started();
    const headers = { 'If-Match': markOf('one'), Origin: 'http://evil.example' };
    expect((await put(address, 'a.yaml', 'x', headers)).status).toBe(403);
    const preflight = await fetch(`${address}api/file?name=a.yaml`, {
      method: 'OPTIONS',
      headers: { Origin: 'http://evil.example', 'Access-Control-Request-Method': 'PUT' },
    });
    expect(preflight.status).toBe(403);
    expect(preflight.headers.get('access-control-allow-origin')).toBeNull();
  });
});

it.each([
  '/../secret.yaml',
  '/..%2fsecret.yaml',
  '/%2e%2e/secret.yaml',
  '/%2e%2e%2fsecret.yaml',
  '/assets/../../secret.yaml',
  '/assets/..%2f..%2fsecret.yaml',
  '/..\\secret.yaml',
  '/..%5csecret.yaml',
  '/secret.yaml%00.js',
  '/.hidden.js',
  '/assets/.%2e/.%2e/secret.yaml',
  '//secret.yaml',
  '/api/file?name=../secret.yaml',
  '/api/file?name=..%2fsecret.yaml',
  '/api/file?name=..%252fsecret.yaml',
  '/api/file?name=%00',
  '/api/file?name=a.yaml%00',
  '/api/example?name=../secret.yaml',
  '/api/example?name=..%2fsecret.yaml',
  'secret.yaml',
  '*',
])('nothing out of bounds is at %s', async (target) => {
  scratch.write('a.yaml', 'one');
  const address = await started();
  const answer = await send(address, request(`GET ${target}`, new URL(address).host));
  expect(answer).toMatch(/^HTTP\/1\.1 40[04] /);
  expect(answer).not.toContain(SECRET);
  expect(answer).toContain("default-src 'none'");
});

it('serves the page with its types over the port', async () => {
  const address = await started();
  const [page, script] = await Promise.all(['', 'assets/index-AbCd_1-9.js'].map((path) => fetch(address + path)));
  expect(page!.headers.get('content-type')).toBe('text/html; charset=utf-8');
  expect(script!.headers.get('content-type')).toBe('text/javascript; charset=utf-8');
  expect(script!.headers.get('cache-control')).toContain('immutable');
  expect(await script!.text()).toBe('export {};\n');
});

describe('ports', () => {
  it('says so when the port that was named is taken', async () => {
    const port = Number(new URL(await started()).port);
    expect(await serveAt(port, scratch.folder)).toEqual({
      ok: false,
      problem: `cannot open port ${port}: another program has it`,
    });
  });

  it('goes on to the next when none was named', async () => {
    const [one, other] = [await serveAt(undefined, scratch.folder), await serveAt(undefined, scratch.folder)];
    const ports = [one, other].map((served) => (served.ok ? Number(new URL(served.address).port) : Number.NaN));
    expect(ports[0]).toBeGreaterThanOrEqual(4180);
    expect(ports[1]).toBeGreaterThan(ports[0]!);
    expect(ports[1]).toBeLessThan(4190);
  });

  it('listens to no other address of this machine', async () => {
    const { port } = new URL(await started());
    await expect(fetch(`http://127.0.0.2:${port}/`)).rejects.toThrow();
    await expect(fetch(`http://[::1]:${port}/`)).rejects.toThrow();
  });
});

describe('closing', () => {
  it('ends the streams of changes, and frees the port', async () => {
    const address = await started();
    const events = eventsOf((await fetch(`${address}api/changes`)).body!);
    const ending = events.next();
    await open.pop()!.close();
    expect((await ending).done).toBe(true);
    await expect(fetch(address)).rejects.toThrow();
  });

  it('lets a save under way end', async () => {
    const path = scratch.write('a.yaml', 'one');
    const address = await started();
    const text = 'b'.repeat(LARGEST_FILE);
    const saving = put(address, 'a.yaml', text, { 'If-Match': markOf('one') });
    const events = eventsOf((await fetch(`${address}api/changes`)).body!);
    await events.next();
    await open.pop()!.close();
    const { status } = await saving;
    expect({ status, whole: readFileSync(path, 'utf8') === text }).toEqual({ status: 204, whole: true });
  });
});

describe('opening what cannot be', () => {
  it('says that there is no such file, or no page yet', async () => {
    const path = join(scratch.folder, 'none.yaml');
    expect(await serveAt(0, path)).toEqual({ ok: false, problem: `cannot open ${path}: there is no such file` });
    rmSync(join(scratch.places.page, 'index.html'));
    expect(await serveAt(0, scratch.folder)).toMatchObject({
      ok: false,
      problem: expect.stringContaining('npm run setup'),
    });
  });
});
