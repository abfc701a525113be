// What is chosen where the queue is asked about: what of the cabinet, its job files, and from when on a plan is made anew.

import { useEffect } from 'preact/compat';
import { handedIn } from '../engine/handed-in.ts';
import type { Look, Wishes } from '../engine/protocol.ts';
import type { ControlsProps } from './answer.ts';
import { Choice, DayChoice, dateToday, FileChoice } from './controls.tsx';

/** Paths of job files that nobody has handed in, and no server gives. */
export function missingFiles({ cabinet }: Look, { jobFiles = [], served }: Partial<Wishes>): readonly string[] {
  if (served !== undefined) return [];
  const paths = Object.values(cabinet.queue?.unread ?? {}).map(({ path }) => path);
  return [...new Set(paths)].filter((path) => handedIn(jobFiles, path) === undefined);
}

/** What stands in the way of asking about the queue. */
export function queueWants(wishes: Partial<Wishes>, look: Look): string | undefined {
  const { queue } = look.cabinet;
  if (queue === undefined || Object.keys({ ...queue.jobs, ...queue.unread }).length === 0)
    return 'No job waits: the file has no queue.';
  const missing = missingFiles(look, wishes);
  return missing.length === 0 ? undefined : `Hand in ${missing.join(', ')} first.`;
}

export function JobFilesChoice({ look, wishes, onWishes }: ControlsProps) {
  const paths = [...new Set(Object.values(look.cabinet.queue?.unread ?? {}).map(({ path }) => path))];
  if (paths.length === 0) return null;
  const where =
    wishes.served === undefined
      ? 'This page has no disk: hand them in. They stay on this computer.'
      : 'They are read from the folder of the saved file, through the local server; one that is handed in goes first.';
  return (
    <span className="ask-controls">
      <span>
        The queue names job files: {paths.join(', ')}. {where}
      </span>
      <label className="file-choice">
        job files{' '}
        <input
          type="file"
          multiple
          onChange={({ currentTarget: { files } }) => {
            const picked = [...(files ?? [])];
            const others = (wishes.jobFiles ?? []).filter((file) => !picked.some(({ name }) => name === file.name));
            onWishes({ ...wishes, jobFiles: [...others, ...picked] });
          }}
        />
      </label>
    </span>
  );
}

/** From when on, where a plan was made before: what has begun by then stays. */
export function PlanControls(props: ControlsProps) {
  const { wishes, onWishes, before } = props;
  const made = before !== undefined && 'plan' in before && before.plan.jobs.length > 0;
  return (
    <>
      <JobFilesChoice {...props} />
      <label>
        plan from{' '}
        <input
          type="text"
          size={18}
          placeholder="the queue’s beginning"
          value={wishes.now ?? ''}
          onChange={({ currentTarget: { value } }) => {
            const { now: _before, ...rest } = wishes;
            onWishes(value.trim() === '' ? rest : { ...wishes, now: value });
          }}
        />{' '}
        on, such as Tue 14:00
      </label>
      {wishes.now !== undefined && (
        <span>
          {made
            ? 'What has begun by then, as the plan below has it, stays; what moves is told.'
            : 'There is no plan yet from which anything could have begun: only jobs that the file pins stay.'}
        </span>
      )}
    </>
  );
}

export function ShutOffControls(props: ControlsProps) {
  return (
    <>
      <OfChoice {...props} among={{ days: 'jobs of the days', queue: 'jobs that wait' }} />
      {props.wishes.of === 'queue' ? <JobFilesChoice {...props} /> : <DayChoice {...props} />}
    </>
  );
}

export function CostControls(props: ControlsProps) {
  const { of } = props.wishes;
  return (
    <>
      <OfChoice
        {...props}
        among={{ days: 'jobs of the days', queue: 'the queue, as it would be planned', month: 'a month of the diary' }}
      />
      {of === 'queue' && <JobFilesChoice {...props} />}
      {of === 'month' && <MonthChoice {...props} />}
      {(of ?? 'days') === 'days' && <DayChoice {...props} />}
    </>
  );
}

function OfChoice({
  wishes,
  onWishes,
  look,
  among,
}: ControlsProps & { readonly among: Partial<Record<NonNullable<Wishes['of']>, string>> }) {
  const all = Object.entries(among).filter(([of]) => of !== 'queue' || look.cabinet.queue !== undefined);
  const words = all.map(([, says]) => says);
  if (words.length < 2) return null;
  return (
    <Choice
      label="of"
      value={among[wishes.of ?? 'days'] ?? words[0]!}
      words={words}
      onChange={(word) => {
        const { file: _file, ...rest } = wishes;
        onWishes({ ...rest, of: (all.find(([, says]) => says === word)?.[0] ?? 'days') as NonNullable<Wishes['of']> });
      }}
    />
  );
}

function MonthChoice(props: ControlsProps) {
  const { wishes, onWishes } = props;
  const today = dateToday();
  useEffect(() => {
    if (wishes.month === undefined) onWishes({ ...wishes, today, month: today.slice(0, 7) });
  });
  return (
    <>
      <FileChoice {...props} label="diary" accept=".yaml,.yml" />
      <label>
        month{' '}
        <input
          type="month"
          required
          max={today.slice(0, 7)}
          value={wishes.month ?? today.slice(0, 7)}
          onChange={({ currentTarget: { value } }) => onWishes({ ...wishes, today, month: value })}
        />
      </label>
    </>
  );
}
