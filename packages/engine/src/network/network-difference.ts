// What two networks differ in, whatever the order of their lists: for tests that hold one against another.

import type { Network } from './network.ts';

/** Every place where the two differ by more than the share; empty when they are the same network. Titles are not compared. */
export function networkDifferences(one: Network, other: Network, share: number): readonly string[] {
  const found: string[] = [];
  compare({ ...one, title: '' }, { ...other, title: '' }, 'network', share, found);
  return found;
}

function compare(one: unknown, other: unknown, at: string, share: number, found: string[]): void {
  if (typeof one === 'number' && typeof other === 'number') {
    // Of two numbers that should both be nothing, neither is a scale for the other.
    if (Math.abs(one - other) <= share * Math.max(Math.abs(one), Math.abs(other)) + 1e-12 * share) return;
    found.push(`${at}: ${one} and ${other}`);
  } else if (Array.isArray(one) && Array.isArray(other)) {
    if (one.length !== other.length) found.push(`${at}: ${one.length} and ${other.length} items`);
    const [mine, theirs] = [inOrder(one), inOrder(other)];
    for (const [key, items] of mine) {
      const others = theirs.get(key) ?? [];
      if (others.length !== items.length) found.push(`${at} [${key}]: ${items.length} and ${others.length}`);
      for (const [index, item] of items.entries())
        if (index < others.length) compare(item, others[index], `${at} [${key}]`, share, found);
    }
    for (const [key, items] of theirs) if (!mine.has(key)) found.push(`${at} [${key}]: none and ${items.length}`);
  } else if (isRecord(one) && isRecord(other)) {
    for (const key of new Set([...Object.keys(one), ...Object.keys(other)]))
      compare(one[key], other[key], `${at}.${key}`, share, found);
  } else if (one !== other) found.push(`${at}: ${String(one)} and ${String(other)}`);
}

/** Items by their names; those of one name by their numbers. Points of a course have no names and keep their order. */
function inOrder(list: readonly unknown[]): Map<string, unknown[]> {
  const groups = new Map<string, unknown[]>();
  for (const item of list) {
    const key = isRecord(item) ? namesOf(item) : '';
    groups.set(key, [...(groups.get(key) ?? []), item]);
  }
  for (const [key, items] of groups) if (key !== '') items.sort((a, b) => sumOf(a) - sumOf(b));
  return groups;
}

function namesOf(item: Readonly<Record<string, unknown>>): string {
  const texts = Object.entries(item).flatMap(([key, value]) => (typeof value === 'string' ? [`${key} ${value}`] : []));
  return texts.sort().join(', ');
}

function sumOf(item: unknown): number {
  if (!isRecord(item)) return 0;
  return Object.values(item).reduce((sum: number, value) => (typeof value === 'number' ? sum + value : sum), 0);
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
