// Air that passes both ways through a hole between two bays, beside the net flow: without it a bay over another, or beside it,
// would feel nothing of its neighbour's heat through a hole with no draught in it.

import type { Bay, CabinetPath, Section } from '../cabinet/cabinet.ts';
import { DISCHARGE } from './assemble-bays.ts';
import type { Exchange } from './network.ts';

/** Cooper 1989 as in NIST SP 1026, one level hole; others give 0.055/0.0744 of the same, or up to 70 % more for thick shelves. */
const COOPER = 0.1;

/**
 * @param name - Of the path, whose net flow may flush the hole.
 * @param ends - The bays that it joins, with the zones at its height.
 * @param share - Of the hole's height that lies between these zones.
 * @returns Nothing for a path with more in it than a hole: whatever stands in the hole keeps the air to one way.
 */
export function holeExchange(
  name: string,
  { parts }: CabinetPath,
  ends: readonly [{ bay: Bay; zone: string }, { bay: Bay; zone: string }],
  share = 1,
): Exchange | undefined {
  const [only, ...rest] = parts;
  if (only?.part !== 'hole' || rest.length > 0) return undefined;
  const [low, high] = ends[0].bay.z[0] <= ends[1].bay.z[0] ? ends : [ends[1], ends[0]];
  const { width, height } = sides(only.section);
  const base = { name: `both ways through ${name}`, a: low.zone, b: high.zone, active: 'always' as const };
  const stacked = low.bay.z[1] <= high.bay.z[0] + 1e-6;
  if (!stacked) {
    const law = { dischargeCoefficient: DISCHARGE, width: width * only.count, height: share * height };
    return { ...base, law: { kind: 'vertical-opening', ...law } };
  }
  // n holes exchange as n times one: 0.10 n A^1.25 = 0.10 n^(-1/4) (nA)^1.25, so that the path's whole flow meets the whole area.
  const area = width * height * only.count;
  const coefficient = COOPER * only.count ** -0.25;
  const round = only.section.shape === 'round';
  return { ...base, law: { kind: 'horizontal-opening', area, round, coefficient, path: name } };
}

/** A round hole as high as its diameter and as wide as its area asks. */
function sides(section: Section): { width: number; height: number } {
  if (section.shape === 'rectangular') return section;
  return { width: (Math.PI / 4) * section.diameter, height: section.diameter };
}
