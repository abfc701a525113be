// How loud each source is at each person, by octave and by the way it comes.

import { octaveWeights, reverberationTime, roomConstant, roomTransfer } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import { restingOnParts } from '../../cabinet/resting-on-parts.ts';
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

/** Every source at a person's place. */
export const heardBy: (cabinet: Cabinet, person: string) => readonly Heard[] = restingOnParts(hear);

function hear(cabinet: Cabinet, person: string): readonly Heard[] {
  const ear = cabinet.people[person]!.at;
  const constant = constantOf(cabinet);
  const gain = (at: Point, cornered: boolean): number => gainTo(constant, ear, at, cornered);
  const boxes = boxesOf(cabinet);
  const heardWays = boxes.ways.flatMap(({ at, ...way }) =>
    at === undefined ? [] : [{ ...way, bay: boxes.bays.indexOf(way.bay), gain: gain(at, way.cornered) }],
  );
  return sourcesOf(cabinet).map((source) => heardFrom(boxes, heardWays, source, gain));
}

/** A way out into the room as one person hears it. */
interface HeardWay extends Pick<WayOut, 'part' | 'kind' | 'letThrough'> {
  readonly bay: number;
  /** p²/W */
  readonly gain: number;
}

function heardFrom(
  { bays, inside }: Boxes,
  ways: readonly HeardWay[],
  source: Source,
  gainFrom: (at: Point, cornered: boolean) => number,
): Heard {
  const comings: Coming[] = [];
  for (const start of source.starts) {
    if ('at' in start) {
      const gain = gainFrom(start.at, start.cornered);
      comings.push({
        part: `paths.${start.path}`,
        kind: 'fan’s own mouth',
        heard: start.share.map((share, band) => share * source.power[band]! * gain),
      });
      continue;
    }
    const from = bays.indexOf(start.bay);
    for (const { part, kind, letThrough, bay, gain } of ways)
      comings.push({
        part,
        kind,
        heard: letThrough.map(
          (tau, band) => start.share[band]! * source.power[band]! * inside[band]![bay]![from]! * tau * gain,
        ),
      });
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
function gainTo(constant: number, ear: Point, at: Point, cornered: boolean): number {
  const distance = Math.max(Math.hypot(ear[0] - at[0], ear[1] - at[1], ear[2] - at[2]), NEAREST);
  return 10 ** (roomTransfer(distance, cornered ? 4 : 2, constant) / 10);
}

/** Room constant from its reverberation, or from what it is said to swallow, m². */
export function constantOf({ room: { size }, sound: { room } }: Cabinet): number {
  const surface = 2 * (size.width * size.depth + (size.width + size.depth) * size.height);
  const volume = size.width * size.depth * size.height;
  // The same formula gives the absorption from the time.
  const absorption = room.absorption ?? reverberationTime(volume, room.reverberation);
  return roomConstant(Math.min(absorption, MOST_SWALLOWED * surface), surface);
}
