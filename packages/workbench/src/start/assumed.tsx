// Which numbers are still assumed, and what each costs in certainty: its share in the spread of what fails or is tight.

import type { BriefFinding } from '@stillair/engine';
import type { Uncertain } from '../engine/protocol.ts';

export function Assumed({
  uncertain,
  findings,
}: {
  readonly uncertain: readonly Uncertain[];
  readonly findings: readonly BriefFinding[];
}) {
  const open = uncertain.filter(({ why }) => why.startsWith('assumed'));
  const costs = costOf(findings);
  const sorted = [...open].sort((a, b) => (costs.get(b.path) ?? 0) - (costs.get(a.path) ?? 0));
  return (
    <details className="assumed">
      <summary>{open.length} numbers are assumed</summary>
      <ul>
        {sorted.slice(0, 30).map(({ path, label, why }) => (
          <li key={path}>
            {label}
            {costs.has(path)
              ? `: ${Math.round((costs.get(path) ?? 0) * 100)} % of the spread of what fails or is tight`
              : ''}
            <span className="source">{why}</span>
          </li>
        ))}
      </ul>
      {sorted.length > 30 && <p className="source">and {sorted.length - 30} more, of less weight</p>}
    </details>
  );
}

function costOf(findings: readonly BriefFinding[]): ReadonlyMap<string, number> {
  const asked = findings.filter(
    ({ verdict, drivers }) => (verdict === 'fails' || verdict === 'tight') && drivers.length > 0,
  );
  const costs = new Map<string, number>();
  for (const { drivers } of asked)
    for (const { path, share } of drivers) costs.set(path, (costs.get(path) ?? 0) + share / asked.length);
  return costs;
}
