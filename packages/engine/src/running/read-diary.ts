// From the text of a diary to the diary, or to everything that is wrong with it. What a diary names and the cabinet no longer has
// is history and no fault: it is remarked upon.

import type { Cabinet, Job } from '../cabinet/cabinet.ts';
import { type CareAction, careActions } from '../cabinet/care.ts';
import { type CarePart, carePartsOf } from '../cabinet/care-parts.ts';
import { type Complaint, inFileOrder, quoted } from '../cabinet/complaint.ts';
import { nearest } from '../cabinet/nearest.ts';
import { readShape } from '../cabinet/shape-complaints.ts';
import { type FilePath, type SourceTree, sourceTree } from '../cabinet/source-tree.ts';
import { readYaml, type YamlDocument } from '../cabinet/yaml-document.ts';
import { formatDate, parsePeriod } from '../units/calendar.ts';
import type { Deed, Diary, DoneEntry, JobRun } from './diary.ts';
import { type DiarySpec, type DoneSpec, type DoneWord, diarySections, type RunSpec } from './diary-schema.ts';

export type DiaryAnswer =
  | { readonly ok: true; readonly diary: Diary; readonly document: YamlDocument }
  | { readonly ok: false; readonly complaints: readonly Complaint[] };

/** @param today - Nothing may have been done after it. */
export function readDiary(file: string, text: string, cabinet: Cabinet, today: number): DiaryAnswer {
  const source = readYaml(file, text);
  if ('complaints' in source) return { ok: false, complaints: source.complaints };
  const tree = sourceTree(source);
  const shape = readShape(diarySections(), tree, 'a diary');
  const complaints = shape.complaints.map(({ complaint }) => complaint);
  const spec = shape.spec as Partial<DiarySpec>;
  const say: Say = (path, fault) => complaints.push({ ...fault, where: tree.valueSpan(path) });
  const { done = [], jobs = [] } = spec;
  complaints.push(...aheadIn(tree, today));
  const runs = jobs.map((run, at) => runOf(run, at, cabinet, say));
  if (complaints.length > 0) return { ok: false, complaints: inFileOrder(complaints) };
  const tasks = carePartsOf(cabinet);
  return {
    ok: true,
    document: source,
    diary: {
      began: spec.began!,
      done: done.map(entryOf).sort((a, b) => a.on - b.on),
      jobs: runs.flatMap((run) => run ?? []).sort((a, b) => a.first - b.first),
      remarks: [...strangeParts(done, tasks, tree), ...strangeMachines(jobs, cabinet, tree)],
    },
  };
}

type Say = (path: FilePath, fault: Omit<Complaint, 'where'>) => void;

const deeds = new Map<DoneWord, Deed>([
  ['measured', 'measure'],
  ...Object.entries(careActions).map(([action, word]) => [word, action as CareAction] as const),
]);

/** The action whose past a word is; undefined when it is none. */
export function deedOf(word: string): Deed | undefined {
  return deeds.get(word as DoneWord);
}

function entryOf({ on, part, did, reading, note }: DoneSpec): DoneEntry {
  return {
    on,
    part,
    did: deeds.get(did)!,
    ...(reading === undefined ? {} : { reading: reading.value }),
    ...(note === undefined ? {} : { note }),
  };
}

/** Days that have not come, in whatever entry, as they stand in the text: a fault elsewhere in its list hides none of them. */
function aheadIn(tree: SourceTree, today: number): Complaint[] {
  const lists = ['done', 'jobs'].flatMap((list) => {
    const entries = tree.plain[list];
    return Array.isArray(entries) ? entries.map((_, at) => [list, at, 'on'] as const) : [];
  });
  return [['began'] as const, ...lists].flatMap((path: FilePath) => {
    const written = path.reduce<unknown>(
      (value, segment) => (value as Record<string | number, unknown> | null | undefined)?.[segment],
      tree.plain,
    );
    const period = typeof written === 'string' ? parsePeriod(written) : undefined;
    if (!Array.isArray(period) || period[1] <= today) return [];
    return [
      {
        code: 'date-ahead',
        what: `${formatDate(period[1] as number)} has not come yet: today is ${formatDate(today)}`,
        where: tree.valueSpan(path),
        allowed: 'days up to today',
        mend: 'write the day on which it was; what is planned stands nowhere here',
      },
    ];
  });
}

/** A job of that name in the days of the file, on that machine if one is named. */
function jobOfDays({ days }: Cabinet, name: string, machine: string | undefined): Job | undefined {
  return Object.values(days)
    .flatMap(({ jobs }) => (Object.hasOwn(jobs, name) ? [jobs[name]!] : []))
    .find((job) => machine === undefined || job.machine === machine);
}

function runOf(
  { on, job, machine, material, start, for: duration, mass, times = 1, failed = 0 }: RunSpec,
  at: number,
  cabinet: Cabinet,
  say: Say,
): JobRun | undefined {
  const path: FilePath = ['jobs', at];
  const known = jobOfDays(cabinet, job, machine);
  const names = Object.keys(cabinet.machines);
  const printer = machine ?? known?.machine ?? (names.length === 1 ? names[0] : undefined);
  const missing = (key: string, allowed: string): void => {
    const guess = nearest(
      job,
      Object.values(cabinet.days).flatMap(({ jobs }) => Object.keys(jobs)),
    );
    say([...path, 'job'], {
      code: 'key-missing',
      what: `no day of the cabinet file has a job ${quoted(job)}${machine === undefined ? '' : ` on ${quoted(machine)}`}, and there is no ${quoted(key)} here`,
      allowed,
      mend: guess === undefined || guess === job ? `add ${key}:` : `add ${key}:, or did you mean ${quoted(guess)}?`,
    });
  };
  if (printer === undefined) missing('machine', `a machine, such as ${names[0] ?? 'left'}`);
  if (duration === undefined && known === undefined) missing('for', 'how long it took, such as 6 h');
  if (failed > times)
    say([...path, 'failed'], {
      code: 'value-out-of-bounds',
      what: `${failed} of ${times} cannot have failed`,
      allowed: `at most ${times}`,
      mend: 'count the failed ones in times: too',
    });
  if (printer === undefined || (duration === undefined && known === undefined) || failed > times) return undefined;
  // What nobody said of a job of the file is the file's own, on whatever machine it was printed.
  const grams = mass?.value ?? known?.mass;
  const of = material ?? known?.material;
  const began = start ?? (on[0] === on[1] && times === 1 ? known?.start : undefined);
  return {
    first: on[0],
    last: on[1],
    times,
    job,
    machine: printer,
    duration: duration?.value ?? known!.duration,
    failed,
    ...(of === undefined ? {} : { material: of }),
    ...(began === undefined ? {} : { start: began }),
    ...(grams === undefined ? {} : { mass: grams }),
  };
}

function strangeParts(done: readonly DoneSpec[], tasks: readonly CarePart[], tree: SourceTree): string[] {
  const parts = [...new Set(tasks.map(({ part }) => part))];
  return done.flatMap(({ part, did }, at) => {
    const { line } = tree.valueSpan(['done', at, 'part']);
    const known = tasks.filter((task) => task.part === part).map(({ action }) => action);
    if (known.length === 0) {
      const guess = nearest(part, parts);
      const meant = guess === undefined ? '' : `; did you mean ${quoted(guess)}?`;
      return [`line ${line}: ${quoted(part)} is no part of this cabinet (any more) and is not counted${meant}`];
    }
    const deed = deeds.get(did)!;
    if (deed === 'measure' || deed === 'change' || known.some((action) => action === deed)) return [];
    return [`line ${line}: nobody asks that ${quoted(part)} is ${did}; it is counted as nothing`];
  });
}

function strangeMachines(jobs: readonly RunSpec[], { machines }: Cabinet, tree: SourceTree): string[] {
  const names = Object.keys(machines);
  const strange = jobs.flatMap(({ machine }, at) =>
    machine === undefined || names.includes(machine) ? [] : [{ machine, at }],
  );
  return [...new Set(strange.map(({ machine }) => machine))].map((machine) => {
    const { line } = tree.valueSpan(['jobs', strange.find((one) => one.machine === machine)!.at, 'machine']);
    const guess = nearest(machine, names);
    const meant = guess === undefined ? '' : `; did you mean ${quoted(guess)}?`;
    return `line ${line}: ${quoted(machine)} is no machine of this cabinet (any more): its hours count for filters alone${meant}`;
  });
}
