// Every kind of quantity that files and screens may carry, and the units it may be written in, as factors to SI.
// Factors are exact by definition unless a line says otherwise (BIPM SI Brochure 2019; NIST SP 811, 2008, appendix B).

/** Metres in a foot and in an inch. Source: international yard and pound agreement 1959 (exact); NIST SP 811 B.8. */
const FOOT = 0.3048;
const INCH = 0.0254;

/** Kilograms in an avoirdupois pound. Source: the same agreement (exact). */
const POUND = 0.45359237;

/**
 * Pascals in an inch of water. Source: NIST SP 811 B.8, "inch of water (4 °C)" 249.082 and the conventional
 * (1000 kg/m³ and standard gravity) 249.0889: the second is used, as fan catalogues do.
 */
const INCH_OF_WATER = 249.08891;

/** Pascals in a millimetre of water at 1000 kg/m³ and standard gravity (exact by that definition). */
const MILLIMETRE_OF_WATER = 9.80665;

/** Joules in a British thermal unit, International Table. Source: NIST SP 811 B.8 (exact). */
const BTU = 1055.05585262;

/** Newtons in a pound-force: the pound under standard gravity. Source: NIST SP 811 B.8 (exact). */
const POUND_FORCE: number = POUND * 9.80665;

const HOUR = 3600;
const DAY = 86_400;
/** Of the Julian calendar, as astronomers count: 365.25 days. */
const MEAN_YEAR: number = 365.25 * DAY;

export type KindName =
  | 'length'
  | 'area'
  | 'volume'
  | 'mass'
  | 'temperature'
  | 'temperature-difference'
  | 'duration'
  | 'flow'
  | 'pressure'
  | 'power'
  | 'energy'
  | 'speed'
  | 'u-value'
  | 'heat-loss'
  | 'heat-capacity'
  | 'conductivity'
  | 'density'
  | 'specific-heat'
  | 'share'
  | 'number'
  | 'water-rate'
  | 'print-rate'
  | 'air-change'
  | 'loss-rate'
  | 'particle-rate'
  | 'vapour-rate'
  | 'particle-concentration'
  | 'mass-concentration'
  | 'irradiance'
  | 'illuminance'
  | 'luminous-flux'
  | 'exposure-time'
  | 'sound-level'
  | 'energy-price'
  | 'money'
  | 'electric-current'
  | 'voltage'
  | 'angle'
  | 'force'
  | 'stress'
  | 'specific-energy'
  | 'fire-heat'
  | 'acceleration'
  | 'frequency';

/** One way of writing a quantity: SI = (written + before)·factor. */
export interface Unit {
  readonly factor: number;
  readonly before?: number;
}

export interface Kind {
  /** With its article, for messages: `a length`. */
  readonly called: string;
  /** Units by their plain spelling (see `plainUnit`); the empty spelling means that a bare number is right. */
  readonly units: Readonly<Record<string, Unit>>;
  /** Units that messages and the documentation offer, as people write them. */
  readonly offered: string;
  /** The kind in which a ± beside it is written; itself unless given. */
  readonly difference?: KindName;
  /** Spans decades: a range's middle is its geometric mean. */
  readonly logarithmic?: boolean;
}

const times = (factor: number, before?: number): Unit => (before === undefined ? { factor } : { factor, before });

const perTime = (second: number): Record<string, Unit> => ({
  '/s': times(second),
  '/min': times(second / 60),
  '/h': times(second / HOUR),
  '/d': times(second / DAY),
});

const table: Readonly<Record<KindName, Kind>> = {
  length: {
    called: 'a length',
    units: {
      m: times(1),
      mm: times(0.001),
      cm: times(0.01),
      dm: times(0.1),
      um: times(1e-6),
      in: times(INCH),
      inch: times(INCH),
      inches: times(INCH),
      '"': times(INCH),
      ft: times(FOOT),
      foot: times(FOOT),
      feet: times(FOOT),
      "'": times(FOOT),
    },
    offered: 'mm, cm, m, in or ft',
  },
  area: {
    called: 'an area',
    units: {
      m2: times(1),
      cm2: times(1e-4),
      dm2: times(0.01),
      mm2: times(1e-6),
      in2: times(INCH ** 2),
      ft2: times(FOOT ** 2),
    },
    offered: 'cm2, mm2, m2 or in2',
  },
  volume: {
    called: 'a volume',
    units: {
      m3: times(1),
      l: times(0.001),
      L: times(0.001),
      ml: times(1e-6),
      cm3: times(1e-6),
      in3: times(INCH ** 3),
      ft3: times(FOOT ** 3),
    },
    offered: 'm3, l or ft3',
  },
  mass: {
    called: 'a mass',
    units: {
      kg: times(1),
      g: times(0.001),
      mg: times(1e-6),
      t: times(1000),
      lb: times(POUND),
      lbs: times(POUND),
      oz: times(POUND / 16),
    },
    offered: 'g, kg, lb or oz',
  },
  temperature: {
    called: 'a temperature',
    units: {
      '°C': times(1, 273.15),
      C: times(1, 273.15),
      K: times(1),
      '°F': times(5 / 9, 459.67),
      F: times(5 / 9, 459.67),
    },
    offered: '°C, °F or K',
    difference: 'temperature-difference',
  },
  'temperature-difference': {
    called: 'a temperature difference',
    units: { K: times(1), '°C': times(1), C: times(1), '°F': times(5 / 9), F: times(5 / 9) },
    offered: 'K, °C or °F',
  },
  duration: {
    called: 'a duration',
    units: {
      s: times(1),
      sec: times(1),
      secs: times(1),
      second: times(1),
      seconds: times(1),
      min: times(60),
      mins: times(60),
      minute: times(60),
      minutes: times(60),
      h: times(HOUR),
      hr: times(HOUR),
      hrs: times(HOUR),
      hour: times(HOUR),
      hours: times(HOUR),
      d: times(DAY),
      day: times(DAY),
      days: times(DAY),
      year: times(MEAN_YEAR),
      years: times(MEAN_YEAR),
    },
    offered: 's, min, h or d, such as 2 h 30 min',
  },
  flow: {
    called: 'an air flow',
    units: {
      'm3/s': times(1),
      'm3/min': times(1 / 60),
      'm3/h': times(1 / HOUR),
      'l/s': times(0.001),
      'L/s': times(0.001),
      'l/min': times(0.001 / 60),
      'l/h': times(0.001 / HOUR),
      cfm: times(FOOT ** 3 / 60),
      'ft3/min': times(FOOT ** 3 / 60),
    },
    offered: 'm3/h, l/s or cfm',
  },
  pressure: {
    called: 'a pressure',
    units: {
      Pa: times(1),
      hPa: times(100),
      kPa: times(1000),
      mbar: times(100),
      bar: times(100_000),
      mmH2O: times(MILLIMETRE_OF_WATER),
      inH2O: times(INCH_OF_WATER),
    },
    offered: 'Pa, mmH2O or inH2O',
  },
  power: {
    called: 'a power',
    units: { W: times(1), mW: times(0.001), kW: times(1000), 'BTU/h': times(BTU / HOUR) },
    offered: 'W or kW',
  },
  energy: {
    called: 'an energy',
    units: { J: times(1), kJ: times(1000), MJ: times(1e6), Wh: times(HOUR), kWh: times(3.6e6), BTU: times(BTU) },
    offered: 'J, kJ, Wh or kWh',
  },
  speed: {
    called: 'a speed',
    units: {
      'm/s': times(1),
      'cm/s': times(0.01),
      'mm/s': times(0.001),
      'km/h': times(1 / 3.6),
      'ft/min': times(FOOT / 60),
      fpm: times(FOOT / 60),
      'ft/s': times(FOOT),
    },
    offered: 'm/s, cm/s or ft/min',
  },
  'u-value': {
    called: 'a U-value',
    units: {
      'W/m2K': times(1),
      'W/m2/K': times(1),
      'W/m2°C': times(1),
      'BTU/hft2°F': times((BTU / HOUR / FOOT ** 2) * 1.8),
    },
    offered: 'W/(m2 K)',
  },
  'heat-loss': {
    called: 'a heat loss per kelvin',
    units: { 'W/K': times(1), 'W/°C': times(1), 'kW/K': times(1000), 'BTU/h°F': times((BTU / HOUR) * 1.8) },
    offered: 'W/K',
  },
  'heat-capacity': {
    called: 'a heat capacity',
    units: { 'J/K': times(1), 'kJ/K': times(1000), 'MJ/K': times(1e6), 'Wh/K': times(HOUR) },
    offered: 'J/K, kJ/K or Wh/K',
  },
  conductivity: {
    called: 'a heat conductivity',
    units: { 'W/mK': times(1), 'W/m/K': times(1) },
    offered: 'W/(m K)',
  },
  density: {
    called: 'a density',
    units: { 'kg/m3': times(1), 'g/cm3': times(1000), 'kg/l': times(1000), 'lb/ft3': times(POUND / FOOT ** 3) },
    offered: 'kg/m3 or g/cm3',
  },
  'specific-heat': {
    called: 'a specific heat',
    units: { 'J/kgK': times(1), 'kJ/kgK': times(1000), 'J/gK': times(1000) },
    offered: 'J/(kg K)',
  },
  share: {
    called: 'a share',
    units: { '%': times(0.01) },
    offered: '%',
  },
  number: {
    called: 'a plain number',
    units: { '': times(1), '%': times(0.01) },
    offered: 'no unit',
  },
  'water-rate': {
    called: 'a rate of water',
    units: {
      'g/h': times(0.001 / HOUR),
      'kg/h': times(1 / HOUR),
      'g/min': times(0.001 / 60),
      'g/s': times(0.001),
      'kg/s': times(1),
    },
    offered: 'g/h',
  },
  'print-rate': {
    called: 'a rate of filament',
    units: {
      'g/h': times(0.001 / HOUR),
      'kg/h': times(1 / HOUR),
      'g/min': times(0.001 / 60),
      'g/s': times(0.001),
      'kg/s': times(1),
    },
    offered: 'g/h',
  },
  'loss-rate': {
    called: 'a rate',
    units: perTime(1),
    offered: '/h or /min',
  },
  'air-change': {
    called: 'an air change rate',
    units: perTime(HOUR),
    offered: '/h or /min',
  },
  'particle-rate': {
    called: 'a particle rate',
    units: perTime(1),
    offered: '/min, /h or /s, such as 1e10 /min',
    logarithmic: true,
  },
  'vapour-rate': {
    called: 'a vapour rate',
    units: {
      'ug/s': times(1),
      'ug/min': times(1 / 60),
      'ug/h': times(1 / HOUR),
      'mg/h': times(1000 / HOUR),
      'mg/min': times(1000 / 60),
      'g/h': times(1e6 / HOUR),
    },
    offered: 'µg/min, µg/h or mg/h',
    logarithmic: true,
  },
  'particle-concentration': {
    called: 'a number of particles per volume',
    units: { '/m3': times(1), '/cm3': times(1e6), '/l': times(1000) },
    offered: '/cm3',
    logarithmic: true,
  },
  'mass-concentration': {
    called: 'a mass per volume of air',
    units: { 'ug/m3': times(1), 'mg/m3': times(1000), 'g/m3': times(1e6) },
    offered: 'µg/m3 or mg/m3',
    logarithmic: true,
  },
  irradiance: {
    called: 'sunlight on an area',
    units: { 'W/m2': times(1), 'kW/m2': times(1000) },
    offered: 'W/m2',
  },
  illuminance: {
    called: 'a brightness',
    units: { lx: times(1), lux: times(1), klx: times(1000), fc: times(1 / FOOT ** 2) },
    offered: 'lx or fc',
  },
  'luminous-flux': {
    called: 'a luminous flux',
    units: { lm: times(1), klm: times(1000) },
    offered: 'lm',
  },
  'exposure-time': {
    called: 'an exposure time',
    units: { s: times(1), ms: times(0.001), us: times(1e-6) },
    offered: 'ms or s',
  },
  'sound-level': {
    called: 'a sound level',
    units: { dBA: times(1), dB: times(1) },
    offered: 'dB(A)',
  },
  'energy-price': {
    called: 'a price of energy',
    units: {
      '/kWh': times(1 / 3.6e6),
      'EUR/kWh': times(1 / 3.6e6),
      'USD/kWh': times(1 / 3.6e6),
      'GBP/kWh': times(1 / 3.6e6),
      'CHF/kWh': times(1 / 3.6e6),
      'ct/kWh': times(0.01 / 3.6e6),
    },
    offered: 'EUR/kWh',
  },
  money: {
    called: 'an amount of money',
    units: { '': times(1) },
    offered: 'no unit: it is in the file’s currency',
  },
  'electric-current': {
    called: 'a current',
    units: { A: times(1), mA: times(0.001) },
    offered: 'A or mA',
  },
  voltage: {
    called: 'a voltage',
    units: { V: times(1), mV: times(0.001), kV: times(1000) },
    offered: 'V',
  },
  angle: {
    called: 'an angle',
    units: { '°': times(Math.PI / 180), deg: times(Math.PI / 180), rad: times(1) },
    offered: '°, deg or rad',
  },
  force: {
    called: 'a force',
    units: { N: times(1), kN: times(1000), lbf: times(POUND_FORCE) },
    offered: 'N, kN or lbf',
  },
  stress: {
    called: 'a stress or stiffness',
    units: {
      Pa: times(1),
      kPa: times(1000),
      MPa: times(1e6),
      GPa: times(1e9),
      'N/mm2': times(1e6),
      'N/m2': times(1),
      psi: times(POUND_FORCE / INCH ** 2),
    },
    offered: 'N/mm2, kPa, MPa, GPa or psi',
  },
  'specific-energy': {
    called: 'an energy per mass',
    units: {
      'MJ/kg': times(1e6),
      'kJ/g': times(1e6),
      'kJ/kg': times(1000),
      'J/kg': times(1),
      'kWh/kg': times(3.6e6),
      'BTU/lb': times(BTU / POUND),
    },
    offered: 'MJ/kg or BTU/lb',
  },
  // The same as an energy, but told as people who reckon with fires tell it.
  'fire-heat': {
    called: 'a heat of a fire',
    units: { MJ: times(1e6), kJ: times(1000), J: times(1), kWh: times(3.6e6), BTU: times(BTU) },
    offered: 'MJ, kJ or kWh',
  },
  acceleration: {
    called: 'an acceleration',
    units: {
      'm/s2': times(1),
      'mm/s2': times(0.001),
      'cm/s2': times(0.01),
      'in/s2': times(INCH),
      'ft/s2': times(FOOT),
    },
    offered: 'mm/s2, m/s2 or in/s2',
  },
  frequency: {
    called: 'a frequency',
    units: { Hz: times(1), kHz: times(1000), rpm: times(1 / 60) },
    offered: 'Hz, kHz or rpm',
  },
};

export const kindNames: readonly KindName[] = Object.keys(table) as KindName[];

/** Kind by name, seen through its general shape. */
export function kindOf(name: KindName): Kind {
  return table[name];
}

/**
 * One spelling for a unit: superscripts, dots, brackets, spaces and `per` as plain text, `µ` as `u`.
 *
 * @example Three ways to write the same unit
 * ```ts
 * plainUnit('W/(m² K)'); // => W/m2K
 * plainUnit('W/(m2·K)'); // => W/m2K
 * plainUnit('1/h'); // => /h
 * ```
 */
export function plainUnit(written: string): string {
  return written
    .replaceAll('²', '2')
    .replaceAll('³', '3')
    .replaceAll(/[µμ]/g, 'u')
    .replaceAll('º', '°')
    .replace(/^1\s*\//, '/')
    .replace(/^per\s+/, '/')
    .replaceAll(/\s+per\s+/g, '/')
    .replace(/^(?:sq|square)\.?\s+(\w+)$/, '$12')
    .replace(/^(?:cu|cubic)\.?\s+(\w+)$/, '$13')
    .replaceAll(/[\s()·*^]/g, '')
    .replaceAll(/deg(?=[CF])/g, '°');
}

/** The unit that this spelling means for a kind; letters of another case count when they leave no doubt. */
export function unitOf(name: KindName, written: string): Unit | undefined {
  const { units } = kindOf(name);
  const plain = plainUnit(written);
  if (Object.hasOwn(units, plain)) return units[plain];
  const folded = plain.toLowerCase();
  const alike = Object.keys(units).filter((unit) => unit.toLowerCase() === folded);
  return alike.length === 1 ? units[alike[0]!] : undefined;
}

/** What a unit belongs to, when it is none of the kind that was asked for. */
export function kindsWithUnit(written: string): KindName[] {
  return kindNames.filter((name) => written !== '' && unitOf(name, written) !== undefined);
}
