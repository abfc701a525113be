// The part that is picked: its keys as they stand in the file, each with its meaning and, where nothing is written, what is taken.

import type { Edit, Finding, UnitSystem } from '@stillair/engine';
import { useEffect, useId, useState } from 'preact/compat';
import type { Field } from '../engine/protocol.ts';
import { placeText, valueText } from '../remarks/finding-text.ts';
import { VerdictMark, verdictWord } from '../remarks/verdict-mark.tsx';

export interface PartPaneProps {
  readonly part: string;
  readonly fields: readonly Field[];
  readonly findings: readonly Finding[];
  readonly units: UnitSystem;
  readonly days: number;
  readonly onEdit: (edits: readonly Edit[]) => void;
  readonly onFinding: (finding: Finding) => void;
  readonly onClose: () => void;
}

export function PartPane({ part, fields, findings, units, days, onEdit, onFinding, onClose }: PartPaneProps) {
  const [all, setAll] = useState(false);
  const shown = all ? fields : fields.filter(({ written, editable }) => written !== undefined || editable).slice(0, 12);
  const hidden = fields.length - shown.length;
  return (
    <section className="part-pane" aria-labelledby="part-title">
      <div className="part-head">
        <h2 id="part-title">{part.replaceAll('.', ' · ')}</h2>
        <button type="button" className="quiet" onClick={onClose}>
          close
        </button>
      </div>
      <form onSubmit={(event) => event.preventDefault()}>
        {shown.map((field) => (
          <FieldRow key={field.path} field={field} onEdit={onEdit} />
        ))}
      </form>
      {(hidden > 0 || all) && (
        <button type="button" className="quiet" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? 'fewer keys' : `${hidden} more keys`}
        </button>
      )}
      <h3>What is said of it</h3>
      {findings.length === 0 && <p>Nothing that has a limit.</p>}
      <ul className="said">
        {findings.map((finding) => (
          <li key={finding.id} className={finding.verdict}>
            <button type="button" onClick={() => onFinding(finding)}>
              <VerdictMark verdict={finding.verdict} />
              <span className="word">{verdictWord[finding.verdict]}</span> {finding.title}: {valueText(finding, units)}{' '}
              <span className="place">{placeText(finding, days)}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** A field is written into the file when it is left or Enter is pressed; emptied, its key is taken out. */
function FieldRow({ field, onEdit }: { readonly field: Field; readonly onEdit: (edits: readonly Edit[]) => void }) {
  const id = useId();
  const { path, key, about, editable, written, words, origin } = field;
  const [typed, setTyped] = useState(written ?? '');
  useEffect(() => setTyped(written ?? ''), [written]);
  const done = (): void => {
    const value = typed.trim();
    if (value === (written ?? '')) return;
    onEdit(value === '' ? [{ remove: [path] }] : [{ set: { [path]: value } }]);
  };
  return (
    <div className="field">
      <label htmlFor={id}>{key}</label>
      <input
        id={id}
        list={words === undefined ? undefined : `${id}-words`}
        value={typed}
        placeholder={origin === '' ? 'not given' : origin.split(':')[0]}
        disabled={!editable || written?.startsWith('(') === true}
        aria-describedby={`${id}-about`}
        onInput={(event) => setTyped(event.currentTarget.value)}
        onBlur={done}
        onKeyDown={(event) => {
          if (event.key === 'Enter') done();
          if (event.key === 'Escape') setTyped(written ?? '');
        }}
      />
      {words !== undefined && (
        <datalist id={`${id}-words`}>
          {words.map((word) => (
            <option key={word} value={word} />
          ))}
        </datalist>
      )}
      <p id={`${id}-about`} className="source">
        {about}
        {written === undefined && origin !== '' ? `; now ${origin}` : ''}
      </p>
    </div>
  );
}
