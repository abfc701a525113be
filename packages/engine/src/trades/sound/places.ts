// How loud each source is at each person, by octave and by the way it comes.

import { octaveWeights, reverberationTime, roomConstant, roomTransfer } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Octaves } from '../../cabinet/sound.ts';
import { type Boxes, boxesOf, type Point, type WayOut } from './boxes.ts';
import { type Source, sourcesOf } from './sources.ts';

/** Nobody's ear is nearer to a part than this, m. */
const NEAREST = 0.3;
/** A room never swallows quite all that meets its walls. */
const MOST_SWALLOWED = 0.9;

/** One way that a source's sound comes. Squared pressure over the reference, at full speed or printing. */
export interface Coming {
  readonly part: string;
  readonly kind: WayOut['kind'] | 'fan’s own mouth';
  readonly heard: Octaves;
}

export interface Heard {
  readonly source: Source;
  /** By octave; its sum is A-weighted below. */
  readonly octaves: Octaves;
  /** A-weighted, all octaves. */
  readonly power: number;
  readonly comings: readonly Coming[];
}

const made = new WeakMap<Cabinet, Map<string, readonly Heard[]>>();

/** Every source at a person's place. */
export function heardBy(cabinet: Cabinet, person: string): readonly Heard[] {
  const known = made.get(cabinet) ?? new Map<string, readonly Heard[]>();
  made.set(cabinet, known);
  const before = known.get(person);
  if (before !== undefined) return before;
  const ear = cabinet.people[person]!.at;
  const heard = sourcesOf(cabinet).map((source) => heardFrom(cabinet, boxesOf(cabinet), source, ear));
  known.set(person, heard);
  return heard;
}

function heardFrom(cabinet: Cabinet, boxes: Boxes, source: Source, ear: Point): Heard {
  const comings: Coming[] = [];
  for (const start of source.starts) {
    if ('at' in start) {
      const gain = gainTo(cabinet, ear, start.at, start.cornered);
      comings.push({
        part: `paths.${start.path}`,
        kind: 'fan’s own mouth',
        heard: start.share.map((share, band) => share * source.power[band]! * gain),
      });
      continue;
    }
    const from = boxes.bays.indexOf(start.bay);
    for (const way of boxes.ways) {
      if (way.at === undefined) continue;
      const to = boxes.bays.indexOf(way.bay);
      const gain = gainTo(cabinet, ear, way.at, way.cornered);
      comings.push({
        part: way.part,
        kind: way.kind,
        heard: way.letThrough.map(
          (letThrough, band) =>
            start.share[band]! * source.power[band]! * boxes.inside[band]![to]![from]! * letThrough * gain,
        ),
      });
    }
  }
  const octaves = source.power.map((_, band) => comings.reduce((sum, { heard }) => sum + heard[band]!, 0));
  return { source, octaves, power: weighted(octaves), comings };
}

/** A-weighted sum of octave powers. */
export function weighted(octaves: Octaves): number {
  return octaves.reduce((sum, power, band) => sum + power * WEIGHTS[band]!, 0);
}

const WEIGHTS = octaveWeights.map((weight) => 10 ** (weight / 10));

/** p²/W from a place on the cabinet to an ear. */
function gainTo(cabinet: Cabinet, ear: Point, at: Point, cornered: boolean): number {
  const distance = Math.max(Math.hypot(ear[0] - at[0], ear[1] - at[1], ear[2] - at[2]), NEAREST);
  return 10 ** (roomTransfer(distance, cornered ? 4 : 2, constantOf(cabinet)) / 10);
}

/** Room constant from its reverberation, or from what it is said to swallow, m². */
export function constantOf({ room: { size }, sound: { room } }: Cabinet): number {
  const surface = 2 * (size.width * size.depth + (size.width + size.depth) * size.height);
  const volume = size.width * size.depth * size.height;
  // The same formula gives the absorption from the time.
  const absorption = room.absorption ?? reverberationTime(volume, room.reverberation);
  return roomConstant(Math.min(absorption, MOST_SWALLOWED * surface), surface);
}
