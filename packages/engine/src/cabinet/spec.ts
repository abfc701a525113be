// What a person wrote, in SI, before any default is filled in. The keys are those of the file.

import type { Money } from '../units/money.ts';
import type { Profile } from '../units/profile.ts';
import type { Quantity } from '../units/quantity.ts';
import type { FaceName, Section } from './cabinet.ts';
import type { CalibrationSpec } from './calibration.ts';
import type { CareSpec } from './care-schema.ts';
import type { CarcassSpec, CostsSpec } from './costs-schema.ts';
import type { DriveSpec, SpoolSpec } from './filament.ts';
import type { HangSpec, MotionSpec } from './fit-schema.ts';
import type { FittingPartSpec } from './fittings-schema.ts';
import type { JoinerySpec } from './joinery-schema.ts';
import type { CameraKindSpec, CameraSpec, FinishSpec, LampKindSpec, LampPlaceSpec } from './light-spec.ts';
import type { MainsSpec, PowerSpec } from './power.ts';
import type { ProtectionSpec } from './protection-schema.ts';
import type { QueueSpec } from './queue.ts';
import type { SearchSpec } from './search-spec.ts';
import type {
  BoardSoundSpec,
  FittingSoundSpec,
  LiningSpec,
  MachineNoiseSpec,
  QuietSpec,
  RoomSoundSpec,
} from './sound-spec.ts';
import type {
  BoardStrengthSpec,
  CarcassStandingSpec,
  FoamKindSpec,
  HingesSpec,
  ShelfHoldSpec,
  StandingSpec,
  StandsOnSpec,
} from './structure-spec.ts';

/** A key that may be absent. */
type Maybe<T> = T | undefined;
export type Given = Maybe<Quantity>;
export type Lengths = readonly number[];
export type Course = Quantity | Profile;
export type Amounts = Partial<Readonly<Record<string, Quantity>>>;
type Named<T> = Readonly<Record<string, T>>;

export interface LayerSpec {
  readonly board: string;
  readonly thickness: number;
  /** Where the board's name ends in the text, for messages. */
  readonly length: number;
}

export interface BuildSpec {
  readonly layers: readonly LayerSpec[];
  readonly 'emissivity-inside'?: Given;
  readonly 'emissivity-outside'?: Given;
  readonly sunlight?: Given;
}

export interface RoomSpec extends RoomSoundSpec {
  readonly size?: Maybe<Lengths>;
  readonly temperature?: Maybe<Course>;
  readonly held?: Maybe<boolean>;
  readonly humidity?: Given;
  readonly 'air-changes'?: Given;
  readonly 'heat-loss'?: Given;
  readonly 'heat-capacity'?: Given;
  readonly background?: Maybe<Amounts>;
  readonly deposition?: Given;
  readonly 'air-cleaner'?: Given;
}

export interface OutdoorsSpec {
  readonly temperature?: Maybe<Course>;
  readonly humidity?: Given;
  readonly wind?: Given;
  readonly background?: Maybe<Amounts>;
}

export interface PersonSpec {
  readonly at?: Maybe<Lengths>;
  readonly hours?: Maybe<readonly (readonly [number, number])[]>;
  readonly quiet?: Maybe<readonly QuietSpec[]>;
}

export interface FaceSpec {
  readonly 'made-of'?: Maybe<BuildSpec>;
  readonly against?: Maybe<'room' | 'wall' | 'floor'>;
  readonly gap?: Given;
  readonly finish?: Maybe<string>;
}

export interface DoorSpec extends HangSpec {
  readonly 'made-of'?: Maybe<BuildSpec>;
  readonly face?: Maybe<FaceName>;
  readonly bays?: Maybe<readonly string[]>;
  readonly seal?: Maybe<string>;
  readonly 'seal-gap'?: Given;
  readonly 'seal-depth'?: Given;
  readonly sun?: Maybe<Course>;
  readonly hinges?: Maybe<HingesSpec>;
  readonly finish?: Maybe<string>;
}

export interface CabinetSpec extends CarcassStandingSpec {
  readonly inside: Lengths;
  readonly 'made-of': BuildSpec;
  readonly faces?: Maybe<Partial<Readonly<Record<string, FaceSpec>>>>;
  readonly door?: Maybe<DoorSpec>;
  readonly doors?: Maybe<Named<DoorSpec>>;
  readonly 'joint-gap'?: Given;
  readonly tolerance?: Given;
  readonly lining?: Maybe<LiningSpec>;
  readonly finish?: Maybe<string>;
}

export interface BaySpec {
  readonly z?: Maybe<readonly [number, number]>;
  readonly x?: Maybe<readonly [number, number]>;
  readonly 'air-zones'?: Maybe<number>;
}

export interface ShelfSpec extends ShelfHoldSpec {
  readonly between: readonly string[];
  readonly 'made-of'?: Maybe<BuildSpec>;
  readonly holes?: Maybe<Named<HoleSpec>>;
  readonly finish?: Maybe<string>;
}

export interface HoleSpec {
  readonly hole: Section;
  readonly count?: Maybe<number>;
  readonly discharge?: Given;
  readonly at?: Maybe<PlaceSpec>;
}

export interface PlaceSpec {
  readonly face?: Maybe<FaceName>;
  readonly along?: Given;
  readonly z?: Given;
}

export type UndersideSpec =
  | { readonly kind: 'foam'; readonly thickness: number }
  | { readonly kind: 'bare'; readonly emissivity: number };

export interface BedSpec {
  readonly size?: Maybe<Lengths>;
  readonly height?: Given;
  readonly thickness?: Given;
  readonly 'heat-capacity'?: Given;
  readonly power?: Given;
  readonly emissivity?: Given;
  readonly underside?: Maybe<UndersideSpec>;
  readonly motion?: Given;
}

export interface ChamberSpec {
  readonly size?: Maybe<Lengths>;
  readonly 'made-of'?: Maybe<BuildSpec>;
  readonly leak?: Given;
  readonly exhaust?: Given;
  readonly 'exhaust-filter'?: Maybe<Amounts>;
  readonly recirculation?: Given;
  readonly 'recirculation-filter'?: Maybe<Amounts>;
  readonly lamp?: Given;
  readonly heater?: Given;
  readonly 'heater-set'?: Given;
}

export type MachineStyle = 'moving-bed' | 'fixed-bed' | 'delta' | 'chambered';

/** Everything that is true of a kind of machine; a machine of the file may overrule any of it. */
export interface MachineKindSpec extends StandingSpec {
  readonly style?: Maybe<MachineStyle>;
  readonly size?: Maybe<Lengths>;
  readonly bed?: Maybe<BedSpec>;
  readonly 'hot-end'?: Given;
  readonly 'hot-end-at'?: Given;
  readonly motors?: Given;
  readonly electronics?: Given;
  readonly 'electronics-inside'?: Maybe<boolean>;
  readonly 'electronics-limit'?: Given;
  readonly 'frame-limit'?: Given;
  readonly supply?: Maybe<{ readonly inside?: Maybe<boolean>; readonly efficiency?: Given; readonly idle?: Given }>;
  readonly standby?: Given;
  readonly 'frame-heat-capacity'?: Given;
  readonly 'frame-area'?: Given;
  readonly chamber?: Maybe<ChamberSpec>;
  readonly motion?: Maybe<MotionSpec>;
  readonly noise?: Maybe<MachineNoiseSpec>;
  readonly mains?: Maybe<MainsSpec>;
  readonly drive?: Maybe<DriveSpec>;
}

export interface MachineSpec extends MachineKindSpec {
  readonly kind: string;
  readonly bay?: Maybe<string>;
  readonly at?: Maybe<Lengths>;
  readonly 'stands-on'?: Maybe<StandsOnSpec>;
  readonly finish?: Maybe<string>;
}

export interface MaterialSpec {
  readonly like?: Maybe<string>;
  readonly nozzle?: Given;
  readonly bed?: Given;
  readonly 'prints-well'?: Maybe<readonly [number, number]>;
  readonly 'prints-best'?: Maybe<readonly [number, number]>;
  readonly draught?: Given;
  readonly density?: Given;
  readonly 'glass-transition'?: Given;
  readonly 'spool-limit'?: Given;
  readonly 'humidity-limit'?: Given;
  readonly 'elastic-modulus'?: Given;
  readonly 'bend-strain'?: Given;
  readonly emissions?: Maybe<Amounts>;
  readonly 'heat-of-combustion'?: Given;
}

export type ControlSpec =
  | { readonly kind: 'always' }
  | { readonly kind: 'never' }
  | { readonly kind: 'timer'; readonly windows: readonly (readonly [number, number])[] }
  | {
      readonly kind: 'job';
      readonly machines?: Maybe<readonly string[]>;
      readonly lead?: Given;
      readonly 'run-on'?: Given;
    }
  | { readonly kind: 'thermostat'; readonly sensor: string; readonly on: Quantity; readonly off: Quantity }
  | {
      readonly kind: 'air-quality';
      readonly contaminant: string;
      readonly place: string;
      readonly on: Quantity;
      readonly off: Quantity;
    }
  | {
      readonly kind: 'proportional';
      readonly sensor: string;
      readonly from: Quantity;
      readonly to: Quantity;
      readonly low?: Given;
      readonly high?: Given;
    }
  | {
      readonly kind: 'stages';
      readonly sensor: string;
      readonly steps: readonly { readonly on: Quantity; readonly off: Quantity; readonly speed: Quantity }[];
    };

export interface FanSpec {
  readonly size?: Given;
  readonly curve?: Maybe<Profile>;
  readonly power?: Given;
  readonly noise?: Given;
}

export interface FilterSpec {
  readonly size?: Maybe<Section>;
  readonly resistance?: Maybe<Profile>;
  readonly efficiency?: Maybe<Amounts>;
  readonly 'seat-gap'?: Given;
  readonly 'seat-depth'?: Given;
  readonly loading?: Given;
  readonly 'dust-capacity'?: Given;
}

export interface CarbonSpec {
  readonly size?: Maybe<Section>;
  readonly mass?: Given;
  readonly depth?: Given;
  readonly grain?: Given;
  readonly resistance?: Maybe<Profile>;
  readonly efficiency?: Maybe<Amounts>;
  readonly load?: Given;
}

export interface DuctSpec {
  readonly size?: Given;
  readonly flexible?: Maybe<boolean>;
}

export type FittingName = 'grille' | 'louvre' | 'guard' | 'bend' | 'muffler' | 'adapter';

export interface FittingSpec extends FittingSoundSpec {
  readonly loss?: Given;
  readonly size?: Maybe<Section>;
}

export interface FlapSpec {
  readonly 'opens-at'?: Given;
  readonly leak?: Given;
}

export type PartSpec =
  | ({ readonly part: 'hole' } & HoleSpec)
  | ({
      readonly part: 'fan';
      readonly kind: string;
      readonly speed?: Given;
      readonly control?: Maybe<ControlSpec>;
    } & FanSpec)
  | ({ readonly part: 'filter'; readonly kind: string } & FilterSpec)
  | ({ readonly part: 'carbon'; readonly kind: string } & CarbonSpec)
  | ({ readonly part: 'duct'; readonly kind: string; readonly length?: Given } & DuctSpec)
  | ({ readonly part: FittingName; readonly kind: string } & FittingSpec)
  | ({ readonly part: 'flap'; readonly kind: string } & FlapSpec)
  | { readonly part: 'loss'; readonly loss: Quantity; readonly size: Section };

export interface PathSpec {
  readonly from: string;
  readonly to: string;
  readonly hole?: Maybe<Section>;
  readonly count?: Maybe<number>;
  readonly at?: Maybe<PlaceSpec>;
  readonly blows?: Maybe<'in' | 'wall' | 'away'>;
  readonly wind?: Given;
  readonly parts?: Maybe<readonly PartSpec[]>;
}

export interface SensorSpec {
  readonly bay: string;
  readonly height?: Given;
  readonly offset?: Given;
  readonly lag?: Given;
}

export interface HeatKindSpec extends LampKindSpec {
  readonly what?: Maybe<'lamp' | 'drier' | 'heater' | 'other'>;
  readonly power?: Given;
  readonly holds?: Given;
  readonly water?: Given;
}

export interface HeatSpec extends HeatKindSpec, LampPlaceSpec {
  readonly kind?: Maybe<string>;
  readonly bay?: Maybe<string>;
  readonly control?: Maybe<ControlSpec>;
}

export interface JobSpec {
  readonly machine?: Maybe<string>;
  readonly material: string;
  readonly start: number;
  readonly for: Quantity;
  readonly nozzle?: Given;
  readonly bed?: Given;
  readonly mass?: Given;
  readonly 'part-size'?: Given;
  readonly 'bed-stuck'?: Maybe<boolean>;
}

export interface DoorOpeningSpec {
  readonly door?: Maybe<string>;
  readonly at: number;
  readonly for: Quantity;
}

export interface DaySpec {
  readonly title?: Maybe<string>;
  readonly length?: Given;
  readonly jobs?: Maybe<Named<JobSpec>>;
  readonly doors?: Maybe<readonly DoorOpeningSpec[]>;
  readonly 'room-temperature'?: Maybe<Course>;
  readonly 'outdoor-temperature'?: Maybe<Course>;
  /** s; an end after midnight is beyond 24 h. */
  readonly 'power-cut'?: Maybe<readonly [number, number]>;
  readonly repeated?: Maybe<boolean>;
}

export interface BoardSpec extends BoardStrengthSpec, BoardSoundSpec {
  readonly conductivity: Quantity;
  readonly density: Quantity;
  readonly 'heat-capacity': Quantity;
  readonly emissivity: Quantity;
  readonly sunlight?: Given;
  readonly 'heat-of-combustion'?: Given;
  readonly sheet?: Maybe<Lengths>;
  readonly reflectance?: Given;
  readonly price?: Maybe<Money>;
}

export interface SealSpec {
  readonly gap: Quantity;
  readonly depth: Quantity;
  readonly price?: Maybe<Money>;
}

/** Catalogue entries say where their numbers come from. */
export interface Entry {
  readonly source?: Maybe<string>;
  readonly price?: Maybe<Money>;
}

export interface PartsSpec {
  readonly boards?: Maybe<Named<BoardSpec & Entry>>;
  readonly seals?: Maybe<Named<SealSpec & Entry>>;
  readonly foams?: Maybe<Named<FoamKindSpec & Entry>>;
  readonly fans?: Maybe<Named<FanSpec & Entry>>;
  readonly filters?: Maybe<Named<FilterSpec & Entry>>;
  readonly carbons?: Maybe<Named<CarbonSpec & Entry>>;
  readonly ducts?: Maybe<Named<DuctSpec & Entry>>;
  readonly fittings?: Maybe<Named<FittingSpec & Entry & { readonly what: FittingName }>>;
  readonly flaps?: Maybe<Named<FlapSpec & Entry>>;
  readonly machines?: Maybe<Named<MachineKindSpec & Entry>>;
  readonly heats?: Maybe<Named<HeatKindSpec & Entry>>;
  readonly materials?: Maybe<Named<MaterialSpec & Entry>>;
  readonly finishes?: Maybe<Named<FinishSpec & Entry>>;
  readonly cameras?: Maybe<Named<CameraKindSpec & Entry>>;
}

export interface EditSpec {
  readonly set?: Maybe<Readonly<Record<string, unknown>>>;
  readonly add?: Maybe<Readonly<Record<string, unknown>>>;
  readonly remove?: Maybe<readonly string[]>;
}

export interface OptionSpec {
  readonly title?: Maybe<string>;
  readonly edits: readonly EditSpec[];
}

export interface FileSpec {
  readonly stillair: number;
  readonly title?: Maybe<string>;
  readonly currency?: Maybe<string>;
  readonly room?: Maybe<RoomSpec>;
  readonly outdoors?: Maybe<OutdoorsSpec>;
  readonly people?: Maybe<Named<PersonSpec>>;
  readonly cabinet: CabinetSpec;
  readonly bays?: Maybe<Named<BaySpec>>;
  readonly shelves?: Maybe<Named<ShelfSpec>>;
  readonly machines?: Maybe<Named<MachineSpec>>;
  readonly materials?: Maybe<Named<MaterialSpec>>;
  readonly air?: Maybe<Named<PathSpec>>;
  readonly sensors?: Maybe<Named<SensorSpec>>;
  readonly heats?: Maybe<Named<HeatSpec>>;
  readonly cameras?: Maybe<Named<CameraSpec>>;
  readonly power?: Maybe<PowerSpec>;
  readonly spools?: Maybe<Named<SpoolSpec>>;
  readonly days: Named<DaySpec>;
  readonly queue?: Maybe<QueueSpec>;
  readonly parts?: Maybe<PartsSpec>;
  readonly overrides?: Maybe<Readonly<Record<string, string | number>>>;
  readonly limits?: Maybe<Readonly<Record<string, string | number>>>;
  readonly prices?: Maybe<Named<Money>>;
  readonly protection?: Maybe<ProtectionSpec>;
  readonly costs?: Maybe<CostsSpec>;
  readonly carcasses?: Maybe<Named<CarcassSpec>>;
  readonly care?: Maybe<CareSpec>;
  readonly options?: Maybe<Named<OptionSpec>>;
  readonly search?: Maybe<SearchSpec>;
  readonly fittings?: Maybe<Named<FittingPartSpec>>;
  readonly joinery?: Maybe<JoinerySpec>;
  readonly calibration?: Maybe<CalibrationSpec>;
}
