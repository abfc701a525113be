// A file of the person's own that has faults: where, what is allowed, how to mend it.

import type { Unreadable } from '../engine/protocol.ts';

export function UnreadableView({ unreadable, complaints }: Unreadable) {
  return (
    <div role="alert">
      <p>
        {unreadable} has {complaints.length === 1 ? 'a fault' : 'faults'}; nothing came of it.
      </p>
      <ol>
        {complaints.map(({ code, what, where, allowed, mend }) => (
          <li key={`${where.line}:${where.column}:${code}`}>
            <strong>
              Line {where.line}, column {where.column}:
            </strong>{' '}
            {what}. Allowed: {allowed}. To mend: {mend}.
          </li>
        ))}
      </ol>
    </div>
  );
}
