import { Hono } from 'hono';
import { describe, expect, it } from 'vitest';
import { LARGEST_FILE } from '../read-file.ts';
import { type Heard, makePapers, type StartPapers } from './make-papers.ts';

const CABINET = `stillair: 1
title: empty
cabinet: { inside: 800 mm x 600 mm x 900 mm, made-of: plywood 18 mm, door: glass 4 mm }
bays: { only: { z: 0 mm to 900 mm } }
days: { usual: {} }
`;
const PLAIN = { 'content-type': 'text/plain; charset=utf-8' };

/** A maker that does only what the test makes it say. */
function server() {
  const ended = new AbortController();
  const makers: { heard: Heard; asked: Parameters<StartPapers>[0]; gone: boolean }[] = [];
  const start: StartPapers = (asked, heard) => {
    const maker = { heard, asked, gone: false };
    makers.push(maker);
    return {
      end: () => {
        maker.gone = true;
      },
    };
  };
  const app = new Hono().post('/api/papers', makePapers(ended.signal, start));
  const ask = (body: string | Uint8Array<ArrayBuffer>, query = '', headers: Record<string, string> = PLAIN) =>
    app.request(`/api/papers${query}`, { method: 'POST', body, headers });
  return { ask, makers, ended };
}

const linesOf = (bytes: Uint8Array): string[] => new TextDecoder().decode(bytes).trimEnd().split('\n');

describe('/api/papers', () => {
  it('exact: it tells how far it is, then the size of the zip, then the zip as it is', async () => {
    const { ask, makers } = server();
    const answer = await ask(CABINET, '?units=imperial');
    expect(answer.status).toBe(200);
    expect(makers[0]!.asked).toEqual({ file: 'cabinet', text: CABINET, units: 'imperial' });
    const { said } = makers[0]!.heard;
    said({ done: 1, all: 3, what: 'Cut list' });
    const zip = Uint8Array.of(80, 75, 10, 10, 255);
    said({ zip });
    const bytes = new Uint8Array(await answer.arrayBuffer());
    expect([...bytes.slice(-5)]).toEqual([...zip]);
    expect(linesOf(bytes.slice(0, -5)).map((line) => JSON.parse(line) as unknown)).toEqual([
      { version: 1, done: 1, all: 3, what: 'Cut list' },
      { version: 1, zip: 5 },
    ]);
    expect(makers[0]!.gone).toBe(true);
  });

  it('property: one at a time; whoever goes away ends the work and makes room', async () => {
    const { ask, makers } = server();
    const first = await ask(CABINET);
    const second = await ask(CABINET);
    expect(second.status).toBe(429);
    expect(await second.json()).toMatchObject({ problem: expect.stringContaining('being made already') });
    await first.body!.cancel();
    expect(makers[0]!.gone).toBe(true);
    expect((await ask(CABINET)).status).toBe(200);
  });

  it('property: what breaks, and a server that closes, are told in words', async () => {
    const { ask, makers, ended } = server();
    const broken = await ask(CABINET);
    makers[0]!.heard.broke(new Error('out of memory'));
    expect(await broken.json()).toEqual({ version: 1, problem: 'out of memory' });
    const left = await ask(CABINET);
    ended.abort();
    expect(await left.json()).toEqual({ version: 1, problem: 'the server was closed' });
    expect(makers.every(({ gone }) => gone)).toBe(true);
  });

  it('exact: nothing is started for what cannot be read, is too large, or is no plain text', async () => {
    const { ask, makers } = server();
    const cases = [
      [await ask('title: 3\n'), 422, /no papers were made: /],
      [await ask(new Uint8Array(LARGEST_FILE + 1)), 413, /no papers were made: /],
      [await ask(CABINET, '', { 'content-type': 'application/json; charset=utf-16' }), 415, /plain UTF-8/],
      [await ask(CABINET, '?units=feet'), 400, /metric or imperial/],
      [await ask(Uint8Array.of(0xff, 0xfe, 0x41)), 422, /no papers were made: /],
    ] as const;
    for (const [answer, status, words] of cases) {
      expect(answer.status).toBe(status);
      expect(((await answer.json()) as { problem: string }).problem).toMatch(words);
    }
    expect(makers).toEqual([]);
  });
});
