// What is due, overdue and next, and what overdue parts do to the findings.

import { type CareRow, type CareStudy, dueByText, dueText } from '@stillair/engine';
import { VerdictMark } from '../remarks/verdict-mark.tsx';
import type { AnswerProps } from './answer.ts';
import { AnswerTable } from './answer-table.tsx';
import { EffectLine } from './effect-line.tsx';
import { PartName } from './part-name.tsx';
import { UnreadableView } from './unreadable-view.tsx';

const groups = [
  { verdict: 'fails', head: 'Overdue' },
  { verdict: 'tight', head: 'Due about now' },
  { verdict: 'holds', head: 'Next' },
  { verdict: 'unknown', head: 'Not known' },
] as const;

export function CareView({ result, ...props }: AnswerProps<'care'>) {
  if ('unreadable' in result) return <UnreadableView {...result} />;
  return <Known {...props} study={result} />;
}

type KnownProps = Omit<AnswerProps<'care'>, 'result'> & { readonly study: CareStudy };

function Known({ study, ...props }: KnownProps) {
  const { tasks, today, began, remarks } = study;
  const count = (verdict: CareRow['verdict']): number => tasks.filter((row) => row.verdict === verdict).length;
  const worn = tasks.filter(({ effects = [] }) => effects.length > 0);
  return (
    <>
      <p>
        {began === undefined
          ? `No diary was picked, so that nothing is known of what was done to ${tasks.length} things that want care.`
          : `Of ${tasks.length} things that want care ${count('fails')} are overdue on ${today} and ${count('tight')} due about now, by the diary since ${began}.`}
      </p>
      <AnswerTable label="what wants care" heads={['Due', 'What', 'Why']}>
        {groups.map(({ verdict, head }) => (
          <Group key={verdict} {...props} head={head} rows={tasks.filter((row) => row.verdict === verdict)} />
        ))}
      </AnswerTable>
      {worn.length > 0 && <h3>What overdue parts do to the findings</h3>}
      {worn.map(({ id, ageing, effects = [] }) => (
        <div key={id}>
          <p>{ageing?.says}</p>
          {effects.slice(0, 3).map((effect) => (
            <EffectLine key={effect.id} effect={effect} units={props.units} days={props.look.days.length} />
          ))}
        </div>
      ))}
      {remarks.map((text) => (
        <p key={text} className="rest">
          {text}
        </p>
      ))}
    </>
  );
}

function Group({
  head,
  rows,
  ...props
}: Omit<KnownProps, 'study'> & { readonly head: string; readonly rows: readonly CareRow[] }) {
  if (rows.length === 0) return null;
  return (
    <tbody>
      <tr className="group">
        <th colSpan={3} scope="rowgroup">
          {head} ({rows.length})
        </th>
      </tr>
      {rows.map((row) => (
        <tr key={row.id}>
          <td>
            <VerdictMark verdict={row.verdict} />
            {dueText(row)}
          </td>
          <th scope="row">
            <PartName {...props} says={row.says} name={nameIn(row.part, props.partOf)} />
          </th>
          <td>
            {dueByText(row)}
            <span className="source">{row.source}</span>
          </td>
        </tr>
      ))}
    </tbody>
  );
}

/** `filter exhaust` is about exhaust: the word that is on the sheet. */
function nameIn(part: string, partOf: KnownProps['partOf']): string | undefined {
  return [part, ...part.split(' ').reverse()].find((name) => partOf(name) !== undefined);
}
