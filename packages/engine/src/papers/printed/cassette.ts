// A filter or a bed of carbon held between two frames, so that no air goes round it: a seat with a groove for a gasket, and a clamp.
// Four screws beside the face press them together, so that the filter may be of any thickness.

import { contractionLoss, expansionLoss, lossOnArea } from '@stillair/physics';
import type { CabinetPath, Section } from '../../cabinet/cabinet.ts';
import { faceScrews, grown, LIP, RIM, sectionWords, sides } from './ends.ts';
import { insertPart } from './path-edit.ts';
import { CLEARANCE, SLIDE, WALL } from './practice.ts';
import type { AirLoss, PrintedPart } from './printed-part.ts';
import { bore, cut, type Flat, joined, outlineArea, prism, type Shape } from './shape.ts';

/** Thickness of both frames: a pin of 3 mm lies in the middle of it. */
const BASE = 6;
/** A groove for a round gasket of 3 mm, squeezed by a quarter or more. */
const GROOVE_WIDTH = 3.2;
const GROOVE_DEPTH = 2;
/** Middle of the groove, inward of the face's edge. */
const GROOVE_IN = 4;
/** Rim that keeps the filter in place. */
const RIM_HEIGHT = 12;

export function cassette(
  id: string,
  path: CabinetPath,
  at: number,
  face: Section,
  held: readonly string[],
  bay: string | undefined,
): PrintedPart[] {
  const opening = grown(face, -LIP);
  const screws = faceScrews(face).map((spot) => bore(CLEARANCE.M4 / 2, spot, 24));
  const outline = grown(face, RIM);
  const base = cut(prism(outline, 0, BASE), ...[opening, ...screws].map((hole) => prism(hole, 0, BASE)));
  const baseArea = outlineArea(outline) - [opening, ...screws].reduce((sum, hole) => sum + outlineArea(hole), 0);
  const [groove, grooveArea] = ring(
    grown(face, GROOVE_WIDTH / 2 - GROOVE_IN),
    grown(face, -GROOVE_WIDTH / 2 - GROOVE_IN),
    BASE - GROOVE_DEPTH,
    BASE,
  );
  const [rim, rimArea] = ring(grown(face, SLIDE + WALL), grown(face, SLIDE), BASE, BASE + RIM_HEIGHT);
  const [a, b] = sides(face);
  const [width, depth] = [a + 2 * RIM, b + 2 * RIM];
  const bar = (clear: number): number => clear / 2 + (RIM - LIP) / 2;
  const shared = {
    count: 1,
    sizedFrom: [`face of ${held.join(' and ')}: ${sectionWords(face)}`],
    ...(bay === undefined ? {} : { bay }),
    pins: {
      acrossX: [-1, 1].map((sign) => [sign * bar(b), BASE / 2] as const),
      acrossY: [-1, 1].map((sign) => [sign * bar(a), BASE / 2] as const),
    },
  };
  return [
    {
      ...shared,
      id: `${id}-seat-${at}`,
      title: `seat of ${held.join(' and ')} in ${id}`,
      shape: joined(cut(base, groove), rim),
      size: [width, depth, BASE + RIM_HEIGHT],
      volume: baseArea * BASE - grooveArea * GROOVE_DEPTH + rimArea * RIM_HEIGHT,
      thinnest: WALL,
      why: 'a filter that does not touch its seat all round lets air go past it unfiltered',
      lies: 'flat, rim up, without support',
      check: [
        'measure the filter: its frame must be of the size above, and at least as wide as the lip of 8 mm',
        'four screws M4 with nuts, as long as the filter is thick and 25 mm more: its thickness is not in the file',
        'round gasket cord of 3 mm in the groove, its ends glued',
      ],
      loss: lossOf(id, path, at, face, outlineArea(opening)),
    },
    {
      ...shared,
      id: `${id}-clamp-${at}`,
      title: `clamp of ${held.join(' and ')} in ${id}`,
      shape: base,
      size: [width, depth, BASE],
      volume: baseArea * BASE,
      thinnest: 2,
      why: 'presses the filter on its gasket; its loss is counted with the seat',
      lies: 'flat, without support',
      check: ['tighten the four screws crosswise, until the cord is squeezed all round'],
    },
  ];
}

function ring(outer: readonly Flat[], inner: readonly Flat[], from: number, to: number): readonly [Shape, number] {
  return [cut(prism(outer, from, to), prism(inner, from, to)), outlineArea(outer) - outlineArea(inner)];
}

/** Both frames: narrowed by the lip, widened behind it, and again on the other side. */
function lossOf(id: string, path: CabinetPath, at: number, face: Section, open: number): AirLoss {
  const [a, b] = sides(face);
  const whole = face.shape === 'round' ? (Math.PI / 4) * a ** 2 : a * b;
  const ratio = Math.min(open / whole, 1);
  const factor = lossOnArea(2 * (contractionLoss(ratio) + expansionLoss(ratio)), open, whole);
  return {
    factor,
    area: whole / 1e6,
    formula: 'twice a sudden narrowing and a sudden widening at the lip, K moved to the face',
    source: 'Rennels & Hudson (2012), ch. 10, from memory; Borda (1766)',
    edits: [insertPart(id, path, at, { loss: Math.round(1000 * factor) / 1000, size: sizeText(face) })],
  };
}

export function sizeText(section: Section): string {
  return sectionWords(section);
}
