// The table of an answer: named for those who hear the page, and moved sideways where there is little room.

import type { ComponentChildren } from 'preact';

export interface AnswerTableProps {
  /** What the table tells, in words. */
  readonly label: string;
  readonly caption?: string;
  readonly heads: readonly string[];
  /** Its rows: one body, or one for each group. */
  readonly children: ComponentChildren;
}

export function AnswerTable({ label, caption, heads, children }: AnswerTableProps) {
  return (
    <div className="scrolls" tabIndex={0} role="region" aria-label={label}>
      <table className="answer">
        {caption !== undefined && <caption>{caption}</caption>}
        <thead>
          <tr>
            {heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        {children}
      </table>
    </div>
  );
}
