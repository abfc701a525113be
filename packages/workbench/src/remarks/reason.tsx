// Why a finding says what it says: from the inputs to the number, and what would mend it.

import { type Finding, formatQuantity, type KindName, type UnitSystem } from '@stillair/engine';
import type { OriginTexts } from '../engine/protocol.ts';
import { bandText, limitText, valueText } from './finding-text.ts';
import { verdictWord } from './verdict-mark.tsx';

export interface ReasonProps {
  readonly finding: Finding;
  readonly units: UnitSystem;
  readonly origins: OriginTexts;
  readonly onTry: (finding: Finding, tried: number, keep: boolean) => void;
}

export function Reason({ finding, units, origins, onTry }: ReasonProps) {
  const { steps, limit, drivers, chance, tried } = finding;
  const band = bandText(finding, units);
  return (
    <div className="reason">
      <p>
        <strong>{valueText(finding, units)}</strong>
        {band === '' ? '' : `, 10 to 90 % ${band}`}
        {limit === undefined ? '' : `; ${limitText(finding, units)}`}
        {chance === undefined || band === '' ? '' : `; inside in ${Math.round(chance * 100)} % of samples`}
      </p>
      {limit !== undefined && (
        <p className="source">
          Limit: {limit.source} ({limit.standing}).
        </p>
      )}
      <h3>From the inputs to the number</h3>
      <ol className="steps">
        {steps.map(({ text, value, unit, formula, source, inputs }) => (
          <li key={`${text}${String(value)}`}>
            {text}
            {value === undefined ? '' : `: ${formatQuantity((unit ?? 'number') as KindName, value, units)}`}
            {formula !== undefined && <code>{formula}</code>}
            {source !== undefined && <span className="source">{source}</span>}
            {(inputs ?? []).map((path) => (
              <span key={path} className="source">
                from {path}: {originOf(origins, path)}
              </span>
            ))}
          </li>
        ))}
      </ol>
      {drivers.length > 0 && (
        <>
          <h3>What its spread comes from</h3>
          <ul>
            {drivers.map(({ path, label, share }) => (
              <li key={path}>
                {Math.round(share * 100)} % {label}
              </li>
            ))}
          </ul>
        </>
      )}
      {tried.length > 0 && (
        <>
          <h3>What was tried</h3>
          <ul className="tried">
            {tried.map((trial, at) => (
              <li key={trial.says}>
                <span>
                  {trial.says}:{' '}
                  {trial.value === undefined ? '' : `${formatQuantity(finding.unit as KindName, trial.value, units)}, `}
                  {verdictWord[trial.verdict]}
                  {trial.mends.length > 0 ? `; better too: ${trial.mends.join(', ')}` : ''}
                  {trial.worsens.length > 0 ? `; worse then: ${trial.worsens.join(', ')}` : ''}
                </span>
                <span className="does">
                  <button type="button" className="quiet" onClick={() => onTry(finding, at, false)}>
                    do it
                  </button>
                  <button type="button" className="quiet" onClick={() => onTry(finding, at, true)}>
                    keep as an option
                  </button>
                </span>
              </li>
            ))}
          </ul>
        </>
      )}
      <p className="source">{finding.id}</p>
    </div>
  );
}

/** The origin of a path, or of the nearest thing above it that has one. */
function originOf(origins: OriginTexts, path: string): string {
  for (let at = path; at !== ''; at = at.slice(0, Math.max(0, at.lastIndexOf('.')))) {
    const text = origins[at];
    if (text !== undefined) return text;
  }
  return 'the file';
}
