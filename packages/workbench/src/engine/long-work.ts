// What takes seconds: bands with tried remedies, and studies. One of each at a time, the study after the bands; each gives way between
// two tasks to whatever ends it. A person who stops it hears what there is; a text that has changed makes it worth nothing.

import {
  inBrief,
  judge,
  type Outcome,
  type ReadSource,
  readCabinet,
  type Variant,
  variantRunner,
} from '@stillair/engine';
import type { Hands } from './hands.ts';
import { onDemand } from './on-demand.ts';
import type { LongQuestion, Said, Told } from './protocol.ts';

interface Piece {
  readonly id: number;
  state: 'wanted' | 'stopped' | 'left';
}

export function longWork(hands: Hands, say: (answer: Said) => void): (question: LongQuestion) => void {
  let judging: Piece | undefined;
  let asking: Piece | undefined;
  let banding: Piece | undefined;
  let judged: Promise<void> = Promise.resolve();
  const leave = (piece: Piece | undefined): void => {
    if (piece !== undefined) piece.state = 'left';
  };
  return (question) => {
    const { id } = question;
    switch (question.kind) {
      case 'judge':
        leave(judging);
        leave(asking);
        judging = { id, state: 'wanted' };
        judged = judgeNow(question, judging, hands, say);
        break;
      case 'ask': {
        leave(asking);
        const piece: Piece = { id, state: 'wanted' };
        asking = piece;
        void judged.then(() => studyNow(question, piece, hands, say));
        break;
      }
      case 'dayBands':
        leave(banding);
        banding = { id, state: 'wanted' };
        void bandsNow(question, banding, hands, say);
        break;
      case 'stop': {
        const piece = question.of === 'judge' ? judging : asking;
        if (piece?.state === 'wanted') piece.state = 'stopped';
        break;
      }
      case 'leave':
        leave(judging);
        leave(asking);
        leave(banding);
    }
  };
}

async function judgeNow(
  { id, text, samples }: Extract<LongQuestion, { kind: 'judge' }>,
  piece: Piece,
  hands: Hands,
  say: (answer: Said) => void,
): Promise<void> {
  const source = sourceOf(text);
  if (source === undefined) return;
  const began = performance.now();
  const judgement = await judge(source, {
    samples,
    evaluate: hands.spread<Variant, Outcome>({ runs: 'variants', text, here: variantRunner(source) }),
    stop: () => piece.state !== 'wanted',
    sampled: (findings) => {
      if (piece.state === 'wanted') say({ kind: 'banded', id, findings: findings.map(inBrief) });
    },
    progress: (done, all) => {
      if (piece.state === 'wanted')
        say({ kind: 'judging', id, progress: { done, all, took: performance.now() - began } });
    },
  });
  if (!isLeft(piece))
    say({ kind: 'judged', id, judgement: { ...judgement, findings: judgement.findings.map(inBrief) } });
}

async function studyNow(
  { id, text, study: name, wishes }: Extract<LongQuestion, { kind: 'ask' }>,
  piece: Piece,
  hands: Hands,
  say: (answer: Said) => void,
): Promise<void> {
  if (isLeft(piece)) return;
  const began = performance.now();
  const tell = (result: Told['result'], ended: Told['ended']): void => {
    if (!isLeft(piece)) say({ kind: 'told', id, study: name, result, ended } as Told);
  };
  try {
    const source = sourceOf(text);
    if (source === undefined) throw new Error('the text has faults; they are told below the drawing');
    const { study } = await onDemand();
    const result = await study(name, source, wishes, hands, {
      stop: () => piece.state !== 'wanted',
      progress: (done, all) => {
        if (piece.state === 'wanted')
          say({ kind: 'studying', id, study: name, progress: { done, all, took: performance.now() - began } });
      },
      soFar: (part) => {
        if (piece.state === 'wanted') tell(part, 'not yet');
      },
    });
    tell(result, piece.state === 'wanted' ? 'whole' : 'stopped');
  } catch (error) {
    if (!isLeft(piece))
      say({ kind: 'broke', id, study: name, why: error instanceof Error ? error.message : String(error) });
  }
}

/** The lines stay without bands where there is no source, or no bands come of it: nobody asked for more than a look. */
async function bandsNow(
  question: Extract<LongQuestion, { kind: 'dayBands' }>,
  piece: Piece,
  hands: Hands,
  say: (answer: Said) => void,
): Promise<void> {
  const source = sourceOf(question.text);
  if (source === undefined) return;
  const { bandsOfDay } = await onDemand();
  const bands = await bandsOfDay(source, question, hands, () => piece.state !== 'wanted');
  if (piece.state === 'wanted') say({ kind: 'dayBanded', id: question.id, units: question.units, bands });
}

export function sourceOf(text: string): ReadSource | undefined {
  const answer = readCabinet('cabinet', text);
  return answer.ok ? { file: 'cabinet', text, cabinet: answer.cabinet, origins: answer.origins } : undefined;
}

const isLeft = ({ state }: Piece): boolean => state === 'left';
