// The options: what the person is thinking of, each a change of the cabinet as it stands, set beside it in one table.

import { type Comparison, formatQuantity, type KindName, type SummaryCell, type UnitSystem } from '@stillair/engine';
import { Course } from '../ask/course.tsx';
import type { Look } from '../engine/protocol.ts';
import type { Asked } from '../model/asked.ts';
import { VerdictMark, verdictWord } from '../remarks/verdict-mark.tsx';

export interface OptionsProps {
  readonly look: Look;
  readonly asked?: Asked<Comparison> | undefined;
  /** Text of the cabinet as it is now. */
  readonly text: string;
  readonly units: UnitSystem;
  readonly onCompare: () => void;
  readonly onStop: () => void;
  readonly onTake: (option: string) => void;
  readonly traced?: { readonly option: string; readonly beside: boolean } | undefined;
  readonly onTrace: (option: string | undefined, beside: boolean) => void;
}

export function OptionsPane(props: OptionsProps) {
  const { look, asked, text, units, onCompare, onStop, onTake, traced, onTrace } = props;
  const comparison = asked?.result;
  const options = Object.entries(look.cabinet.options);
  const lies = (id: string, beside: boolean): boolean => traced?.option === id && traced.beside === beside;
  return (
    <section className="options" aria-labelledby="options-title">
      <h2 id="options-title">Options</h2>
      {options.length === 0 && (
        <p>
          There is no option yet. Open a remark and keep one of the changes that were tried, or write one under options:
          in the text.
        </p>
      )}
      <ul className="option-list">
        {options.map(([id, { title }]) => (
          <li key={id}>
            <span>
              <strong>{id}</strong> {title}
            </span>
            <span className="does">
              <button
                type="button"
                className="quiet"
                aria-pressed={lies(id, false)}
                onClick={() => onTrace(lies(id, false) ? undefined : id, false)}
              >
                lay over the sheet
              </button>
              <button
                type="button"
                className="quiet"
                aria-pressed={lies(id, true)}
                onClick={() => onTrace(lies(id, true) ? undefined : id, true)}
              >
                set beside
              </button>
              <button type="button" className="quiet" onClick={() => onTake(id)}>
                do it
              </button>
            </span>
          </li>
        ))}
      </ul>
      {options.length > 0 && (
        <button type="button" onClick={onCompare}>
          {comparison === undefined ? 'Set them side by side' : 'Set them side by side anew'}
        </button>
      )}
      {asked !== undefined && <Course asked={asked} text={text} onStop={onStop} />}
      {comparison !== undefined && <CompareTable comparison={comparison} units={units} />}
    </section>
  );
}

function CompareTable({ comparison, units }: { readonly comparison: Comparison; readonly units: UnitSystem }) {
  const { sheets, summary, currency } = comparison;
  const price = ({ low, high }: { readonly low: number; readonly high: number }): string =>
    low === 0 && high === 0 ? 'nothing' : `${Math.round(low)} to ${Math.round(high)} ${currency}`;
  return (
    <div className="scrolls" tabIndex={0} role="region" aria-label="options side by side">
      <table>
        <thead>
          <tr>
            <th scope="col">What matters</th>
            {sheets.map(({ id }) => (
              <th key={id} scope="col">
                {id}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">to buy</th>
            {sheets.map(({ id, price: cost }) => (
              <td key={id}>{price(cost)}</td>
            ))}
          </tr>
          <tr>
            <th scope="row">limits broken</th>
            {sheets.map(({ id, broken }) => (
              <td key={id}>{broken.length}</td>
            ))}
          </tr>
          {summary.map((row) => (
            <tr key={row.id}>
              <th scope="row">{row.title}</th>
              {sheets.map(({ id }) => (
                <SummaryCellView
                  key={id}
                  cell={row.cells[id]}
                  unit={row.unit as KindName}
                  best={row.best.includes(id)}
                  units={units}
                />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function SummaryCellView({
  cell,
  unit,
  best,
  units,
}: {
  readonly cell: SummaryCell | undefined;
  readonly unit: KindName;
  readonly best: boolean;
  readonly units: UnitSystem;
}) {
  if (cell === undefined) return <td>none</td>;
  return (
    <td className={best ? 'best' : ''}>
      <VerdictMark verdict={cell.verdict} />
      <span className="word">{cell.verdict === 'told' ? '' : verdictWord[cell.verdict]} </span>
      {cell.value === undefined ? 'unknown' : formatQuantity(unit, cell.value, units)}
      {best ? <span className="best-word"> best</span> : null}
    </td>
  );
}
