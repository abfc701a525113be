// What a person wrote about sound, in SI, before any default is filled in. The keys are those of the file.

import type { Profile } from '../units/profile.ts';
import type { Quantity } from '../units/quantity.ts';
import type { FaceName } from './cabinet.ts';
import type { LayerSpec } from './spec.ts';

type Given = Quantity | undefined;

export interface MachineNoiseSpec {
  readonly level?: Given;
  readonly idle?: Given;
  readonly octaves?: Profile | undefined;
}

export interface QuietSpec {
  /** The hours as they stand in the file: they are the key. */
  readonly written: string;
  readonly hours: readonly [number, number];
  readonly limit: Quantity;
}

export interface RoomSoundSpec {
  readonly reverberation?: Given;
  readonly absorption?: Given;
  readonly 'background-noise'?: Given;
}

export interface LiningSpec {
  readonly of: LayerSpec;
  readonly faces?: readonly FaceName[] | undefined;
}

export type ByThickness = readonly { readonly thickness: number; readonly points: Profile }[];

export interface BoardSoundSpec {
  readonly coincidence?: Given;
  readonly damping?: Given;
  readonly transmission?: ByThickness | undefined;
  readonly absorption?: ByThickness | undefined;
}

export interface FittingSoundSpec {
  readonly length?: Given;
  readonly box?: readonly number[] | undefined;
  readonly 'lined-with'?: LayerSpec | undefined;
  readonly quietens?: Profile | undefined;
}
