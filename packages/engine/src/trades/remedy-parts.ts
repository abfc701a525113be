// Parts of the catalogue that could stand in the place of another one.

import { findPart, kindsOf, type PartGroup } from '../cabinet/catalogue.ts';
import type { FanPart } from './plant.ts';

/** Size that a kind carries in its name, mm. */
function sizeIn(kind: string): number {
  return Number(/(\d+) mm$|(\d+) mm (?:quiet|strong)$/.exec(kind)?.slice(1).find(Boolean) ?? Number.NaN);
}

/** A kind of fan of the same frame, or a blower of about its size, with more pressure than a given fan; nearest first. */
export function fansWithMorePressure({ curve, diameter }: FanPart): string[] {
  const pressure = Math.max(...curve.map(([, p]) => p));
  const size = diameter * 1000;
  return kindsOf(undefined, 'fans')
    .filter((kind) => sizeIn(kind) >= size - 2 && sizeIn(kind) <= size * 1.35)
    .map((kind) => ({
      kind,
      most: Math.max(...(findPart(undefined, 'fans', kind)?.spec.curve ?? []).map(([, p]) => p)),
    }))
    .filter(({ most }) => most > 1.3 * pressure)
    .sort((a, b) => a.most - b.most)
    .map(({ kind }) => kind);
}

/** Fans of the same frame that are quieter at full speed. */
export function quieterFans({ noiseDbA, diameter }: FanPart): string[] {
  return kindsOf(undefined, 'fans')
    .filter((kind) => Math.abs(sizeIn(kind) - diameter * 1000) <= 2)
    .map((kind) => ({ kind, noise: findPart(undefined, 'fans', kind)?.spec.noise?.value ?? Number.POSITIVE_INFINITY }))
    .filter(({ noise }) => noise < noiseDbA - 2)
    .sort((a, b) => a.noise - b.noise)
    .map(({ kind }) => kind);
}

/** The next larger size of the same family: `pleated H13 150 mm` for `pleated H13 120 mm`. */
export function nextLarger(group: PartGroup, kind: string): string | undefined {
  const family = kind.replace(/\d+ mm$/, '');
  return kindsOf(undefined, group)
    .filter((other) => other.replace(/\d+ mm$/, '') === family && sizeIn(other) > sizeIn(kind))
    .sort((a, b) => sizeIn(a) - sizeIn(b))[0];
}

/** The smallest size of a family from a given size on, mm; its largest when none is that large. */
export function ofFamily(group: PartGroup, family: string, from: number): string | undefined {
  const sizes = kindsOf(undefined, group)
    .filter((kind) => kind.replace(/ \d+ mm$/, '') === family)
    .sort((a, b) => sizeIn(a) - sizeIn(b));
  return sizes.find((kind) => sizeIn(kind) >= from) ?? sizes.at(-1);
}
