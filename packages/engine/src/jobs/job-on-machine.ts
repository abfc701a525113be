// Does a job stay where fit has cleared the way for its machine? Its extents against the bed, the bed's travel and the frame.

import type { Cabinet } from '../cabinet/cabinet.ts';
import type { JobSummary, Span } from './job.ts';

export interface JobCheck {
  readonly id: 'print-width' | 'print-depth' | 'bed-way' | 'print-height';
  readonly title: string;
  /** What is left, m; below 0 so much is wanting. None when the file does not go that way. */
  readonly value?: number;
  /** What would give a value. */
  readonly missing?: string;
  readonly verdict: 'holds' | 'fails' | 'unknown';
  /** Paths of the inputs in the cabinet. */
  readonly inputs: readonly string[];
}

/** Places come in millimetres with three decimals: less than half of the last is rounding. */
const ROUNDING = 5e-7;

export function jobOnMachine({ extents, depth }: JobSummary, cabinet: Cabinet, id: string): readonly JobCheck[] {
  const { bed, style } = cabinet.machines[id]!;
  const motion = cabinet.fit.machines[id]!;
  const { all, printed } = extents;
  // A delta counts from the middle of its bed, all others from its left front corner.
  const from = (size: number): Span => (style === 'delta' ? [-size / 2, size / 2] : [0, size]);
  const machine = `machines.${id}`;
  const within = (
    check: Pick<JobCheck, 'id' | 'title' | 'inputs'>,
    went: Span | undefined,
    [low, high]: Span,
  ): JobCheck => {
    if (went === undefined) return { ...check, missing: 'a move that way', verdict: 'unknown' };
    const value = Math.min(went[0] - low, high - went[1]);
    return { ...check, value, verdict: value >= -ROUNDING ? 'holds' : 'fails' };
  };
  const checks = [
    within(
      { id: 'print-width', title: 'bed left beside what is printed', inputs: [`${machine}.bed.width`] },
      printed.x,
      from(bed.width),
    ),
    within(
      { id: 'print-depth', title: 'bed left before and behind what is printed', inputs: [`${machine}.bed.depth`] },
      printed.y,
      from(bed.depth),
    ),
    within(
      {
        id: 'print-height',
        title: 'height left to the top of the frame',
        inputs: [`${machine}.bed.height`, `fit.${machine}.frame`],
      },
      all.z,
      [-bed.height, motion.frame.height - bed.height],
    ),
  ];
  if (style !== 'moving-bed') return checks;
  const way = {
    id: 'bed-way',
    title: 'travel left of the bed, whose whole way fit has cleared',
    inputs: [`fit.${machine}.bedTravel`],
  } as const;
  return [...checks, within(way, depth.way > 0 ? all.y : undefined, [0, motion.bedTravel])];
}
