// What leaves a worker must be plain: steps and remedies of a finding may be worked out only when they are asked for.

import type { Finding } from '@stillair/engine';

export function plain(finding: Finding): Finding {
  return { ...finding, steps: [...finding.steps], remedies: [...finding.remedies] };
}
