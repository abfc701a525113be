// Which of many outcomes are best when several costs count at once, and a rule must be kept first: Pareto fronts.
// Constraint-domination and crowding after K. Deb, A. Pratap, S. Agarwal, T. Meyarivan, IEEE Trans. Evol. Comp. 6 (2002) 182-197.

export interface Score {
  /** By how much rules are broken; 0 when all are kept. */
  readonly violation: number;
  /** The lower the better. */
  readonly costs: readonly number[];
}

/**
 * Whether `a` is better than `b`: it breaks less, or breaks as much and is nowhere dearer and somewhere cheaper.
 *
 * @example Quieter and as cheap
 * ```ts
 * dominates({ violation: 0, costs: [38, 20] }, { violation: 0, costs: [41, 20] }); // => true
 * dominates({ violation: 1, costs: [30, 10] }, { violation: 0, costs: [41, 20] }); // => false
 * ```
 */
export function dominates(a: Score, b: Score): boolean {
  if (a.violation !== b.violation) return a.violation < b.violation;
  let better = false;
  for (const [at, cost] of a.costs.entries()) {
    const other = b.costs[at]!;
    if (cost > other) return false;
    if (cost < other) better = true;
  }
  return better;
}

/** Numbers of scores from best to worst by violation, then cost after cost; equals keep their order. */
function inOrder(scores: readonly Score[]): number[] {
  return scores
    .map((_, at) => at)
    .sort((a, b) => {
      const [one, other] = [scores[a]!, scores[b]!];
      if (one.violation !== other.violation) return one.violation - other.violation;
      for (const [at, cost] of one.costs.entries()) {
        const difference = cost - other.costs[at]!;
        if (difference !== 0 && !Number.isNaN(difference)) return difference;
      }
      return a - b;
    });
}

/** Numbers of the scores that no other dominates; of equal ones the first. */
export function frontOf(scores: readonly Score[]): number[] {
  return peel(scores, inOrder(scores)).front;
}

/** Fronts one behind the other until they hold `wanted` scores. */
export function frontsOf(scores: readonly Score[], wanted: number): number[][] {
  const fronts: number[][] = [];
  let left = inOrder(scores);
  for (let taken = 0; taken < wanted && left.length > 0; ) {
    const { front, rest } = peel(scores, left);
    fronts.push(front);
    taken += front.length;
    left = rest;
  }
  return fronts;
}

/** What comes first in order can only be dominated by what came before it. */
function peel(scores: readonly Score[], ordered: readonly number[]): { front: number[]; rest: number[] } {
  const front: number[] = [];
  const rest: number[] = [];
  for (const at of ordered) {
    const score = scores[at]!;
    const beaten = front.some((other) => dominates(scores[other]!, score) || isSame(scores[other]!, score));
    (beaten ? rest : front).push(at);
  }
  return { front, rest };
}

function isSame(a: Score, b: Score): boolean {
  return a.violation === b.violation && a.costs.every((cost, at) => cost === b.costs[at]);
}

/** How far apart from its neighbours each score of one front lies; the ends are infinitely far. */
export function crowdingOf(scores: readonly Score[]): number[] {
  const far = scores.map(() => 0);
  const costs = scores[0]?.costs.length ?? 0;
  for (let cost = 0; cost < costs; cost += 1) {
    const order = scores.map((_, at) => at).sort((a, b) => scores[a]!.costs[cost]! - scores[b]!.costs[cost]!);
    const value = (place: number): number => scores[order[place]!]!.costs[cost]!;
    const span = value(order.length - 1) - value(0);
    for (const [place, at] of order.entries())
      far[at]! +=
        place === 0 || place === order.length - 1
          ? Number.POSITIVE_INFINITY
          : span > 0
            ? (value(place + 1) - value(place - 1)) / span
            : 0;
  }
  return far;
}

/**
 * Area that a front of two costs rules, up to a reference that is worse than all of it.
 *
 * @example One corner
 * ```ts
 * ruledArea([[1, 2]], [3, 5]); // => 6
 * ```
 */
export function ruledArea(
  costs: readonly (readonly [number, number])[],
  [right, top]: readonly [number, number],
): number {
  let [area, lowest] = [0, top];
  for (const [x, y] of [...costs].sort((a, b) => a[0] - b[0] || a[1] - b[1])) {
    if (x >= right || y >= lowest) continue;
    area += (right - x) * (lowest - y);
    lowest = y;
  }
  return area;
}
