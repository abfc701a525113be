import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { type EngineWorker, openEngine } from './engine-client.ts';
import type { Answer, DayLook, LookPart, Question, Said } from './protocol.ts';

/** A worker that answers when it is told to. */
interface Silent extends EngineWorker {
  readonly asked: Question[];
  readonly says: (said: Said) => void;
}

function silent(): Silent {
  const asked: Question[] = [];
  const worker: Silent = {
    asked,
    onmessage: null,
    postMessage: (question: Question) => void asked.push(question),
    terminate: () => undefined,
    says: (data) => void worker.onmessage?.call(worker as unknown as Worker, { data } as MessageEvent),
  };
  return worker;
}

function opened(cores: number) {
  const workers: Silent[] = [];
  const heard: Answer[] = [];
  const create = (): Silent => {
    const worker = silent();
    workers.push(worker);
    return worker;
  };
  const engine = openEngine((answer) => heard.push(answer), create, cores);
  return { engine, workers, heard };
}

const day = (id: string): DayLook => ({ sheet: { day: id } as DayLook['sheet'], findings: [], warnings: [id] });
const cabinet = { days: { one: {}, two: {} } } as unknown as NonNullable<LookPart['standing']>['cabinet'];
const standing: LookPart['standing'] = { cabinet, uncertain: [], findings: [] };
const part = (question: Question | undefined, text: string, said: LookPart): Said => ({
  kind: 'part',
  id: question!.id,
  text,
  part: said,
});
const kinds = ({ asked }: Silent): string[] => asked.map(({ kind }) => kind);

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('a look that workers share', () => {
  it('exact: it is heard when all parts are there, its days in the order of the file', () => {
    const { engine, workers, heard } = opened(8);
    engine.look('text');
    expect(workers.map(({ asked }) => asked[0])).toMatchObject([
      { kind: 'look', share: { at: 0, of: 2 } },
      { kind: 'look', share: { at: 1, of: 2 } },
    ]);
    const [first, second] = workers;
    second!.says(part(second!.asked[0], 'text', { days: [day('two')] }));
    expect(heard).toEqual([]);
    first!.says(part(first!.asked[0], 'text', { standing, days: [day('one')] }));
    expect(heard).toMatchObject([
      { kind: 'looked', text: 'text', days: [{ sheet: { day: 'one' } }, { sheet: { day: 'two' } }] },
    ]);
  });

  it('exact: one processor has one worker, which does it all', () => {
    const { engine, workers, heard } = opened(1);
    engine.look('text');
    expect(workers.length).toBe(1);
    workers[0]!.says(part(workers[0]!.asked[0], 'text', { standing, days: [day('one'), day('two')] }));
    expect(heard.length).toBe(1);
  });

  it('exact: parts of a text that has been overtaken are not heard, and no text is asked about twice', () => {
    const { engine, workers, heard } = opened(2);
    engine.look('old');
    engine.look('new');
    engine.look('new');
    expect(workers.map(({ asked }) => asked.length)).toEqual([2, 2]);
    for (const { asked, says } of workers) says(part(asked[0], 'old', { standing, days: [day('one'), day('two')] }));
    expect(heard).toEqual([]);
  });

  it('exact: faults are heard once, and have no bands', () => {
    const { engine, workers, heard } = opened(2);
    engine.look('faulty');
    for (const { asked, says } of workers) says({ kind: 'faulty', id: asked[0]!.id, complaints: [] });
    expect(heard.map(({ kind }) => kind)).toEqual(['faulty']);
    vi.runAllTimers();
    expect(workers.length).toBe(2);
  });
});

describe('bands', () => {
  const looked = ({ engine, workers }: ReturnType<typeof opened>, text: string): void => {
    engine.look(text);
    const [first, second] = workers;
    first!.says(part(first!.asked.at(-1), text, { standing, days: [day('one')] }));
    second!.says(part(second!.asked.at(-1), text, { days: [day('two')] }));
  };

  it('exact: they are asked for after the middle values and a pause, of a worker that starts only then', () => {
    const bench = opened(2);
    bench.engine.look('text');
    vi.advanceTimersByTime(10_000);
    expect(bench.workers.length).toBe(2);
    looked(bench, 'other');
    expect(bench.workers.length).toBe(2);
    vi.advanceTimersByTime(10_000);
    expect(kinds(bench.workers[2]!)).toEqual(['judge']);
  });

  it('exact: another text before the pause is over takes their place', () => {
    const bench = opened(2);
    looked(bench, 'one');
    vi.advanceTimersByTime(100);
    looked(bench, 'two');
    vi.advanceTimersByTime(10_000);
    expect(bench.workers[2]!.asked).toMatchObject([{ kind: 'judge', text: 'two' }]);
    bench.engine.look('three');
    expect(kinds(bench.workers[2]!)).toEqual(['judge', 'leave']);
  });

  it('exact: a study that is asked for first has them before it', () => {
    const bench = opened(2);
    bench.engine.look('text');
    bench.engine.ask('text', 'faults');
    expect(kinds(bench.workers[2]!)).toEqual(['judge', 'ask']);
  });
});

describe('what is asked of whoever looked', () => {
  it('exact: the first that knows it answers; nothing when none does', async () => {
    const { engine, workers } = opened(2);
    const [first, second] = workers;
    const known = engine.reason('text', 'heat/peak-air/top/one');
    const [one, two] = workers.map(({ asked }) => asked[0]!.id);
    first!.says({ kind: 'reasoned', id: one! });
    second!.says({ kind: 'reasoned', id: two!, reason: { steps: [] } });
    expect(await known).toEqual({ steps: [] });
    const unknown = engine.reason('older', 'heat/peak-air/top/one');
    for (const { asked, says } of workers) says({ kind: 'reasoned', id: asked[1]!.id });
    expect(await unknown).toBeUndefined();
  });
});
