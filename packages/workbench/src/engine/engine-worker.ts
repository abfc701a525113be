// The engine off the page's thread. Some of these look, and are always free within one day's sum; another does long work and starts
// more of the same that help it.

import { type Edit, editText, readCabinet } from '@stillair/engine';
import { FILE, openLooker } from './look.ts';
import { onDemand } from './on-demand.ts';
import type { Help, Helped, LongQuestion, Question, QuickQuestion, Said, Share } from './protocol.ts';

/** Newest question of those that end each other. */
let newest = 0;

const say = (answer: Said | Helped): void => postMessage(answer);

const looker = openLooker();

/** More would take memory, and days are too short to keep them all at work. */
const MOST_HANDS = 8;

/** What takes long is loaded when the first of it comes: nothing of it stands before the first remarks. */
let long: Promise<(question: LongQuestion | Help) => void> | undefined;

async function openLong(): Promise<(question: LongQuestion | Help) => void> {
  const { helping, longWork, openHands } = await import('./long.ts');
  const helpers = Math.min(navigator.hardwareConcurrency, MOST_HANDS) - 1;
  const hands = openHands(helpers, () => new Worker(self.location.href, { type: 'module' }));
  const [work, help] = [longWork(hands, say), helping(say)];
  return (question) => (question.kind === 'help' ? help(question) : work(question));
}

addEventListener('message', ({ data }: MessageEvent<Question | Help>) => {
  switch (data.kind) {
    case 'help':
    case 'judge':
    case 'ask':
    case 'dayBands':
    case 'stop':
    case 'leave':
      long ??= openLong();
      void long.then((work) => work(data));
      break;
    default:
      answerSoon(data);
  }
});

function answerSoon(question: QuickQuestion): void {
  switch (question.kind) {
    case 'option':
      answerLook(question, WHOLE, editsOf(question.text, question.option));
      break;
    case 'look':
      newest = question.id;
      // Later questions that have already arrived are taken in first; only the last of them is worked out.
      setTimeout(() => {
        if (newest === question.id) answerLook(question, question.share);
      }, 0);
      break;
    case 'edit':
      answerEdit(question);
      break;
    case 'reason': {
      const reason = looker.reason(question.text, question.finding);
      say({ kind: 'reasoned', id: question.id, ...(reason === undefined ? {} : { reason }) });
      break;
    }
    case 'lines': {
      const lines = looker.lines(question.text, question.day, question.units);
      say({ kind: 'lined', id: question.id, ...(lines === undefined ? {} : { lines }) });
      break;
    }
    case 'words':
      void answerWords(question);
      break;
    case 'inspect':
      void onDemand().then(({ inspect }) =>
        say({ kind: 'inspected', id: question.id, fields: inspect(question.text, question.path) }),
      );
  }
}

async function answerWords({ id, text }: Extract<Question, { kind: 'words' }>): Promise<void> {
  const { vocabulary } = await onDemand();
  const answer = readCabinet(FILE, text);
  say({ kind: 'worded', id, vocabulary: vocabulary(answer.ok ? answer.cabinet : undefined) });
}

/** Nobody to share with. */
const WHOLE: Share = { at: 0, of: 1 };

function answerLook(
  { id, text }: Extract<Question, { kind: 'look' | 'option' }>,
  share: Share,
  edits: readonly Edit[] = [],
): void {
  const part = looker.look(text, share, edits);
  if ('complaints' in part) say({ kind: 'faulty', id, complaints: part.complaints });
  else say({ kind: 'part', id, text, part });
}

function editsOf(text: string, option: string): readonly Edit[] {
  const answer = readCabinet(FILE, text);
  return answer.ok ? (answer.cabinet.options[option]?.edits ?? []) : [];
}

function answerEdit({ id, text, edits }: Extract<Question, { kind: 'edit' }>): void {
  try {
    say({ kind: 'edited', id, text: editText(text, edits, FILE) });
  } catch (error) {
    say({ kind: 'refused', id, why: error instanceof Error ? error.message : String(error) });
  }
}
