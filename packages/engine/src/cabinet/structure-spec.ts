// What a person wrote about carrying and shaking, in SI, before any default is filled in. The keys are those of the file.

import type { Quantity } from '../units/quantity.ts';
import type { Joint } from './structure.ts';

type Maybe<T> = T | undefined;
type Given = Maybe<Quantity>;
type Lengths = readonly number[];

export interface ShakingSpec {
  readonly 'head-mass'?: Given;
  readonly 'bed-mass'?: Given;
  readonly acceleration?: Given;
  readonly speed?: Given;
  readonly stroke?: Given;
  readonly 'travel-per-turn'?: Given;
  readonly 'steps-per-turn'?: Given;
}

/** What a kind of machine may say of itself. */
export interface StandingSpec {
  readonly mass?: Given;
  readonly feet?: Maybe<Lengths>;
  readonly shaking?: Maybe<ShakingSpec>;
}

export interface FoamSpec {
  readonly foam: string;
  readonly thickness: number;
  /** Where the foam's name ends in the text, for messages. */
  readonly length: number;
}

export interface StandsOnSpec {
  readonly slab?: Maybe<Lengths>;
  readonly slabs?: Maybe<number>;
  readonly 'slab-density'?: Given;
  readonly foam?: Maybe<FoamSpec>;
  readonly pads?: Maybe<number>;
  readonly 'pad-size'?: Maybe<Lengths>;
}

/** A foam of the catalogue. */
export interface FoamKindSpec {
  readonly stiffness: Quantity;
  readonly stiffening: Quantity;
  readonly damping: Quantity;
  readonly creep: Quantity;
  readonly 'usable-strain': Quantity;
  readonly solid?: Maybe<boolean>;
}

/** What a board of the catalogue may say of its strength. */
export interface BoardStrengthSpec {
  readonly bending?: Given;
  readonly 'bending-across'?: Given;
  readonly veneer?: Given;
  readonly 'bending-stress'?: Given;
  readonly 'sag-growth'?: Given;
}

export interface LippingSpec {
  readonly size: Lengths;
  readonly edges?: Maybe<'front' | 'front and back'>;
  readonly stiffness?: Given;
}

export interface ShelfHoldSpec {
  readonly joint?: Maybe<Joint>;
  readonly lipping?: Maybe<LippingSpec>;
  readonly grain?: Maybe<'along' | 'across'>;
  readonly pins?: Maybe<{ readonly count?: Maybe<number>; readonly size?: Given; readonly depth?: Given }>;
  readonly posts?: Maybe<number>;
  readonly load?: Given;
  readonly 'pulls-out'?: Given;
}

export interface HingesSpec {
  readonly count?: Maybe<number>;
  readonly spacing?: Given;
  readonly carries?: Given;
  readonly holes?: Maybe<HingeHolesSpec>;
}

export interface HingeHolesSpec {
  readonly 'from-edge': Quantity;
  readonly apart: Quantity;
  readonly diameter: Quantity;
}

export interface CabinetFeetSpec {
  readonly count?: Maybe<number>;
  readonly size?: Given;
  readonly height?: Given;
  readonly inset?: Given;
}

/** What `cabinet:` may say about how it stands. */
export interface CarcassStandingSpec {
  readonly 'wall-strap'?: Maybe<boolean>;
  readonly feet?: Maybe<CabinetFeetSpec>;
  readonly bottom?: Maybe<ShelfHoldSpec>;
}
