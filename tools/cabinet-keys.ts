// The table of every key of the cabinet file, for docs/cabinet-file.md: from the schema that reads it and the defaults that fill it.

import {
  type Assumption,
  cabinetSchema,
  type DefaultName,
  defaults,
  formatBand,
  formatQuantity,
  type KindName,
  limitKinds,
  overrideRegistry,
} from '@stillair/engine';

interface Node {
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Node>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: Node | false;
  readonly items?: Node;
  readonly anyOf?: readonly Node[];
}

/** What is taken when a key is left out: a default with its spread, or words. */
const leftOut: Readonly<Record<string, readonly [DefaultName, KindName] | string>> = {
  title: 'Cabinet',
  currency: 'EUR',
  'room.size': '4 m x 3.5 m x 2.5 m (width 3 to 5.5 m)',
  'room.temperature': ['roomTemperature', 'temperature'],
  'room.held': 'no',
  'room.humidity': ['roomHumidity', 'share'],
  'room.air-changes': ['roomAirChanges', 'air-change'],
  'room.heat-loss': ['roomLossPerArea', 'u-value'],
  'room.heat-capacity': '24 kJ/K for each m² of floor (12 to 60 kJ/K)',
  'room.background.particles': ['roomParticles', 'particle-concentration'],
  'room.background.PM2.5': ['roomFineDust', 'mass-concentration'],
  'room.background.TVOC': ['roomTvoc', 'mass-concentration'],
  'room.deposition': ['roomDeposition', 'loss-rate'],
  'room.air-cleaner': '0 m³/h',
  'room.reverberation': '0.5 s (0.35 to 0.9 s): a furnished room; common practice, from memory',
  'room.absorption': 'follows from the reverberation',
  'room.background-noise': '30 dB(A) (24 to 38 dB(A)): a quiet room by day; common practice, from memory',
  'outdoors.temperature': ['outdoorTemperature', 'temperature'],
  'outdoors.humidity': ['outdoorHumidity', 'share'],
  'outdoors.wind': ['outdoorWind', 'speed'],
  'outdoors.background.particles': ['outdoorParticles', 'particle-concentration'],
  'outdoors.background.PM2.5': ['outdoorFineDust', 'mass-concentration'],
  'outdoors.background.TVOC': ['outdoorTvoc', 'mass-concentration'],
  people: 'one, at a desk in front of the cabinet',
  'people.*.at': '1.5 m (1 to 2.5 m) in front of the middle, 1.2 m up',
  'people.*.hours': '9:00 to 17:00',
  'cabinet.faces.*.made-of': 'as the carcass',
  'cabinet.faces.*.against': 'room; floor for the bottom',
  'cabinet.faces.*.gap': '30 mm (10 to 80 mm) against a wall, 0 mm on the floor',
  'cabinet.doors.*.made-of': 'as the carcass',
  'cabinet.doors.*.face': 'front',
  'cabinet.doors.*.bays': 'all',
  'cabinet.doors.*.seal-gap': ['sealGap', 'length'],
  'cabinet.doors.*.seal-depth': ['sealDepth', 'length'],
  'cabinet.doors.*.sun': 'none',
  'people.*.quiet': 'no wish; WHO 1999 stands, 35 dB(A) by day and 30 dB(A) at night',
  'cabinet.lining': 'bare boards',
  'cabinet.lining.faces': 'back, left, right and top',
  'parts.boards.*.coincidence': '23 m/s: a board of wood; common practice, from memory',
  'parts.boards.*.damping': '0.03: a mounted board; common practice, from memory',
  'parts.boards.*.transmission': 'the law of mass with its dip, ±5 dB',
  'parts.boards.*.absorption': 'that of a bare board, 0.1 to 0.06',
  'cabinet.joint-gap': ['jointGap', 'length'],
  'cabinet.doors.*.hinges.count': '2 up to 0.9 m of height, 3 up to 1.6 m, 4 above',
  'cabinet.doors.*.hinges.spacing': 'three quarters of the leaf',
  'cabinet.doors.*.hinges.carries': ['hingeCarries', 'mass'],
  'cabinet.wall-strap': 'no',
  'cabinet.feet.count':
    'where a gap is below the bottom so many that none are more than 0.7 m apart; else it lies on the floor',
  'cabinet.bottom': 'as a shelf of which nothing is said',
  'cabinet.feet.size': '40 mm',
  'cabinet.feet.height': 'the gap below the bottom',
  'cabinet.feet.inset': ['feetInset', 'length'],
  'cabinet.tolerance': 'from EN 315 and a saw cut to 1 mm: about 1.5 mm',
  'cabinet.doors.*.hinge': 'left',
  'cabinet.doors.*.hinge-takes': ['hingeTakes', 'length'],
  'cabinet.doors.*.stands-in': ['doorStandsIn', 'length'],
  'cabinet.doors.*.lip': '0 mm',
  'cabinet.doors.*.before': 'what the room leaves before the cabinet',
  'machines.*.motion.frame': 'as the kind; your own size, when you give one',
  'machines.*.motion.bed-travel': 'a bed that moves travels as far as it is deep',
  'joinery.corners': 'butt',
  'joinery.housing': 'a third of the board with the groove',
  'joinery.doors.*.lies': 'before the edges where they are 8 mm or more, else in the opening',
  'joinery.doors.*.gap': '2.5 mm',
  'joinery.measured': 'as written on it',
  'fittings.*.where': 'the only bay; the room for an extinguisher',
  'fittings.*.reached': 'yes for tools, bin and extinguisher',
  'fittings.*.cables.*.diameter': ['cableDiameter', 'length'],
  'fittings.*.cables.*.count': '1',
  'fittings.*.cables.*.moved': 'no',
  'fittings.*.arm.length': ['armLength', 'length'],
  'fittings.*.arm.width': ['armWidth', 'length'],
  'fittings.*.arm.thickness': ['armThickness', 'length'],
  'fittings.*.arm.shake': ['armShake', 'length'],
  'fittings.*.arm.distance': ['cameraDistance', 'length'],
  'fittings.*.arm.sees': ['cameraSees', 'length'],
  'fittings.*.arm.load': ['cameraMass', 'mass'],
  'fittings.*.arm.pixels': '1920',
  'cabinet.finish': 'bare boards',
  'cabinet.faces.*.finish': 'that of the cabinet; panes stay clear',
  'cabinet.doors.*.finish': 'that of the cabinet; panes stay clear',
  bays: 'one, called inside',
  'bays.*.z': 'the whole height',
  'bays.*.x': 'the whole width',
  'bays.*.air-zones': '2 when a machine stands in it, else 1',
  'shelves.*.made-of': 'as the carcass',
  'shelves.*.joint': 'cleats',
  'shelves.*.lipping': 'none',
  'shelves.*.lipping.edges': 'front',
  'shelves.*.lipping.stiffness': ['lippingStiffness', 'stress'],
  'shelves.*.grain': 'along',
  'shelves.*.pins.count': '4',
  'shelves.*.pins.size': '5 mm',
  'shelves.*.pins.depth': '10 mm',
  'shelves.*.posts': 'none',
  'shelves.*.load': '0 kg',
  'shelves.*.pulls-out': '0 mm',
  'shelves.*.finish': 'that of the cabinet',
  'machines.*.finish': ['machineReflectance', 'number'],
  'machines.*.bay': 'the only one',
  'machines.*.at': 'the middle of the bay',
  'machines.*.stands-on': 'not known: what hangs on it is then unknown',
  'machines.*.stands-on.slab': 'none',
  'machines.*.stands-on.slabs': '1',
  'machines.*.stands-on.slab-density': ['slabDensity', 'density'],
  'machines.*.stands-on.foam': 'none',
  'machines.*.stands-on.pads': 'a whole sheet below slab or feet',
  'machines.*.stands-on.pad-size': '60 mm x 60 mm',
  'machines.*.feet': '0.7 of its width, 0.6 of its depth',
  'machines.*.mass': 'as the kind; else 10 kg (6 to 18 kg)',
  'machines.*.shaking.speed': 'as the kind; else 0.1 m/s (0.06 to 0.2 m/s)',
  'machines.*.shaking.stroke': ['stroke', 'length'],
  'machines.*.shaking.travel-per-turn': '40 mm',
  'machines.*.shaking.steps-per-turn': '200',
  'air.*.count': '1',
  'air.*.at.face': 'back; the shelf between two bays',
  'air.*.at.along': 'the middle',
  'air.*.at.z': 'low for air that comes in, high for air that goes out',
  'air.*.blows': 'in',
  'air.*.wind': ['windCoefficient', 'number'],
  'air.*.parts[hole].discharge': ['discharge', 'number'],
  'air.*.parts[fan].speed': '100 %',
  'air.*.parts[fan].control': 'always',
  'air.*.parts[filter].seat-gap': ['seatGap', 'length'],
  'air.*.parts[filter].seat-depth': ['seatDepth', 'length'],
  'air.*.parts[filter].loading': '0 %',
  'air.*.parts[carbon].load': '0 %',
  'air.*.parts[duct].length': ['ductLength', 'length'],
  'sensors.*.height': 'half way up the bay',
  'sensors.*.offset': ['sensorOffset', 'temperature-difference'],
  'sensors.*.lag': ['sensorLag', 'duration'],
  'heats.*.bay': 'the only one',
  'heats.*.control': 'always',
  'heats.*.flux': 'as the kind, or 90 lm from each of its watts (65 to 120 lm)',
  'heats.*.shape': 'as the kind, or point',
  'heats.*.at': 'under the ceiling, behind the front',
  'heats.*.faces': 'away from the board that it is nearest to',
  'heats.*.along': 'x; y when it shines to the left or right',
  'heats.*.dimming.frequency': '100 Hz on the mains; unknown for pulses',
  'heats.*.dimming.duty': '50 %',
  'heats.*.dimming.depth': ['rippleDepth', 'share'],
  'cameras.*.kind': 'none',
  'cameras.*.at': 'unknown: nothing is said of what it sees',
  'cameras.*.bay': 'that of the machine',
  'cameras.*.looks-at': 'the only machine',
  'cameras.*.view': '62° x 49°',
  'cameras.*.aperture': ['cameraAperture', 'number'],
  'cameras.*.iso': ['cameraIso', 'number'],
  'cameras.*.shutter': 'the camera chooses it',
  'cameras.*.readout': ['cameraReadout', 'exposure-time'],
  'cameras.*.pixels': '1920 x 1080',
  'cameras.*.task': 'live',
  'cameras.*.subject-speed': ['subjectSpeed', 'speed'],
  power: 'one strip outside, in a wall socket, that feeds everything',
  'power.region': 'by the currency: US for USD, UK for GBP, EU for EUR and CHF, else other',
  'power.voltage': '230 V; US 120 V',
  'power.circuit': '16 A; UK 32 A, US 15 A, other 10 A',
  'power.breaker': 'B',
  'power.rcd': '30 mA; US none',
  'power.others': '0 W',
  'power.stagger': '0 s: no lock',
  'power.switched': 'together',
  'power.tariff': '0.3 /kWh (0.15 to 0.45 /kWh) in the currency of the file; invented, typical',
  'power.strips.*.sockets': 'as many as are needed',
  'power.strips.*.rating': '16 A; UK 13 A, US 15 A, other 10 A',
  'power.strips.*.where': 'outside',
  'power.strips.*.from': 'wall',
  'power.strips.*.feeds': 'whatever no other strip feeds, for the first that says nothing',
  'power.supplies': 'one of 24 V outside, called low-voltage, for all fans and lamps',
  'power.supplies.*.voltage': '24 V',
  'power.supplies.*.power': 'the next common size above 1.25 times its load',
  'power.supplies.*.efficiency': ['supplyEfficiency', 'share'],
  'power.supplies.*.where': 'outside',
  'power.supplies.*.feeds': 'fans and lamps that nothing else feeds',
  'power.supplies.*.power-factor': ['powerFactor', 'number'],
  'power.supplies.*.inrush': '15 A (8 to 30 A) up to 100 W, else 40 A (25 to 60 A)',
  'power.supplies.*.leakage': '0.2 mA (0.1 to 0.4 mA) up to 100 W, else 0.6 mA (0.3 to 1 mA)',
  'power.supplies.*.plug': 'bulky up to 100 W, else plain',
  'power.wires.*.supply': 'the only one',
  'power.wires.*.feeds': 'all that its supply feeds',
  'power.wires.*.current': 'that of what it feeds',
  'power.wires.*.section': '0.5 mm²',
  'power.wires.*.length': ['wireLength', 'length'],
  'power.wires.*.insulation': 'PVC',
  'power.wires.*.where': 'outside',
  'power.wires.*.fuse': 'none',
  'power.wires.*.fuse-at': '200 mm',
  'machines.*.mains.power-factor': ['powerFactor', 'number'],
  'machines.*.mains.inrush': ['inrush', 'electric-current'],
  'machines.*.mains.leakage': ['earthLeakage', 'electric-current'],
  'machines.*.mains.plug': 'plain',
  'machines.*.drive.pull': '3 N',
  'machines.*.drive.push': ['drivePush', 'force'],
  'machines.*.drive.gap': ['driveGap', 'length'],
  'machines.*.drive.filament': '1.75 mm',
  spools: 'one of 1 kg for each machine and material that it prints',
  'spools.*.machine': 'the only one',
  'spools.*.mass': '1 kg',
  'spools.*.empty': '22 % of the filament',
  'spools.*.size': 'usual of its mass: 200 mm x 65 mm for 1 kg',
  'spools.*.where': 'the bay of its machine',
  'spools.*.holder': 'bearing',
  'spools.*.path.bends': ['pathBends', 'angle'],
  'spools.*.path.guide': 'tube',
  'spools.*.path.friction': '0.15 (0.1 to 0.2) in a tube, 0.32 (0.25 to 0.4) on printed guides',
  'spools.*.path.radius': ['bendRadius', 'length'],
  'spools.*.path.unwinding': ['unwinding', 'force'],
  'days.*.title': 'its id',
  'days.*.length': '24 h',
  'days.*.jobs.*.machine': 'the only one',
  'days.*.jobs.*.nozzle': "the material's",
  'days.*.jobs.*.bed': "the material's",
  'days.*.jobs.*.mass': '12 g for each hour (6 to 25 g)',
  'days.*.jobs.*.part-size': ['partSize', 'length'],
  'days.*.doors[].door': 'the only one',
  'days.*.repeated': 'no',
  'queue.length': '7 d',
  'queue.step': '10 min',
  'queue.like': 'the first of the file',
  'queue.aims': 'early',
  'queue.attended': '15 min',
  'queue.present': 'the hours of all people, every day',
  'queue.jobs.*.machine': 'all whose bed takes its base, or what its job file prints',
  'queue.jobs.*.for': '**needed** without a job file, else what that comes to',
  'queue.jobs.*.nozzle': "its job file's, or the material's",
  'queue.jobs.*.bed': "its job file's, or the material's",
  'queue.jobs.*.mass': "its job file's, or 12 g for each hour",
  'queue.jobs.*.part-size': "its job file's, the longer side of its base, or 100 mm",
  'queue.jobs.*.copies': '1',
  'queue.jobs.*.attended': "the queue's",
  protection: 'nothing is taken to be there',
  'protection.chain.*.contact': 'links and thermostats open; of others it cannot be told',
  'protection.chain.*.through': 'wire; program for a watchdog',
  'protection.chain.*.holds': '20 K (14 to 30 K) below opens-at',
  'protection.detectors.*.rate-of-rise': 'no',
  'protection.stored.*.mass': '0.4 kg (0.2 to 0.6 kg)',
  'costs.carcass': 'the carcass is built: sheets and hours are reckoned',
  'costs.hour': 'your own time, at nothing; the hours are told all the same',
  'costs.hours': 'by a rule of thumb (its 0.75 to 1.5 fold)',
  'costs.cut': 'you saw yourself',
  'costs.kerf': '3.2 mm (2 to 4.5 mm)',
  'costs.trim': '7 mm',
  'costs.turned': 'no',
  'costs.sheets': "sizes of mills, from the catalogue's boards",
  'costs.contingency.material': '10 %',
  'costs.contingency.hours': '20 %',
  'costs.wear': '0.05 an hour (0.02 to 0.15), in EUR',
  'costs.machine-life': '5000 h (2000 to 12 000 h)',
  'costs.failures': '7 % (3 to 16 %)',
  'costs.waste': '6 % (2 to 15 %)',
  'costs.filter-life': '1000 h (400 to 2500 h)',
  'costs.carbon-life': '320 h (200 to 500 h)',
  'costs.hand': '10 min (5 to 25 min)',
  'costs.hand-hour': 'your own time, at nothing; its minutes are told all the same',
  'costs.cabinet-life': '6.5 years (5 to 8 years)',
  'costs.times': 'what a year costs is not told',
  search: 'fans, filters, carbon, ducts, holes, thermostats, lamps and every option; said to be assumed',
  care: 'common practice, as "stillair care" lists it',
  'carcasses.*.title': 'its id',
  'carcasses.*.opening': 'as wide and high as its inside',
  'carcasses.*.made-of': 'as the carcass',
  'carcasses.*.price': 'of a built one its sheets and hours; of a bought one it cannot be told',
};

/** Sections in which a kind of the catalogue stands for whatever is left out. */
const FROM_KIND = /^(?:machines\.\*|heats\.\*|materials\.\*|air\.\*\.parts\[\w+\])\./;

/** Parts of one's own have the keys of the places that use them; they are told once. */
const TOLD_ELSEWHERE = /^parts\.(?!boards|seals)\w+\.\*\./;

/** The map of a build-up, and the one door, are told at the first place that may have them. */
const BUILD_OR_DOOR = /^(?!cabinet\.made-of\.).*\.made-of\.\w|^cabinet\.door\./;

/** Wherever one contaminant may stand, the others may. */
const OTHER_VAPOURS = /\.(?:styrene|ethylbenzene|caprolactam|lactide|formaldehyde|acetaldehyde)$/;

export function keyTable(): string {
  const rows: string[] = [];
  const used = new Set<string>();
  const seen = new Set<string>();
  walk(cabinetSchema() as Node, '', (written, node, needed) => {
    const path = written.replace(/^cabinet\.faces\.\w+/, 'cabinet.faces.*');
    if (TOLD_ELSEWHERE.test(path) || OTHER_VAPOURS.test(path) || BUILD_OR_DOOR.test(path) || seen.has(path)) return;
    seen.add(path);
    const text = leftOut[path];
    if (text !== undefined) used.add(path);
    const without = needed
      ? '**needed**'
      : text === undefined
        ? FROM_KIND.test(path)
          ? 'as the kind'
          : ''
        : textOf(text);
    rows.push(`| \`${path}\` | ${(node.description ?? '').replaceAll('|', '\\|')} | ${without} |`);
  });
  const unused = Object.keys(leftOut).filter((path) => !used.has(path));
  if (unused.length > 0) throw new Error(`defaults of keys that are none: ${unused.join(', ')}`);
  return [
    '| key | what it is | when it is left out |',
    '| --- | --- | --- |',
    ...rows,
    '',
    'Where `particles`, `PM2.5` and `TVOC` may stand, so may `styrene`, `ethylbenzene`, `caprolactam`, `lactide`, `formaldehyde` and',
    '`acetaldehyde`, in µg/m3 or µg/min; what is not given is 0.',
    '',
    '### Overrides',
    '',
    '| path | unit as in | what it replaces |',
    '| --- | --- | --- |',
    ...overrideRegistry
      .filter(({ path }) => !OTHER_VAPOURS.test(path))
      .map(({ path, kind, replaces }) => `| \`${path}\` | ${example(kind)} | ${replaces} |`),
    '',
    '### Limits',
    '',
    '| id | unit as in |',
    '| --- | --- |',
    ...Object.entries(limitKinds).map(([id, kind]) => `| \`${id}\` | ${example(kind)} |`),
  ].join('\n');
}

function textOf(text: readonly [DefaultName, KindName] | string): string {
  if (typeof text === 'string') return text;
  const [name, kind] = text;
  const { value, low, high, why }: Assumption = defaults[name];
  const unit = name === 'roomLossPerArea' ? ' for each m² of its walls, floor and ceiling' : '';
  return `${formatQuantity(kind, value)} (${formatBand(kind, low, high)})${unit}: ${why}`;
}

function example(kind: KindName): string {
  return kind === 'number'
    ? 'a plain number'
    : formatQuantity(kind, { temperature: 313.15, duration: 3600 }[kind as string] ?? 1);
}

function walk(node: Node, path: string, see: (path: string, node: Node, needed: boolean) => void): void {
  for (const [key, inner] of Object.entries(node.properties ?? {})) {
    const below = path === '' ? key : `${path}.${key}`;
    see(below, inner, node.required?.includes(key) === true);
    walk(inner, below, see);
  }
  if (node.additionalProperties !== undefined && node.additionalProperties !== false) {
    const inner = node.additionalProperties;
    if (inner.properties !== undefined || inner.anyOf !== undefined) walk(inner, `${path}.*`, see);
  }
  if (node.items !== undefined) walkItems(node.items, path, see);
  for (const branch of node.anyOf ?? []) walk(branch, path, see);
}

/** Items told apart by their one own key are named by it: `parts[fan]`. */
function walkItems(items: Node, path: string, see: (path: string, node: Node, needed: boolean) => void): void {
  if (items.anyOf === undefined) {
    walk(items, `${path}[]`, see);
    return;
  }
  for (const branch of items.anyOf) walk(branch, `${path}[${branch.required?.[0] ?? ''}]`, see);
}
