// Where the bands of findings come from: how many numbers were varied, and what of the spread those cause that the file left open.

import { assumedInputs } from '../cabinet/assumed-inputs.ts';
import { originAt } from '../cabinet/ledger.ts';
import type { Origins } from '../cabinet/origin.ts';
import type { Finding } from './finding.ts';

export interface SpreadFrom {
  /** Numbers that the file does not give. */
  readonly assumed: number;
  /** Numbers of the file, its parts or its catalogue that scatter. */
  readonly scattering: number;
  /** Findings that fail or are tight and have a band: the shares below are means over them. */
  readonly findings: number;
  /** Share of their variance of which it is known where it comes from; many samples tell more. */
  readonly known: number;
  /** Share of their variance that is known to come from what is assumed; more may. */
  readonly fromAssumed: number;
  /** Inputs that cause most of it, largest first, with their share. */
  readonly most: readonly { readonly label: string; readonly share: number; readonly assumed: boolean }[];
}

/** Inputs that are named, and the least share that is worth a name. */
const MOST = 3;
const LEAST_SHARE = 0.05;

export function spreadFrom(findings: readonly Finding[], origins: Origins): SpreadFrom {
  const inputs = assumedInputs(origins);
  const isAssumed = (path: string): boolean => originAt(origins, path)?.kind === 'assumed';
  const assumed = inputs.filter(({ path }) => isAssumed(path)).length;
  const moved = findings.filter(
    ({ verdict, p10, p90 }) => (verdict === 'fails' || verdict === 'tight') && p10 !== undefined && p10 !== p90,
  );
  const shares = new Map<string, { label: string; share: number; assumed: boolean }>();
  for (const { path, label, share } of moved.flatMap(({ drivers }) => drivers)) {
    const known = shares.get(path)?.share ?? 0;
    shares.set(path, { label, share: known + share / moved.length, assumed: isAssumed(path) });
  }
  const all = [...shares.values()].sort((a, b) => b.share - a.share);
  return {
    assumed,
    scattering: inputs.length - assumed,
    findings: moved.length,
    known: all.reduce((sum, { share }) => sum + share, 0),
    fromAssumed: all.reduce((sum, { share, assumed: open }) => sum + (open ? share : 0), 0),
    most: all.filter(({ share }) => share >= LEAST_SHARE).slice(0, MOST),
  };
}
