// What a search found: the winner and why it wins, the front as it grows, what more would cost; any of the front becomes an option.

import {
  comesToText,
  formatQuantity,
  type KindName,
  type NamedLimit,
  type SearchStudy,
  type SearchVariant,
  wantRules,
} from '@stillair/engine';
import { placeText } from '../remarks/finding-text.ts';
import type { AnswerProps } from './answer.ts';
import { AnswerTable } from './answer-table.tsx';
import { Picture } from './picture.tsx';

export function SearchView(props: AnswerProps<'search'>) {
  const { result, look, units } = props;
  const { study, picture } = result;
  const { winner, base, wants, front, givenUp, close, inTheWay, choices } = study;
  if (choices.length === 0)
    return <p>Nothing is free to change: say under “search:” in the text what may, or give the cabinet an option.</p>;
  if (winner === undefined) return <p>No variant could be run. {study.faults.join('; ')}</p>;
  const about = (limit: NamedLimit): string => `${limit.title} (${placeText(limit, look.days.length)})`;
  return (
    <>
      <p>
        {openingText(study)} {ranText(study)}
      </p>
      <p className="rest">
        Free to change
        {choices.some(({ assumed }) => assumed) ? ' (assumed, as the file does not say under “search:”)' : ''}:{' '}
        {choices.map(({ id, values }) => `${id} (${values.length})`).join(', ')}.
      </p>
      <div className="papers">
        <div className="paper-list">
          <h3>The winner</h3>
          <Winner {...props} />
          <table className="answer">
            <thead>
              <tr>
                <th scope="col">Want</th>
                <th scope="col">As it stands</th>
                <th scope="col">Winner</th>
              </tr>
            </thead>
            <tbody>
              {wantRules.map(({ want, measuredBy }) => (
                <tr key={want}>
                  <th scope="row" title={measuredBy}>
                    {want}
                    {wants.includes(want) ? ' (wanted)' : ''}
                  </th>
                  <td>{comesToText(want, base.comesTo[want], study.currency, units)}</td>
                  <td>{comesToText(want, winner.comesTo[want], study.currency, units)}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <p>
            {surelyText('As it stands', base)} {surelyText('The winner', winner)}
          </p>
          {close.length > 0 && (
            <p>
              Kept with little to spare:{' '}
              {close
                .map(
                  (limit) =>
                    `${about(limit)}, ${formatQuantity(limit.unit as KindName, limit.value, units)} of ${formatQuantity(limit.unit as KindName, limit.limit, units)}`,
                )
                .join('; ')}
              .
            </p>
          )}
          {inTheWay.length > 0 && (
            <p>
              In the way of more {wants[0]}: {inTheWay.map(about).join('; ')}.
            </p>
          )}
          {givenUp.length > 0 && (
            <p className="rest">
              Kept by no variant that was run, so not searched for: {givenUp.map(about).join('; ')}.
            </p>
          )}
        </div>
        <Picture
          svg={picture}
          alt={`the front: ${front.length} variants that none other beats in all of ${wants.join(', ')}`}
        />
      </div>
      {front.length > 1 && <Front {...props} />}
    </>
  );
}

function Winner({ result: { study }, current, onKeep }: AnswerProps<'search'>) {
  const { winner, wants } = study;
  if (winner === undefined || winner.changes.length === 0) return <p>The cabinet as it stands.</p>;
  return (
    <>
      <ul>
        {winner.changes.map(({ id, from, to }) => {
          const without = study.undone.find((each) => each.id === id);
          return (
            <li key={id}>
              {id}: {from}, then <strong>{to}</strong>
              {without?.idle === true ? ' (nothing is worse without it)' : ''}
              {(without?.breaks.length ?? 0) > 0 ? `; without it ${without!.breaks[0]!.title} is broken` : ''}
            </li>
          );
        })}
      </ul>
      {current && (
        <button type="button" onClick={() => onKeep(`found for ${wants.join(' and ')}`, winner.edits)}>
          keep the winner as an option
        </button>
      )}
    </>
  );
}

function Front({ result: { study }, units, current, onKeep }: AnswerProps<'search'>) {
  const { front, wants, currency } = study;
  return (
    <AnswerTable
      label="the front"
      caption="The front: none of these is beaten in everything that is wanted"
      heads={[...wants, 'keeps all', 'changes', 'then']}
    >
      <tbody>
        {front.map((variant) => (
          <tr key={JSON.stringify(variant.edits)}>
            {wants.map((want) => (
              <td key={want}>{comesToText(want, variant.comesTo[want], currency, units)}</td>
            ))}
            <td>{variant.chance === undefined ? '' : `${Math.round(100 * variant.chance)} %`}</td>
            <th scope="row">
              {variant.changes.length === 0
                ? 'as it stands'
                : variant.changes.map(({ id, to }) => `${id}: ${to}`).join('; ')}
            </th>
            <td>
              {current && variant.edits.length > 0 && (
                <button
                  type="button"
                  className="quiet"
                  onClick={() => onKeep(`found for ${wants.join(' and ')}`, variant.edits)}
                >
                  keep as an option
                </button>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </AnswerTable>
  );
}

function openingText({ winner, keepsAll, givenUp }: SearchStudy): string {
  if (!keepsAll)
    return `No variant that was run keeps every limit that some variant keeps; this one breaks least: ${winner!.breaks.length}.`;
  return givenUp.length === 0
    ? 'The winner keeps every limit.'
    : `The winner keeps every limit that any variant keeps; ${givenUp.length} are kept by none.`;
}

function ranText({ ran, variants, complete, closed }: SearchStudy): string {
  const sure = complete
    ? 'Nothing better is among them.'
    : closed
      ? 'No single change of the winner is better; a better one further off may have been missed.'
      : 'Not every single change of the winner was run.';
  return `${ran} of ${countText(variants)} variants were run. ${sure} It is no substitute for local codes and licensed practice.`;
}

/** Many are told to two digits. */
function countText(count: number): string {
  return new Intl.NumberFormat('en', count < 1e5 ? {} : { maximumSignificantDigits: 2 }).format(count);
}

function surelyText(name: string, { chance, unsure = [] }: SearchVariant): string {
  if (chance === undefined) return '';
  const least = unsure[0] === undefined ? '' : `; least sure: ${unsure[0].title}`;
  return `${name} keeps all limits that can be kept in ${Math.round(100 * chance)} % of the samples${least}.`;
}
