// The workbench's server as it runs: on this machine's own address only, at a port, until it is closed.

import { existsSync, realpathSync } from 'node:fs';
import { createServer, type Server, STATUS_CODES } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import type { Duplex } from 'node:stream';
import { getRequestListener } from '@hono/node-server';
import type { Served, Serving } from '../io.ts';
import { codeOf, fileProblem } from '../read-file.ts';
import { workbenchApp } from './app.ts';
import { changesOf } from './changes.ts';
import { type Places, placesOfRepository } from './places.ts';
import { hostsAt, securityHeaders } from './security.ts';
import { openSession } from './session.ts';

/** No other machine can reach this address. */
const LOOPBACK = '127.0.0.1';

const USUAL_PORT = 4180;
/** Not as far as 4190: browsers open nothing there (WHATWG Fetch, "bad port"). */
const LAST_PORT = 4189;

/** What a page needs is far below; a program that sends more, or so slowly, is not one. Bytes, ms, connections. */
const limits = {
  maxHeaderSize: 16_384,
  headersTimeout: 10_000,
  requestTimeout: 30_000,
  keepAliveTimeout: 5_000,
  connectionsCheckingInterval: 5_000,
  requireHostHeader: false, // it is refused here, with the headers of every answer
};
const MOST_CONNECTIONS = 100;

const ALWAYS: Map<string, string> = new Map(Object.entries(securityHeaders()));

/** So long an answer under way may take to end when the server closes, ms. */
const FAREWELL = 2000;

export async function serve(
  { path, port }: Serving,
  complain: (text: string) => void,
  places: Places = placesOfRepository(),
): Promise<Served> {
  if (!existsSync(join(places.page, 'index.html'))) {
    return {
      ok: false,
      problem: 'the page is not built yet; run this in the folder of the program first: npm run setup',
    };
  }
  const opening = path === undefined ? undefined : await openSession(path);
  if (opening?.ok === false) return opening;
  const session = opening?.session;

  const server = createServer(limits);
  server.maxConnections = MOST_CONNECTIONS;
  const taken = await listenAt(server, port === undefined ? portsFrom(USUAL_PORT, LAST_PORT) : [port]);
  if (typeof taken === 'string') return { ok: false, problem: taken };

  const ended = new AbortController();
  const app = workbenchApp({
    session,
    examples: { folder: realpathSync(places.examples), only: undefined },
    changes: session && changesOf(session),
    page: places.page,
    hosts: hostsAt(taken),
    ended: ended.signal,
    confess: (error) => complain(`stillair workbench: a fault of the program (${error.name}: ${error.message})`),
  });
  const answer = getRequestListener((request) => app.fetch(request), { overrideGlobalObjects: false });
  server.on('request', (request, response) => {
    response.setHeaders(ALWAYS); // what is too broken to reach the app is answered with them too
    void answer(request, response);
  });
  server.on('checkExpectation', (_, response) => response.setHeaders(ALWAYS).writeHead(417).end());
  server.on('clientError', refuse);
  return {
    ok: true,
    address: `http://${LOOPBACK}:${taken}/`,
    close() {
      ended.abort();
      return closed(server);
    },
  };
}

function portsFrom(first: number, last: number): number[] {
  return Array.from({ length: last - first + 1 }, (_, at) => first + at);
}

/** Answers what is no request that Node can read. */
function refuse(error: Error, socket: Duplex): void {
  const status = { HPE_HEADER_OVERFLOW: 431, ERR_HTTP_REQUEST_TIMEOUT: 408 }[codeOf(error)] ?? 400;
  const headers = [...ALWAYS, ['Connection', 'close'], ['Content-Length', '0']].map(
    ([name, value]) => `${name}: ${value}`,
  );
  if (socket.writable) socket.end(`${[`HTTP/1.1 ${status} ${STATUS_CODES[status]}`, ...headers].join('\r\n')}\r\n\r\n`);
  else socket.destroy();
}

/** Takes the first of the ports that is free; gives its number, or why there is none. */
async function listenAt(server: Server, ports: readonly number[]): Promise<number | string> {
  let problem = '';
  for (const port of ports) {
    const error = await listening(server, port);
    if (error === undefined) return (server.address() as AddressInfo).port;
    const code = codeOf(error);
    problem = `cannot open port ${port}: ${code === 'EADDRINUSE' ? 'another program has it' : fileProblem(error)}`;
    if (code !== 'EADDRINUSE') return problem;
  }
  return ports.length === 1 ? problem : `ports ${ports[0]} to ${ports.at(-1)} are all taken; name another with --port`;
}

function listening(server: Server, port: number): Promise<Error | undefined> {
  return new Promise((resolve) => {
    const failed = (error: Error) => resolve(error);
    server.once('error', failed);
    server.listen(port, LOOPBACK, () => {
      server.off('error', failed);
      resolve(undefined);
    });
  });
}

/** Lets answers under way end, a save among them, for a while. */
function closed(server: Server): Promise<void> {
  return new Promise((resolve) => {
    const farewell = setTimeout(() => server.closeAllConnections(), FAREWELL);
    const parting = setInterval(() => server.closeIdleConnections(), 20); // each as its answer has ended
    server.close(() => {
      clearTimeout(farewell);
      clearInterval(parting);
      resolve();
    });
  });
}
