// Judging a cabinet file for a command: on all cores, with a line of progress, and stopped when the person asks.

import {
  type Judgement,
  judge,
  percentText,
  type ReadSource,
  remarksOn,
  type Sheet,
  type SpreadFrom,
} from '@stillair/engine';
import type { Io } from './io.ts';
import { longStudy } from './long-study.ts';
import { hanging, whole } from './text.ts';
import { openEvaluator } from './workers.ts';

export interface JudgedOptions {
  readonly samples: number;
  readonly workers?: number;
}

export async function judged(source: ReadSource, { samples, workers }: JudgedOptions, io: Io): Promise<Judgement> {
  const evaluator = openEvaluator(source, { workers, stop: io.stop });
  return longStudy(evaluator, 'varying inputs and trying remedies', io, (hooks) =>
    judge(source, {
      ...hooks,
      samples,
      first: (findings) => io.progress(`by middle values alone: ${remarksOn(findings).opening}`),
    }),
  );
}

/** Tells what a person should know about the run itself: that it was cut short, or that some samples could not be run. */
export function tellRun({ stopped, samples }: Pick<Judgement, 'stopped' | 'samples'>, io: Io): void {
  if (stopped)
    io.err(`Stopped: ${samples.ran} of ${samples.asked} samples ran; bands and remedies are partial or missing.`);
  const lost = samples.asked - samples.ran;
  if (!stopped && lost > 0) {
    io.err(`${lost} of ${samples.asked} samples could not be run: ${samples.faults.join('; ')}`);
  }
}

/** What the simulation of the days warned of, each said once, with its day where there are several; of one day alone if it is named. */
export function notesText(
  { warnings }: Pick<Judgement, 'warnings'>,
  days: number,
  width: number,
  day?: string,
): string {
  return warnings
    .filter((warning) => day === undefined || warning.day === day)
    .map((warning) => hanging('note: ', `${days > 1 ? `${warning.day}: ` : ''}${warning.message}`, width))
    .join('\n');
}

/** The same for several options: each said once, with the names of the options whose days it befell unless it befell all. */
export function optionNotesText(
  sheets: readonly Pick<Sheet, 'id' | 'warnings'>[],
  nameOf: (id: string) => string,
  days: number,
  width: number,
): string {
  const befell = new Map<string, Set<string>>();
  for (const { id, warnings } of sheets) {
    for (const { day, message } of warnings) {
      const said = `${days > 1 ? `${day}: ` : ''}${message}`;
      befell.set(said, (befell.get(said) ?? new Set()).add(nameOf(id)));
    }
  }
  return [...befell]
    .map(([said, names]) =>
      hanging(names.size === sheets.length ? 'note: ' : `note on ${[...names].join(', ')}: `, said, width),
    )
    .join('\n');
}

/** Below this share of the spread told apart, it is not said what it comes from. */
const ENOUGH_KNOWN = 0.3;

/** Where the bands come from, in two sentences at most; `ran` samples were run. */
export function spreadText(
  { assumed, scattering, findings, known, fromAssumed, most }: SpreadFrom,
  ran: number,
): string {
  const counted = `${count(assumed, 'number')} the file does not give ${assumed === 1 ? 'is' : 'are'} assumed`;
  if (ran === 0) return `${counted}; nothing was varied, so nothing is said of how surely.`;
  const varied = `${counted} and ${scattering} more scatter; the bands (10 to 90 %) come from varying them.`;
  if (findings === 0) return varied;
  if (known < ENOUGH_KNOWN)
    return `${varied} ${count(ran, 'sample')} cannot tell which of them matter most; more could (--samples).`;
  const named = most.map(({ label, share }) => `${label} (${whole(percentText(share))})`).join(', ');
  const what = findings === 1 ? 'what fails or is tight' : `the ${findings} that fail or are tight`;
  return `${varied} Of the spread of ${what}, at least ${whole(percentText(fromAssumed))} is due to what is assumed; most of all to ${named}.`;
}

function count(number: number, what: string): string {
  return `${number} ${what}${number === 1 ? '' : 's'}`;
}
