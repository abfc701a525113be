// Machines, materials, and whatever else gives heat.

import { contaminants } from './contaminants.ts';
import { control } from './control-schema.ts';
import { driveSchema } from './filament-schema.ts';
import { motionSchema } from './fit-schema.ts';
import { finish, lampFields, lampPlaceFields } from './light-schema.ts';
import { emissionsSchema } from './part-schema.ts';
import { mainsSchema } from './power-schema.ts';
import {
  amounts,
  type FieldsOf,
  name,
  place,
  quantity,
  range,
  type Schema,
  sizes,
  thing,
  word,
  yesNo,
} from './shape.ts';
import { machineNoise } from './sound-schema.ts';
import type { ChamberSpec, HeatKindSpec, HeatSpec, MachineKindSpec, MachineSpec, MaterialSpec } from './spec.ts';
import { standingFields, standsOn } from './structure-schema.ts';
import { build, underside } from './text-forms.ts';

const watts = (about: string): ReturnType<typeof quantity> => quantity('power', about, { from: 0, to: 5000 });
const celsius = (about: string): ReturnType<typeof quantity> =>
  quantity('temperature', about, { from: 253.15, to: 773.15 });
const removed = (about: string): ReturnType<typeof amounts<{ value: number }>> =>
  amounts(
    contaminants,
    (contaminant) => quantity('share', `share of ${contaminant} taken out`, { from: 0, to: 1 }),
    about,
  );

function chamberSchema(): Schema<ChamberSpec> {
  return thing(
    {
      size: sizes(3, 'inside width x depth x height').optional(),
      'made-of': build('its walls').optional(),
      leak: quantity('area', 'free area of its gaps to the bay', { from: 0, to: 0.1 }).optional(),
      exhaust: quantity('flow', 'its own exhaust into the bay while printing', { from: 0, to: 0.2 }).optional(),
      'exhaust-filter': removed('what the filter in that exhaust takes out').optional(),
      recirculation: quantity('flow', 'air that its own filter turns round', { from: 0, to: 0.2 }).optional(),
      'recirculation-filter': removed('what that filter takes out').optional(),
      lamp: watts('its lamp').optional(),
      heater: watts('its air heater').optional(),
      'heater-set': celsius('air temperature that the heater holds').optional(),
    },
    "a machine's own chamber",
  );
}

export const machineFields: FieldsOf<MachineKindSpec> = {
  style: word(['moving-bed', 'fixed-bed', 'delta', 'chambered'], 'how it moves').optional(),
  size: sizes(3, 'width x depth x height in full motion, without spools').optional(),
  bed: thing(
    {
      size: sizes(2, 'width x depth').optional(),
      height: quantity('length', 'top of the bed above the floor of the bay', { from: 0, to: 3 }).optional(),
      thickness: quantity('length', 'plate with sheet or glass', { above: 0, to: 0.1 }).optional(),
      'heat-capacity': quantity('heat-capacity', 'plate with sheet or glass', { above: 0, to: 1e5 }).optional(),
      power: watts('full power of its heater').optional(),
      emissivity: quantity('number', 'long-wave emissivity of its top', { from: 0, to: 1 }).optional(),
      underside: underside('what lies under it').optional(),
      motion: quantity('speed', 'mean speed of its own motion while printing', { from: 0, to: 5 }).optional(),
    },
    'heated bed',
  ).optional(),
  'hot-end': watts('heat around the nozzle at the reference temperature').optional(),
  'hot-end-at': celsius('nozzle temperature of that heat').optional(),
  motors: watts('heat of the motors while printing').optional(),
  electronics: watts('heat of board, display and camera').optional(),
  'electronics-inside': yesNo('the board stands in the same bay').optional(),
  'electronics-limit': celsius('hottest air that the board may have').optional(),
  'frame-limit': celsius('hottest air that frame, motors and printed parts may have').optional(),
  supply: thing(
    {
      inside: yesNo('the power supply stands in the same bay').optional(),
      efficiency: quantity('share', 'at printing load', { from: 0.3, to: 1 }).optional(),
      idle: watts('its heat without load').optional(),
    },
    'power supply',
  ).optional(),
  standby: watts('all of it while it is on and no job runs').optional(),
  'frame-heat-capacity': quantity('heat-capacity', 'frame and moving parts', { above: 0, to: 1e6 }).optional(),
  'frame-area': quantity('area', 'surface of the frame', { above: 0, to: 20 }).optional(),
  chamber: chamberSchema().optional(),
  ...standingFields,
  motion: motionSchema().optional(),
  noise: machineNoise().optional(),
  mains: mainsSchema().optional(),
  drive: driveSchema().optional(),
};

export function machineSchema(): Schema<MachineSpec> {
  return thing(
    {
      kind: name('kind of the catalogue'),
      bay: name('bay in which it stands').optional(),
      at: place(2, 'centre of its footprint from the left front corner of the bay').optional(),
      'stands-on': standsOn().optional(),
      finish: finish('how frame and bed look').optional(),
      ...machineFields,
    },
    'a printer',
  );
}

export const materialFields: FieldsOf<MaterialSpec> = {
  like: name('material from which everything not given here is taken').optional(),
  nozzle: celsius('nozzle temperature').optional(),
  bed: celsius('bed temperature').optional(),
  'prints-well': range('temperature', 'air around the part when the air is still').optional(),
  'prints-best': range('temperature', 'air around large parts').optional(),
  draught: quantity('speed', 'highest air speed at the part', { above: 0, to: 10 }).optional(),
  density: quantity('density', 'of the filament', { above: 0, to: 20_000 }).optional(),
  'glass-transition': quantity('temperature', 'at which it softens', { from: 173.15, to: 773.15 }).optional(),
  'spool-limit': celsius('warmest air that its spool should hang in').optional(),
  'humidity-limit': quantity('share', 'dampest air in which its spool stays dry enough', { from: 0, to: 1 }).optional(),
  'elastic-modulus': quantity('stress', 'stiffness of the filament', { above: 0, to: 1e11 }).optional(),
  'bend-strain': quantity('share', 'strain of its outer fibre that it bears in a bend', { above: 0, to: 2 }).optional(),
  emissions: emissionsSchema('given off while printing').optional(),
  'heat-of-combustion': quantity('specific-energy', 'net, when it burns', { from: 0, to: 1e8 }).optional(),
};

export function materialSchema(): Schema<MaterialSpec> {
  return thing(materialFields, 'a filament');
}

export const heatFields: FieldsOf<HeatKindSpec> = {
  what: word(['lamp', 'drier', 'heater', 'other'], 'what it is').optional(),
  power: watts('electrical power').optional(),
  holds: celsius('air temperature that a heater holds').optional(),
  water: quantity('water-rate', 'water given off while on', { from: 0, to: 0.001 }).optional(),
  ...lampFields,
};

export function heatSchema(): Schema<HeatSpec> {
  return thing(
    {
      kind: name('kind of the catalogue').optional(),
      bay: name('bay in which it is').optional(),
      control: control('when it is on').optional(),
      ...lampPlaceFields,
      ...heatFields,
    },
    'lamp, drier or heater',
  );
}
