// The best points of a space of choices in few runs, where a run is dear: all of them when the space is small; else from a spread
// of first points, rounds of a few. A round draws candidates from the best so far (one choice changed, two of them crossed, some at
// random), asks a Gaussian process what is likely to come of each, and runs those that promise most: some for their expected
// value, some for what is not known of them; and some to meet what no slope leads to, three parts that only work together: one
// holds threes that were never run together, two graft onto the best a three that did better wherever it was than its values alone explain. Nothing is run twice. Several costs are weighed anew for each point of a round, so that
// the whole front is sought at once (J. Knowles, IEEE Trans. Evol. Comp. 10 (2006) 50-66). Values count by their rank: a broken rule
// ranks behind all that keep it, and one absurd value moves nothing.

import {
  type ChoiceSpace,
  neighboursOf,
  type Point,
  pointAt,
  pointKey,
  pointsIn,
  randomPoint,
  spreadPoints,
} from './choice-space.ts';
import { type Coverage, coverageOf } from './coverage.ts';
import { crowdingOf, frontOf, frontsOf, type Score } from './fronts.ts';
import {
  expected,
  type Fitted,
  firstLikeness,
  fitPoints,
  type Likeness,
  likelierLikeness,
  likenessWith,
  openShare,
  weightsOf,
} from './kriging.ts';
import { normalQuantile } from './normal.ts';
import { randomStream } from './random.ts';

export interface Run<Result> {
  readonly point: Point;
  readonly result: Result;
}

export interface SeekOptions<Result> {
  readonly space: ChoiceSpace;
  /** Results in the order of the points; undefined for what was not run because it was stopped. */
  readonly evaluate: (points: readonly Point[]) => Promise<readonly (Result | undefined)[]>;
  /** Asked about all results so far: what counts as broken may depend on what was seen. */
  readonly score: (results: readonly Result[]) => readonly Score[];
  /** Points run at most. */
  readonly most: number;
  readonly seed: number;
  /** Run before all others. */
  readonly first?: readonly Point[];
  /** Runs without a better one after which it is enough. */
  readonly patience?: number;
  readonly progress?: (runs: readonly Run<Result>[], scores: readonly Score[]) => void;
  readonly stop?: () => boolean;
  /** Asked after each round. */
  readonly enough?: (runs: readonly Run<Result>[]) => boolean;
}

export interface Sought<Result> {
  /** In the order in which they were run. */
  readonly runs: readonly Run<Result>[];
  readonly scores: readonly Score[];
  /** Numbers of the runs that no other dominates. */
  readonly front: readonly number[];
  /** Every point of the space was run. */
  readonly complete: boolean;
  /** Every point was run that differs from the best one in a single choice. */
  readonly closed: boolean;
}

/** Points of a round: the same whatever the number of workers, so that the answer is. */
const ROUND = 8;
/** Runs that a Gaussian process learns from at most: its work grows with their cube. */
const LEARNT = 256;
/** How much a point is liked for what is not known of it, in standard deviations, one a place in the round. */
const CURIOSITY: readonly number[] = [0, 0.5, 1, 1.5, 2, 3, 0, 1];
/** Places of a round, counted from its end, for combinations never run, and for those that stand out. */
const MEETING = 1;
const GRAFTING = 2;
/** Candidates whose uncertainty is reckoned, a place in the round. */
const LOOKED_AT = 14;
/** Likeness is learnt anew whenever the runs have grown by this factor. */
const LEARN_AGAIN = 1.6;

export async function seek<Result>(options: SeekOptions<Result>): Promise<Sought<Result>> {
  const { space, evaluate, score, most, seed, first = [], stop = () => false } = options;
  const random = randomStream(seed);
  const runs: Run<Result>[] = [];
  const known = new Set<string>();
  const coverage = coverageOf(space, most);
  let scores: readonly Score[] = [];
  let stopped = false;
  const runAll = async (points: readonly Point[]): Promise<void> => {
    const results = await evaluate(points);
    for (const [at, result] of results.entries()) {
      if (result === undefined) stopped = true;
      else {
        runs.push({ point: points[at]!, result });
        coverage?.add(points[at]!);
      }
    }
    for (const point of points) known.add(pointKey(point));
    scores = score(runs.map(({ result }) => result));
    options.progress?.(runs, scores);
    stopped ||= stop() || options.enough?.(runs) === true;
  };
  const fresh = (points: readonly Point[]): Point[] => {
    const seen = new Set<string>();
    return points.filter((point) => {
      const key = pointKey(point);
      return !known.has(key) && !seen.has(key) && seen.add(key) !== undefined;
    });
  };

  const size = pointsIn(space);
  if (size <= most) {
    const rest = Array.from({ length: size }, (_, number) => pointAt(space, number));
    const all = fresh([...first, ...rest]);
    for (let at = 0; at < all.length && !stopped; at += CHUNK) await runAll(all.slice(at, at + CHUNK));
    return { runs, scores, front: frontOf(scores), complete: !stopped, closed: !stopped };
  }

  const values = space.reduce((sum, { count }) => sum + count - 1, 0);
  const opening = Math.min(Math.max(Math.round(1.5 * values), 12), 60, Math.ceil(most / 4));
  await runAll(fresh([...first, ...spreadPoints(space, opening, random)]).slice(0, most));
  // The first fifth goes to what has not been met: what is never seen cannot be learnt.
  while (!stopped && coverage !== undefined && runs.length < OPENING * most) {
    const drawn = fresh(Array.from({ length: 40 }, () => randomPoint(space, random)));
    const counts = drawn.map((point) => coverage.newIn(point));
    const order = counts.map((_, at) => at).sort((a, b) => counts[b]! - counts[a]! || a - b);
    await runAll(order.slice(0, ROUND).map((at) => drawn[at]!));
  }

  let model: Model = { likeness: firstLikeness(space), learnt: 0 };
  let closed = false;
  let best = bestOf(scores);
  let lastGain = runs.length;
  const patience = options.patience ?? most;
  while (!stopped && runs.length < most) {
    const left = most - runs.length;
    const near = fresh(nearOf(space, runs[best]!.point));
    closed = near.length === 0;
    const patient = runs.length - lastGain < patience;
    if (!patient && closed) break;
    if (!patient || (left <= near.length && !closed)) await runAll(near.slice(0, Math.min(left, ROUND)));
    else {
      const round = roundOf({ space, runs, scores, coverage, fresh, random }, model);
      model = round.model;
      if (round.points.length === 0) break;
      await runAll(round.points.slice(0, left));
    }
    const now = bestOf(scores);
    if (now !== best || gained(scores, lastGain)) lastGain = runs.length;
    best = now;
  }
  return {
    runs,
    scores,
    front: frontOf(scores),
    complete: false,
    closed: runs.length > 0 && fresh(nearOf(space, runs[best]!.point)).length === 0,
  };
}

const CHUNK = 64;
const OPENING = 0.2;

function bestOf(scores: readonly Score[]): number {
  return frontsOf(scores, 1)[0]?.[0] ?? 0;
}

/** Whether a run after that many is on the front. */
function gained(scores: readonly Score[], before: number): boolean {
  return frontOf(scores).some((at) => at >= before);
}

/** Ordered choices of many values: only the nearest count as neighbours. */
const FEW = 8;

function nearOf(space: ChoiceSpace, point: Point): Point[] {
  return neighboursOf(space, point).filter((other) => {
    const at = other.findIndex((value, place) => value !== point[place]);
    const { count, ordered } = space[at]!;
    return !ordered || count <= FEW || Math.abs(other[at]! - point[at]!) <= 2;
  });
}

interface Model {
  readonly likeness: Likeness;
  /** Runs when the likeness was learnt. */
  readonly learnt: number;
}

interface State {
  readonly space: ChoiceSpace;
  readonly runs: readonly Run<unknown>[];
  readonly scores: readonly Score[];
  readonly coverage: Coverage | undefined;
  readonly fresh: (points: readonly Point[]) => Point[];
  readonly random: () => number;
}

/** The next points to run. */
function roundOf(
  { space, runs, scores, coverage, fresh, random }: State,
  model: Model,
): { readonly points: readonly Point[]; readonly model: Model } {
  const elite = eliteOf(scores);
  const host = runs[elite[0]!]!.point;
  const every = scores.map((_, at) => at);
  const standing = coverage?.standouts(
    runs.map(({ point }) => point),
    ranksBy(scores, every, weights(scores[0]!.costs.length, random)),
  );
  const grafts = fresh((standing ?? []).map((graft) => graft(host))).slice(0, GRAFTING);
  const candidates = fresh([
    ...grafts,
    ...candidatesOf(
      space,
      elite.map((at) => runs[at]!.point),
      random,
    ),
  ]);
  if (candidates.length <= ROUND) return { points: candidates, model };

  const asked = learntFrom(scores, elite, random);
  const points = asked.map((at) => runs[at]!.point);
  const costs = scores[0]!.costs.length;
  const places = CURIOSITY.map(() => ranksBy(scores, asked, weights(costs, random)));
  const grown = runs.length >= model.learnt * LEARN_AGAIN;
  const likeness = grown ? learn(space, points, places[0]!, model.likeness) : model.likeness;
  const fitted = fitPoints(space, points, likeness) ?? fitPoints(space, points, { ...likeness, nugget: 0.1 });
  if (fitted === undefined) return { points: candidates.slice(0, ROUND), model };
  return {
    points: promising(fitted, places, candidates, coverage, grafts.length, random),
    model: { likeness, learnt: grown ? runs.length : model.learnt },
  };
}

/** Learning looks at this many points at most. */
const LEARNING = 120;

function learn(space: ChoiceSpace, points: readonly Point[], values: readonly number[], from: Likeness): Likeness {
  const every = Math.max(points.length / LEARNING, 1);
  const some = Array.from({ length: Math.min(points.length, LEARNING) }, (_, at) => Math.floor(at * every));
  return likelierLikeness(
    space,
    some.map((at) => points[at]!),
    some.map((at) => values[at]!),
    from,
    from.unlike.length > 15 ? 1 : 2,
  );
}

const ELITE = 30;
/** Candidates that are one of the two best with up to three choices at random. */
const GRAFTS = 200;

/** The best runs, front by front, within a front those that stand alone first. */
function eliteOf(scores: readonly Score[]): number[] {
  return frontsOf(scores, ELITE)
    .flatMap((front) => {
      const far = crowdingOf(front.map((at) => scores[at]!));
      return front.map((at, place) => ({ at, far: far[place]! })).sort((a, b) => b.far - a.far);
    })
    .map(({ at }) => at)
    .slice(0, ELITE);
}

function candidatesOf(space: ChoiceSpace, elite: readonly Point[], random: () => number): Point[] {
  const any = (): Point => elite[Math.floor(random() * elite.length)]!;
  const changed = (point: Point, changes: number): Point => {
    let now = point;
    for (let change = 0; change < changes; change += 1) {
      const at = Math.floor(random() * space.length);
      now = now.with(at, movedValue(space[at]!, now[at]!, random));
    }
    return now;
  };
  const crossed = (): Point => {
    const [one, other] = [any(), any()];
    return one.map((value, at) => (random() < 0.5 ? value : other[at]!));
  };
  const grafted = (): Point => {
    const host = elite[Math.floor(random() * Math.min(elite.length, 2))]!;
    const places = new Set([0, 1, 2].map(() => Math.floor(random() * space.length)));
    return host.map((value, at) => (places.has(at) ? Math.floor(random() * space[at]!.count) : value));
  };
  return [
    ...Array.from({ length: GRAFTS }, grafted),
    ...elite.slice(0, 4).flatMap((point) => nearOf(space, point)),
    ...Array.from({ length: 160 }, () => changed(any(), 1 + Math.floor(random() * 3))),
    ...Array.from({ length: 160 }, () => changed(crossed(), random() < 0.5 ? 0 : 1)),
    ...Array.from({ length: 120 }, () => randomPoint(space, random)),
  ];
}

function movedValue({ count, ordered }: ChoiceSpace[number], value: number, random: () => number): number {
  if (!ordered || random() < 0.3) return Math.floor(random() * count);
  const step = (random() < 0.5 ? -1 : 1) * (random() < 0.7 ? 1 : 2);
  return Math.min(Math.max(value + step, 0), count - 1);
}

/** Runs to learn from: the best, and of the others some at random. */
function learntFrom(scores: readonly Score[], elite: readonly number[], random: () => number): number[] {
  if (scores.length <= LEARNT) return scores.map((_, at) => at);
  const half = LEARNT / 2;
  const best = frontsOf(scores, half).flat().slice(0, half);
  const chosen = new Set([...elite, ...best]);
  while (chosen.size < LEARNT) chosen.add(Math.floor(random() * scores.length));
  return [...chosen].sort((a, b) => a - b);
}

/** A weighing of several costs: evenly spread over all that sum to 1, or now and then one cost alone, for the ends of the front. */
function weights(costs: number, random: () => number): number[] {
  if (random() < ALONE) {
    const only = Math.floor(random() * costs);
    return Array.from({ length: costs }, (_, at) => (at === only ? 1 : 0));
  }
  const drawn = Array.from({ length: costs }, () => -Math.log(1 - random()));
  const sum = drawn.reduce((total, value) => total + value, 0);
  return drawn.map((value) => value / sum);
}

const ALONE = 0.25;

/** Normal scores of runs by violation, then by their weighed costs: the lower the better, with mean 0. */
function ranksBy(scores: readonly Score[], asked: readonly number[], weight: readonly number[]): number[] {
  const finite = (values: readonly number[]): number[] => values.filter(Number.isFinite);
  const spans = weight.map((_, cost) => {
    const values = finite(asked.filter((at) => scores[at]!.violation === 0).map((at) => scores[at]!.costs[cost]!));
    const all = values.length > 1 ? values : finite(asked.map((at) => scores[at]!.costs[cost]!));
    const low = all.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY);
    const high = all.reduce((greatest, value) => Math.max(greatest, value), Number.NEGATIVE_INFINITY);
    return { low, span: high > low ? high - low : 1 };
  });
  const weighed = asked.map((at) => {
    const shares = scores[at]!.costs.map(
      (cost, place) => (weight[place]! * (cost - spans[place]!.low)) / spans[place]!.span,
    );
    return Math.max(...shares) + 0.05 * shares.reduce((sum, share) => sum + share, 0);
  });
  const order = asked
    .map((_, place) => place)
    .sort((a, b) => {
      const difference = scores[asked[a]!]!.violation - scores[asked[b]!]!.violation;
      if (difference !== 0 && !Number.isNaN(difference)) return difference;
      return weighed[a]! - weighed[b]! || a - b;
    });
  const ranks = asked.map(() => 0);
  for (const [rank, place] of order.entries()) ranks[place] = normalQuantile((rank + 0.5) / asked.length);
  const mean = ranks.reduce((sum, rank) => sum + rank, 0) / ranks.length;
  return ranks.map((rank) => rank - mean);
}

/** One candidate for each place in the round; what is like one already chosen is no longer unknown. */
function promising(
  fitted: Fitted,
  places: readonly (readonly number[])[],
  candidates: readonly Point[],
  coverage: Coverage | undefined,
  grafts: number,
  random: () => number,
): Point[] {
  const likeness = candidates.map((point) => likenessWith(fitted, point));
  const open = candidates.map((): number | undefined => undefined);
  const taken = Array.from({ length: grafts }, (_, at) => at);
  if (coverage !== undefined) taken.push(...neverMet(candidates, coverage).filter((at) => at >= grafts));
  for (const [place, values] of places.slice(0, places.length - taken.length).entries()) {
    const weigh = weightsOf(fitted, values);
    const variance = values.reduce((sum, value, at) => sum + value * weigh[at]!, 0) / values.length;
    const mean = likeness.map((like) => expected(weigh, like));
    const free = mean.map((_, at) => at).filter((at) => !taken.includes(at));
    const promise = (at: number): number => {
      open[at] ??= openShare(fitted, likeness[at]!);
      const alike = taken.reduce((most, other) => Math.max(most, fitted.like(candidates[at]!, candidates[other]!)), 0);
      return mean[at]! - CURIOSITY[place]! * Math.sqrt(Math.max(variance, 1e-12) * open[at] * (1 - alike * alike));
    };
    const looked = free.sort((a, b) => mean[a]! - mean[b]!).slice(0, LOOKED_AT);
    for (let extra = 0; extra < 4; extra += 1) looked.push(free[Math.floor(random() * free.length)]!);
    let chosen = looked[0]!;
    let least = Number.POSITIVE_INFINITY;
    for (const at of looked) {
      const value = promise(at);
      if (value < least) [chosen, least] = [at, value];
    }
    taken.push(chosen);
  }
  return taken.map((at) => candidates[at]!);
}

/** Candidates with most combinations that no run had, one after another; fewer when all have been met. */
function neverMet(candidates: readonly Point[], coverage: Coverage): number[] {
  const counts = candidates.map((point) => coverage.newIn(point));
  const order = counts.map((_, at) => at).sort((a, b) => counts[b]! - counts[a]! || a - b);
  return order.slice(0, MEETING).filter((at) => counts[at]! > 0);
}
