// The engine off the page's thread. Two of these run: one looks, and is always free within one day's sum; the other judges and
// compares, and gives way between two variants.

import { editText, judge, readCabinet } from '@stillair/engine';
import { look } from './look.ts';
import type { Answer, Question } from './protocol.ts';

/** Newest question of those that end each other. */
let newest = 0;

const say = (answer: Answer): void => postMessage(answer);

addEventListener('message', ({ data }: MessageEvent<Question>) => {
  switch (data.kind) {
    case 'option':
      answerLook(data);
      break;
    case 'look':
      newest = data.id;
      // Later questions that have already arrived are taken in first; only the last of them is worked out.
      setTimeout(() => {
        if (newest === data.id) answerLook(data);
      }, 0);
      break;
    case 'judge':
      newest = data.id;
      void answerJudge(data);
      break;
    case 'compare':
      newest = data.id;
      void answerCompare(data);
      break;
    case 'edit':
      answerEdit(data);
      break;
    case 'words':
      void answerWords(data);
      break;
    case 'inspect':
      void onDemand().then(({ inspect }) =>
        say({ kind: 'inspected', id: data.id, fields: inspect(data.text, data.path) }),
      );
      break;
    case 'stop':
      newest = data.id;
      break;
  }
});

const onDemand = () => import('./on-demand.ts');

async function answerWords({ id, text }: Extract<Question, { kind: 'words' }>): Promise<void> {
  const { vocabulary } = await onDemand();
  const answer = readCabinet('cabinet', text);
  say({ kind: 'worded', id, vocabulary: vocabulary(answer.ok ? answer.cabinet : undefined) });
}

function answerLook(question: Extract<Question, { kind: 'look' | 'option' }>): void {
  const { id, text, units } = question;
  const began = performance.now();
  const edits = question.kind === 'option' ? editsOf(text, question.option) : [];
  const seen = look(text, units, edits);
  if ('complaints' in seen) say({ kind: 'faulty', id, complaints: seen.complaints });
  else say({ kind: 'looked', id, took: performance.now() - began, ...seen });
}

function editsOf(text: string, option: string) {
  const answer = readCabinet('cabinet', text);
  return answer.ok ? (answer.cabinet.options[option]?.edits ?? []) : [];
}

function sourceOf(text: string) {
  const answer = readCabinet('cabinet', text);
  return answer.ok ? { file: 'cabinet', text, cabinet: answer.cabinet, origins: answer.origins } : undefined;
}

async function answerJudge({ id, text, samples }: Extract<Question, { kind: 'judge' }>): Promise<void> {
  const source = sourceOf(text);
  if (source === undefined) return;
  const judgement = await judge(source, {
    samples,
    stop: () => newest !== id,
    progress: (done, all) => say({ kind: 'progress', id, of: 'judge', done, all }),
  });
  if (newest !== id) return;
  const findings = judgement.findings.map((finding) => ({
    ...finding,
    steps: [...finding.steps],
    remedies: [...finding.remedies],
  }));
  say({ kind: 'judged', id, judgement: { ...judgement, findings } });
}

async function answerCompare({ id, text, samples }: Extract<Question, { kind: 'compare' }>): Promise<void> {
  const source = sourceOf(text);
  if (source === undefined) return;
  const { compare } = await onDemand();
  const comparison = await compare(source, {
    samples,
    stop: () => newest !== id,
    progress: (done, all) => say({ kind: 'progress', id, of: 'compare', done, all }),
  });
  if (newest === id) say({ kind: 'compared', id, comparison });
}

function answerEdit({ id, text, edits }: Extract<Question, { kind: 'edit' }>): void {
  try {
    say({ kind: 'edited', id, text: editText(text, edits) });
  } catch (error) {
    say({ kind: 'refused', id, why: error instanceof Error ? error.message : String(error) });
  }
}
