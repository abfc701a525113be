// The part that is picked: its keys as they stand in the file, each with its meaning and, where nothing is written, what is taken.

import type { BriefFinding, Cabinet, Edit, UnitSystem } from '@stillair/engine';
import { useEffect, useId, useState } from 'preact/compat';
import type { Field, Vocabulary } from '../engine/protocol.ts';
import { placeText, valueText } from '../remarks/finding-text.ts';
import { VerdictMark, verdictWord } from '../remarks/verdict-mark.tsx';
import { AddPart, type AddPartProps } from './add-part.tsx';

export interface PartPaneProps {
  /** The one that is picked. */
  readonly part: string | undefined;
  readonly cabinet: Cabinet;
  readonly vocabulary: Vocabulary | undefined;
  readonly fields: readonly Field[];
  readonly findings: readonly BriefFinding[];
  readonly units: UnitSystem;
  readonly days: number;
  readonly onEdit: (edits: readonly Edit[]) => void;
  readonly onAdd: AddPartProps['onAdd'];
  readonly onFinding: (finding: BriefFinding) => void;
  readonly onClose: () => void;
}

export function PartPane(props: PartPaneProps) {
  const { part, cabinet, vocabulary, onAdd, onClose } = props;
  return (
    <section className="part-pane" aria-labelledby="part-title">
      <div className="part-head">
        <h2 id="part-title">{part === undefined ? 'Parts' : part.replaceAll('.', ' · ')}</h2>
        <button type="button" className="quiet" onClick={onClose}>
          close
        </button>
      </div>
      <AddPart cabinet={cabinet} vocabulary={vocabulary} onAdd={onAdd} />
      {part === undefined ? <p>Pick a part on the sheet to see its keys.</p> : <PickedPart {...props} />}
    </section>
  );
}

/** Keys shown before the rest is asked for. */
const FIRST_KEYS = 12;

function PickedPart({ fields, findings, units, days, onEdit, onFinding }: PartPaneProps) {
  const [all, setAll] = useState(false);
  const shown = all
    ? fields
    : fields.filter(({ written, editable }) => written !== undefined || editable).slice(0, FIRST_KEYS);
  const hidden = fields.length - shown.length;
  return (
    <>
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
    </>
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
        placeholder={origin === '' ? 'not given' : origin.split(/[:,(]/)[0]}
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
