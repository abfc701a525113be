import { formatClock, formatDuration } from '../units/format.ts';
import type { Catch } from './faults.ts';

/** What acts, when, and whether before the limit is passed: `link top (thermal link) cuts at 10:05 to 10:20, 4 min before`. */
export function catchText({ device, what, does, earliest, latest, leaves }: Catch): string {
  const name = `${device}${device === what ? '' : ` (${what})`}`;
  if (latest === undefined) return `${name} may act from ${formatClock(earliest)}, or never`;
  const spare =
    leaves === undefined
      ? ''
      : leaves >= 0
        ? `, ${formatDuration(leaves)} before`
        : `, ${formatDuration(-leaves)} too late`;
  const when = earliest === latest ? formatClock(latest) : `${formatClock(earliest)} to ${formatClock(latest)}`;
  return `${name} ${does} at ${when}${spare}`;
}
