// Light in the cabinet, resolved: what its faces throw back, its lamps and its cameras. Plain data in SI.

/** The light-giving face of a lamp; lengths in m. */
export type LampShape =
  | { readonly kind: 'point' }
  | { readonly kind: 'strip'; readonly length: number }
  | { readonly kind: 'panel'; readonly width: number; readonly height: number };

export type LampFacing = 'down' | 'up' | 'back' | 'front' | 'left' | 'right';

/** How a lamp's light pulsates. */
export type Pulsation =
  | { readonly by: 'dc' }
  /** Fully on for a share `duty` of each period; `frequency` 0 when nobody said it. */
  | { readonly by: 'pwm'; readonly frequency: number; readonly duty: number }
  /** About a sine; `ripple` is its (most - least)/(most + least). */
  | { readonly by: 'mains'; readonly frequency: number; readonly ripple: number };

export interface Lamp {
  readonly bay: string;
  /** lm */
  readonly flux: number;
  readonly shape: LampShape;
  /** Middle of its face, from the bay's left front lower corner, m. */
  readonly at: readonly [number, number, number];
  readonly faces: LampFacing;
  /** Axis of a strip. */
  readonly along: 'x' | 'y' | 'z';
  /** Absent when nobody said how it is driven. */
  readonly pulsation?: Pulsation;
}

/** Names of finishes, which lead into `reflectances`: one number for all that is of one finish. */
export interface Light {
  /** Share of visible light thrown back, 0 to 1, by finish or bare board. */
  readonly reflectances: Readonly<Record<string, number>>;
  readonly faces: Readonly<Record<string, string>>;
  readonly doors: Readonly<Record<string, string>>;
  /** In the order of the cabinet's partitions. */
  readonly partitions: readonly string[];
  /** Frame and bed of each machine. */
  readonly machines: Readonly<Record<string, string>>;
  /** Inner faces of machines' own chambers. */
  readonly chambers: Readonly<Record<string, string>>;
  /** By the ids of `heats`. */
  readonly lamps: Readonly<Record<string, Lamp>>;
  /** Light of the lamp in a machine's own chamber, lm. */
  readonly chamberLamps: Readonly<Record<string, number>>;
}

export interface Camera {
  readonly bay: string;
  /** Its lens, from the bay's left front lower corner, m; absent when nobody said it. */
  readonly at?: readonly [number, number, number];
  /** Machine whose print it looks at. */
  readonly looksAt: string;
  /** Whole angles of view, across and up, rad. */
  readonly view: readonly [number, number];
  /** f-number. */
  readonly aperture: number;
  /** ISO speed, the most that it may use. */
  readonly iso: number;
  /** Exposure time, s; 0 when the camera chooses it. */
  readonly shutter: number;
  /** From the first row of the picture to the last, s. */
  readonly readout: number;
  /** Across and up. */
  readonly pixels: readonly [number, number];
  readonly task: 'time-lapse' | 'live' | 'watching';
  /** How fast what it looks at moves, m/s. */
  readonly subjectSpeed: number;
}
