// A text becomes a cabinet with its findings by middle values and its days to draw. Runs in the workers; knows no page.

import {
  askDay,
  askStanding,
  assumedInputs,
  type BriefFinding,
  briefByValue,
  type Cabinet,
  type Complaint,
  type DayRun,
  dayPanels,
  dayStrips,
  type Edit,
  type Measure,
  type Origin,
  type Origins,
  originAt,
  originText,
  readCabinet,
  runDayKept,
  STANDING,
  sheetDay,
  type UnitSystem,
  warningsOf,
} from '@stillair/engine';
import type { DayLines, DayLook, LookPart, Reason, Share, Uncertain } from './protocol.ts';

/** Name under which the text stands in complaints: the page shows the place itself. */
export const FILE = 'cabinet';

/** A text that was looked at, with all that may be asked of it afterwards. */
interface Seen {
  readonly text: string;
  readonly cabinet: Cabinet;
  readonly origins: Origins;
  readonly runs: ReadonlyMap<string, DayRun>;
  readonly measures: ReadonlyMap<string, Measure>;
}

export interface Looker {
  /** One share of the work on a text, or of an option of it. */
  readonly look: (
    text: string,
    share: Share,
    edits?: readonly Edit[],
  ) => LookPart | { readonly complaints: readonly Complaint[] };
  /** How a finding of the text came about; nothing when this worker did not look at it. */
  readonly reason: (text: string, finding: string) => Reason | undefined;
  /** What is drawn of a day of the text; nothing when this worker did not look at it. */
  readonly lines: (text: string, day: string, units: UnitSystem) => DayLines | undefined;
}

/** Keeps what it looked at last, and the days that it has run: many a change leaves the air of a day as it was. */
export function openLooker(): Looker {
  const runDay = runDayKept();
  let last: Seen | undefined;
  const seen = (text: string): Seen | undefined => (last?.text === text ? last : undefined);
  return {
    look: (text, { at, of }, edits = []) => {
      const answer = readCabinet(FILE, text, edits);
      if (!answer.ok) return { complaints: answer.complaints };
      const { cabinet, origins } = answer;
      const runs = new Map<string, DayRun>();
      const measures = new Map<string, Measure>();
      const told = (asked: ReadonlyMap<string, Measure>, day: string): BriefFinding[] =>
        [...asked].map(([id, measure]) => {
          measures.set(id, measure);
          return briefByValue(measure, id, day);
        });
      const standing =
        at > 0 ? undefined : { cabinet, uncertain: uncertain(origins), findings: told(askStanding(cabinet), STANDING) };
      const mine = Object.keys(cabinet.days).filter((_, place) => place % of === at);
      const days = mine.map((day): DayLook => {
        const run = runDay(cabinet, day);
        runs.set(day, run);
        return { sheet: sheetDay(run), findings: told(askDay(run), day), warnings: warningsOf(run) };
      });
      if (edits.length === 0) last = { text, cabinet, origins, runs, measures };
      return { ...(standing === undefined ? {} : { standing }), days };
    },
    reason: (text, finding) => {
      const [of, measure] = [seen(text), seen(text)?.measures.get(finding)];
      if (of === undefined || measure === undefined) return undefined;
      const from = (path: string): string => originWords(originAt(of.origins, path)) || 'the file';
      const steps = measure.steps.map(({ inputs = [], ...step }) => ({
        ...step,
        inputs: inputs.map((path) => ({ path, from: from(path) })),
      }));
      return { steps };
    },
    lines: (text, day, units) => {
      const run = seen(text)?.runs.get(day);
      return run === undefined ? undefined : { strips: dayStrips(run), panels: dayPanels(run, { units }) };
    },
  };
}

/** What nobody has given yet. */
function uncertain(origins: Origins): Uncertain[] {
  return assumedInputs(origins)
    .filter(({ path }) => origins.get(path)?.kind === 'assumed')
    .map(({ path, label }) => ({ path, label, why: originWords(origins.get(path)) }));
}

export function originWords(origin: Origin | undefined): string {
  return originText(origin, ({ line }) => `line ${line}: `);
}
