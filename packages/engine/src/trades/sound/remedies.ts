// What would quieten a cabinet, the most promising first: each is aimed at the share of the sound that comes by one way.

import type { Cabinet, Door, FaceName } from '../../cabinet/cabinet.ts';
import { findPart } from '../../cabinet/catalogue.ts';
import type { Remedy } from '../measure.ts';
import { hasMuffler, OUTSIDE } from '../plant.ts';
import { quieterFansOf, sealedDoor } from '../remedies.ts';
import { addPart, setDoorLeaf, setFaceLayers, setLining } from '../remedy-edits.ts';
import type { Ranked, RankedWay } from './reasons.ts';

/** No more than these are offered for one measure. */
const MOST = 4;
const LINING = 'melamine foam';
const LINING_THICKNESS = 0.025;
const LINED: readonly FaceName[] = ['back', 'left', 'right', 'top'];
const MUFFLER = 'lined duct 600 mm';
/** A lining is worth more than its way's share: it lowers what comes by all ways out of the boxes. */
const BUILD_UP = 0.7;

interface Candidate {
  readonly remedy: Remedy;
  /** Share of the sound that it is aimed at. */
  readonly share: number;
}

export function quieter(cabinet: Cabinet, sources: readonly Ranked[], ways: readonly RankedWay[]): Remedy[] {
  const whole = sources.reduce((sum, { power }) => sum + power, 0);
  if (!(whole > 0)) return [];
  const fans = sources.flatMap(({ heard: { source }, power }): Candidate[] =>
    source.kind === 'fan' ? quieterFansOf(cabinet, source.id).map((remedy) => ({ remedy, share: power / whole })) : [],
  );
  const out = ways.flatMap(({ part, kind, power }): Candidate[] => {
    const [group, id = ''] = part.split('.') as [string, string?];
    return remediesOf(cabinet, group, id, kind).map((remedy) => ({ remedy, share: power / whole }));
  });
  const fromBoxes = ways.reduce((sum, { kind, power }) => sum + (kind === 'fan’s own mouth' ? 0 : power), 0);
  const lining = lined(cabinet).map((remedy) => ({ remedy, share: (BUILD_UP * fromBoxes) / whole }));
  return [...lining, ...out, ...fans]
    .sort((a, b) => b.share - a.share)
    .map(({ remedy }) => remedy)
    .slice(0, MOST);
}

function remediesOf(cabinet: Cabinet, group: string, id: string, kind: RankedWay['kind']): Remedy[] {
  if (group === 'paths') return muffled(cabinet, id);
  if (kind === 'gap') return sealedDoor(cabinet, id);
  return group === 'doors' ? heavierDoor(cabinet, id) : heavierFace(cabinet, id as FaceName);
}

function lined(cabinet: Cabinet): Remedy[] {
  const { faces, inside } = cabinet;
  const bare = LINED.filter((face) => faces[face].build.layers[0]!.density > 200);
  if (bare.length < LINED.length || LINED.some((face) => faces[face].build.layers[0]!.lining)) return [];
  const { width, depth, height } = inside;
  const area = width * height + 2 * depth * height + width * depth;
  const text = `${LINING} ${Math.round(1000 * LINING_THICKNESS)} mm`;
  return [
    {
      says: `line ${LINED.join(', ')} with ${text}, hard to light but a fire load${about('boards', LINING, area)}`,
      edits: [setLining(text, LINED)],
    },
  ];
}

/** A lined duct at the end of the path that lies in the room. */
function muffled(cabinet: Cabinet, id: string): Remedy[] {
  const path = cabinet.paths[id]!;
  const plain = path.parts.length === 1 && path.parts[0]?.part === 'hole';
  if (hasMuffler(path) || (!OUTSIDE.includes(path.to) && !OUTSIDE.includes(path.from))) return [];
  const where = plain || OUTSIDE.includes(path.to) ? 'last' : 'first';
  return [
    {
      says: `a muffler (${MUFFLER}) in ${id}${about('fittings', MUFFLER, 1)}`,
      edits: [addPart(id, path, 'muffler', MUFFLER, where)],
    },
  ];
}

function heavierDoor(cabinet: Cabinet, id: string): Remedy[] {
  const door: Door = cabinet.doors[id]!;
  const [leaf, ...others] = door.build.layers;
  if (leaf === undefined || others.length > 0) return [];
  const thickness = 2 * leaf.thickness;
  return [
    {
      says: `make ${id} twice as thick: ${leaf.material} ${Math.round(thickness * 1e4) / 10} mm`,
      edits: [setDoorLeaf(id, door, { ...leaf, thickness })],
    },
  ];
}

function heavierFace({ faces }: Cabinet, face: FaceName): Remedy[] {
  const [board, ...others] = faces[face].build.layers.filter(({ lining }) => lining !== true);
  if (board === undefined || others.length > 0) return [];
  return [
    {
      says: `make the ${face} twice as thick: ${board.material} ${Math.round(2e4 * board.thickness) / 10} mm`,
      edits: [setFaceLayers(face, [{ ...board, thickness: 2 * board.thickness }])],
    },
  ];
}

/** What it costs, from the catalogue: typical, and said as such there. */
function about(group: 'boards' | 'fittings', kind: string, amount: number): string {
  const price = findPart(undefined, group, kind)?.spec.price;
  if (price === undefined) return '';
  const [low, high] = [Math.round(price.low * amount), Math.round(price.high * amount)];
  return `, about ${low} to ${high} ${price.currency}`;
}
