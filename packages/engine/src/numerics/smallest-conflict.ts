// Of demands that cannot all hold, a set that conflicts and is as small as any. Mathematics only: a judge says of a set whether it can
// hold. More demands never make a set hold that fewer do not.
//
// First an irreducible set by taking out one after the other (deletion filtering; J. W. Chinneck and E. W. Dravnieks, ORSA Journal on
// Computing 3:157, 1991). Then from below: what can hold leaves something out, and every conflict has something of what it leaves out; so
// a smallest set that meets all that was left out so far is either a conflict, and then a smallest, or can hold, and then leaves out
// something new (A. Ignatiev, A. Previti, M. Liffiton and J. Marques-Silva, CP 2015, LNCS 9255:173). Both from memory.

import { meetingSet } from './meeting-set.ts';

/** `no` is proved: it cannot hold. `unknown`: nobody could tell. */
export type CanHold = 'yes' | 'no' | 'unknown';

export interface SmallestConflict {
  /** Indices of demands, in order. */
  readonly set: readonly number[];
  /** The rest can hold without any one of it, each proved. */
  readonly irreducible: boolean;
  /** No conflict has fewer, proved. */
  readonly smallest: boolean;
  /** Every conflict has at least so many, proved. */
  readonly atLeast: number;
  /** Sets that were judged. */
  readonly asked: number;
}

export interface ConflictSearch {
  /** Sets that may be judged after an irreducible one was found. */
  readonly budget: number;
  readonly stop?: () => boolean;
}

type Judge = (kept: readonly number[]) => Promise<CanHold>;

/**
 * A smallest conflict among the demands 0 … count − 1.
 *
 * @returns Undefined when all of them can hold, when that cannot be told, or when it was stopped before an irreducible set was found.
 */
export async function smallestConflict(
  count: number,
  canHold: Judge,
  { budget, stop = () => false }: ConflictSearch,
): Promise<SmallestConflict | undefined> {
  const asking = askedOnce(canHold);
  const all = Array.from({ length: count }, (_, at) => at);
  if ((await asking.ask(all)) !== 'no') return undefined;
  let best = await reduced(all, asking, stop);
  if (best === undefined) return undefined;
  const last = asking.asked() + budget;
  /** What sets that can hold leave out; `told`: of those for which that is proved. */
  const leftOut: number[][] = [];
  let told = true;
  let atLeast = 0;
  while (!stop() && asking.asked() < last) {
    const met = meetingSet(leftOut, count, best.set.length - 1);
    if (met === 'too-many') break;
    if (told) atLeast = met?.length ?? best.set.length;
    if (met === undefined) break;
    const answer = await asking.ask(met);
    if (answer === 'no') {
      best = told ? { set: met, irreducible: true } : ((await reduced(met, asking, stop)) ?? best);
      continue;
    }
    if (answer === 'unknown') told = false;
    const grown = answer === 'yes' ? await grownFrom(met, all, asking, () => stop() || asking.asked() >= last) : met;
    leftOut.push(all.filter((each) => !grown.includes(each)));
  }
  return { ...best, smallest: atLeast === best.set.length, atLeast: Math.max(atLeast, 1), asked: asking.asked() };
}

/** A judge that is not asked the same twice. */
function askedOnce(canHold: Judge): { readonly ask: Judge; readonly asked: () => number } {
  const known = new Map<string, CanHold>();
  return {
    ask: async (kept) => {
      const key = kept.join(' ');
      const answer = known.get(key) ?? (await canHold(kept));
      known.set(key, answer);
      return answer;
    },
    asked: () => known.size,
  };
}

/** Halves are taken out first: most demands have nothing to do with it. */
async function reduced(
  from: readonly number[],
  { ask }: { readonly ask: Judge },
  stop: () => boolean,
): Promise<Pick<SmallestConflict, 'set' | 'irreducible'> | undefined> {
  let set = from;
  let irreducible = true;
  for (let size = Math.ceil(set.length / 2); size >= 1; size = size === 1 ? 0 : Math.ceil(size / 2)) {
    for (let at = 0; at < set.length; ) {
      if (stop()) return undefined;
      const without = set.filter((_, index) => index < at || index >= at + size);
      const answer = await ask(without);
      if (answer === 'unknown' && size === 1) irreducible = false;
      if (answer === 'no') set = without;
      else at += size;
    }
  }
  return { set, irreducible };
}

/** The set with as much more as can hold with it, by halves. */
async function grownFrom(
  set: readonly number[],
  all: readonly number[],
  { ask }: { readonly ask: Judge },
  stop: () => boolean,
): Promise<readonly number[]> {
  const grow = async (kept: readonly number[], more: readonly number[]): Promise<readonly number[]> => {
    if (more.length === 0 || stop()) return kept;
    const both = [...kept, ...more].sort((a, b) => a - b);
    if ((await ask(both)) === 'yes') return both;
    if (more.length === 1) return kept;
    const half = Math.ceil(more.length / 2);
    return grow(await grow(kept, more.slice(0, half)), more.slice(half));
  };
  const rest = all.filter((each) => !set.includes(each));
  // All of them together is what cannot hold.
  const half = Math.ceil(rest.length / 2);
  return grow(await grow(set, rest.slice(0, half)), rest.slice(half));
}
