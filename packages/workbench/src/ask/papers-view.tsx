// The papers: each sheet to be looked at, and all of them to be taken out as one file.

import { useMemo, useState } from 'preact/compat';
import type { PaperShown } from '../engine/protocol.ts';
import { download } from '../files/browser-store.ts';
import type { AnswerProps } from './answer.ts';
import { TakePapers } from './take-papers.tsx';

export function PapersView({ result, look, text, units }: AnswerProps<'papers'>) {
  const { papers } = result;
  const [shown, setShown] = useState({ paper: 0, sheet: 0 });
  const paper = papers[shown.paper] ?? papers[0];
  if (paper === undefined) return null;
  const sheet = Math.min(shown.sheet, paper.sheets.length - 1);
  const name = `${look.cabinet.title.replaceAll(/[^\p{L}\p{N}]+/gu, '-')}-papers`;
  return (
    <>
      <TakePapers papers={papers} name={name} text={text} units={units} />
      <div className="papers">
        <ul className="paper-list">
          {papers.map(({ id, title, what, sheets, missing }, at) => (
            <li key={id}>
              <button
                type="button"
                className="part-name"
                aria-pressed={papers[at] === paper}
                onClick={() => setShown({ paper: at, sheet: 0 })}
              >
                {title}
              </button>{' '}
              {sheets.length === 1 ? '1 sheet' : `${sheets.length} sheets`}; {what}
              {missing.length > 0 && <span className="source">Not said in the file: {missing.join('; ')}</span>}
            </li>
          ))}
        </ul>
        <Sheet
          paper={paper}
          sheet={sheet}
          onSheet={(next) => setShown({ paper: papers.indexOf(paper), sheet: next })}
        />
      </div>
    </>
  );
}

function Sheet({
  paper: { id, title, sheets },
  sheet,
  onSheet,
}: {
  readonly paper: PaperShown;
  readonly sheet: number;
  readonly onSheet: (sheet: number) => void;
}) {
  const svg = sheets[sheet] ?? '';
  const address = useMemo(() => `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`, [svg]);
  return (
    <figure className="paper">
      <figcaption className="ask-controls">
        <button type="button" disabled={sheet === 0} onClick={() => onSheet(sheet - 1)}>
          sheet before
        </button>
        <span>
          {title}, sheet {sheet + 1} of {sheets.length}
        </span>
        <button type="button" disabled={sheet + 1 >= sheets.length} onClick={() => onSheet(sheet + 1)}>
          next sheet
        </button>
        <button
          type="button"
          onClick={() => download(`${id}-${sheet + 1}.svg`, new Blob([svg], { type: 'image/svg+xml' }))}
        >
          take out this sheet
        </button>
      </figcaption>
      <img src={address} alt={`${title}, sheet ${sheet + 1} of ${sheets.length}`} />
    </figure>
  );
}
