// For somebody who sees the page for the first time.

import type { Cabinet } from '@stillair/engine';

/** One sentence for somebody who sees this for the first time. */
export function whatIsSeen({ title, machines, bays }: Cabinet): string {
  const count = (number: number, what: string): string => `${number} ${what}${number === 1 ? '' : 's'}`;
  return `You see an invented example, “${title}”: ${count(Object.keys(machines).length, 'printer')} in ${count(Object.keys(bays).length, 'bay')}, drawn to scale with the air of the hour, and beside it what would go wrong; change anything, or begin with your own cabinet.`;
}
