// When the socket of each machine may go off, and a rule for a switch that measures power.

import {
  formatClock,
  formatDuration,
  formatQuantity,
  type JobShutOff,
  type MachineSwitch,
  SHUT_OFF_CAUTION,
  type ShutOffs,
} from '@stillair/engine';
import type { AnswerProps } from './answer.ts';
import { AnswerTable } from './answer-table.tsx';
import { PartName } from './part-name.tsx';
import { UnreadableView } from './unreadable-view.tsx';

type FoundProps = Omit<AnswerProps<'shutOff'>, 'result'> & { readonly found: ShutOffs };

export function ShutOffView({ result, ...props }: AnswerProps<'shutOff'>) {
  return 'unreadable' in result ? <UnreadableView {...result} /> : <Found {...props} found={result} />;
}

function Found(props: FoundProps) {
  const { found, units } = props;
  const { limits, jobs, switches } = found;
  const degrees = (value: number): string => formatQuantity('temperature', value, units);
  return (
    <>
      <p>
        Off when the bed is below {degrees(limits.bed.value)} and the hot end below {degrees(limits.hotEnd.value)} (
        {limits.bed.source}), and {Math.round(100 * limits.reserve.value)} % more time. {SHUT_OFF_CAUTION}
      </p>
      {jobs.length === 0 && <p>Nothing is printed on these days.</p>}
      {jobs.length > 0 && (
        <AnswerTable
          label="when a socket may go off"
          heads={['Job', 'Day', 'Ends', 'Bed cool after', 'Hot end', 'Off from', 'After its start']}
        >
          <tbody>
            {jobs.map((job) => (
              <JobLine key={`${job.day}/${job.part}`} {...props} job={job} />
            ))}
          </tbody>
        </AnswerTable>
      )}
      {switches.length > 0 && <h3>For a switch that measures power</h3>}
      <ul>
        {switches.map((each) => (
          <li key={each.machine}>
            <PartName {...props} says={each.machine} name={each.machine} />: {ruleText(each, units)}
          </li>
        ))}
      </ul>
    </>
  );
}

function JobLine({ job, ...props }: FoundProps & { readonly job: JobShutOff }) {
  const { part, day, machine, end, bed, hotEnd, off, next, afterStart } = job;
  return (
    <tr>
      <th scope="row">
        <PartName {...props} says={part.replace('.', ', ')} name={machine} day={day} time={end} />
      </th>
      <td>{day}</td>
      <td>{formatClock(end)}</td>
      <td>{minutes(bed.after)}</td>
      <td>{minutes(hotEnd.after)}</td>
      <td>
        {off !== undefined
          ? formatClock(off)
          : next !== undefined
            ? `stays on: ${next.job} at ${formatClock(next.start)}`
            : 'not known: not seen to cool down'}
      </td>
      <td>{afterStart === undefined ? '' : formatDuration(afterStart)}</td>
    </tr>
  );
}

const minutes = (seconds: number | undefined): string =>
  seconds === undefined ? 'not seen' : formatDuration(Math.round(seconds / 60) * 60);

function ruleText({ threshold, delay, armed, rest, least, why }: MachineSwitch, units: FoundProps['units']): string {
  const watts = (value: number): string => formatQuantity('power', value, units);
  const draws = `at rest ${watts(rest)}, at least ${watts(least)} while printing`;
  if (threshold === undefined || delay === undefined) return `no threshold (${draws}): ${why ?? 'not known'}.`;
  const once = armed === undefined ? '' : `once more than ${watts(armed)} was drawn for a minute: `;
  return `${once}off when less than ${watts(threshold)} is drawn for ${formatDuration(delay)} (${draws}).`;
}
