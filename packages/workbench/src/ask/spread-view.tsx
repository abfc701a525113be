// How sure the findings are: what options change on common samples, verdicts that are open, and what to measure first.

import {
  type Estimate,
  type FindingSpread,
  formatQuantity,
  type KindName,
  type Measurement,
  type OptionDifference,
  type OptionSpread,
  openFindings,
  type UnitSystem,
} from '@stillair/engine';
import { bandText, limitText, placeText } from '../remarks/finding-text.ts';
import { SpreadBar } from '../remarks/spread-bar.tsx';
import type { AnswerProps } from './answer.ts';
import { AnswerTable } from './answer-table.tsx';
import { PartName } from './part-name.tsx';

/** Rows of each table at most. */
const MOST = 12;

export function SpreadView(props: AnswerProps<'spread'>) {
  const { result } = props;
  const { samples, inputs, findings, wrong, options, orders } = result;
  const limited = findings.filter(({ limit }) => limit !== undefined);
  const open = openFindings(findings);
  return (
    <>
      <p>
        {samples.ran} of {samples.asked} samples of {inputs} uncertain inputs. Of {limited.length} limits {open.length}{' '}
        are open: kept in some samples and broken in others. By the better guess {wrong.toFixed(1)} of these must be
        expected to be called wrongly. A chance speaks of inputs that nobody measured, not of what the model leaves out.
        The remarks above take their spreads from here.
      </p>
      {options.length > 1 && (
        <>
          <OptionTable options={options} />
          {orders.open > 0 && (
            <p>
              Of {orders.open} differences where the limit is open with and without the option {orders.certain} are
              certain in direction: the order is certain though the level is not.
            </p>
          )}
          <Differences {...props} />
        </>
      )}
      {open.length > 0 && <Open {...props} open={open} />}
      <Measurements {...props} />
    </>
  );
}

function OptionTable({ options }: { readonly options: readonly OptionSpread[] }) {
  return (
    <AnswerTable
      label="what the options change"
      caption="What the options change, on the same samples"
      heads={['Option', 'Limits broken', 'Fewer in', 'More in', 'All kept in']}
    >
      <tbody>
        {options.map(({ id, fault, broken, fewer, more, meetsAll }) => (
          <tr key={id}>
            <th scope="row">{id}</th>
            <td>
              {fault !== undefined
                ? `cannot be run: ${fault}`
                : broken === undefined
                  ? ''
                  : `${broken.value.toFixed(1)} ± ${(broken.error ?? 0).toFixed(1)}`}
            </td>
            <td>{percentText(fewer)}</td>
            <td>{percentText(more)}</td>
            <td>{percentText(meetsAll)}</td>
          </tr>
        ))}
      </tbody>
    </AnswerTable>
  );
}

function Differences({ result: { options, differences }, look, units }: AnswerProps<'spread'>) {
  return (
    <ul>
      {options.slice(1).flatMap(({ id }) =>
        differences
          .filter(({ option }) => option === id)
          .slice(0, 2)
          .map((difference) => (
            <li key={`${id}/${difference.id}`}>
              <strong>{id}</strong>: {difference.title}, {placeText(difference, look.days.length)}:{' '}
              {amountText(difference, units)}, {sideText(difference)}; limit kept in {percentText(difference.kept)} (
              {percentText(difference.keptBefore)} without it)
            </li>
          )),
      )}
    </ul>
  );
}

function Open({ open, ...props }: AnswerProps<'spread'> & { readonly open: readonly FindingSpread[] }) {
  const { look, units } = props;
  return (
    <AnswerTable
      label="verdicts that are open"
      caption={
        open.length > MOST ? `The ${MOST} verdicts that are most open, of ${open.length}` : 'Verdicts that are open'
      }
      heads={['Finding', '10 to 90 %', 'Limit', 'Kept in', 'Varies by']}
    >
      <tbody>
        {open.slice(0, MOST).map((finding) => (
          <tr key={finding.id}>
            <th scope="row">
              <PartName
                {...props}
                says={`${finding.title}, ${placeText(finding, look.days.length)}`}
                name={finding.part}
                day={finding.day}
              />
            </th>
            <td>
              {bandText(finding, units)}
              <SpreadBar finding={finding} units={units} pending={false} />
            </td>
            <td title={finding.limit?.source}>{limitText(finding, units)}</td>
            <td>{percentText(finding.chance)}</td>
            <td>
              {finding.shares
                .slice(0, 2)
                .map(({ label, share }) => `${label} ${Math.round(100 * share)} %`)
                .join(', ') || 'nothing told apart'}
            </td>
          </tr>
        ))}
      </tbody>
    </AnswerTable>
  );
}

/** Calls that a measurement mends by less are not worth naming. */
const WORTH = 0.005;

function Measurements({ result, look }: AnswerProps<'spread'>) {
  const told = result.measurements.filter(({ verdicts, orders }) => verdicts.value + orders.value >= WORTH).slice(0, 8);
  if (told.length === 0) return null;
  return (
    <>
      <h3>What to measure: wrong calls fewer, of {result.wrong.toFixed(1)} verdicts and of the orders of options</h3>
      <ol>
        {told.map((measurement) => (
          <li key={measurement.path}>
            <strong>{measurement.label}</strong>, exact {measurement.exactly}: {measurement.how}.{' '}
            {measurementText(measurement, look.days.length)}
          </li>
        ))}
      </ol>
    </>
  );
}

function measurementText({ verdicts, orders, helps }: Measurement, days: number): string {
  const counted = ({ value, error }: Estimate): string =>
    error === undefined || Number.isNaN(error) ? value.toFixed(2) : `${value.toFixed(2)} ± ${error.toFixed(2)}`;
  const fewer = [
    ...(verdicts.value >= WORTH ? [`${counted(verdicts)} verdicts`] : []),
    ...(orders.value >= WORTH ? [`${counted(orders)} orders`] : []),
  ].join(' and ');
  const [most] = helps;
  const percent = (share: number): string => `${Math.round(100 * share)} %`;
  const about =
    most === undefined
      ? ''
      : `; most of ${most.title}, ${placeText(most, days)}: wrong in ${percent(most.before)}, then ${percent(most.after)}`;
  return `${fewer} fewer${about}.`;
}

function amountText({ as, band: { p10, p50, p90 }, unit }: OptionDifference, units: UnitSystem): string {
  const kind = (unit === 'temperature' ? 'temperature-difference' : unit) as KindName;
  const one = (value: number): string =>
    as === 'ratio'
      ? `${Number(value.toPrecision(2))} times`
      : `${value > 0 ? '+' : ''}${formatQuantity(kind, value, units)}`;
  return p10 === p90 ? one(p50) : `${one(p50)} (${one(p10)} to ${one(p90)})`;
}

function sideText({ better, worse }: OptionDifference): string {
  const [side, { value }] = better.value >= worse.value ? ['better', better] : ['worse', worse];
  return value >= 0.9995 ? `${side} in all samples` : `${side} in ${Math.round(100 * value)} %`;
}

function percentText(estimate: Estimate | undefined): string {
  if (estimate === undefined) return '';
  const { value, error } = estimate;
  const rounded = Math.round(100 * value);
  return error === undefined || Number.isNaN(error)
    ? `${rounded} %`
    : `${rounded} ± ${Math.max(1, Math.round(100 * error))} %`;
}
