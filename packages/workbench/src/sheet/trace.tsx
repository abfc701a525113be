// An option laid over the sheet as tracing paper: only what it moves, adds or takes away.

import type { Cabinet } from '@stillair/engine';
import type { Paper } from './projection.ts';
import { boxOf } from './solids.ts';

export function Trace({
  base,
  option,
  paper,
}: {
  readonly base: Cabinet;
  readonly option: Cabinet;
  readonly paper: Paper;
}) {
  const changes = changedParts(base, option);
  return (
    <g className="trace" aria-hidden="true">
      {changes.map(({ part, kind }) => {
        const box = boxOf(kind === 'gone' ? base : option, part);
        if (box === undefined) return null;
        const { left, top, width, height } = paper.area(box);
        return (
          <g key={part} className={kind}>
            <rect x={left - 3} y={top - 3} width={width + 6} height={height + 6} />
            {kind === 'gone' && (
              <path
                d={`M${left - 3} ${top - 3}l${width + 6} ${height + 6}M${left + width + 3} ${top - 3}l${-width - 6} ${height + 6}`}
              />
            )}
            <text x={left - 2} y={top - 7}>
              {part.split('.').slice(1).join('.')}: {kind}
            </text>
          </g>
        );
      })}
    </g>
  );
}

interface Change {
  readonly part: string;
  readonly kind: 'changed' | 'new' | 'gone';
}

const groups: readonly (readonly [string, (cabinet: Cabinet) => Readonly<Record<string, unknown>>])[] = [
  ['bays', ({ bays }) => bays],
  ['machines', ({ machines }) => machines],
  ['doors', ({ doors }) => doors],
  ['air', ({ paths }) => paths],
  ['sensors', ({ sensors }) => sensors],
  ['people', ({ people }) => people],
  ['partitions', ({ partitions }) => Object.fromEntries(partitions.map((partition) => [partition.id, partition]))],
];

/** Parts that an option changes, in the order of the file. */
export function changedParts(base: Cabinet, option: Cabinet): readonly Change[] {
  return groups.flatMap(([group, of]) => {
    const [before, after] = [of(base), of(option)];
    const ids = [...new Set([...Object.keys(before), ...Object.keys(after)])];
    return ids.flatMap((id): Change[] => {
      const part = `${group}.${id}`;
      if (!(id in after)) return [{ part, kind: 'gone' }];
      if (!(id in before)) return [{ part, kind: 'new' }];
      return JSON.stringify(before[id]) === JSON.stringify(after[id]) ? [] : [{ part, kind: 'changed' }];
    });
  });
}
