// What is wrong with the text, when it cannot be read; the last drawing stays below.

import type { Complaint } from '@stillair/engine';

export function Complaints({
  complaints,
  stale,
}: {
  readonly complaints: readonly Complaint[];
  readonly stale: boolean;
}) {
  return (
    <div className="complaints" role="alert">
      <h2>
        {complaints.length === 1 ? 'One fault' : `${complaints.length} faults`} in the text
        {stale ? '; the drawing is of the last text that could be read' : ''}
      </h2>
      <ol>
        {complaints.map(({ code, what, where, allowed, mend }) => (
          <li key={`${where.line}:${where.column}:${code}`}>
            <p>
              <strong>
                Line {where.line}, column {where.column}:
              </strong>{' '}
              {what}
            </p>
            <code>{where.lineText.trim()}</code>
            <p>Allowed: {allowed}</p>
            <p>To mend: {mend}</p>
          </li>
        ))}
      </ol>
    </div>
  );
}
