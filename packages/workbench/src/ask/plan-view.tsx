// When each job of the queue starts, why then, and the week as a picture.

import {
  conflictHead,
  formatMoment,
  formatQuantity,
  type KindName,
  movedHead,
  movedText,
  type Plan,
  type PlanCheck,
  type PlannedJob,
} from '@stillair/engine';
import type { PlanMade } from '../engine/protocol.ts';
import { download } from '../files/browser-store.ts';
import { bandText } from '../remarks/finding-text.ts';
import { VerdictMark, verdictWord } from '../remarks/verdict-mark.tsx';
import type { AnswerProps } from './answer.ts';
import { AnswerTable } from './answer-table.tsx';
import { PartName } from './part-name.tsx';
import { Picture } from './picture.tsx';
import { UnreadableView } from './unreadable-view.tsx';

type MadeProps = Omit<AnswerProps<'plan'>, 'result'> & { readonly made: PlanMade };

export function PlanView({ result, ...props }: AnswerProps<'plan'>) {
  return 'unreadable' in result ? <UnreadableView {...result} /> : <Made {...props} made={result} />;
}

function Made(props: MadeProps) {
  const { plan, picture, calendar } = props.made;
  const { jobs, found, conflict, checks, learned, remarks } = plan;
  const broken = checks.filter(({ verdict }) => verdict === 'fails' || verdict === 'tight');
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
      <Moved {...props} />
      {found === 'yes' && (
        <>
          <Picture wide svg={picture} alt={`the week: ${jobs.length} jobs, with warmth, power and noise by the hour`} />
          <p>
            <button type="button" onClick={() => download('plan.ics', new Blob([calendar], { type: 'text/calendar' }))}>
              take it out as a calendar
            </button>
          </p>
          <AnswerTable label="when each job starts" heads={['Job', 'On', 'Starts', 'Ends', 'Why not before']}>
            <tbody>
              {jobs.map((job) => (
                <JobLine key={job.id} {...props} job={job} />
              ))}
            </tbody>
          </AnswerTable>
        </>
      )}
      {broken.map((check) => (
        <CheckLine key={check.id} {...props} check={check} />
      ))}
      <p className="rest">{sampledText(plan)}</p>
      {remarks.map((text) => (
        <p key={text} className="rest">
          {text}.
        </p>
      ))}
      {learned.length > 0 && <p className="rest">Learned from weeks that were run: {learned.join('; ')}.</p>}
    </>
  );
}

function JobLine({ job, ...props }: MadeProps & { readonly job: PlannedJob }) {
  const { origin } = props.made.plan.queue;
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

/** What has become of the jobs of the plan before. */
function Moved({ made: { plan } }: MadeProps) {
  const { moved, queue } = plan;
  if (moved === undefined) return null;
  const lines = moved.flatMap((job) => {
    const text = movedText(job, queue.origin);
    return text === undefined ? [] : [{ id: job.id, text }];
  });
  return (
    <>
      <p>{movedHead(moved)}</p>
      {lines.length > 0 && (
        <ul className="moved">
          {lines.map(({ id, text }) => (
            <li key={id}>{text}</li>
          ))}
        </ul>
      )}
    </>
  );
}

function CheckLine({ check, units, made }: MadeProps & { readonly check: PlanCheck }) {
  const { title, part, unit, value, p10, p90, limit, verdict, at } = check;
  const show = (number: number): string => formatQuantity(unit as KindName, number, units);
  const band = p10 === undefined || p90 === undefined || p10 === p90 ? '' : ` (${bandText({ p10, p90, unit }, units)})`;
  return (
    <p className={`effect ${verdict}`}>
      <VerdictMark verdict={verdict} />
      <span className="word">{verdictWord[verdict]}</span> {title}, {part}:{' '}
      {value === undefined ? 'unknown' : show(value)}
      {band}, {limit.kind === 'at-most' ? 'at most' : 'at least'} {show(limit.value)}
      {at === undefined ? '' : ` at ${formatMoment(made.plan.queue.origin, at)}`}
    </p>
  );
}

function sampledText({ samples: { asked, ran } }: Plan): string {
  return ran === 0
    ? 'Middle values only.'
    : `Bands from the 10th to the 90th percentile of ${ran} samples${ran < asked ? ` of ${asked}` : ''}; grey in the picture.`;
}

function openingText({ found, jobs, aims }: Plan): string {
  if (found !== 'yes') return found === 'no' ? 'There is no plan that keeps every demand.' : 'No plan was found.';
  const late = jobs.filter((job) => job.late).length;
  const proved = aims.every((aim) => aim.proved)
    ? 'No plan on these slots of time is better.'
    : 'A better one may have been missed.';
  return `${jobs.length} jobs have a place${late === 0 ? '' : `, ${late} of them after their deadline`}. ${proved} The week was run through, with its warmth, power and noise.`;
}
