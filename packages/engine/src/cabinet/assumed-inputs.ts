// The inputs of a cabinet that nobody knows exactly: whatever was assumed, and what was given or looked up with a doubt.

import type { Origins, Spread } from './origin.ts';

export interface AssumedInput {
  /** Path of the number in the cabinet. */
  readonly path: string;
  /** What it is, in plain words. */
  readonly label: string;
  readonly spread: Spread;
}

/** Names for people, by pattern of the path; `$1` is the id. */
const labels: readonly (readonly [RegExp, string])[] = [
  [/^room\.temperature\.0\.1$/, 'temperature of the room'],
  [/^room\.airChangesPerHour$/, 'air changes of the room'],
  [/^room\.heatCapacity$/, 'heat capacity of the room'],
  [/^room\.heatLoss$/, 'heat loss of the room'],
  [/^room\.deposition$/, 'particles lost to surfaces of the room'],
  [/^room\.size\.(width|depth|height)$/, '$1 of the room'],
  [/^room\.background\.(.+)$/, '$1 in the room without printers'],
  [/^outdoors\.background\.(.+)$/, '$1 outdoors'],
  [/^outdoors\.temperature\.0\.1$/, 'temperature outdoors'],
  [/^outdoors\.windSpeed$/, 'wind'],
  [/^people\.(.+)\.at\.1$/, 'distance of $1'],
  [/^people\.(.+)\.at\.2$/, 'height of $1’s head'],
  [/^doors\.(.+)\.sealGap$/, 'gap at the seal of $1'],
  [/^doors\.(.+)\.sealDepth$/, 'depth of the seal of $1'],
  [/^jointGap$/, 'gap of the joints'],
  [/^faces\.(.+)\.gap$/, 'air gap behind the $1'],
  [/^machines\.(.+)\.hotEnd$/, 'heat of the hot end of $1'],
  [/^machines\.(.+)\.motors$/, 'heat of the motors of $1'],
  [/^machines\.(.+)\.electronics$/, 'heat of the electronics of $1'],
  [/^machines\.(.+)\.chamber\.leakArea$/, 'gaps of the chamber of $1'],
  [/^machines\.(.+)\.chamber\.exhaustFlow$/, "flow of $1's own exhaust"],
  [/^materials\.(.+)\.emissions\.(.+)\.p50$/, '$2 given off by $1'],
  [/^paths\.(.+)\.parts\.\d+\.dischargeCoefficient$/, 'discharge coefficient of $1'],
  [/^paths\.(.+)\.parts\.\d+\.seatGap$/, 'gap at the seat of the filter of $1'],
  [/^paths\.(.+)\.parts\.\d+\.seatDepth$/, 'depth of the seat of the filter of $1'],
  [/^paths\.(.+)\.parts\.\d+\.length$/, 'length of the duct of $1'],
  [/^paths\.(.+)\.parts\.\d+\.loss$/, 'resistance of a fitting of $1'],
  [/^paths\.(.+)\.parts\.\d+\.opensAt$/, 'pressure that opens the flap of $1'],
  [/^paths\.(.+)\.parts\.\d+\.leakArea$/, 'gaps of the flap of $1'],
  [/^paths\.(.+)\.parts\.\d+\.efficiency\.(.+)$/, '$2 taken out by the filter of $1'],
  [/^paths\.(.+)\.windCoefficient$/, 'wind at $1'],
  [/^sensors\.(.+)\.offset$/, 'error of sensor $1'],
  [/^sensors\.(.+)\.lag$/, 'lag of sensor $1'],
  [/^light\.reflectances\.(.+)$/, 'light thrown back by $1'],
  [/^light\.chamberLamps\.(.+)$/, 'light of the lamp in the chamber of $1'],
  [/^light\.lamps\.(.+)\.flux$/, 'light of $1'],
  [/^light\.lamps\.(.+)\.at\.1$/, 'distance of $1 from the front'],
  [/^light\.lamps\.(.+)\.pulsation\.ripple$/, 'ripple of $1'],
  [/^cameras\.(.+)\.iso$/, 'ISO speed of $1'],
  [/^cameras\.(.+)\.aperture$/, 'f-number of $1'],
  [/^cameras\.(.+)\.readout$/, 'readout time of $1'],
  [/^cameras\.(.+)\.subjectSpeed$/, 'speed of what $1 looks at'],
  [/^days\.(.+)\.jobs\.(.+)\.mass$/, 'filament of $2 on $1'],
  [/^days\.(.+)\.jobs\.(.+)\.partSize$/, 'size of the part of $2 on $1'],
  [/^protection\.combustion\.(.+)$/, 'heat of combustion of $1'],
  [/^protection\.figures\.oxygenHeat$/, 'heat for each kilogram of oxygen'],
  [/^protection\.figures\.weakOxygen$/, 'oxygen at which flames are weak'],
  [/^protection\.figures\.growth$/, 'growth of a fire'],
  [/^protection\.figures\.openingAir$/, 'air that a fire draws through an opening'],
  [/^protection\.chain\.(.+)\.holds$/, 'temperature that the link $1 holds'],
  [/^protection\.stored\.(.+)\.mass$/, 'mass of $1'],
  [/^costs\.pricePosition$/, 'how dear the shops are'],
  [/^costs\.hoursFactor$/, 'hours of building against the rule'],
  [/^costs\.kerf$/, "width of the saw's cut"],
  [/^costs\.wear$/, 'wear of the machines'],
  [/^costs\.machineLife$/, 'life of the machines'],
  [/^costs\.failures$/, 'share of prints that fail'],
  [/^costs\.waste$/, 'filament wasted'],
  [/^costs\.filterLife$/, 'life of particle filters'],
  [/^costs\.carbonLife$/, 'life of carbon stages'],
  [/^costs\.hand$/, 'time of hands on a job'],
  [/^costs\.cabinetLife$/, 'years over which the cabinet is written off'],
  [/^machines\.(.+)\.mass$/, 'mass of $1'],
  [/^machines\.(.+)\.shaking\.headMass$/, 'mass of the moving head of $1'],
  [/^machines\.(.+)\.shaking\.bedMass$/, 'mass of the moving bed of $1'],
  [/^machines\.(.+)\.shaking\.acceleration$/, 'acceleration of $1'],
  [/^machines\.(.+)\.shaking\.speed$/, 'speed of strokes of $1'],
  [/^machines\.(.+)\.shaking\.stroke$/, 'length of strokes of $1'],
  [/^machines\.(.+)\.standsOn\.slab\.density$/, 'density of the slab below $1'],
  [/^machines\.(.+)\.standsOn\.foam\.stiffness$/, 'stiffness of the foam below $1'],
  [/^machines\.(.+)\.standsOn\.foam\.stiffening$/, 'dynamic stiffening of the foam below $1'],
  [/^machines\.(.+)\.standsOn\.foam\.(damping|creep)$/, '$2 of the foam below $1'],
  [/^structure\.boards\.(.+)\.along$/, 'stiffness of $1 along the grain'],
  [/^structure\.boards\.(.+)\.across$/, 'stiffness of $1 across the grain'],
  [/^structure\.boards\.(.+)\.stress$/, 'stress that $1 bears'],
  [/^structure\.boards\.(.+)\.creep$/, 'growth of the sag of $1'],
  [/^structure\.shelves\.(.+)\.endFixity$/, 'hold of the ends of $1'],
  [/^structure\.shelves\.(.+)\.lipping\.stiffness$/, 'stiffness of the lipping of $1'],
  [/^structure\.hinges\.(.+)\.carries$/, 'mass that a hinge of $1 carries'],
  [/^structure\.feet\.inset$/, 'inset of the feet'],
  [/^fit\.tolerance$/, 'how true the carcass is'],
  [/^fit\.doors\.(.+)\.takes$/, 'what the hinge of $1 takes'],
  [/^fit\.doors\.(.+)\.standsIn$/, 'how far $1 stands into the bay'],
  [/^fit\.machines\.(.+)\.clipFront$/, 'clip before the bed of $1'],
  [/^fit\.machines\.(.+)\.cableRear$/, 'cable behind the bed of $1'],
  [/^fit\.machines\.(.+)\.carriageLeft$/, 'what $1 reaches beyond its frame on the left'],
  [/^fit\.machines\.(.+)\.carriageRight$/, 'what $1 reaches beyond its frame on the right'],
  [/^fit\.machines\.(.+)\.tubeArch$/, 'arch of tube and cable over $1'],
  [/^fit\.machines\.(.+)\.spoolLift$/, 'axle under the spool of $1'],
  [/^fit\.machines\.(.+)\.plug$/, 'plug behind $1'],
  [/^fittings\.(.+)\.arm\.(.+)$/, '$2 of the arm of $1'],
  [/^sound\.machines\.(.+)\.printingDbA$/, 'noise of $1 while it prints'],
  [/^sound\.machines\.(.+)\.idleDbA$/, 'noise of $1 while it rests'],
  [/^sound\.room\.reverberation$/, 'reverberation of the room'],
  [/^sound\.room\.absorption$/, 'sound that the room swallows'],
  [/^sound\.room\.backgroundDbA$/, 'background noise of the room'],
  [/^sound\.doubt\.panelsDb$/, 'what boards let through'],
  [/^sound\.doubt\.lowBandsDb$/, 'low tones in a small box'],
  [/^sound\.doubt\.builtInDb$/, 'noise that building in adds to a fan'],
  [/^power\.tariff\.0\.1$/, 'price of electricity'],
  [/^power\.magnet$/, 'peak at which the breaker trips at once'],
  [/^power\.others$/, 'what else the circuit feeds'],
  [/^power\.supplies\.(.+)\.efficiency$/, 'efficiency of the supply $1'],
  [/^power\.(?:supplies|wires)\.(.+)\.(inrush|leakage|length)$/, '$2 of $1'],
  [/^power\.supplies\.(.+)\.powerFactor$/, 'power factor of $1'],
  [/^machines\.(.+)\.mains\.powerFactor$/, 'power factor of $1'],
  [/^machines\.(.+)\.mains\.(inrush|leakage)$/, '$2 of $1'],
  [/^machines\.(.+)\.drive\.push$/, 'push that the nozzle of $1 asks for'],
  [/^machines\.(.+)\.drive\.gap$/, 'gap below the wheels of $1'],
  [/^spools\.(.+)\.path\.bends$/, 'bends on the way of $1'],
  [/^spools\.(.+)\.path\.friction$/, 'friction on the guides of $1'],
  [/^spools\.(.+)\.path\.radius$/, 'tightest bend of $1'],
  [/^spools\.(.+)\.path\.unwinding$/, 'pull that unwinds $1'],
  [/^factors\.insideFilm$/, 'heat transfer inside'],
  [/^factors\.outsideFilm$/, 'heat transfer outside'],
  [/^factors\.wallLoss$/, 'heat conducted by boards and panes'],
  [/^factors\.bedLoss$/, 'heat lost by hot beds'],
  [/^factors\.leakage$/, 'flow through cracks'],
  [/^factors\.fanFlow$/, 'flow of the fans'],
  [/^factors\.plume$/, 'air carried up by plumes'],
  [/^factors\.roomHeatLoss$/, 'heat loss of the room'],
];

/** Every input with a spread, in the order of the cabinet. */
export function assumedInputs(origins: Origins): readonly AssumedInput[] {
  return [...origins].flatMap(([path, { spread }]) =>
    spread === undefined || spread.p10 === spread.p90 ? [] : [{ path, label: inputLabel(path), spread }],
  );
}

/** Labels that were found before: the same paths are asked about at every edit. */
const labelled = new Map<string, string>();

/** What a number of the cabinet is, in plain words. */
export function inputLabel(path: string): string {
  const before = labelled.get(path);
  if (before !== undefined) return before;
  const label = labelOf(path);
  labelled.set(path, label);
  return label;
}

function labelOf(path: string): string {
  for (const [pattern, text] of labels) {
    if (pattern.test(path)) return path.replace(pattern, text);
  }
  const segments = path.split('.').filter((segment) => !/^\d+$/.test(segment) && !SECTIONS.has(segment));
  return segments.map(inWords).reverse().join(' of ') || path;
}

/** Maps of the cabinet, whose names say nothing beside an id. */
const SECTIONS: ReadonlySet<string> = new Set([
  'machines',
  'paths',
  'heats',
  'sensors',
  'doors',
  'faces',
  'days',
  'people',
  'materials',
  'bays',
  'light',
  'lamps',
  'cameras',
]);

/** `exhaustFilter` as `exhaust filter`; ids stay as they are. */
function inWords(name: string): string {
  return name.replaceAll(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`);
}
