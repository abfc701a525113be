// What is to happen when something burns: who notices, what opens the circuit, what then stops and shuts, and what lies about.
// What the file does not say is absent, and stays absent: nobody is taken to have a smoke alarm.

/** What a member of the cut-off chain is. */
export type ChainWhat =
  | 'stop button'
  | 'smoke relay'
  | 'heat relay'
  | 'reset thermostat'
  | 'self-reset thermostat'
  | 'thermal link'
  | 'watchdog'
  | 'door switch';

export interface ChainDevice {
  readonly what: ChainWhat;
  /** What its contact does when it trips or its wire breaks; absent when the file does not say and the device does not imply it. */
  readonly contact?: 'opens' | 'closes';
  /** Acts by wire alone, or needs a running program. */
  readonly through: 'wire' | 'program';
  /** Bay in which it feels the heat. */
  readonly bay?: string;
  /** Temperature at which a link or thermostat opens, K. */
  readonly opensAt?: number;
  /** Highest temperature that a link carries for good, K. */
  readonly holds?: number;
}

/** Classes of point heat detectors by EN 54-5. */
export type HeatClass = 'A1' | 'A2' | 'B' | 'C' | 'D' | 'E' | 'F' | 'G';

export interface Detector {
  readonly what: 'smoke' | 'heat';
  /** A bay, an air path (in its duct), or `room`. */
  readonly where: string;
  /** In an air path: on which side of its filter. */
  readonly filter?: 'before' | 'after';
  readonly heatClass?: HeatClass;
  readonly rateOfRise: boolean;
}

export interface Stored {
  /** A filament, or another thing that burns. */
  readonly of: string;
  /** kg; absent for what is told by the piece. */
  readonly mass?: number;
  /** A bay, or `outside`. */
  readonly where: string;
}

export type Agent = 'carbon dioxide' | 'clean agent' | 'powder' | 'foam' | 'water' | 'blanket';

/** Figures of fire that are the same in every cabinet, each with its spread. */
export interface FireFigures {
  /** Heat for each kilogram of oxygen used, J/kg. */
  readonly oxygenHeat: number;
  /** Share of oxygen, by volume, at which flames are weak. */
  readonly weakOxygen: number;
  /** Growth of a fire with the square of time, W/s². */
  readonly growth: number;
  /** Air through one upright opening, kg/s for each m² and root of a metre. */
  readonly openingAir: number;
}

export interface Protection {
  /** Devices that open the circuit, by id; absent when the file does not say, empty when there is none. */
  readonly chain?: Readonly<Record<string, ChainDevice>>;
  /** Stays off until somebody switches it on again. */
  readonly latch?: boolean;
  readonly detectors?: Readonly<Record<string, Detector>>;
  readonly onAlarm: {
    readonly fans?: 'stop' | 'run';
    readonly heaters?: 'cut' | 'run';
    readonly flaps?: 'shut' | 'open';
  };
  /** What is kept that burns; absent when the file does not say, empty when nothing is. */
  readonly stored?: Readonly<Record<string, Stored>>;
  readonly extinguisher?: { readonly agent: Agent; readonly mass: number };
  /** Net heat of combustion, J/kg, of each board of the cabinet and each filament that is printed or kept. */
  readonly combustion: Readonly<Record<string, number>>;
  readonly figures: FireFigures;
}
