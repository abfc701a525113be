// What notices heat: classes of point heat detectors, thermal links, and how large a fire must be before they answer.

import { mustBePositive, mustNotBeNegative } from './argument.ts';
import { AIR_HEAT_CAPACITY, ICE_POINT } from './constants.ts';

export type HeatDetectorClass = 'A1' | 'A2' | 'B' | 'C' | 'D' | 'E' | 'F' | 'G';

/** Temperatures of one class, °C: usual and highest where it hangs, and between which it answers when warmed slowly. */
export interface HeatDetectorRow {
  readonly typical: number;
  readonly highest: number;
  readonly answersFrom: number;
  readonly answersTo: number;
}

const row = (typical: number, highest: number, answersFrom: number, answersTo: number): HeatDetectorRow => ({
  typical,
  highest,
  answersFrom,
  answersTo,
});

/** Source: EN 54-5, table of classes. Checked: second-hand, two sources agree. */
export const heatDetectors: Readonly<Record<HeatDetectorClass, HeatDetectorRow>> = {
  A1: row(25, 50, 54, 65),
  A2: row(25, 50, 54, 70),
  B: row(40, 65, 69, 85),
  C: row(55, 80, 84, 100),
  D: row(70, 95, 99, 115),
  E: row(85, 110, 114, 130),
  F: row(100, 125, 129, 145),
  G: row(115, 140, 144, 160),
};

/** Air in which class A is hung all the same for hours, °C: a warm bay. Common practice, no source; the table's own figure is 25. */
export const CLASS_A_PRACTICE = 35;

/**
 * The first class that suits a place held at a temperature for long: its usual temperature is not below it (35 °C for class A,
 * by common practice), and so neither is its highest.
 *
 * @param celsius - Air that is held, °C.
 * @returns A2 to G; undefined above 115 °C. Of class A the slower A2 is meant: A1 differs only in answering up to 65 °C.
 * @throws RangeError when the argument is nonsense.
 *
 * @remarks Valid: point detectors. Source: EN 54-5 and practice, as above. Checked: table (second-hand).
 *
 * @example A bay at 35 °C, one at 55 °C, one at 60 °C
 * ```ts
 * heatDetectorFor(35); // => A2
 * heatDetectorFor(55); // => C
 * heatDetectorFor(60); // => D
 * ```
 */
export function heatDetectorFor(celsius: number): HeatDetectorClass | undefined {
  mustBePositive('heatDetectorFor', 'celsius + 273.15', celsius + ICE_POINT);
  const classes: readonly HeatDetectorClass[] = ['A2', 'B', 'C', 'D', 'E', 'F', 'G'];
  return classes.find((name) => celsius <= longestExposure(name));
}

/**
 * Highest temperature, °C, that a class may have about it for hours on end.
 *
 * @param name - A1 to G.
 * @returns °C: the class's typical application temperature; 35 °C for class A, by common practice.
 *
 * @remarks Valid: point detectors. Source: EN 54-5. Checked: second-hand.
 *
 * @example Class B, and class A by practice
 * ```ts
 * longestExposure('B'); // => 40
 * longestExposure('A2'); // => 35
 * ```
 */
export function longestExposure(name: HeatDetectorClass): number {
  return name === 'A1' || name === 'A2' ? CLASS_A_PRACTICE : heatDetectors[name].typical;
}

/**
 * How far a fire warms the air that carries its heat off: ΔT = Q/(m cp).
 *
 * @param power - Q, W, 0 or more.
 * @param massFlow - m, kg/s, above 0.
 * @returns K, at most: walls take some of it.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: steady, well mixed. Source: heat balance of air. Checked: exact.
 *
 * @example A smoulder of 1 kW in 60 m³/h
 * ```ts
 * exhaustRise(1000, 0.02); // => 49.7
 * ```
 */
export function exhaustRise(power: number, massFlow: number): number {
  mustNotBeNegative('exhaustRise', 'power', power);
  mustBePositive('exhaustRise', 'massFlow', massFlow);
  return power / (massFlow * AIR_HEAT_CAPACITY);
}

/**
 * The fire that a heat detector needs before it answers, while fans carry the heat off: Q = m cp (T_answer − T_air).
 *
 * @param massFlow - m, kg/s, 0 or more.
 * @param air - Temperature of the air before the fire, K, above 0.
 * @param answers - Temperature at which the detector answers, K, above 0.
 * @returns W, at least; 0 where the air is warmer already.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: steady, well mixed, slow fire. Source: heat balance of air. Checked: exact.
 *
 * @example Class B in 60 m³/h of air at 35 °C: 0.7 kW at its earliest
 * ```ts
 * fireForAnswer(0.02, 308.15, 342.15); // => 684
 * ```
 */
export function fireForAnswer(massFlow: number, air: number, answers: number): number {
  mustNotBeNegative('fireForAnswer', 'massFlow', massFlow);
  mustBePositive('fireForAnswer', 'air', air);
  mustBePositive('fireForAnswer', 'answers', answers);
  return massFlow * AIR_HEAT_CAPACITY * Math.max(answers - air, 0);
}

/** How far below its mark a link may open, and not above it, K. Source: IEC 60691. Checked: second-hand. */
export const LINK_TOLERANCE = 10;
