// What a cabinet's sound depends on and nothing else does: how loud machines are, what boards let through and swallow, what
// people want, how the room answers. Levels are in dB or dB(A) and say so in their names.

/** One number for each octave band: 63, 125, 250, 500 Hz, 1, 2, 4, 8 kHz. */
export type Octaves = readonly number[];

export interface MachineSound {
  /** Free-standing on a table, 1 m away, A-weighted. */
  readonly printingDbA: number;
  /** The same while it is on and does not print. */
  readonly idleDbA: number;
  /** Its octave levels printing, unweighted; only their shape counts. */
  readonly octavesDb: Octaves;
}

export interface BoardSound {
  /** Critical frequency times thickness, m/s. */
  readonly coincidence: number;
  /** Loss factor of the board as mounted. */
  readonly damping: number;
  /** Measured transmission loss by thickness, m and dB. */
  readonly transmission: readonly { readonly thickness: number; readonly octavesDb: Octaves }[];
  /** Absorption coefficients by thickness; none: those of a bare board. */
  readonly absorption: readonly { readonly thickness: number; readonly octaves: Octaves }[];
}

/** What a muffler does, by how it is built; or as somebody has measured it. */
export type Muffler =
  | { readonly how: 'measured'; readonly octavesDb: Octaves }
  | { readonly how: 'lined duct'; readonly length: number; readonly absorption: Octaves }
  | { readonly how: 'lined box'; readonly size: readonly number[]; readonly absorption: Octaves }
  | { readonly how: 'expansion box'; readonly size: readonly number[] };

export interface QuietHours {
  /** s after midnight; the end may lie beyond midnight. */
  readonly hours: readonly [number, number];
  readonly limitDbA: number;
}

/** What the model may be wrong by: 0 or its middle in the nominal run, other numbers in samples. */
export interface SoundDoubt {
  /** On the transmission loss of boards from 250 Hz up, and below, dB. */
  readonly panelsDb: number;
  readonly lowBandsDb: number;
  /** What a fan gets louder by when it is built in behind a guard, grille or filter, dB. */
  readonly builtInDb: number;
}

export interface CabinetSound {
  readonly machines: Readonly<Record<string, MachineSound>>;
  /** Every board of the shell and of shelves, by its name. */
  readonly boards: Readonly<Record<string, BoardSound>>;
  readonly people: Readonly<Record<string, readonly QuietHours[]>>;
  readonly room: {
    /** s */
    readonly reverberation: number;
    /** m², in place of what the reverberation says. */
    readonly absorption?: number;
    readonly backgroundDbA: number;
  };
  readonly doubt: SoundDoubt;
}
