// How far a study is, whether it was ended early, and whether the cabinet has changed since.

import { formatDuration } from '@stillair/engine';
import type { Progress } from '../engine/protocol.ts';
import type { Asked } from '../model/asked.ts';

export interface CourseProps {
  readonly asked: Asked<unknown>;
  /** Text of the cabinet as it is now. */
  readonly text: string;
  readonly onStop: () => void;
}

export function Course({ asked, text, onStop }: CourseProps) {
  const { state, progress, result, why } = asked;
  const running = state === 'running';
  return (
    <>
      {running && (
        <p className="course">
          <progress
            aria-label="how far it is"
            {...(progress === undefined ? {} : { value: progress.done, max: Math.max(1, progress.all) })}
          />{' '}
          <span>
            {progress === undefined ? 'beginning' : leftText(progress)}
            {result === undefined ? '' : '; what there is so far stands below'}
          </span>{' '}
          <button type="button" className="quiet" onClick={onStop}>
            stop
          </button>
        </p>
      )}
      <p role="status" className="course-end">
        {running ? '' : endText(asked, asked.text !== text)}
        {why === undefined ? '' : ` It could not be made: ${why}.`}
      </p>
    </>
  );
}

function endText({ state, result }: Asked<unknown>, old: boolean): string {
  if (old)
    return result === undefined
      ? 'The cabinet was changed before there was an answer.'
      : 'This is of the cabinet before it was changed. Ask anew for the one that is drawn.';
  if (state === 'stopped' && result !== undefined) return 'Stopped: what was not run is missing.';
  if (state === 'left') return 'Something else was asked before this was done; what there was is shown.';
  return state === 'whole' ? 'Done.' : '';
}

/** Fewer than these say nothing of those to come. */
const ENOUGH = 5;

function leftText({ done, all, took }: Progress): string {
  const counted = `${done} of ${all}`;
  if (done < ENOUGH || done >= all) return counted;
  return `${counted}, about ${formatDuration(Math.ceil(((took / done) * (all - done)) / 1000))} to go`;
}
