// What printing asks of every part: line, walls, clearances, screws. Common practice unless a source is named; millimetres.

/** Width of one printed line with a nozzle of 0.4 mm. */
export const LINE = 0.45;
/** Walls of bodies that carry air. */
export const WALL = 2.4;
/** Plates that are screwed on. */
export const PLATE = 4;

/** Room on each side between a printed part and what slides into it or it slides into. */
export const SLIDE = 0.25;
/** How far a spigot goes into a duct. */
export const SPIGOT = 25;

/** Clearance holes by thread, medium series of ISO 273 (from memory). */
export const CLEARANCE = { M3: 3.4, M4: 4.5, M5: 5.5 } as const;
/** Hole for a wood screw of 4 mm. */
export const WOOD_SCREW = 4.5;

/** Left free along each edge of a machine's bed. */
export const BED_MARGIN = 5;

/** Pins of 3 mm that align the pieces of a part that is larger than the bed: width of their holes, and depth in each piece. */
export const PIN_HOLE = 3.2;
export const PIN_DEPTH = 10;

/** Side of an axial fan's frame, its hole spacing and the screw that fits its holes: trade sizes, from memory. */
export const FAN_HOLES: readonly {
  readonly frame: number;
  readonly spacing: number;
  readonly screw: keyof typeof CLEARANCE;
}[] = [
  { frame: 40, spacing: 32, screw: 'M3' },
  { frame: 50, spacing: 40, screw: 'M4' },
  { frame: 60, spacing: 50, screw: 'M4' },
  { frame: 70, spacing: 60, screw: 'M4' },
  { frame: 80, spacing: 71.5, screw: 'M4' },
  { frame: 92, spacing: 82.5, screw: 'M4' },
  { frame: 120, spacing: 105, screw: 'M4' },
  { frame: 140, spacing: 124.5, screw: 'M4' },
];
