// Running dimensions from one datum: ISO 129-1, superimposed. One line with a circle and a 0 at its origin, an arrow at each value (a point
// where there is no room for one), and the value written beside its extension line so that it is read from below or from the right; values that would collide move apart.

import { circle, line, type Mark, outline, type Point, text } from '../frame/mark.ts';
import { labelPlaces } from '../label-places.ts';

/** 1.8 mm high figures. */
const FIGURES = 2.5;
/** Least distance of two values, mm. */
const APART = 3;
const ARROW = { length: 2.2, half: 0.4 } as const;
/** Radius of the circle at the origin, and of a point in place of an arrow. */
const ORIGIN = 0.9;
const POINT = 0.35;

export interface Stop {
  /** Along the dimension line, mm on the paper. */
  readonly at: number;
  readonly words: string;
}

export interface Running {
  /** Where the datum is on the paper: its place along the line, and the line's own place across it. */
  readonly origin: number;
  readonly across: number;
  /** From where extension lines come. */
  readonly from: number;
  readonly stops: readonly Stop[];
  /** Values stand this far beyond the line, on the side away from the drawing; below 0 for above or left of it. */
  readonly beyond: number;
  readonly low: number;
  readonly high: number;
}

/** A dimension line below or above a drawing. */
export function level(running: Running): readonly Mark[] {
  return drawn(running, (along, across) => [along, across], -90);
}

/** A dimension line to the left or right of a drawing. */
export function upright(running: Running): readonly Mark[] {
  return drawn(running, (along, across) => [across, along], 0);
}

function drawn(
  { origin, across, from, stops, beyond, low, high }: Running,
  at: (along: number, across: number) => Point,
  turn: number,
): readonly Mark[] {
  if (stops.length === 0) return [];
  const sign = Math.sign(beyond);
  const told: readonly Stop[] = [{ at: origin, words: '0' }, ...stops];
  const places = labelPlaces(
    told.map((stop) => stop.at),
    APART,
    low,
    high,
  );
  const ends = stops.map((stop) => stop.at);
  const furthest = [Math.min(origin, ...ends), Math.max(origin, ...ends)] as const;
  const value = across + beyond;
  return [
    line('thin', at(furthest[0], across), at(furthest[1], across)),
    circle(at(origin, across), ORIGIN, 'thin', 'paper'),
    ...told.flatMap(({ at: along, words }, index): Mark[] => {
      const place = places[index]!;
      // Read from the right, text that goes upwards on the paper stands left of its base line.
      const middle = place + FIGURES * 0.36;
      return [
        line('thin', at(along, from + sign), at(along, across + sign * 0.8), at(place, value - sign * 0.6)),
        ...arrow(origin, along, across, at),
        text(at(middle, value), words, FIGURES, {
          align: (turn === 0) === sign > 0 ? 'left' : 'right',
          ...(turn === 0 ? {} : { turn }),
        }),
      ];
    }),
  ];
}

function arrow(
  origin: number,
  along: number,
  across: number,
  at: (along: number, across: number) => Point,
): readonly Mark[] {
  const towards = Math.sign(along - origin);
  if (towards === 0) return [];
  if (Math.abs(along - origin) < ARROW.length + ORIGIN) return [circle(at(along, across), POINT, 'thin', 'ink')];
  const back = along - towards * ARROW.length;
  return [outline([at(along, across), at(back, across - ARROW.half), at(back, across + ARROW.half)], 'thin', 'ink')];
}

/** Places that matter, each once, in order. */
export function distinct(values: readonly number[]): readonly number[] {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.filter((value, at) => at === 0 || value - sorted[at - 1]! > 5e-5);
}
