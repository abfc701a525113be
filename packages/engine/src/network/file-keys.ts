// Every key of a network file, by the kind of map it stands in. docs/network-file.md says what each means; a test holds the two together.

import { type FileKey, type FileKeys, quantity, withUnit, word } from './file-key.ts';

const hours = { h: 3600, min: 60 };
const flows = { m3_h: 1 / 3600, l_s: 1e-3 };
const linearBelow = quantity('Pa', ['dp_lin', 'dp_min', 'linear_below']);
const discharge = word('Cd', 'cd', 'C_d', 'discharge_coefficient');
const area = quantity('m2', ['area', 'A'], { cm2: 1e-4 });
const width = quantity('m', ['width', 'w', 'W'], { mm: 1e-3 });
const height = quantity('m', ['height', 'h', 'H'], { mm: 1e-3 });
const active = word('active', 'open', 'control', 'when');
const efficiency = word('eff', 'efficiency');
const initial = withUnit('C', ['T0', 'T_0', 'T_init', 'T_initial', 'T_start']);
const film = (side: 'a' | 'b'): FileKey =>
  quantity('W_m2K', [`h_${side}`, `film_${side}`, `h_side_${side}`, side === 'a' ? 'ha' : 'hb']);
const course = { burst: word('burst'), tail: word('tail') };

/** Names by which the readers ask, by the kind of map. */
export type FileKeyTable = {
  readonly top: FileKeys<
    | 'version'
    | 'id'
    | 'title'
    | 'duration'
    | 'density'
    | 'fanDensityScaling'
    | 'analysis'
    | 'sweep'
    | 'constants'
    | 'initial'
    | 'breaks'
    | 'zones'
    | 'nodes'
    | 'conductances'
    | 'walls'
    | 'convections'
    | 'radiation'
    | 'stars'
    | 'heatSources'
    | 'paths'
    | 'exchanges'
    | 'airChanges'
    | 'machines'
    | 'schedule'
    | 'sensors'
    | 'thermostats'
    | 'contaminants'
    | 'recirculations'
    | 'carbonBeds'
    | 'emissions'
  >;
  readonly constants: FileKeys<
    'gravity' | 'atmosphere' | 'gasConstant' | 'heatCapacity' | 'referenceDensity' | 'stefanBoltzmann'
  >;
  readonly density: FileKeys<'model' | 'value'>;
  readonly sweep: FileKeys<'part' | 'key' | 'values'>;
  readonly zone: FileKeys<
    | 'name'
    | 'kind'
    | 'held'
    | 'initial'
    | 'heatCapacity'
    | 'pressure'
    | 'heldPressure'
    | 'zRef'
    | 'volume'
    | 'concentrations'
  >;
  readonly node: FileKeys<'name' | 'heatCapacity' | 'initial'>;
  readonly conductance: FileKeys<'name' | 'a' | 'b' | 'conductance' | 'active'>;
  readonly wall: FileKeys<'name' | 'a' | 'b' | 'area' | 'filmA' | 'filmB' | 'layers' | 'grid' | 'initial'>;
  readonly layer: FileKeys<'name' | 'thickness' | 'conductivity' | 'density' | 'heatCapacity' | 'nodes'>;
  readonly convection: FileKeys<
    'name' | 'surface' | 'air' | 'area' | 'faces' | 'length' | 'factor' | 'forced' | 'heatTo'
  >;
  readonly forcedFilm: FileKeys<'film' | 'active' | 'fan'>;
  readonly radiation: FileKeys<'name' | 'a' | 'b' | 'area' | 'emissivity' | 'factor'>;
  readonly star: FileKeys<'name' | 'members'>;
  readonly starMember: FileKeys<'node' | 'weight'>;
  readonly heatSource: FileKeys<'name' | 'node' | 'watts' | 'active' | 'profile'>;
  readonly path: FileKeys<'name' | 'type' | 'from' | 'to' | 'z' | 'open' | 'filterEfficiency'>;
  readonly orifice: FileKeys<'dischargeCoefficient' | 'area' | 'count' | 'linearBelow'>;
  readonly crack: FileKeys<'coefficient' | 'exponent' | 'linearBelow'>;
  readonly fixedFlow: FileKeys<'flow'>;
  readonly tallOpening: FileKeys<'dischargeCoefficient' | 'width' | 'height' | 'linearBelow'>;
  readonly fanPath: FileKeys<'fans' | 'filters' | 'resistance' | 'flap'>;
  readonly fan: FileKeys<'name' | 'curve' | 'control' | 'stopped' | 'speed'>;
  readonly curve: FileKeys<'kind' | 'poly' | 'points'>;
  readonly poly: FileKeys<'p0' | 'a' | 'b'>;
  readonly speedStages: FileKeys<'stages' | 'proportional'>;
  readonly stage: FileKeys<'when' | 'speed'>;
  readonly proportional: FileKeys<'sensor' | 'from' | 'to' | 'low' | 'high'>;
  readonly resistance: FileKeys<'name' | 'linear' | 'quadratic' | 'minor'>;
  readonly minor: FileKeys<'name' | 'loss' | 'area'>;
  readonly flap: FileKeys<'opensAt' | 'leakArea'>;
  readonly exchange: FileKeys<
    | 'name'
    | 'a'
    | 'b'
    | 'active'
    | 'law'
    | 'flow'
    | 'dischargeCoefficient'
    | 'width'
    | 'height'
    | 'area'
    | 'round'
    | 'coefficient'
    | 'path'
    | 'sources'
  >;
  readonly airChange: FileKeys<'name' | 'zone' | 'with' | 'perSecond'>;
  readonly machine: FileKeys<'name' | 'bed' | 'modes'>;
  readonly bed: FileKeys<'node' | 'powerMax' | 'supply'>;
  readonly supply: FileKeys<'node' | 'share'>;
  readonly mode: FileKeys<'name' | 'bedSet' | 'powers' | 'emissions'>;
  readonly power: FileKeys<'node' | 'watts'>;
  readonly modeEmission: FileKeys<'contaminant' | 'zone' | 'rate' | 'burst' | 'tail'>;
  readonly schedule: FileKeys<'machine' | 'mode' | 'start' | 'end'>;
  readonly sensor: FileKeys<'name' | 'at' | 'lag' | 'offset'>;
  readonly thermostat: FileKeys<'name' | 'sensor' | 'onAbove' | 'offBelow' | 'onBelow' | 'offAbove' | 'initial'>;
  readonly contaminantSensor: FileKeys<'contaminant' | 'zone'>;
  readonly contaminant: FileKeys<'name' | 'unit' | 'scale' | 'initial' | 'deposition' | 'coagulation' | 'outside'>;
  readonly recirculation: FileKeys<'name' | 'zone' | 'flow' | 'efficiency' | 'active'>;
  readonly carbonBed: FileKeys<'name' | 'in' | 'at' | 'mass' | 'vapours'>;
  readonly carbonVapour: FileKeys<'contaminant' | 'efficiency' | 'vapour' | 'kilogramsPerUnit' | 'load'>;
  readonly emission: FileKeys<'name' | 'contaminant' | 'zone' | 'rate' | 'active' | 'burst' | 'tail'>;
  readonly burst: FileKeys<'ratio' | 'time'>;
  readonly tail: FileKeys<'share' | 'time'>;
  readonly when: FileKeys<'windows' | 'thermostat' | 'machine' | 'modes' | 'anyOf' | 'allOf' | 'not'>;
};

export const fileKeys: FileKeyTable = {
  top: {
    version: word('version'),
    id: word('id'),
    title: word('title', 'name'),
    duration: quantity('s', ['duration', 't_end', 'end'], hours),
    density: word('density'),
    fanDensityScaling: word('fan_density_scaling'),
    analysis: word('analysis'),
    sweep: word('sweep', 'sweeps'),
    constants: word('constants', 'constant'),
    initial,
    breaks: quantity('s', ['breaks']),
    zones: word('zones'),
    nodes: word('nodes'),
    conductances: word('conductances'),
    walls: word('walls'),
    convections: word('convections'),
    radiation: word('radiation', 'radiations'),
    stars: word('radiant_stars'),
    heatSources: word('heat_sources', 'sources'),
    paths: word('paths', 'air_paths'),
    exchanges: word('exchanges', 'exchange'),
    airChanges: word('air_change', 'air_changes'),
    machines: word('machines'),
    schedule: word('schedule'),
    sensors: word('sensors'),
    thermostats: word('thermostats'),
    contaminants: word('contaminants'),
    recirculations: word('recirculation', 'recirculations'),
    carbonBeds: word('carbon_beds'),
    emissions: word('emissions', 'emission'),
  },
  constants: {
    gravity: quantity('m_s2', ['g', 'gravity']),
    atmosphere: quantity('Pa', ['p_atm', 'atmosphere', 'p_atmosphere']),
    gasConstant: quantity('J_kgK', ['R', 'R_air', 'gas_constant']),
    heatCapacity: quantity('J_kgK', ['cp', 'c_p', 'heat_capacity']),
    referenceDensity: quantity('kg_m3', ['rho_ref', 'reference_density']),
    stefanBoltzmann: quantity('W_m2K4', ['sigma', 'stefan_boltzmann']),
  },
  density: { model: word('model'), value: quantity('kg_m3', ['value', 'rho']) },
  sweep: {
    part: word('path', 'part', 'name', 'of', 'fan', 'zone', 'node'),
    key: word('key', 'what', 'parameter', 'quantity', 'field', 'vary'),
    values: word('values', 'value', 'values_m2', 'areas_m2', 'areas'),
  },
  zone: {
    name: word('name'),
    kind: word('T', 'temperature'),
    held: withUnit('C', ['T']),
    initial,
    heatCapacity: quantity('J_K', ['heat_capacity', 'C']),
    pressure: word('pressure', 'p'),
    heldPressure: withUnit('Pa', ['p_ref', 'p', 'pressure']),
    zRef: quantity('m', ['z_ref']),
    volume: quantity('m3', ['volume', 'V']),
    concentrations: word('conc', 'concentration', 'concentrations'),
  },
  node: { name: word('name'), heatCapacity: quantity('J_K', ['C', 'heat_capacity']), initial },
  conductance: {
    name: word('name'),
    a: word('a', 'from'),
    b: word('b', 'to'),
    conductance: withUnit('W_K', ['', 'G', 'UA', 'conductance']),
    active,
  },
  wall: {
    name: word('name'),
    a: word('a', 'from', 'side_a'),
    b: word('b', 'to', 'side_b'),
    area,
    filmA: film('a'),
    filmB: film('b'),
    layers: word('layers', 'layer'),
    grid: word('grid'),
    initial,
  },
  layer: {
    name: word('name', 'material'),
    thickness: quantity('m', ['thickness', 'd', 't'], { mm: 1e-3 }),
    conductivity: quantity('W_mK', ['k', 'lambda', 'conductivity']),
    density: quantity('kg_m3', ['rho', 'density']),
    heatCapacity: quantity('J_kgK', ['c', 'cp', 'heat_capacity', 'specific_heat']),
    nodes: word('nodes', 'n', 'slices'),
  },
  convection: {
    name: word('name'),
    surface: word('surface'),
    air: word('air'),
    area,
    faces: word('faces'),
    length: quantity('m', ['length']),
    factor: word('factor'),
    forced: word('forced'),
    heatTo: word('heat_to'),
  },
  forcedFilm: { film: quantity('W_m2K', ['h', 'film']), active, fan: word('fan') },
  radiation: {
    name: word('name'),
    a: word('a', 'from'),
    b: word('b', 'to'),
    area,
    emissivity: word('emissivity', 'eps', 'epsilon'),
    factor: word('factor', 'view_factor', 'F'),
  },
  star: { name: word('name'), members: word('members') },
  starMember: { node: word('node'), weight: quantity('m2', ['weight']) },
  heatSource: {
    name: word('name'),
    node: word('node', 'into', 'zone'),
    watts: withUnit('W', ['', 'power', 'P', 'Q'], { kW: 1000 }),
    active,
    profile: word('profile'),
  },
  path: {
    name: word('name'),
    type: word('type'),
    from: word('from', 'a'),
    to: word('to', 'b'),
    z: quantity('m', ['z']),
    open: word('open', 'active', 'when'),
    filterEfficiency: word('filter_eff', 'filter_efficiency', 'eff', 'efficiency'),
  },
  orifice: { dischargeCoefficient: discharge, area, count: word('count', 'number'), linearBelow },
  crack: {
    coefficient: quantity('m3_s', ['c', 'C', 'coefficient'], { m3_s_Pan: 1 }),
    exponent: word('n', 'exponent'),
    linearBelow,
  },
  fixedFlow: { flow: withUnit('kg_s', ['', 'm', 'flow', 'mdot', 'm_dot'], { kg_h: 1 / 3600 }) },
  tallOpening: { dischargeCoefficient: discharge, width, height, linearBelow },
  fanPath: {
    fans: word('fan', 'fans'),
    filters: word('filter', 'filters'),
    resistance: word('resistance', 'resistances', 'duct'),
    flap: word('flap'),
  },
  fan: {
    name: word('name'),
    curve: word('curve'),
    control: word('control', 'active', 'open', 'when'),
    stopped: word('stopped', 'off', 'at_rest'),
    speed: word('speed'),
  },
  curve: { kind: word('type', 'kind'), poly: word('poly', 'polynomial'), points: word('points') },
  poly: {
    p0: quantity('Pa', ['p0']),
    a: word('a', 'a_lin', 'linear'),
    b: word('b', 'b_quad', 'quadratic'),
  },
  speedStages: { stages: word('stages'), proportional: word('proportional') },
  stage: { when: word('when', 'active', 'control'), speed: word('speed') },
  proportional: {
    sensor: word('sensor'),
    from: withUnit('C', ['from']),
    to: withUnit('C', ['to']),
    low: word('low'),
    high: word('high'),
  },
  resistance: {
    name: word('name'),
    linear: word('a_lin', 'a', 'linear'),
    quadratic: word('b_quad', 'b', 'quadratic'),
    minor: word('K', 'minor'),
  },
  minor: { name: word('name'), loss: word('K', 'loss', 'zeta'), area },
  flap: { opensAt: quantity('Pa', ['opens_at']), leakArea: quantity('m2', ['leak_area'], { cm2: 1e-4 }) },
  exchange: {
    name: word('name'),
    a: word('a', 'from'),
    b: word('b', 'to'),
    active,
    law: word('law', 'type'),
    flow: withUnit('m3_s', ['', 'flow', 'Q'], flows),
    dischargeCoefficient: discharge,
    width,
    height,
    area,
    round: word('round'),
    coefficient: word('coefficient'),
    path: word('path'),
    sources: word('sources'),
  },
  airChange: {
    name: word('name'),
    zone: word('zone'),
    with: word('with', 'outdoor', 'outside'),
    perSecond: withUnit('per_s', ['', 'n'], { per_h: 1 / 3600 }),
  },
  machine: { name: word('name'), bed: word('bed'), modes: word('modes', 'mode') },
  bed: {
    node: word('node'),
    powerMax: withUnit('W', ['P_max', 'power_max', 'P', 'max']),
    supply: word('supply'),
  },
  supply: { node: word('node'), share: word('share') },
  mode: {
    name: word('name'),
    bedSet: withUnit('C', ['bed_set', 'bed', 'set']),
    powers: word('powers', 'power'),
    emissions: word('emission', 'emissions'),
  },
  power: { node: word('node', 'into', 'zone'), watts: withUnit('W', ['', 'power', 'P', 'Q']) },
  modeEmission: {
    contaminant: word('contaminant'),
    zone: word('zone', 'into'),
    rate: word('rate', 'rate_per_s', 'per_s'),
    ...course,
  },
  schedule: {
    machine: word('machine'),
    mode: word('mode'),
    start: quantity('s', ['start', 'from', 't0'], hours),
    end: quantity('s', ['end', 'to', 't1'], hours),
  },
  sensor: {
    name: word('name'),
    at: word('at', 'node', 'zone'),
    lag: quantity('s', ['lag', 'tau']),
    offset: quantity('K', ['offset']),
  },
  thermostat: {
    name: word('name'),
    sensor: word('sensor', 'zone', 'node'),
    onAbove: quantity('C', ['on_above']),
    offBelow: quantity('C', ['off_below']),
    onBelow: quantity('C', ['on_below']),
    offAbove: quantity('C', ['off_above']),
    initial: word('initial', 'initially', 'start'),
  },
  contaminantSensor: { contaminant: word('contaminant'), zone: word('zone') },
  contaminant: {
    name: word('name'),
    unit: word('unit'),
    scale: word('scale'),
    initial: word('initial', 'c0', 'C0'),
    deposition: withUnit('per_s', ['deposition'], { per_h: 1 / 3600 }),
    coagulation: quantity('m3_s', ['coagulation']),
    outside: word('outside'),
  },
  recirculation: {
    name: word('name'),
    zone: word('zone'),
    flow: withUnit('m3_s', ['', 'flow', 'Q'], flows),
    efficiency,
    active,
  },
  carbonBed: {
    name: word('name'),
    in: word('in'),
    at: word('at'),
    mass: quantity('kg', ['mass'], { g: 1e-3 }),
    vapours: word('vapours'),
  },
  carbonVapour: {
    contaminant: word('contaminant'),
    efficiency,
    vapour: word('vapour'),
    kilogramsPerUnit: word('kg_per_unit'),
    load: quantity('kg_kg', ['load']),
  },
  emission: {
    name: word('name'),
    contaminant: word('contaminant'),
    zone: word('zone', 'into'),
    rate: word('rate', 'rate_per_s', 'per_s'),
    active,
    ...course,
  },
  burst: { ratio: word('ratio'), time: quantity('s', ['time']) },
  tail: { share: word('share'), time: quantity('s', ['time']) },
  when: {
    windows: word('windows', 'windows_s'),
    thermostat: word('thermostat'),
    machine: word('machine'),
    modes: word('modes', 'mode'),
    anyOf: word('any_of'),
    allOf: word('all_of'),
    not: word('not'),
  },
};
