// Why a finding says what it says: from the inputs to the number, and what would mend it.

import { type BriefFinding, formatQuantity, type KindName, type UnitSystem } from '@stillair/engine';
import { useEffect, useState } from 'preact/compat';
import type { Reason as Reasons } from '../engine/protocol.ts';
import type { AskReason } from '../page/use-asked.ts';
import { bandText, limitText, valueText } from './finding-text.ts';
import { verdictWord } from './verdict-mark.tsx';

export interface ReasonProps {
  readonly finding: BriefFinding;
  readonly units: UnitSystem;
  readonly why: AskReason;
  readonly onTry: (finding: BriefFinding, tried: number, keep: boolean) => void;
}

export function Reason({ finding, units, why, onTry }: ReasonProps) {
  const steps = useSteps(finding.id, why);
  const { limit, drivers, chance, tried } = finding;
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
            {inputs.map(({ path, from }) => (
              <span key={path} className="source">
                from {path}: {from}
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

/** The steps to a finding. Those of an older text stay to be read until new ones come. */
function useSteps(finding: string, why: AskReason): Reasons['steps'] {
  const [known, setKnown] = useState<{ readonly finding: string; readonly steps: Reasons['steps'] } | undefined>(
    undefined,
  );
  useEffect(() => {
    let late = false;
    void why(finding).then((reason) => {
      if (!late && reason !== undefined) setKnown({ finding, steps: reason.steps });
    });
    return () => {
      late = true;
    };
  }, [finding, why]);
  return known?.finding === finding ? known.steps : [];
}
