// The mark of a verdict: a band of values against the line of its limit. Inside, across, beyond, or not known. A word stands beside it.

import type { Verdict } from '@stillair/engine';

export const verdictWord: Readonly<Record<Verdict, string>> = {
  holds: 'holds',
  tight: 'tight',
  fails: 'fails',
  unknown: 'unknown',
  told: 'told',
};

const bandOf: Readonly<Record<Verdict, readonly [number, number] | undefined>> = {
  holds: [2, 9],
  tight: [6, 16],
  fails: [13, 20],
  unknown: undefined,
  told: [2, 20],
};

export function VerdictMark({ verdict }: { readonly verdict: Verdict }) {
  const band = bandOf[verdict];
  return (
    <svg className={`verdict-mark ${verdict}`} viewBox="0 0 22 14" width="22" height="14" aria-hidden="true">
      {verdict !== 'told' && (
        <path className="limit" d="M11 0V14" strokeDasharray={verdict === 'unknown' ? '2 2' : undefined} />
      )}
      {band ? (
        <rect className="band" x={band[0]} y="4" width={band[1] - band[0]} height="6" />
      ) : (
        <path className="band-open" d="M3 7H19" strokeDasharray="1.5 2.5" />
      )}
    </svg>
  );
}
