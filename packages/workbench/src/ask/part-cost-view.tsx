// What one good job of each kind costs, piece by piece.

import { type CostRow, formatDuration } from '@stillair/engine';
import type { AnswerProps } from './answer.ts';
import { PartName } from './part-name.tsx';

export function PartCostView(props: AnswerProps<'partCosts'>) {
  const { parts, currency, remarks, samples } = props.result;
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
          <tbody>
            {[...rows, total].map((row) => (
              <tr key={row.id}>
                <th scope="row" title={row.source}>
                  {row.says}
                </th>
                <td>{moneyText(row)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ))}
      {remarks.map((text) => (
        <p key={text} className="rest">
          {text}
        </p>
      ))}
    </>
  );
}

function moneyText({ value, p10, p90, missing }: CostRow): string {
  if (value === undefined) return `unknown: ${missing ?? 'an input is missing'}`;
  const one = (amount: number): string => amount.toFixed(2);
  return p10 === undefined || p90 === undefined || one(p10) === one(p90)
    ? one(value)
    : `${one(value)} (${one(p10)} to ${one(p90)})`;
}
