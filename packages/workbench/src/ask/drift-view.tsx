// Whether the cabinet still does what its file says, since when it does not, and what would explain it.

import {
  driftAdvice,
  driftAlarmText,
  driftOpeningText,
  driftVerdictText,
  formatNumber,
  placeText,
  sizeText,
  unknownText,
} from '@stillair/engine';
import type { Drifted } from '../engine/protocol.ts';
import type { AnswerProps } from './answer.ts';
import { AnswerTable } from './answer-table.tsx';
import { LogFaultView, LogPicture, LogRemarks } from './log-words.tsx';
import { PartName } from './part-name.tsx';

export function DriftView({ result, ...props }: AnswerProps<'drift'>) {
  return 'fault' in result ? <LogFaultView {...result} /> : <Known {...props} drifted={result} />;
}

type KnownProps = Omit<AnswerProps<'drift'>, 'result'> & { readonly drifted: Drifted };

function Known(props: KnownProps) {
  const { study, picture } = props.drifted;
  if (study.columns.length === 0) return <LogRemarks remarks={study.log.remarks} />;
  return (
    <>
      <p>{driftOpeningText(study)}</p>
      <p>
        <strong>{driftVerdictText(study, props.units)}</strong>
      </p>
      <LogRemarks remarks={study.log.remarks} />
      {study.explanations.length > 0 && <Explanations {...props} />}
      {study.drifted && <p>{driftAdvice(study)}</p>}
      <LogPicture
        picture={picture}
        alt={`${study.log.file} less the day ${study.day}, hour by hour; ${study.drifted ? 'the onset is an upright line' : study.tooShort ? 'it is too short to tell' : 'no drift was found'}`}
      />
      <Columns {...props} />
    </>
  );
}

function Explanations({ drifted: { study }, units }: KnownProps) {
  return (
    <AnswerTable
      label="what would explain it"
      caption="What would explain it, if it alone changed"
      heads={['Changed', 'From', 'To', 'Explains of what is off']}
    >
      <tbody>
        {study.explanations.map(({ id, label, unit, was, value, explains, atBound }) => (
          <tr key={id}>
            <th scope="row">{label}</th>
            <td>{unknownText(unit, was, units)}</td>
            <td>{unknownText(unit, value, units)}</td>
            <td>
              {Math.round(100 * explains)} %{atBound ? ', at the end of what it may be' : ''}
            </td>
          </tr>
        ))}
      </tbody>
    </AnswerTable>
  );
}

function Columns({ drifted: { study }, ...props }: KnownProps) {
  return (
    <AnswerTable
      label="columns of the log"
      caption="Columns of the log"
      heads={['Column', 'Place', 'Hours', 'Scatter', 'Sum, of its limit', 'Alarm']}
    >
      <tbody>
        {study.columns.map((column) => (
          <tr key={column.name}>
            <th scope="row">{column.name}</th>
            <td>
              <PartName {...props} says={placeText(column.place)} name={column.place.id} day={study.day} />
            </td>
            <td>{column.hours}</td>
            <td>{sizeText(column, column.noise.spread, props.units)}</td>
            <td>
              {formatNumber(column.cusum.most, 1)} of {formatNumber(column.cusum.limit, 1)}
            </td>
            <td>{driftAlarmText(column)}</td>
          </tr>
        ))}
      </tbody>
    </AnswerTable>
  );
}
