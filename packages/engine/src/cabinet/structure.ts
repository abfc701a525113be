// What carries and what shakes: weights and what machines stand on, how shelves are held, what boards bear, hinges, the
// cabinet's own feet and its strap to the wall. A slice of the cabinet; all in SI.

/** A slab, or several of one size one upon another. */
export interface Slab {
  readonly width: number;
  readonly depth: number;
  /** Of all of them together, m. */
  readonly thickness: number;
  readonly density: number;
}

/** Elastic sheet or pads. */
export interface Foam {
  readonly kind: string;
  readonly thickness: number;
  /** Number of pads; 0 for a whole sheet below the slab or the feet. */
  readonly pads: number;
  /** One pad, or the sheet, m. */
  readonly width: number;
  readonly depth: number;
  /** Young's modulus in slow compression at small strain, Pa. */
  readonly stiffness: number;
  /** Solid: it bulges at its sides instead of being pressed together, and is the stiffer the flatter it is. */
  readonly solid: boolean;
  /** Dynamic stiffness over that of slow loading. */
  readonly stiffening: number;
  /** Damping ratio. */
  readonly damping: number;
  /** Share of its thickness that it loses under load in the first weeks. */
  readonly creep: number;
  /** Compression up to which it stays springy, as share of its thickness. */
  readonly usableStrain: number;
}

/** What is between a machine and the board that carries it, from the machine down: slab, then foam. */
export interface StandsOn {
  readonly slab?: Slab;
  readonly foam?: Foam;
}

/** How a machine moves while it prints. */
export interface Shaking {
  /** What moves with the print head, kg. */
  readonly headMass: number;
  /** What moves with a bed that travels, kg; 0 when it stands still in plan. */
  readonly bedMass: number;
  readonly acceleration: number;
  readonly speed: number;
  /** Length of a usual stroke between two reversals, m. */
  readonly stroke: number;
  /** Way of the belt in one turn of its motor, m. */
  readonly travelPerTurn: number;
  /** Full steps of that motor in a turn. */
  readonly stepsPerTurn: number;
}

/** How heavy a machine is, how it stands and how it shakes. */
export interface Standing {
  readonly mass: number;
  /** Between the centres of its feet: left to right, front to back, m. */
  readonly feet: { readonly width: number; readonly depth: number };
  /** Absent when nobody has said. */
  readonly standsOn?: StandsOn;
  readonly shaking: Shaking;
}

/** A board's part in carrying, by the board's name. */
export interface BoardStrength {
  /** Bending stiffness along the grain of the faces and across it, Pa; of the bare veneer when the board is built of veneers. */
  readonly along: number;
  readonly across: number;
  /** Thickness of one veneer, m: stiffness then follows from the lay-up. */
  readonly veneer?: number;
  /** Bending stress that it may bear for years, Pa. */
  readonly stress: number;
  /** Sag gained over the years as a share of the first sag, under a lasting load. */
  readonly creep: number;
}

export const joints = ['pins', 'cleats', 'housing', 'glued', 'brackets'] as const;
export type Joint = (typeof joints)[number];

/** A strip on edge under the long edges of a board, glued or folded so that it works with it. */
export interface Lipping {
  readonly height: number;
  readonly breadth: number;
  readonly edges: 1 | 2;
  /** Pa */
  readonly stiffness: number;
}

/** How a board that carries is held. */
export interface ShelfHold {
  readonly joint: Joint;
  /** 0: its ends turn freely; 1: they are held fast. */
  readonly endFixity: number;
  readonly grain: 'along' | 'across';
  readonly lipping?: Lipping;
  readonly pins: { readonly count: number; readonly diameter: number; readonly depth: number };
  /** Posts or upright boards below it, evenly spaced. */
  readonly posts: number;
  /** What else lies on it, kg, evenly spread. */
  readonly load: number;
  /** How far it pulls out to the front, m; 0 for a fixed board. */
  readonly pullsOut: number;
}

export interface Hinges {
  /** Of the whole leaf, between the outermost hinges, m. */
  readonly spacing: number;
  readonly count: number;
  /** Mass that one hinge of this kind carries, kg. */
  readonly carries: number;
  /** Two through holes in the leaf for each, m; where nobody said them, they are not known. */
  readonly holes?: { readonly fromEdge: number; readonly apart: number; readonly diameter: number };
}

export interface CabinetFeet {
  /** 0: the whole bottom lies on the floor. */
  readonly count: number;
  /** Side or diameter of one, m. */
  readonly size: number;
  readonly height: number;
  /** From the outer faces to the foot's outer edge, m. */
  readonly inset: number;
}

export interface Structure {
  readonly boards: Readonly<Record<string, BoardStrength>>;
  /** By the id of the partition; upright ones too, which carry nothing. */
  readonly shelves: Readonly<Record<string, ShelfHold>>;
  /** The carcass' own bottom, where it stands on feet. */
  readonly bottom: ShelfHold;
  readonly hinges: Readonly<Record<string, Hinges>>;
  readonly feet: CabinetFeet;
  readonly wallStrap: boolean;
}
