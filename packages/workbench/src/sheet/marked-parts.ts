// Which parts on the sheet are spoken of, for those who hear the page.

import type { Finding } from '@stillair/engine';
import { verdictWord } from '../remarks/verdict-mark.tsx';

/** Parts with something to say of them, by the worst verdict. */
export function markedParts(
  findings: readonly Finding[],
  partOf: (finding: Finding) => string | undefined,
): Record<string, string> {
  const worst: Record<string, string> = {};
  for (const verdict of ['unknown', 'tight', 'fails'] as const)
    for (const finding of findings)
      if (finding.verdict === verdict) {
        const part = partOf(finding);
        if (part !== undefined) worst[part] = verdictWord[verdict];
      }
  return worst;
}
