// stillair explain FILE FINDING: from the inputs to the number, with formulas, sources, and where each input came from.

import {
  type Finding,
  nearest,
  type Origin,
  type Origins,
  originAt,
  originText,
  type UnitSystem,
} from '@stillair/engine';
import { limitText, numbersText, quantity } from '../finding-text.ts';
import { inkFor } from '../ink.ts';
import type { ExitCode, Io } from '../io.ts';
import { judged, notesText, tellRun } from '../judged.ts';
import { loadCabinet } from '../load-cabinet.ts';
import { hanging } from '../text.ts';
import { exitCodeOf, inked, verdictWords } from '../verdict-words.ts';

export interface ExplainOptions {
  readonly units: UnitSystem;
  readonly samples: number;
  readonly workers?: number;
}

/** Ids offered when the one asked for is not there. */
const OFFERED = 8;

export async function explain(file: string, asked: string, options: ExplainOptions, io: Io): Promise<ExitCode> {
  const source = await loadCabinet(file, 'explain', io);
  if (source === undefined) return 2;
  const judgement = await judged(source, options, io);
  const found = findingsNamed(judgement.findings, asked);
  if (found.length !== 1) return refuse(asked, found.length > 0 ? found : judgement.findings, found.length, io);
  const finding = found[0]!;
  const ink = inkFor(io);
  const say = (first: string, text: string) => io.out(hanging(first, text, io.columns));

  io.out(`${ink.strong(finding.title)}\n${ink.faint(finding.id)}\n`);
  say(`${inked(ink, finding.verdict, verdictWords[finding.verdict] || 'told')}  `, numbersText(finding, options.units));
  if (finding.limit !== undefined) {
    const { id, standing, source: from } = finding.limit;
    say(
      'limit  ',
      `${limitText(finding, options.units)}: ${from} (${standing}; "${id}" under limits: in the file changes it)`,
    );
  }
  if (finding.cause !== undefined) say('cause  ', finding.cause);
  if (finding.chance !== undefined)
    say('chance ', `${Math.round(finding.chance * 100)} % of the samples are inside the limit`);

  io.out(`\n${ink.strong('From the inputs to the number')}`);
  for (const [at, step] of finding.steps.entries()) {
    const value = step.value === undefined ? '' : `: ${quantity(step.unit ?? 'number', step.value, options.units)}`;
    say(`${String(at + 1).padStart(3)}. `, `${step.text}${value}`);
    if (step.formula !== undefined) say('       ', step.formula);
    if (step.source !== undefined) say('       source: ', step.source);
    for (const path of step.inputs ?? [])
      for (const text of inputTexts(path, source.origins)) say('       from: ', text);
  }
  tellDrivers(finding, source.origins, say, () => io.out(`\n${ink.strong('What its spread comes from')}`));
  tellTried(finding, options.units, say, () => io.out(`\n${ink.strong('What was tried')}`));
  const notes = notesText(judgement, Object.keys(source.cabinet.days).length, io.columns, finding.day);
  if (notes !== '') io.out(`\n${notes}`);
  tellRun(judgement, io);
  return io.stop.aborted ? 130 : exitCodeOf([finding]);
}

type Say = (first: string, text: string) => void;

function tellDrivers({ drivers }: Finding, origins: Origins, say: Say, head: () => void): void {
  if (drivers.length === 0) return;
  head();
  for (const { path, label, share } of drivers) {
    const origin = originWords(originAt(origins, path));
    say(`${String(Math.round(share * 100)).padStart(5)} %  `, `${label}${origin === '' ? '' : `: ${origin}`}`);
  }
}

function tellTried({ tried, ...finding }: Finding, units: UnitSystem, say: Say, head: () => void): void {
  if (tried.length === 0) return;
  head();
  for (const { says, value, verdict, worsens, mends } of tried) {
    const becomes = value === undefined ? '' : `: ${quantity(finding.unit, value, units)}`;
    const also = [
      ...(mends.length > 0 ? [`better too: ${mends.join(', ')}`] : []),
      ...(worsens.length > 0 ? [`worse then: ${worsens.join(', ')}`] : []),
    ];
    say(`${(verdictWords[verdict] || 'told').padEnd(7)}  `, [`${says}${becomes}`, ...also].join('; '));
  }
}

/** Findings whose id is the one asked for, or has it as whole pieces of it: `print-air/left`. */
function findingsNamed(findings: readonly Finding[], asked: string): Finding[] {
  const exact = findings.filter(({ id }) => id === asked);
  return exact.length > 0 ? exact : findings.filter(({ id }) => `/${id}/`.includes(`/${asked}/`));
}

function refuse(asked: string, candidates: readonly Finding[], found: number, io: Io): 2 {
  const ids = candidates.map(({ id }) => id);
  const near = nearest(asked, ids);
  const offered = [...new Set([...(near === undefined ? [] : [near]), ...closest(asked, ids)])].slice(0, OFFERED);
  const what = found > 1 ? `"${asked}" names ${found} findings` : `there is no finding "${asked}"; near it are`;
  io.err(`stillair explain: ${what}:\n${offered.map((id) => `  ${id}`).join('\n')}`);
  return 2;
}

/** Ids that share most words with the one asked for. */
function closest(asked: string, ids: readonly string[]): string[] {
  const words = asked
    .toLowerCase()
    .split(/[/\s.-]+/)
    .filter(Boolean);
  const shared = (id: string) => words.filter((word) => id.includes(word)).length;
  const some = ids.filter((id) => shared(id) > 0);
  return (some.length > 0 ? some : [...ids]).sort((a, b) => shared(b) - shared(a));
}

/** Parts of one input, such as those of a size or a path, that are told one by one. */
const MOST_PARTS = 3;

/** An input and where it came from; of one that has parts, where those came from. */
function inputTexts(path: string, origins: Origins): string[] {
  const whole = originWords(originAt(origins, path));
  if (whole !== '') return [`${path}: ${whole}`];
  const parts = [...origins].filter(([at]) => at.startsWith(`${path}.`)).map(([, origin]) => originWords(origin));
  const texts = [...new Set(parts)].slice(0, MOST_PARTS);
  return texts.length === 0 ? [path] : texts.map((text) => `${path}: ${text}`);
}

function originWords(origin: Origin | undefined): string {
  return originText(origin, ({ file, line }) => `${file}:${line}  `);
}
