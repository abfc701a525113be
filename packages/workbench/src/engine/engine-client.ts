// The page's side of the workers: asks, and hears only the answers to what was asked last.

import type { Edit, UnitSystem } from '@stillair/engine';
import type { Answer, DayLines, LookPart, Question, Reason, Said, StudyName, Wishes } from './protocol.ts';
import { wholeLook } from './whole-look.ts';

type Of<Kind extends Answer['kind']> = Extract<Answer, { kind: Kind }>;

export interface EngineClient {
  /** Middle values now, and bands when the person pauses. */
  readonly look: (text: string) => void;
  /** Bands at once. */
  readonly judge: (text: string) => void;
  readonly ask: (text: string, study: StudyName, wishes?: Partial<Wishes>) => void;
  /** Bands about the lines of a day. */
  readonly dayBands: (text: string, day: string, units: UnitSystem) => void;
  readonly stop: (what: 'judge' | 'ask') => void;
  /** The text with edits done, or why it cannot be. */
  readonly edit: (text: string, edits: readonly Edit[]) => Promise<Of<'edited'> | Of<'refused'>>;
  /** One option of a text, drawn and answered by middle values. */
  readonly option: (text: string, option: string) => Promise<Of<'looked'> | Of<'faulty'>>;
  /** How a finding of the text that was looked at last came about. */
  readonly reason: (text: string, finding: string) => Promise<Reason | undefined>;
  /** What is drawn of a day of the text that was looked at last. */
  readonly lines: (text: string, day: string, units: UnitSystem) => Promise<DayLines | undefined>;
  readonly words: (text: string) => Promise<Of<'worded'>>;
  readonly inspect: (text: string, path: string) => Promise<Of<'inspected'>>;
  readonly close: () => void;
}

/** What of a worker is needed here. */
export type EngineWorker = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage'>;

/** ms after middle values without an edit, before bands are asked for: while a part is dragged nobody reads them. */
const PAUSE = 250;
const SAMPLES = 24;

/** More than these would wait for each other: most files have two days. */
const MOST_LOOKERS = 2;

export function openEngine(
  heard: (answer: Answer) => void,
  create: () => EngineWorker = createWorker,
  cores: number = navigator.hardwareConcurrency,
): EngineClient {
  const lookers = Array.from({ length: Math.min(cores, MOST_LOOKERS) }, create);
  const [first] = lookers as [EngineWorker];
  /** Long work has a worker of its own, which nobody needs before the first remarks. */
  let patient: EngineWorker | undefined;
  const waiting = new Map<number, (answer: Said) => void>();
  let id = 0;
  let judging = 0;
  let asking = 0;
  let looking: { readonly id: number; readonly text: string; readonly parts: LookPart[] } | undefined;
  let banding = 0;
  let lookedAt: string | undefined;
  /** The text whose bands wait for its middle values, and for a pause. */
  let later: string | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const ask = (worker: EngineWorker, question: Question): void => worker.postMessage(question);
  const askLong = (question: Question): void => {
    patient ??= openPatient();
    ask(patient, question);
  };
  const openPatient = (): EngineWorker => {
    const opened = create();
    opened.onmessage = ({ data }: MessageEvent<Answer>) => {
      if (data.id === judging || data.id === asking || data.id === banding) heard(data);
    };
    return opened;
  };
  const judge = (text: string): void => {
    clearTimeout(timer);
    later = undefined;
    judging = ++id;
    askLong({ kind: 'judge', id: judging, text, samples: SAMPLES });
  };

  /** A part of the look, or that there can be none. */
  const heardLook = (said: Said): void => {
    if (looking?.id !== said.id) return;
    const { id: asked, text, parts } = looking;
    if (said.kind === 'faulty') {
      looking = undefined;
      later = undefined;
      heard(said);
    } else if (said.kind === 'part') {
      parts.push(said.part);
      const look = parts.length === lookers.length ? wholeLook(parts) : undefined;
      if (look === undefined) return;
      looking = undefined;
      if (later === text) timer = setTimeout(() => judge(text), PAUSE);
      heard({ kind: 'looked', id: asked, text, ...look });
    }
  };
  for (const looker of lookers)
    looker.onmessage = ({ data }: MessageEvent<Said>) => {
      const awaited = waiting.get(data.id);
      if (awaited === undefined) heardLook(data);
      else awaited(data);
    };
  const answered = <Kind extends Said>(worker: EngineWorker, make: (question: number) => Question): Promise<Kind> =>
    new Promise((resolve) => {
      const question = ++id;
      waiting.set(question, (answer) => {
        waiting.delete(question);
        resolve(answer as Kind);
      });
      ask(worker, make(question));
    });
  /** Whoever knows it answers first; nothing when none of them does. */
  const askedAll = <Kind extends Said, Known>(
    make: (question: number) => Question,
    known: (answer: Kind) => Known | undefined,
  ): Promise<Known | undefined> =>
    new Promise((resolve) => {
      const answers = lookers.map((looker) => answered<Kind>(looker, make));
      for (const answer of answers)
        void answer.then((said) => {
          const found = known(said);
          if (found !== undefined) resolve(found);
        });
      void Promise.all(answers).then(() => resolve(undefined));
    });

  return {
    look: (text) => {
      if (text === lookedAt) return;
      lookedAt = text;
      looking = { id: ++id, text, parts: [] };
      for (const [at, looker] of lookers.entries())
        ask(looker, { kind: 'look', id: looking.id, text, share: { at, of: lookers.length } });
      if (patient !== undefined) askLong({ kind: 'leave', id: ++id });
      judging = 0;
      asking = 0;
      banding = 0;
      clearTimeout(timer);
      later = text;
    },
    judge,
    ask: (text, study, wishes = {}) => {
      // Bands that still wait would end the study.
      if (later !== undefined) judge(later);
      asking = ++id;
      askLong({ kind: 'ask', id: asking, text, study, wishes: { samples: SAMPLES, ...wishes } });
    },
    dayBands: (text, day, units) => {
      banding = ++id;
      askLong({ kind: 'dayBands', id: banding, text, day, units, samples: SAMPLES });
    },
    stop: (of) => askLong({ kind: 'stop', id: ++id, of }),
    edit: (text, edits) => answered(first, (question) => ({ kind: 'edit', id: question, text, edits })),
    option: async (text, option) => {
      const said = await answered<Extract<Said, { kind: 'part' | 'faulty' }>>(first, (question) => ({
        kind: 'option',
        id: question,
        text,
        option,
      }));
      return said.kind === 'faulty' ? said : { kind: 'looked', id: said.id, text, ...wholeLook([said.part])! };
    },
    reason: (text, finding) =>
      askedAll<Of<'reasoned'>, Reason>(
        (question) => ({ kind: 'reason', id: question, text, finding }),
        ({ reason }) => reason,
      ),
    lines: (text, day, units) =>
      askedAll<Of<'lined'>, DayLines>(
        (question) => ({ kind: 'lines', id: question, text, day, units }),
        ({ lines }) => lines,
      ),
    words: (text) => answered(first, (question) => ({ kind: 'words', id: question, text })),
    inspect: (text, path) => answered(first, (question) => ({ kind: 'inspect', id: question, text, path })),
    close: () => {
      clearTimeout(timer);
      for (const worker of [...lookers, ...(patient === undefined ? [] : [patient])]) worker.terminate();
    },
  };
}

function createWorker(): Worker {
  return new Worker(new URL('./engine-worker.ts', import.meta.url), { type: 'module' });
}
