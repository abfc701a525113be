// Which address gives what. Everything that is asked for from disk or refused is decided in the modules that this calls.

import { type Context, Hono } from 'hono';
import { textOf } from '../read-file.ts';
import { problem, text, told } from './answers.ts';
import type { Changes } from './changes.ts';
import { findFile } from './disk-file.ts';
import { eventStream } from './events.ts';
import { listExamples } from './examples.ts';
import { jobFile } from './job-file.ts';
import { makePapers } from './make-papers.ts';
import { pageFile } from './page.ts';
import { putFile } from './put-file.ts';
import { refusal, securityHeaders } from './security.ts';
import { isWritable, listFiles, type Session } from './session.ts';

export interface Workbench {
  /** What the person has opened; undefined when there are only the examples to look at. */
  readonly session: Session | undefined;
  readonly examples: Session;
  readonly changes: Changes | undefined;
  /** Folder of the built page. */
  readonly page: string;
  /** The names that a browser may call the server by, with their port. */
  readonly hosts: readonly string[];
  /** Aborted when the server closes. */
  readonly ended: AbortSignal;
  /** Is told of what was not foreseen. */
  readonly confess: (error: Error) => void;
}

export function workbenchApp(workbench: Workbench): Hono {
  const { session, examples, changes, page, hosts, ended, confess } = workbench;
  const app = new Hono();
  app.use(async (context, next) => {
    const refused = refusal(context.req.raw, hosts);
    if (refused === undefined) await next();
    else context.res = problem(403, refused);
    for (const [name, value] of Object.entries(securityHeaders())) {
      if (!context.res.headers.has(name)) context.res.headers.set(name, value);
    }
  });
  app.get('/api/session', async () => {
    const files = session === undefined ? [] : await listFiles(session);
    const open = session?.only ?? (files.length === 1 ? files[0]!.name : null);
    const writable = session !== undefined && (await isWritable(session));
    return told({ files, open, examples: await listExamples(examples), writable });
  });
  app.get('/api/file', (context) => fileOf(session, context));
  app.put('/api/file', putFile(session));
  app.get('/api/example', (context) => fileOf(examples, context));
  app.post('/api/papers', makePapers(ended));
  app.get('/api/job-file', ({ req }) =>
    req.raw.method === 'HEAD' ? notDone() : jobFile(session, req.query('name') ?? '', req.query('path') ?? ''),
  );
  app.get('/api/changes', ({ req }) => {
    if (req.raw.method === 'HEAD') return notDone();
    const headers = { 'Content-Type': 'text/event-stream', 'Cache-Control': 'no-store' };
    return new Response(eventStream(changes, ended), { headers });
  });
  for (const path of ['session', 'file', 'example', 'job-file', 'papers', 'changes']) app.all(`/api/${path}`, notDone);
  app.all('/api/*', () => problem(404, 'there is no such address'));
  app.get('*', ({ req }) => pageFile(page, new URL(req.url).pathname, req.header('if-none-match') ?? null));
  app.all('*', notDone);
  app.onError((error) => {
    confess(error);
    return problem(500, 'a fault of the program, not of your file; the terminal tells more');
  });
  return app;
}

async function fileOf(session: Session | undefined, { req }: Context): Promise<Response> {
  const name = req.query('name') ?? '';
  const found = session === undefined ? undefined : await findFile(session, name);
  if (found === undefined || found.kind === 'absent') return problem(404, 'there is no such file');
  if (found.kind === 'unfit') return problem(422, `${name} cannot be read: ${found.problem}`);
  const reading = textOf(found.bytes);
  if (!reading.ok) return problem(422, `${name} cannot be read: ${reading.problem}`);
  return text(found.bytes, found.etag, req.header('if-none-match') ?? null);
}

function notDone(): Response {
  return problem(405, 'this address is not for that');
}
