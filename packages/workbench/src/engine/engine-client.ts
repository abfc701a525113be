// The page's side of the workers: asks, and hears only the answers to what was asked last.

import type { Edit, UnitSystem } from '@stillair/engine';
import type { Answer, Question, StudyName, Wishes } from './protocol.ts';

type Of<Kind extends Answer['kind']> = Extract<Answer, { kind: Kind }>;

export interface EngineClient {
  /** Middle values now, and bands when the person pauses. */
  readonly look: (text: string, units: UnitSystem) => void;
  /** Bands at once. */
  readonly judge: (text: string) => void;
  readonly ask: (text: string, study: StudyName, wishes?: Partial<Wishes>) => void;
  readonly stop: (what: 'judge' | 'ask') => void;
  /** The text with edits done, or why it cannot be. */
  readonly edit: (text: string, edits: readonly Edit[]) => Promise<Of<'edited'> | Of<'refused'>>;
  /** One option of a text, drawn and answered by middle values. */
  readonly option: (text: string, option: string, units: UnitSystem) => Promise<Of<'looked'> | Of<'faulty'>>;
  readonly words: (text: string) => Promise<Of<'worded'>>;
  readonly inspect: (text: string, path: string) => Promise<Of<'inspected'>>;
  readonly close: () => void;
}

/** ms without an edit before bands are asked for: while a part is dragged nobody reads them. */
const PAUSE = 250;
const SAMPLES = 24;

export function openEngine(heard: (answer: Answer) => void, create: () => Worker = createWorker): EngineClient {
  const quick = create();
  const patient = create();
  const waiting = new Map<number, (answer: Answer) => void>();
  let id = 0;
  let looking = 0;
  let judging = 0;
  let asking = 0;
  let lookedAt: string | undefined;
  /** Bands that wait for a pause. */
  let later: { readonly timer: ReturnType<typeof setTimeout>; readonly text: string } | undefined;

  const ask = (worker: Worker, question: Question): void => worker.postMessage(question);
  const judge = (text: string): void => {
    clearTimeout(later?.timer);
    later = undefined;
    judging = ++id;
    ask(patient, { kind: 'judge', id: judging, text, samples: SAMPLES });
  };

  quick.onmessage = ({ data }: MessageEvent<Answer>) => {
    const awaited = waiting.get(data.id);
    waiting.delete(data.id);
    if (awaited !== undefined) awaited(data);
    else if (data.id === looking) heard(data);
  };
  patient.onmessage = ({ data }: MessageEvent<Answer>) => {
    if (data.id === judging || data.id === asking) heard(data);
  };
  const answered = <Kind extends Answer>(make: (question: number) => Question): Promise<Kind> =>
    new Promise((resolve) => {
      const question = ++id;
      waiting.set(question, resolve as (answer: Answer) => void);
      ask(quick, make(question));
    });

  return {
    look: (text, units) => {
      looking = ++id;
      ask(quick, { kind: 'look', id: looking, text, units });
      // The same text in other units: its bands and studies go on.
      if (text === lookedAt) return;
      lookedAt = text;
      ask(patient, { kind: 'leave', id: ++id });
      judging = 0;
      asking = 0;
      clearTimeout(later?.timer);
      later = { timer: setTimeout(() => judge(text), PAUSE), text };
    },
    judge,
    ask: (text, study, wishes = {}) => {
      // Bands that still wait would end the study.
      if (later !== undefined) judge(later.text);
      asking = ++id;
      ask(patient, { kind: 'ask', id: asking, text, study, wishes: { samples: SAMPLES, ...wishes } });
    },
    stop: (of) => ask(patient, { kind: 'stop', id: ++id, of }),
    edit: (text, edits) => answered((question) => ({ kind: 'edit', id: question, text, edits })),
    option: (text, option, units) => answered((question) => ({ kind: 'option', id: question, text, option, units })),
    words: (text) => answered((question) => ({ kind: 'words', id: question, text })),
    inspect: (text, path) => answered((question) => ({ kind: 'inspect', id: question, text, path })),
    close: () => {
      clearTimeout(later?.timer);
      quick.terminate();
      patient.terminate();
    },
  };
}

function createWorker(): Worker {
  return new Worker(new URL('./engine-worker.ts', import.meta.url), { type: 'module' });
}
