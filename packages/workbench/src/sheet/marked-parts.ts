// Which parts on the sheet are spoken of, for those who hear the page.

import type { BriefFinding } from '@stillair/engine';
import { verdictWord } from '../remarks/verdict-mark.tsx';

/** Parts with something to say of them, by the worst verdict. */
export function markedParts(
  findings: readonly BriefFinding[],
  partOf: (finding: BriefFinding) => string | undefined,
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
