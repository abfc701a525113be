// Saving from the page: what must be said with it, what may be in it, and what is answered.

import type { Context } from 'hono';
import { LARGEST_FILE, TOO_LARGE, textOf } from '../read-file.ts';
import { problem } from './answers.ts';
import { readBody } from './body.ts';
import { oneAtATime, type Saving, saveFile } from './save-file.ts';
import { belongs, type Session } from './session.ts';

export function putFile(session: Session | undefined): (context: Context) => Promise<Response> {
  const inTurn = oneAtATime();
  return async ({ req }) => {
    const name = req.query('name') ?? '';
    if (session === undefined) return problem(403, 'the examples are only to look at');
    if (!belongs(session, name)) return problem(404, 'there is no such file');
    const condition = conditionOf(req.header('if-match'), req.header('if-none-match'));
    if (condition === undefined) {
      return problem(
        428,
        'say which text this one follows: If-Match with its ETag, or If-None-Match: * for a new file',
      );
    }
    if (!isPlainText(req.header('content-type'), req.header('content-encoding'))) {
      return problem(415, 'it is not sent as plain UTF-8 text');
    }
    const bytes = await readBody(req.raw, LARGEST_FILE);
    if (bytes === undefined) return problem(413, `${name} was not saved: ${TOO_LARGE}`);
    const reading = textOf(bytes);
    if (!reading.ok) return problem(422, `${name} was not saved: ${reading.problem}`);
    return answer(name, await inTurn(() => saveFile(session, name, bytes, condition.expected)));
  };
}

/** The mark of the text that is to be replaced, undefined for none; nothing when it is not said, or not by one mark. */
function conditionOf(
  match: string | undefined,
  noneMatch: string | undefined,
): { expected: string | undefined } | undefined {
  if (match !== undefined && noneMatch === undefined && /^"[^"]*"$/.test(match)) return { expected: match };
  return match === undefined && noneMatch === '*' ? { expected: undefined } : undefined;
}

export function isPlainText(type: string | undefined, encoding: string | undefined): boolean {
  const charset = /;\s*charset="?([^";\s]+)/i.exec(type ?? '')?.[1] ?? 'utf-8';
  return /^utf-?8$/i.test(charset) && (encoding ?? 'identity') === 'identity';
}

function answer(name: string, saving: Saving): Response {
  switch (saving.kind) {
    case 'saved':
      return new Response(null, { status: 204, headers: { ETag: saving.etag, 'Cache-Control': 'no-store' } });
    case 'other': {
      const { etag } = saving;
      if (etag === undefined) return problem(412, `${name} was not saved: it is no longer there`);
      return problem(412, `${name} was not saved: another text is on disk`, { ETag: etag });
    }
    case 'refused':
      return problem(saving.diskFull ? 507 : 403, `${name} was not saved: ${saving.problem}`);
  }
}
