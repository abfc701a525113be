// When each job of the queue starts, why then, and the week as a picture.

import { conflictHead, formatMoment, type Plan, type PlannedJob } from '@stillair/engine';
import { download } from '../files/browser-store.ts';
import { VerdictMark, verdictWord } from '../remarks/verdict-mark.tsx';
import type { AnswerProps } from './answer.ts';
import { PartName } from './part-name.tsx';
import { Picture } from './picture.tsx';

export function PlanView(props: AnswerProps<'plan'>) {
  const { plan, picture, calendar } = props.result;
  const { jobs, found, conflict, checks, learned } = plan;
  const broken = checks.filter(({ verdict }) => verdict === 'fails');
  return (
    <>
      <p>{openingText(plan)}</p>
      {conflict !== undefined && (
        <>
          <p>{conflictHead(conflict, found !== 'no')}</p>
          <ul>
            {conflict.demands.map(({ id, says }) => (
              <li key={id}>{says}</li>
            ))}
          </ul>
        </>
      )}
      {found === 'yes' && (
        <>
          <Picture wide svg={picture} alt={`the week: ${jobs.length} jobs, with warmth, power and noise by the hour`} />
          <p>
            <button type="button" onClick={() => download('plan.ics', new Blob([calendar], { type: 'text/calendar' }))}>
              take it out as a calendar
            </button>
          </p>
          <div className="scrolls" tabIndex={0} role="region" aria-label="when each job starts">
            <table className="answer">
              <thead>
                <tr>
                  <th scope="col">Job</th>
                  <th scope="col">On</th>
                  <th scope="col">Starts</th>
                  <th scope="col">Ends</th>
                  <th scope="col">Why not before</th>
                </tr>
              </thead>
              <tbody>
                {jobs.map((job) => (
                  <JobLine key={job.id} {...props} job={job} />
                ))}
              </tbody>
            </table>
          </div>
        </>
      )}
      {broken.map(({ id, title, verdict }) => (
        <p key={id} className="effect fails">
          <VerdictMark verdict={verdict} />
          <span className="word">{verdictWord[verdict]}</span> {title}
        </p>
      ))}
      {learned.length > 0 && <p className="rest">Learned from weeks that were run: {learned.join('; ')}.</p>}
    </>
  );
}

function JobLine({ job, ...props }: AnswerProps<'plan'> & { readonly job: PlannedJob }) {
  const { origin } = props.result.plan.queue;
  const { id, machine, start, end, late, how, why } = job;
  return (
    <tr>
      <th scope="row">{id}</th>
      <td>
        <PartName {...props} says={machine} name={machine} />
      </td>
      <td>
        {formatMoment(origin, start)}
        {how === 'planned' ? '' : ` (${how})`}
      </td>
      <td>
        {formatMoment(origin, end)}
        {late ? ', late' : ''}
      </td>
      <td>{why[0]?.because ?? ''}</td>
    </tr>
  );
}

function openingText({ found, jobs, aims }: Plan): string {
  if (found !== 'yes') return found === 'no' ? 'There is no plan that keeps every demand.' : 'No plan was found.';
  const late = jobs.filter((job) => job.late).length;
  const proved = aims.every((aim) => aim.proved)
    ? 'No plan on these slots of time is better.'
    : 'A better one may have been missed.';
  return `${jobs.length} jobs have a place${late === 0 ? '' : `, ${late} of them after their deadline`}. ${proved} The week was run through, with its warmth, power and noise.`;
}
