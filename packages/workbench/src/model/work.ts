// All that the page knows: the text with its past, what the engine said of it, and how the person looks at it.
// A reducer and nothing else: the same actions give the same page.

import type { BriefFinding, Complaint, DayBands, UnitSystem } from '@stillair/engine';
import type { Answer, Look, Progress, StudyName } from '../engine/protocol.ts';
import { type AllAsked, askedAnew, heardOfStudy, leftAll } from './asked.ts';
import { withSpreads } from './with-spreads.ts';

export type View = 'front' | 'side' | 'plan' | 'space';
export type Theme = 'light' | 'dark' | 'system';

/** Panes beside the sheet and its remarks; closed until they are asked for. */
export type Pane = 'day' | 'options' | 'text' | 'part' | 'ask';

/** A file, an example that comes with the page, or answers to questions that are in no file yet. */
export type From = 'file' | 'example' | 'own';

export interface Work {
  readonly name: string;
  readonly from: From;
  readonly text: string;
  readonly past: readonly string[];
  readonly future: readonly string[];
  /** Text as it was last saved or opened: what differs is not yet on disk. */
  readonly saved: string;
  /** The last text that could be read, and what came of it. */
  readonly look?: Look;
  readonly lookedAt?: string;
  /** Findings with bands, once they are there; else by middle values. */
  readonly findings: readonly BriefFinding[];
  /** How many texts have been answered: pictures and benches wait for the next. */
  readonly answered: number;
  /** Bands and remedies of this text are still being worked out. */
  readonly pending: boolean;
  /** Bands are there, remedies may not be. */
  readonly banded: boolean;
  /** Bands about the lines of days, of this text, by `bandsKey`. */
  readonly dayBands: Readonly<Record<string, DayBands>>;
  /** The person stopped it: bands rest on fewer samples than were asked for. */
  readonly cut?: { readonly ran: number; readonly asked: number };
  readonly progress?: Progress;
  readonly complaints: readonly Complaint[];
  /** What was asked for, and what came of it. */
  readonly asked: AllAsked;
  /** The question that is shown. */
  readonly question: StudyName;
  readonly view: View;
  readonly day: number;
  /** s */
  readonly time: number;
  readonly units: UnitSystem;
  readonly theme: Theme;
  readonly panes: readonly Pane[];
  /** Path of the part that is picked, such as `machines.gable`. */
  readonly picked?: string;
  /** Finding that is opened in the margin. */
  readonly opened?: string;
  /** Option that is laid over the sheet, or set beside it. */
  readonly traced?: { readonly option: string; readonly beside: boolean };
  /** Said to the person once, and to a screen reader. */
  readonly notice?: string;
}

export type Action =
  | { readonly do: 'open'; readonly name: string; readonly from: From; readonly text: string }
  | { readonly do: 'write'; readonly text: string }
  /** A text of the person's own, from answers: it belongs to no file yet. */
  | { readonly do: 'own'; readonly text: string }
  /** Part of one movement: does not add to the past. */
  | { readonly do: 'drag'; readonly text: string; readonly first: boolean }
  | { readonly do: 'undo' }
  | { readonly do: 'redo' }
  | { readonly do: 'saved'; readonly text: string }
  | { readonly do: 'hear'; readonly answer: Answer }
  /** A question is shown; asking it is another thing. */
  | { readonly do: 'question'; readonly study: StudyName }
  | { readonly do: 'ask'; readonly study: StudyName }
  | { readonly do: 'judge' }
  | { readonly do: 'view'; readonly view: View }
  | { readonly do: 'day'; readonly day: number }
  | { readonly do: 'time'; readonly time: number }
  | { readonly do: 'units'; readonly units: UnitSystem }
  | { readonly do: 'theme'; readonly theme: Theme }
  | { readonly do: 'pane'; readonly pane: Pane; readonly open?: boolean }
  | { readonly do: 'pick'; readonly part?: string }
  | { readonly do: 'unfold'; readonly finding?: string }
  | { readonly do: 'trace'; readonly option?: string; readonly beside?: boolean }
  | { readonly do: 'notice'; readonly text?: string };

/** Texts that can be gone back to. */
const PAST = 200;

export const emptyWork: Work = {
  name: '',
  from: 'example',
  text: '',
  past: [],
  future: [],
  saved: '',
  findings: [],
  answered: 0,
  pending: false,
  banded: false,
  dayBands: {},
  complaints: [],
  asked: {},
  question: 'faults',
  view: 'front',
  day: 0,
  time: 43_200,
  units: 'metric',
  theme: 'system',
  panes: [],
};

export function reduce(work: Work, action: Action): Work {
  switch (action.do) {
    case 'open': {
      const { view, units, theme, panes, answered, question } = work;
      return {
        ...emptyWork,
        answered,
        view,
        units,
        theme,
        panes,
        question,
        name: action.name,
        from: action.from,
        text: action.text,
        saved: action.text,
      };
    }
    case 'own':
      return {
        ...written(work, action.text, false),
        name: 'my-cabinet.yaml',
        from: 'own',
        saved: '',
        past: [],
        asked: {},
      };
    case 'write':
      return action.text === work.text ? work : written(work, action.text, true);
    case 'drag':
      return action.text === work.text ? work : written(work, action.text, action.first);
    case 'undo':
      return stepped(work, work.past.at(-1), work.past.slice(0, -1), [work.text, ...work.future]);
    case 'redo':
      return stepped(work, work.future[0], [...work.past, work.text], work.future.slice(1));
    case 'saved':
      return { ...work, saved: action.text, from: work.from === 'own' ? 'file' : work.from };
    case 'hear':
      return heard(work, action.answer);
    case 'question':
      return { ...work, question: action.study };
    case 'ask':
      return { ...work, asked: askedAnew(work.asked, action.study, work.text) };
    case 'judge':
      return { ...without(work, 'cut', undefined), pending: true };
    case 'view':
      return { ...work, view: action.view };
    case 'day':
      return { ...work, day: action.day };
    case 'time':
      return { ...work, time: action.time };
    case 'units':
      return { ...work, units: action.units };
    case 'theme':
      return { ...work, theme: action.theme };
    case 'pane':
      return { ...work, panes: withPane(work.panes, action.pane, action.open) };
    case 'pick':
      return without(work, 'picked', action.part);
    case 'unfold':
      return without(work, 'opened', action.finding);
    case 'trace': {
      const { option, beside = false } = action;
      return without(work, 'traced', option === undefined ? undefined : { option, beside });
    }
    case 'notice':
      return without(work, 'notice', action.text);
  }
}

function written(work: Work, text: string, remembered: boolean): Work {
  const past = remembered ? [...work.past, work.text].slice(-PAST) : work.past;
  return { ...changed(work), text, past, future: [] };
}

function stepped(work: Work, text: string | undefined, past: readonly string[], future: readonly string[]): Work {
  if (text === undefined) return work;
  return { ...changed(work), text, past, future };
}

/** Another text: its bands are to come, and what is being worked out is of the old one. */
function changed(work: Work): Work {
  return { ...without(work, 'cut', undefined), asked: leftAll(work.asked), pending: true, banded: false, dayBands: {} };
}

function heard(work: Work, answer: Answer): Work {
  switch (answer.kind) {
    case 'looked': {
      const { kind: _kind, id: _id, text, ...look } = answer;
      const day = Math.min(work.day, look.days.length - 1);
      const { length } = Object.values(look.cabinet.days)[day]!;
      const drawn = { ...work, look, lookedAt: text, complaints: [], day, time: Math.min(work.time, length) };
      // The same text, after one that could not be read: what is known of it stays known.
      if (work.lookedAt === text) return drawn;
      return {
        ...drawn,
        findings: carriedOver(look.findings, work.findings),
        answered: work.answered + 1,
        pending: true,
        banded: false,
      };
    }
    case 'faulty':
      return { ...work, complaints: answer.complaints, pending: false };
    case 'banded':
      return { ...work, findings: carriedOver(answer.findings, work.findings), banded: true };
    case 'judged': {
      const { findings, samples, stopped } = answer.judgement;
      const { ran, asked } = samples;
      const known = { ...without(work, 'progress', undefined), findings, pending: false, banded: ran > 0 };
      return without(known, 'cut', stopped && ran < asked ? { ran, asked } : undefined);
    }
    case 'judging':
      return { ...work, progress: answer.progress };
    case 'dayBanded':
      return {
        ...work,
        dayBands: { ...work.dayBands, [bandsKey(answer.bands.day, answer.units)]: answer.bands },
      };
    case 'studying':
    case 'told':
    case 'broke': {
      const asked = heardOfStudy(work.asked, answer);
      const whole = answer.kind === 'told' && answer.study === 'spread' && answer.ended === 'whole';
      if (!whole || asked.spread?.text !== work.text) return { ...work, asked };
      return { ...work, asked, findings: withSpreads(work.findings, answer.result), banded: true };
    }
    case 'edited':
    case 'worded':
    case 'inspected':
    case 'reasoned':
    case 'lined':
    case 'refused':
      return work;
  }
}

export function bandsKey(day: string, units: UnitSystem): string {
  return `${day}, ${units}`;
}

/** Remedies that were tried stay to be read until new ones come; bands of another text would mislead, and go. */
function carriedOver(fresh: readonly BriefFinding[], before: readonly BriefFinding[]): readonly BriefFinding[] {
  const tried = new Map(before.map((finding) => [finding.id, finding.tried]));
  return fresh.map((finding) => ({ ...finding, tried: tried.get(finding.id) ?? [] }));
}

function withPane(panes: readonly Pane[], pane: Pane, open = !panes.includes(pane)): readonly Pane[] {
  const others = panes.filter((each) => each !== pane);
  return open ? [...others, pane] : others;
}

/** Optional members are absent, not undefined. */
function without<Key extends 'picked' | 'opened' | 'traced' | 'notice' | 'cut' | 'progress'>(
  work: Work,
  key: Key,
  value: Work[Key],
): Work {
  const { [key]: _gone, ...rest } = work;
  return value === undefined ? (rest as Work) : { ...work, [key]: value };
}
