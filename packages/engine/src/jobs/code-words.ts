// The codes that are understood: those of NIST RS274NGC (T. Kramer, F. Proctor, E. Messina, NISTIR 6556, 2000) that a printer shares, and
// those that firmwares for printers agree on (common practice, no standard).

/** What a code asks for, by its letter and ten times its number: `G92.1` is not `G92`. */
export function codeOf(letter: number, number: number): number {
  return letter * CODES + Math.round(number * 10);
}

const CODES = 100_000;
const [G, M, T] = [6, 12, 19];
const g = (number: number): number => codeOf(G, number);
const m = (number: number): number => codeOf(M, number);

export type CodeName =
  | 'rapid'
  | 'straight'
  | 'clockwise'
  | 'anticlockwise'
  | 'dwell'
  | 'planeXY'
  | 'planeXZ'
  | 'planeYZ'
  | 'inch'
  | 'millimetre'
  | 'home'
  | 'absolute'
  | 'incremental'
  | 'setPosition'
  | 'pause'
  | 'pauseIfAsked'
  | 'end'
  | 'endAndRewind'
  | 'filamentAbsolute'
  | 'filamentRelative'
  | 'nozzle'
  | 'fan'
  | 'fanOff'
  | 'nozzleAndWait'
  | 'emergencyStop'
  | 'bed'
  | 'chamber'
  | 'bedAndWait'
  | 'chamberAndWait'
  | 'acceleration';

export const CODE: Readonly<Record<CodeName, number>> = {
  rapid: g(0),
  straight: g(1),
  clockwise: g(2),
  anticlockwise: g(3),
  dwell: g(4),
  planeXY: g(17),
  planeXZ: g(18),
  planeYZ: g(19),
  inch: g(20),
  millimetre: g(21),
  home: g(28),
  absolute: g(90),
  incremental: g(91),
  setPosition: g(92),
  pause: m(0),
  pauseIfAsked: m(1),
  end: m(2),
  endAndRewind: m(30),
  filamentAbsolute: m(82),
  filamentRelative: m(83),
  nozzle: m(104),
  fan: m(106),
  fanOff: m(107),
  nozzleAndWait: m(109),
  emergencyStop: m(112),
  bed: m(140),
  chamber: m(141),
  bedAndWait: m(190),
  chamberAndWait: m(191),
  acceleration: m(204),
};

const known = new Set<number>(Object.values(CODE));

export function isKnown(code: number): boolean {
  // Nearly every line is one of the first four.
  if (code >= CODE.rapid && code <= CODE.anticlockwise) return code % 10 === 0;
  return known.has(code) || toolOf(code) !== undefined;
}

/** Tools are told apart up to this number. */
export const MOST_TOOLS = 64;

/** The tool that a code changes to. */
export function toolOf(code: number): number | undefined {
  const tool = (code - T * CODES) / 10;
  return Number.isInteger(tool) && tool >= 0 && tool < MOST_TOOLS ? tool : undefined;
}
