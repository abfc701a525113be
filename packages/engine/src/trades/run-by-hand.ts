// Runs made by hand for tests: a small real cabinet and its real network, and a record whose every column is what the test says.

import type { Cabinet, CabinetPath, Control, Day, Layer, Machine, Material, PathPart } from '../cabinet/cabinet.ts';
import type { Motion } from '../cabinet/fit.ts';
import type { DayRecord, Table, Warning } from '../day/record.ts';
import { assemble } from '../network/assemble.ts';
import type { Network } from '../network/network.ts';
import type { DayRun } from './measure.ts';

const CELSIUS = 273.15;
const plywood: Layer = { material: 'plywood', thickness: 0.018, conductivity: 0.13, density: 500, heatCapacity: 1600 };
const board = { layers: [plywood], emissivityInside: 0.9, emissivityOutside: 0.9, solarTransmittance: 0 } as const;
const face = { build: board, against: 'room', gap: 0 } as const;

export const exhaustFan = (control: Control = { kind: 'always' }): PathPart => ({
  part: 'fan',
  kind: 'axial fan 92 mm',
  curve: [
    [0, 40],
    [0.0125, 20],
    [0.025, 0],
  ],
  diameter: 0.092,
  watts: 3,
  noiseDbA: 30,
  speed: 1,
  control,
});

export const filter: PathPart = {
  part: 'filter',
  kind: 'pleated filter',
  faceArea: 0.0225,
  linear: 1500,
  quadratic: 0,
  efficiency: { particles: 0.9995 },
  seatGap: 0,
  seatLength: 0.6,
  seatDepth: 0.02,
  loading: 0,
  dustCapacity: 0.006,
};

export const hole = (diameter: number): PathPart => ({
  part: 'hole',
  section: { shape: 'round', diameter },
  count: 1,
  dischargeCoefficient: 0.62,
});

export function pathByHand(
  from: string,
  to: string,
  z: number,
  parts: readonly PathPart[],
  face: CabinetPath['place']['face'] = 'back',
): CabinetPath {
  return { from, to, place: { face, along: 0.4, z }, blows: 'in', parts, windCoefficient: 0 };
}

export const material: Material = {
  nozzle: 518,
  bed: 373,
  bandWell: [CELSIUS + 30, CELSIUS + 60],
  bandBest: [CELSIUS + 45, CELSIUS + 65],
  draughtLimit: 0.2,
  density: 1040,
  glassTransition: CELSIUS + 100,
  spoolLimit: CELSIUS + 55,
  humidityLimit: 0.5,
  elasticModulus: 2.2e9,
  bendStrain: 0.025,
  emissions: {
    particles: { p10: 1e7, p50: 1e8, p90: 1e9 },
    styrene: { p10: 0.1, p50: 0.5, p90: 2 },
  },
};

const machine: Machine = {
  kind: 'moving bed 220',
  bay: 'lower',
  style: 'moving-bed',
  at: [0.4, 0.3],
  size: { width: 0.45, depth: 0.45, height: 0.5 },
  bed: {
    width: 0.235,
    depth: 0.235,
    height: 0.15,
    thickness: 0.006,
    heatCapacity: 500,
    powerMax: 250,
    emissivityTop: 0.9,
    underside: { kind: 'foam', thickness: 0.01 },
    motion: 0,
  },
  hotEnd: 20,
  hotEndAt: 518,
  motors: 15,
  electronics: 8,
  electronicsInside: true,
  electronicsLimit: CELSIUS + 45,
  frameLimit: CELSIUS + 60,
  supply: { inside: true, efficiency: 0.88, idle: 3 },
  standby: 5,
  frameHeatCapacity: 3000,
  frameArea: 0.5,
  mass: 8,
  feet: { width: 0.3, depth: 0.3 },
  shaking: {
    headMass: 0.4,
    bedMass: 1.5,
    acceleration: 1.5,
    speed: 0.1,
    stroke: 0.02,
    travelPerTurn: 0.04,
    stepsPerTurn: 200,
  },
  mains: { powerFactor: 0.65, inrush: 40, leakage: 0.0006, plug: 'plain' },
  drive: { pull: 3, push: 20, gap: 0.002, filament: 0.00175 },
};

const day: Day = {
  title: 'usual',
  length: 86400,
  jobs: {
    bracket: {
      machine: 'left',
      material: 'ABS',
      start: 32400,
      duration: 21600,
      nozzle: 518,
      bed: 373,
      mass: 0.1,
      partSize: 0.15,
    },
  },
  doorOpenings: [],
  repeated: false,
};

/** Reaches 245 mm before and 285 mm behind the middle of a frame 400 mm deep. */
const motionByHand: Motion = {
  frame: { width: 0.4, depth: 0.4, height: 0.5 },
  bedTravel: 0.235,
  bedOffset: 0,
  clipFront: 0.01,
  cableRear: 0.05,
  carriageLeft: 0.03,
  carriageRight: 0.03,
  tubeArch: 0.08,
  spool: 'away',
  spoolSize: { diameter: 0.2, width: 0.07 },
  spoolLift: 0.03,
  plug: 0.07,
  withoutTop: 0,
  lid: 0,
  placed: true,
};

/** One bay with one machine, a hole low in the back, a fan and filter high in it. All figures invented. */
export const cabinetByHand: Cabinet = {
  title: 'made by hand',
  currency: 'EUR',
  room: {
    size: { width: 4, depth: 4, height: 2.5 },
    temperature: [[0, CELSIUS + 21]],
    held: false,
    humidity: 0.5,
    airChangesPerHour: 0.5,
    heatLoss: 40,
    heatCapacity: 400_000,
    background: { particles: 3e9, pm25: 6, tvoc: 100 },
    deposition: 1 / 3600,
    airCleaner: 0,
  },
  outdoors: { temperature: [[0, CELSIUS + 10]], humidity: 0.7, windSpeed: 0, background: { particles: 3e9 } },
  people: { desk: { at: [0.4, -1.5, 1.2], hours: [[32400, 61200]] } },
  inside: { width: 0.8, depth: 0.6, height: 0.85 },
  faces: { front: face, back: face, left: face, right: face, top: face, bottom: { ...face, against: 'floor' } },
  doors: { front: { face: 'front', bays: ['lower'], build: board, sealGap: 0.0005, sealDepth: 0.018, sun: [] } },
  bays: { lower: { x: [0, 0.8], z: [0, 0.85], airZones: 1 } },
  partitions: [],
  jointGap: 0,
  machines: { left: machine },
  materials: { ABS: material },
  paths: {
    intake: pathByHand('room', 'lower', 0.1, [hole(0.092)]),
    exhaust: pathByHand('lower', 'room', 0.75, [filter, exhaustFan()]),
  },
  sensors: {},
  heats: {},
  structure: {
    boards: { plywood: { along: 8e9, across: 5e9, stress: 15e6, creep: 0.8 } },
    shelves: {},
    bottom: {
      joint: 'cleats',
      endFixity: 0,
      grain: 'along',
      pins: { count: 4, diameter: 0.005, depth: 0.01 },
      posts: 0,
      load: 0,
      pullsOut: 0,
    },
    hinges: { front: { spacing: 0.6, count: 2, carries: 4 } },
    feet: { count: 0, size: 0.04, height: 0, inset: 0 },
    wallStrap: false,
  },
  light: {
    reflectances: { plywood: 0.5, 'machine frames': 0.15 },
    faces: { front: 'plywood', back: 'plywood', left: 'plywood', right: 'plywood', top: 'plywood', bottom: 'plywood' },
    doors: { front: 'plywood' },
    partitions: [],
    machines: { left: 'machine frames' },
    chambers: {},
    lamps: {},
    chamberLamps: {},
  },
  cameras: {},
  power: {
    region: 'EU',
    voltage: 230,
    circuit: 16,
    breaker: 'B',
    rcd: 0.03,
    others: 0,
    stagger: 0,
    magnet: 4,
    switched: 'together',
    tariff: [[0, 0.3 / 3.6e6]],
    strips: { strip: { sockets: 6, rating: 16, where: 'outside', from: 'wall', feeds: ['left', 'low-voltage'] } },
    supplies: {
      'low-voltage': {
        voltage: 24,
        watts: 24,
        efficiency: 0.86,
        where: 'outside',
        feeds: ['exhaust'],
        powerFactor: 0.65,
        inrush: 15,
        leakage: 0.0002,
        plug: 'bulky',
      },
    },
    wires: {},
  },
  spools: {
    'left-ABS': {
      machine: 'left',
      material: 'ABS',
      mass: 1,
      empty: 0.22,
      diameter: 0.2,
      width: 0.065,
      where: 'lower',
      holder: 'bearing',
      written: false,
      path: { bends: Math.PI, guide: 'tube', friction: 0.15, radius: 0.06, unwinding: 0.3 },
    },
  },
  days: { usual: day },
  sound: {
    machines: { left: { printingDbA: 48, idleDbA: 30, octavesDb: [0, 0, 0, 0, 0, 0, 0, 0] } },
    boards: { plywood: { coincidence: 20, damping: 0.03, transmission: [], absorption: [] } },
    people: { desk: [] },
    room: { reverberation: 0.5, backgroundDbA: 30 },
    doubt: { panelsDb: 0, lowBandsDb: 0, builtInDb: 5 },
  },
  factors: {
    insideFilm: 1,
    outsideFilm: 1,
    wallLoss: 1,
    bedLoss: 1,
    leakage: 1,
    fanFlow: 1,
    plume: 1,
    emissionParticles: 1,
    emissionVapours: 1,
    roomHeatLoss: 1,
  },
  overrides: {},
  limits: {},
  prices: {},
  protection: {
    onAlarm: {},
    combustion: { plywood: 18e6, ABS: 36e6 },
    figures: { oxygenHeat: 13.1e6, weakOxygen: 0.15, growth: 11.72, openingAir: 0.5 },
  },
  costs: {
    pricePosition: 0.5,
    hoursFactor: 1,
    kerf: 0.0032,
    trim: 0.01,
    turned: false,
    sheets: { plywood: [2.5, 1.25] },
    contingencyMaterial: 0.1,
    contingencyHours: 0.2,
    boards: { plywood: { low: 30, high: 40 } },
    devices: {},
    wear: 0.05 / 3600,
    machineLife: 1.8e7,
    failures: 0.1,
    waste: 0.05,
    filterLife: 3.6e6,
    carbonLife: 1.2e6,
    hand: 600,
    cabinetLife: 2e8,
    filament: { ABS: { low: 20, high: 30 } },
    times: {},
  },
  carcasses: {},
  care: {},
  options: {},
  fit: {
    tolerance: 0,
    machines: { left: motionByHand },
    doors: { front: { hinge: 'left', takes: 0.015, standsIn: 0, lip: 0 } },
  },
  fittings: {},
  joinery: { corners: 'butt', leaves: { front: { gap: 0.0025 } }, measured: {} },
};

/** A number for all day, or a course of time; at a jump the time before it is a hair earlier. */
export type Told = number | ((time: number) => number);

export interface RunByHand {
  readonly cabinet?: Cabinet;
  readonly day?: string;
  /** Rows, s: every hour, and both sides of every break, unless given. */
  readonly times?: readonly number[];
  /** K, of zones and nodes; the rest has the room's start temperature. */
  readonly temperatures?: Readonly<Record<string, Told>>;
  readonly pressures?: Readonly<Record<string, Told>>;
  readonly flows?: Readonly<Record<string, Told>>;
  readonly counterFlows?: Readonly<Record<string, Told>>;
  readonly exchanges?: Readonly<Record<string, Told>>;
  /** 1 unless said otherwise. */
  readonly fanSpeeds?: Readonly<Record<string, Told>>;
  readonly bedPowers?: Readonly<Record<string, Told>>;
  readonly thermostats?: Readonly<Record<string, Told>>;
  /** By contaminant and zone; the rest keeps its initial level. */
  readonly concentrations?: Readonly<Record<string, Readonly<Record<string, Told>>>>;
  readonly carbonLoads?: Readonly<Record<string, Told>>;
  readonly warnings?: readonly Warning[];
}

export function runByHand(told: RunByHand = {}): DayRun {
  const { cabinet = cabinetByHand, day: dayId = 'usual' } = told;
  const assembly = assemble(cabinet, dayId);
  const { network } = assembly;
  const times = Float64Array.from(told.times ?? rowsOf(network));
  const table = (
    names: readonly string[],
    columns: Readonly<Record<string, Told>> = {},
    rest: (name: string) => number,
  ): Table => {
    for (const name of Object.keys(columns))
      if (!names.includes(name)) throw new Error(`run by hand: there is no "${name}" among ${names.join(', ')}`);
    const values = new Float64Array(times.length * names.length);
    for (let row = 0; row < times.length; row += 1) {
      const before = times[row + 1] === times[row];
      for (const [column, name] of names.entries()) {
        const course = columns[name] ?? rest(name);
        values[row * names.length + column] =
          typeof course === 'number' ? course : course(times[row]! - (before ? 1e-6 : 0));
      }
    }
    return { names, values };
  };
  const start = cabinet.room.temperature[0]![1];
  const zones = network.zones.map(({ name }) => name);
  const bodies = [...zones, ...network.nodes.map(({ name }) => name), ...wallNodes(network)];
  const paths = network.paths.map(({ name }) => name);
  const fans = network.paths.flatMap((path) => (path.type === 'fan-path' ? path.fans.map(({ name }) => name) : []));
  const none = (): number => 0;
  const record: DayRecord = {
    network,
    times,
    temperatures: table(bodies, told.temperatures, () => start),
    // None: everything runs straight between rows.
    slopes: { names: [], values: new Float64Array(0) },
    pressures: table(zones, told.pressures, none),
    flows: table(paths, told.flows, none),
    counterFlows: table(paths, told.counterFlows, none),
    exchanges: table(
      network.exchanges.map(({ name }) => name),
      told.exchanges,
      none,
    ),
    fanSpeeds: table(fans, told.fanSpeeds, () => 1),
    bedPowers: table(
      network.machines.map(({ name }) => name),
      told.bedPowers,
      none,
    ),
    thermostats: table(
      network.thermostats.map(({ name }) => name),
      told.thermostats,
      none,
    ),
    concentrations: Object.fromEntries(
      network.contaminants.map(({ name, initial }) => [
        name,
        table(zones, told.concentrations?.[name], (zone) => initial[zone] ?? 0),
      ]),
    ),
    carbonLoads: table(
      network.carbonBeds.flatMap((bed) => bed.vapours.map(({ contaminant }) => `${bed.name}/${contaminant}`)),
      told.carbonLoads,
      none,
    ),
    events: [],
    warnings: told.warnings ?? [],
    work: { steps: 0, rejected: 0, newton: 0 },
  };
  return { cabinet, day: dayId, assembly, record };
}

function wallNodes({ walls }: Network): string[] {
  return walls.flatMap(({ name, layers, grid }) => {
    const slices = layers.reduce((sum, { nodes }) => sum + nodes, 0);
    return Array.from({ length: grid === 'faces' ? slices + 1 : slices }, (_, at) => `${name}.${at + 1}`);
  });
}

/** Every hour, and both sides of each schedule break. */
function rowsOf({ duration, schedule }: Network): number[] {
  const breaks = schedule.flatMap(({ start, end }) => [start, end]).filter((time) => time > 0 && time < duration);
  const hours = Array.from({ length: Math.floor(duration / 3600) + 1 }, (_, hour) => hour * 3600);
  const once = [...new Set([...hours, ...breaks, duration])].sort((a, b) => a - b);
  return once.flatMap((time) => (breaks.includes(time) ? [time, time] : [time]));
}
