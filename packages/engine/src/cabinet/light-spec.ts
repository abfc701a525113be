// What a person wrote about light: finishes, lamps and cameras, in SI, before any default is filled in.

import type { LampFacing, LampShape } from './light.ts';
import type { Given, Lengths } from './spec.ts';

type Maybe<T> = T | undefined;

export interface FinishSpec {
  readonly reflectance: NonNullable<Given>;
}

export interface DimmingSpec {
  readonly by: 'dc' | 'pwm' | 'mains';
  readonly frequency?: Given;
  readonly duty?: Given;
  readonly depth?: Given;
}

/** What is true of a kind of lamp. */
export interface LampKindSpec {
  readonly flux?: Given;
  readonly shape?: Maybe<LampShape>;
  readonly dimming?: Maybe<DimmingSpec>;
}

/** How one lamp hangs. */
export interface LampPlaceSpec {
  readonly at?: Maybe<Lengths>;
  readonly faces?: Maybe<LampFacing>;
  readonly along?: Maybe<'x' | 'y' | 'z'>;
}

/** What is true of a kind of camera; a camera of the file may overrule any of it. */
export interface CameraKindSpec {
  readonly view?: Maybe<readonly number[]>;
  readonly aperture?: Given;
  readonly iso?: Given;
  readonly readout?: Given;
  readonly pixels?: Maybe<readonly number[]>;
}

export type CameraTask = 'time-lapse' | 'live' | 'watching';

export interface CameraSpec extends CameraKindSpec {
  readonly kind?: Maybe<string>;
  readonly bay?: Maybe<string>;
  readonly at?: Maybe<Lengths>;
  readonly 'looks-at'?: Maybe<string>;
  readonly shutter?: Given;
  readonly task?: Maybe<CameraTask>;
  readonly 'subject-speed'?: Given;
}
