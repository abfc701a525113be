// What one good job of each kind costs, piece by piece; what a planned week costs, job by job and whole; what a month cost.

import {
  type CostRow,
  formatDuration,
  formatMoment,
  type MonthCost,
  type PartCosts,
  type QueueCosts,
} from '@stillair/engine';
import type { AnswerProps } from './answer.ts';
import { AnswerTable } from './answer-table.tsx';
import { PartName } from './part-name.tsx';
import { UnreadableView } from './unreadable-view.tsx';

type Shown = Omit<AnswerProps<'partCosts'>, 'result'>;

export function PartCostView({ result, ...props }: AnswerProps<'partCosts'>) {
  if ('unreadable' in result) return <UnreadableView {...result} />;
  switch (result.of) {
    case 'days':
      return <OfDays {...props} costs={result.costs} />;
    case 'queue':
      return <OfQueue {...props} costs={result.costs} />;
    case 'month':
      return <OfMonth costs={result.costs} />;
  }
}

function OfDays({ costs, ...props }: Shown & { readonly costs: PartCosts }) {
  const { parts, currency, remarks, samples } = costs;
  return (
    <>
      <p>
        In {currency}, for one good job; what failed prints add is in it. Spreads rest on {samples.ran} samples.
      </p>
      {parts.map(({ job, machine, material, day, duration, rows, total }) => (
        <table key={`${day}/${machine}/${job}`} className="answer">
          <caption>
            <PartName {...props} says={`${job} on ${machine}`} name={machine} day={day} />, {material}, {day}:{' '}
            {formatDuration(duration)}
          </caption>
          <Rows rows={[...rows, total]} />
        </table>
      ))}
      <Remarks remarks={remarks} />
    </>
  );
}

function OfQueue({ costs, ...props }: Shown & { readonly costs: QueueCosts }) {
  const { jobs, rows, total, eachJob, month, currency, remarks, samples, origin, running, unpriced } = costs;
  return (
    <>
      <p>
        In {currency}: the queue as it would be planned, the week run whole; {jobs.length} jobs
        {unpriced.length === 0 ? '' : ` of ${jobs.length + unpriced.length}`}, each as one good job. Running the week
        costs {money(running.week)} without filament. Spreads rest on {samples.ran} samples.
      </p>
      <table className="answer">
        <caption>the week</caption>
        <Rows rows={[...rows, total, eachJob, month]} />
      </table>
      {jobs.length > 0 && (
        <AnswerTable label="what each job costs" heads={['Job', 'On', 'Starts', 'One good job']}>
          <tbody>
            {jobs.map(({ job, machine, start, total: sum }) => (
              <tr key={job}>
                <th scope="row">{job}</th>
                <td>
                  <PartName {...props} says={machine} name={machine} />
                </td>
                <td>{formatMoment(origin, start)}</td>
                <td>{moneyText(sum)}</td>
              </tr>
            ))}
          </tbody>
        </AnswerTable>
      )}
      <Remarks remarks={remarks} />
    </>
  );
}

function OfMonth({ costs }: { readonly costs: MonthCost }) {
  const { first, last, jobs, failed, printing, rows, total, goodJob, currency, remarks, samples } = costs;
  const whole = (count: number): number => Math.round(10 * count) / 10;
  return (
    <>
      <p>
        In {currency}, {first} to {last} by the diary: {whole(jobs)} jobs, of which {whole(failed)} failed, in{' '}
        {formatDuration(printing)} of printing. Spreads rest on {samples.ran} samples.
      </p>
      <table className="answer">
        <caption>the month</caption>
        <Rows rows={[...rows, total, ...(goodJob === undefined ? [] : [goodJob])]} />
      </table>
      <Remarks remarks={remarks} />
    </>
  );
}

function Rows({ rows }: { readonly rows: readonly CostRow[] }) {
  return (
    <tbody>
      {rows.map((row) => (
        <tr key={row.id}>
          <th scope="row" title={row.source}>
            {row.says}
          </th>
          <td>{moneyText(row)}</td>
        </tr>
      ))}
    </tbody>
  );
}

function Remarks({ remarks }: { readonly remarks: readonly string[] }) {
  return (
    <>
      {remarks.map((text) => (
        <p key={text} className="rest">
          {text}
        </p>
      ))}
    </>
  );
}

const money = (amount: number): string => amount.toFixed(2);

function moneyText({ value, p10, p90, missing }: CostRow): string {
  if (value === undefined) return `unknown: ${missing ?? 'an input is missing'}`;
  return p10 === undefined || p90 === undefined || money(p10) === money(p90)
    ? money(value)
    : `${money(value)} (${money(p10)} to ${money(p90)})`;
}
