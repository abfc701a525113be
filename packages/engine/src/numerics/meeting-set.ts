// A smallest set that has something of each of several sets (a minimum hitting set), exactly: sizes one after the other, and for each a
// search that branches on the members of the smallest set not met yet, and gives up where sets without a common member are too many.

/** Places of the search after which it is given up. */
const MOST_PLACES = 200_000;

/**
 * @param count - Members are 0 … count − 1.
 * @returns The first in order of those with the fewest members; undefined when none has `most` or fewer; `too-many` when it was given up.
 *
 * @example Two members meet three sets
 * ```ts
 * String(meetingSet([[0, 1], [1, 2], [3]], 4, 4)); // => 1,3
 * ```
 */
export function meetingSet(
  sets: readonly (readonly number[])[],
  count: number,
  most: number,
): readonly number[] | 'too-many' | undefined {
  let places = 0;
  const chosen = new Uint8Array(count);
  const search = (left: number): boolean => {
    places += 1;
    if (places > MOST_PLACES) return false;
    const open = sets.filter((set) => !set.some((member) => chosen[member] === 1));
    if (open.length === 0) return true;
    if (left < apart(open)) return false;
    const next = open.reduce((least, set) => (set.length < least.length ? set : least));
    for (const member of next) {
      chosen[member] = 1;
      if (search(left - 1)) return true;
      chosen[member] = 0;
    }
    return false;
  };
  for (let size = 0; size <= most; size += 1) {
    if (search(size)) return [...chosen.keys()].filter((member) => chosen[member] === 1);
    if (places > MOST_PLACES) return 'too-many';
  }
  return undefined;
}

/** How many sets can be picked, smallest first, no two with a common member: each wants one of its own. */
function apart(sets: readonly (readonly number[])[]): number {
  const taken = new Set<number>();
  let found = 0;
  for (const set of [...sets].sort((a, b) => a.length - b.length)) {
    if (set.some((member) => taken.has(member))) continue;
    found += 1;
    for (const member of set) taken.add(member);
  }
  return found;
}
