// The cabinet that a cabinet file describes, resolved: every default filled in, every part looked up, all in SI and kelvin.
// Plain data. Where each number came from is kept beside it, in `Origins`, by the path of the number in this object.

import type { Profile } from '../units/profile.ts';
import type { Calibration } from './calibration.ts';
import type { OwnCare } from './care.ts';
import type { Carcass, Costs } from './costs.ts';
import type { Drive, SpoolPart } from './filament.ts';
import type { Fit } from './fit.ts';
import type { Fittings } from './fittings.ts';
import type { Joinery } from './joinery.ts';
import type { Camera, Light } from './light.ts';
import type { Mains, Power } from './power.ts';
import type { Protection } from './protection.ts';
import type { Queue } from './queue.ts';
import type { SearchPlan } from './search-spec.ts';
import type { CabinetSound, Muffler } from './sound.ts';
import type { Standing, Structure } from './structure.ts';

/** Width is x (left to right), depth is y (front to back), height is z (up), from the inside lower left front corner. */
export interface Size {
  readonly width: number;
  readonly depth: number;
  readonly height: number;
}

export type FaceName = 'front' | 'back' | 'left' | 'right' | 'top' | 'bottom';

export interface Layer {
  /** Board of the catalogue, or the file's own. */
  readonly material: string;
  readonly thickness: number;
  readonly conductivity: number;
  readonly density: number;
  readonly heatCapacity: number;
  /** It lines the inside and is no part of the board behind it. */
  readonly lining?: true;
}

/** A build-up from inside to outside. */
export interface Build {
  readonly layers: readonly Layer[];
  readonly emissivityInside: number;
  readonly emissivityOutside: number;
  /** Share of sunlight let through; 0 for boards. */
  readonly solarTransmittance: number;
  /** Given U-value between two room films (0.13 m²K/W each): scales the resistances, keeps the heat capacity. W/(m²K). */
  readonly uValue?: number;
}

export interface Face {
  readonly build: Build;
  /** What the outer side looks at: the free room, a room wall or floor behind an air gap, or outdoors. */
  readonly against: 'room' | 'wall' | 'floor';
  /** Width of that gap, m; 0 touching. */
  readonly gap: number;
}

export interface Door {
  readonly face: FaceName;
  readonly bays: readonly string[];
  readonly build: Build;
  /** Mean gap left by the seal all round, and its depth along the air's way, m. */
  readonly sealGap: number;
  readonly sealDepth: number;
  /** Sun on the pane, W/m² over the day (s, W/m²); empty for none. */
  readonly sun: Profile;
}

export interface Bay {
  /** Ranges inside the cabinet, m. */
  readonly x: readonly [number, number];
  readonly z: readonly [number, number];
  /** One well mixed zone, or low and high. */
  readonly airZones: 1 | 2;
}

/** A board between two bays. */
export interface Partition {
  /** Id of the shelf in the file, or the ids of its bays with a hyphen between. */
  readonly id: string;
  readonly bays: readonly [string, string];
  readonly build: Build;
}

export interface Room {
  readonly size: Size;
  /** Over the day, K: the room without the cabinet, or with it when `held`. */
  readonly temperature: Profile;
  readonly held: boolean;
  /** 0…1 */
  readonly humidity: number;
  readonly airChangesPerHour: number;
  /** Through the room's walls, W/K, without its air change. */
  readonly heatLoss: number;
  /** J/K: air, furniture and the skin of the walls. */
  readonly heatCapacity: number;
  /** Background, by contaminant, in that contaminant's unit. */
  readonly background: Readonly<Record<string, number>>;
  /** First-order particle loss, 1/s. */
  readonly deposition: number;
  readonly airCleaner: number;
}

export interface Outdoors {
  readonly temperature: Profile;
  readonly humidity: number;
  /** m/s */
  readonly windSpeed: number;
  readonly background: Readonly<Record<string, number>>;
}

export interface Person {
  /** From the cabinet's inside lower left front corner, m. */
  readonly at: readonly [number, number, number];
  /** Hours of the day in which they are there: [start, end] s. */
  readonly hours: readonly (readonly [number, number])[];
}

export interface Bed {
  readonly width: number;
  readonly depth: number;
  /** Height of its top above the bay's floor, m. */
  readonly height: number;
  readonly thickness: number;
  readonly heatCapacity: number;
  readonly powerMax: number;
  readonly emissivityTop: number;
  /** Foam under the plate, or bare with this emissivity. */
  readonly underside:
    | { readonly kind: 'foam'; readonly thickness: number }
    | { readonly kind: 'bare'; readonly emissivity: number };
  /** Mean speed of the bed's own motion while printing, m/s; 0 for a bed that stands still. */
  readonly motion: number;
}

/** A machine's own inner room. */
export interface Chamber {
  readonly size: Size;
  readonly build: Build;
  /** Free leakage area to the bay, m². */
  readonly leakArea: number;
  /** Its own exhaust fan into the bay while printing, m³/s; 0 none. */
  readonly exhaustFlow: number;
  /** Efficiency of the filter in that exhaust, by contaminant. */
  readonly exhaustFilter: Readonly<Record<string, number>>;
  /** Filter that turns its own air round, m³/s. */
  readonly recirculation: number;
  readonly recirculationFilter: Readonly<Record<string, number>>;
  readonly lamp: number;
  /** Heater power W, and the air temperature it holds, K; 0 none. */
  readonly heater: number;
  readonly heaterSet: number;
}

export interface Machine extends Standing {
  readonly kind: string;
  readonly bay: string;
  readonly style: 'moving-bed' | 'fixed-bed' | 'delta' | 'chambered';
  /** Footprint centre in the bay from its left front lower corner, m. */
  readonly at: readonly [number, number];
  readonly size: Size;
  readonly bed: Bed;
  /** Printing, W, into the air around the nozzle: block, melt and spill of the part fan, without the cold side. */
  readonly hotEnd: number;
  /** Area and heat-transfer of the hot end are folded into `hotEnd`; it scales with (nozzle − air). K reference nozzle. */
  readonly hotEndAt: number;
  readonly motors: number;
  readonly electronics: number;
  readonly electronicsInside: boolean;
  /** Highest air temperature at the electronics, K. */
  readonly electronicsLimit: number;
  /** Highest air temperature around the frame for the printer itself (motors, printed parts), K. */
  readonly frameLimit: number;
  readonly supply: { readonly inside: boolean; readonly efficiency: number; readonly idle: number };
  /** Standby draw of all of it, W, while no job runs but the machine is on. */
  readonly standby: number;
  readonly frameHeatCapacity: number;
  readonly frameArea: number;
  readonly mains: Mains;
  readonly drive: Drive;
  readonly chamber?: Chamber;
}

export interface EmissionSpread {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

export interface Material {
  readonly nozzle: number;
  readonly bed: number;
  /** Air around the part, K: prints well when the air is still; best for large parts. */
  readonly bandWell: readonly [number, number];
  readonly bandBest: readonly [number, number];
  /** Highest air speed at the part, m/s. */
  readonly draughtLimit: number;
  readonly density: number;
  /** K */
  readonly glassTransition: number;
  /** Warmest air that its spool should hang in, K. */
  readonly spoolLimit: number;
  /** Dampest air, 0…1, in which its spool stays dry enough. */
  readonly humidityLimit: number;
  /** Of the filament, Pa. */
  readonly elasticModulus: number;
  /** Strain of the outer fibre that it bears in a bend. */
  readonly bendStrain: number;
  /** Units per second while printing: 'particles' 1/s, vapours µg/s. */
  readonly emissions: Readonly<Record<string, EmissionSpread>>;
}

/** Sizes of a hole or duct's section. */
export type Section =
  | { readonly shape: 'round'; readonly diameter: number }
  | { readonly shape: 'rectangular'; readonly width: number; readonly height: number };

export type PathPart =
  | { readonly part: 'hole'; readonly section: Section; readonly count: number; readonly dischargeCoefficient: number }
  /** Anything whose loss is K·ρv²/2 on this area: grille, guard, louvre, bend, muffler, adapter. */
  | {
      readonly part: 'loss';
      readonly what: string;
      readonly loss: number;
      readonly area: number;
      /** The shape of that area, for what is drawn; air knows only the area. */
      readonly section?: Section;
      readonly muffler?: Muffler;
    }
  | { readonly part: 'duct'; readonly diameter: number; readonly length: number; readonly flexible: boolean }
  | {
      readonly part: 'filter';
      readonly kind: string;
      readonly faceArea: number;
      /** The shape of its face, for what is drawn. */
      readonly section?: Section;
      /** dp = linear·Q + quadratic·Q|Q|, clean. */
      readonly linear: number;
      readonly quadratic: number;
      /** Clean medium, without bypass, by contaminant. */
      readonly efficiency: Readonly<Record<string, number>>;
      /** Gap at the seat, m, its length and depth. */
      readonly seatGap: number;
      readonly seatLength: number;
      readonly seatDepth: number;
      /** Share of its dust capacity used. */
      readonly loading: number;
      readonly dustCapacity: number;
    }
  | {
      readonly part: 'carbon';
      readonly kind: string;
      readonly mass: number;
      readonly depth: number;
      readonly grain: number;
      readonly faceArea: number;
      /** The shape of its face, for what is drawn. */
      readonly section?: Section;
      readonly linear: number;
      readonly quadratic: number;
      /** Fresh single-pass efficiency by vapour at the flow expected. */
      readonly efficiency: Readonly<Record<string, number>>;
      /** kg/kg already held. */
      readonly load: number;
    }
  | {
      readonly part: 'fan';
      readonly kind: string;
      /** [m³/s, Pa] at full speed, falling. */
      readonly curve: readonly (readonly [number, number])[];
      readonly diameter: number;
      readonly watts: number;
      /** Free-field sound pressure level at 1 m, full speed, dB(A). */
      readonly noiseDbA: number;
      readonly speed: number;
      readonly control: Control;
    }
  | { readonly part: 'flap'; readonly opensAt: number; readonly leakArea: number };

export type Control =
  | { readonly kind: 'always' }
  | { readonly kind: 'never' }
  | { readonly kind: 'timer'; readonly windows: readonly (readonly [number, number])[] }
  /** While any of these machines has a job, from `lead` before to `runOn` after. */
  | { readonly kind: 'job'; readonly machines: readonly string[]; readonly lead: number; readonly runOn: number }
  | { readonly kind: 'thermostat'; readonly sensor: string; readonly on: number; readonly off: number }
  | {
      readonly kind: 'air-quality';
      readonly contaminant: string;
      readonly place: string;
      readonly on: number;
      readonly off: number;
    }
  | {
      readonly kind: 'proportional';
      readonly sensor: string;
      readonly from: number;
      readonly to: number;
      readonly low: number;
      readonly high: number;
    }
  | {
      readonly kind: 'stages';
      readonly sensor: string;
      readonly stages: readonly { readonly on: number; readonly off: number; readonly speed: number }[];
    };

export interface CabinetPath {
  /** 'room', 'outdoors', a bay, or a machine's chamber (`machine.chamber`). Same bay twice: it turns the bay's air round. */
  readonly from: string;
  readonly to: string;
  /** Where it pierces the cabinet: face and centre, x or y along the face and z up, m. */
  readonly place: { readonly face: FaceName; readonly along: number; readonly z: number };
  /** Where the air of a turned-round path leaves again, or an intake's jet points: 'in' straight into the bay, 'wall' along the face, 'away' from the prints. */
  readonly blows: 'in' | 'wall' | 'away';
  readonly parts: readonly PathPart[];
  /** Wind pressure coefficient of an end outdoors, −1…1. */
  readonly windCoefficient: number;
}

export interface SensorPart {
  readonly bay: string;
  /** Above the bay's floor, m. */
  readonly height: number;
  readonly offset: number;
  readonly lag: number;
}

/** Lamps, driers, heaters: whatever else gives heat. */
export interface HeatPart {
  readonly what: 'lamp' | 'drier' | 'heater' | 'other';
  readonly bay: string;
  readonly watts: number;
  readonly control: Control;
  /** Holds this air temperature instead (heaters), K; absent: on while controlled on. */
  readonly holds?: number;
  /** Water given off, kg/s, while on. */
  readonly water: number;
}

export interface Job {
  readonly machine: string;
  readonly material: string;
  /** s after midnight of the day's start. */
  readonly start: number;
  readonly duration: number;
  readonly nozzle: number;
  readonly bed: number;
  /** kg of filament. */
  readonly mass: number;
  /** Largest span of the part, m: for the draught limit and the band it wants. */
  readonly partSize: number;
  /** A fault: the bed heats at full power from the job's start to the end of the day, whatever is asked of it. */
  readonly bedStuck?: true;
}

export interface DoorOpening {
  readonly door: string;
  readonly start: number;
  readonly duration: number;
}

export interface Day {
  readonly title: string;
  readonly length: number;
  readonly jobs: Readonly<Record<string, Job>>;
  readonly doorOpenings: readonly DoorOpening[];
  /** Replace the room's and outdoors' own on this day. */
  readonly roomTemperature?: Profile;
  readonly outdoorTemperature?: Profile;
  /** Without power from … to, s, within the day. Jobs that it ends are shorter already, those that it keeps from starting are left out. */
  readonly powerCut?: readonly [start: number, end: number];
  /** Repeat until the day begins as it ends. */
  readonly repeated: boolean;
}

/** Factors on what correlations give, 1 unless overruled; each has a spread. */
export interface Factors {
  readonly insideFilm: number;
  readonly outsideFilm: number;
  /** On what boards and panes conduct. */
  readonly wallLoss: number;
  readonly bedLoss: number;
  readonly leakage: number;
  readonly fanFlow: number;
  readonly plume: number;
  readonly emissionParticles: number;
  readonly emissionVapours: number;
  readonly roomHeatLoss: number;
}

export interface Edit {
  readonly set?: Readonly<Record<string, unknown>>;
  readonly add?: Readonly<Record<string, unknown>>;
  readonly remove?: readonly string[];
}

export interface Option {
  readonly title: string;
  readonly edits: readonly Edit[];
}

/** What replaces a derived quantity, by its registered path. */
export type Overrides = Readonly<Record<string, number>>;

export interface Cabinet {
  readonly title: string;
  readonly currency: string;
  readonly room: Room;
  readonly outdoors: Outdoors;
  readonly people: Readonly<Record<string, Person>>;
  /** Inside of the whole carcass. */
  readonly inside: Size;
  readonly faces: Readonly<Record<FaceName, Face>>;
  readonly doors: Readonly<Record<string, Door>>;
  readonly bays: Readonly<Record<string, Bay>>;
  readonly partitions: readonly Partition[];
  /** Mean gap of the carcass' joints (board to board), m. */
  readonly jointGap: number;
  readonly machines: Readonly<Record<string, Machine>>;
  readonly materials: Readonly<Record<string, Material>>;
  readonly paths: Readonly<Record<string, CabinetPath>>;
  readonly sensors: Readonly<Record<string, SensorPart>>;
  readonly heats: Readonly<Record<string, HeatPart>>;
  readonly light: Light;
  readonly cameras: Readonly<Record<string, Camera>>;
  readonly power: Power;
  readonly spools: Readonly<Record<string, SpoolPart>>;
  readonly days: Readonly<Record<string, Day>>;
  /** Jobs that wait; absent when the file has none. */
  readonly queue?: Queue;
  readonly structure: Structure;
  readonly sound: CabinetSound;
  readonly factors: Factors;
  readonly overrides: Overrides;
  /** Limits the person sets themselves, by limit id, SI. */
  readonly limits: Readonly<Record<string, number>>;
  /** Price of everything listed, with its spread; by part path. */
  readonly prices: Readonly<Record<string, { readonly low: number; readonly high: number; readonly source: string }>>;
  readonly protection: Protection;
  readonly costs: Costs;
  /** Carcasses that are thought of in place of this one. */
  readonly carcasses: Readonly<Record<string, Carcass>>;
  /** How often the person wants parts looked after, in place of common practice. */
  readonly care: OwnCare;
  readonly options: Readonly<Record<string, Option>>;
  /** What a search may change; absent when the file does not say. */
  readonly search?: SearchPlan;
  readonly fit: Fit;
  readonly fittings: Fittings;
  readonly joinery: Joinery;
  readonly calibration?: Calibration;
}
