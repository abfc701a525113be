// What inputs do to a finding alone and together: shares of first and total order of the inputs that matter most, and of all the rest as
// one group. A finding asks for one more set of runs per input; but inputs of which no finding sees more than one are exchanged in the
// same runs, so that a few sets tell of many inputs.

import type { AssumedInput } from '../../cabinet/assumed-inputs.ts';
import type { relevanceIn } from '../../judge/relevance.ts';
import type { Outcome, Variant } from '../../judge/variants.ts';
import { type ShareOfVariance, sobolShares } from '../../numerics/sobol-indices.ts';
import { evenShares } from './even-samples.ts';
import type { FindingSpread } from './finding-spread.ts';
import { pathsOf, type SpreadRun, variantAt } from './spread-runs.ts';

export interface TotalShare extends ShareOfVariance {
  /** Absent for all the rest. */
  readonly path?: string;
  readonly label: string;
}

export interface TotalShares {
  /** Rows of samples that every share is from. */
  readonly rows: number;
  /** Inputs that were exchanged by themselves, in the sets of runs in which they were. */
  readonly sets: readonly (readonly { readonly path: string; readonly label: string }[])[];
  /** Mean over the findings whose verdict is open, by weight; largest total first. */
  readonly overall: readonly OverallShare[];
  /** Of each finding whose verdict is open: the inputs that it sees, largest total first; then the rest. */
  readonly findings: Readonly<Record<string, readonly TotalShare[]>>;
}

export interface OverallShare {
  readonly path?: string;
  readonly label: string;
  readonly first: number;
  readonly total: number;
}

type Matters = ReturnType<typeof relevanceIn>;

const REST = 'all the rest';
/** Fewer rows give no share. */
const FEWEST_ROWS = 8;

/**
 * Inputs in sets that are exchanged together: those that the findings' own shares name most come first, and no finding sees two of a set.
 *
 * @param most - Sets at most; what does not fit into them stays with the rest.
 */
export function exchangeSets(
  findings: readonly FindingSpread[],
  inputs: readonly AssumedInput[],
  matters: Matters,
  most: number,
): AssumedInput[][] {
  const worth = new Map<string, number>();
  for (const { weight, shares } of findings)
    for (const { path, share } of shares) worth.set(path, (worth.get(path) ?? 0) + weight * share);
  const strongest = inputs
    .filter(({ path }) => worth.has(path))
    .sort((a, b) => worth.get(b.path)! - worth.get(a.path)!);
  const sets: AssumedInput[][] = [];
  for (const input of strongest) {
    const meets = ({ path }: AssumedInput): boolean =>
      findings.some((finding) => matters(path, finding) && matters(input.path, finding));
    const free = sets.find((set) => !set.some(meets));
    if (free !== undefined) free.push(input);
    else if (sets.length < most) sets.push([input]);
  }
  return sets;
}

/** Runs that the shares need beside those of the first design: row by row the second one, then each exchange, then the rest. */
export function exchanges(
  run: SpreadRun,
  first: ReadonlyMap<string, readonly number[]>,
  sets: readonly (readonly AssumedInput[])[],
  count: number,
  seed: number,
): Variant[] {
  const second = evenShares(pathsOf([run]), count, seed, first.size);
  const singled = sets.map((set) => new Set(set.map(({ path }) => path)));
  const groups: ((path: string) => boolean)[] = [
    () => true,
    ...singled.map((set) => (path: string) => set.has(path)),
    (path) => !singled.some((set) => set.has(path)),
  ];
  return Array.from({ length: count }, (_, row) => row).flatMap((row) =>
    groups.map((exchanged) => variantAt(run, (path) => (exchanged(path) ? second : first).get(path)![row]!)),
  );
}

/** @param exchanged - What came of the runs of {@link exchanges}, in their order. */
export function totalShares(
  run: SpreadRun,
  sets: readonly (readonly AssumedInput[])[],
  exchanged: readonly (Outcome | undefined)[],
  open: readonly FindingSpread[],
  matters: Matters,
): TotalShares {
  const width = sets.length + 2;
  const rows = run.outcomes.flatMap((first, row) => {
    const others = Array.from({ length: width }, (_, at) => exchanged[row * width + at]);
    return [first, ...others].every((outcome) => outcome !== undefined && outcome.fault === undefined) ? [row] : [];
  });
  const findings: Record<string, readonly TotalShare[]> = {};
  for (const finding of open) {
    const columns = [
      rows.map((row) => run.outcomes[row]!.values[finding.id]),
      ...Array.from({ length: width }, (_, at) => rows.map((row) => exchanged[row * width + at]!.values[finding.id])),
    ];
    const seen = sets.flatMap((set, at) =>
      set.filter(({ path }) => matters(path, finding)).map(({ path, label }) => ({ path, label, column: 2 + at })),
    );
    const shares = sharesOf(columns, [...seen.map(({ column }) => column), width], finding.logarithmic);
    if (shares === undefined) continue;
    findings[finding.id] = [
      ...seen.map(({ path, label }, at) => ({ path, label, ...shares[at]! })).sort((a, b) => b.total - a.total),
      { label: REST, ...shares.at(-1)! },
    ];
  }
  return {
    rows: rows.length,
    sets: sets.map((set) => set.map(({ path, label }) => ({ path, label }))),
    overall: overallOf(open, findings),
    findings,
  };
}

/** Undefined where the finding does not vary, or has no value in some row. */
function sharesOf(
  columns: readonly (readonly (number | undefined)[])[],
  picked: readonly number[],
  logarithmic: boolean,
): ShareOfVariance[] | undefined {
  const values = columns.flat();
  if (columns[0]!.length < FEWEST_ROWS || values.some((value) => value === undefined)) return undefined;
  const inLogarithms = logarithmic && values.every((value) => value! > 0);
  const scaled = columns.map((column) => column.map((value) => (inLogarithms ? Math.log(value!) : value!)));
  const shares = sobolShares(
    scaled[0]!,
    scaled[1]!,
    picked.map((at) => scaled[at]!),
  );
  return shares.some((share) => share === undefined) ? undefined : (shares as ShareOfVariance[]);
}

function overallOf(
  open: readonly FindingSpread[],
  findings: Readonly<Record<string, readonly TotalShare[]>>,
): OverallShare[] {
  const asked = open.filter(({ id }) => findings[id] !== undefined);
  const weights = asked.reduce((sum, { weight }) => sum + weight, 0);
  const sums = new Map<string, OverallShare>();
  for (const { id, weight } of asked) {
    for (const { path, label, first, total } of findings[id]!) {
      const key = path ?? '';
      const known = sums.get(key) ?? { ...(path === undefined ? {} : { path }), label, first: 0, total: 0 };
      const part = weight / weights;
      sums.set(key, { ...known, first: known.first + part * first, total: known.total + part * total });
    }
  }
  return [...sums.values()].sort((a, b) => b.total - a.total);
}
