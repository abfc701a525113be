// Schema of the whole cabinet file, version 1. A version once published only gains keys.

import * as z from 'zod';
import { calibrationSchema } from './calibration.ts';
import { careSchema } from './care-schema.ts';
import { carcassOptionSchema, costsSchema } from './costs-schema.ts';
import { spoolSchema } from './filament-schema.ts';
import { hangFields } from './fit-schema.ts';
import { fittingPartSchema } from './fittings-schema.ts';
import { joinerySchema } from './joinery-schema.ts';
import { cameraFields, cameraSchema, finish, finishFields, reflectance } from './light-schema.ts';
import {
  heatFields,
  heatSchema,
  machineFields,
  machineSchema,
  materialFields,
  materialSchema,
} from './machine-schema.ts';
import {
  backgroundSchema,
  carbonFields,
  ductFields,
  entryFields,
  fanFields,
  filterFields,
  fittingFields,
  fittingNames,
  flapFields,
  holeSchema,
  partSchema,
  placeSchema,
} from './part-schema.ts';
import { powerSchema } from './power-schema.ts';
import { protectionSchema } from './protection-schema.ts';
import { queueSchema } from './queue-schema.ts';
import { searchSchema } from './search-schema.ts';
import {
  choice,
  clock,
  count,
  course,
  listOf,
  mapOf,
  money,
  name,
  oneOrMore,
  place,
  quantity,
  range,
  type Schema,
  sizes,
  text,
  thing,
  window,
  word,
  yesNo,
} from './shape.ts';
import { boardSoundFields, liningSchema, quietHours, roomSoundFields } from './sound-schema.ts';
import type {
  CabinetSpec,
  DaySpec,
  DoorSpec,
  FileSpec,
  OptionSpec,
  OutdoorsSpec,
  PartsSpec,
  PathSpec,
  RoomSpec,
} from './spec.ts';
import {
  boardStrengthFields,
  carcassStandingFields,
  foamFields,
  hingesSchema,
  shelfHoldFields,
} from './structure-schema.ts';
import { build, section } from './text-forms.ts';

const ROOM = { from: 233.15, to: 343.15 };

/** A section is built when a file first has it: most files have few of them. */
function later<T>(build: () => Schema<T>): Schema<T> {
  return z.lazy(build);
}

let schema: ReturnType<typeof buildFileSchema> | undefined;

/** Built when it is first asked for: half of the commands never read a cabinet file. */
export function fileSchema(): Schema<FileSpec> {
  schema ??= buildFileSchema();
  return schema as unknown as Schema<FileSpec>;
}

/** The same, section by section. */
export function fileSections(): Readonly<Record<keyof FileSpec, Schema<unknown>>> {
  schema ??= buildFileSchema();
  return schema.shape;
}

/** Keys at the left edge of a file. */
export function fileKeys(): readonly string[] {
  return Object.keys(fileSections());
}

let catalogueSchema: Schema<PartsSpec> | undefined;

/** Schema of the catalogue's files, which is also that of `parts:`. */
export function partsSchema(): Schema<PartsSpec> {
  catalogueSchema ??= buildPartsSchema();
  return catalogueSchema;
}

function buildFileSchema(): z.ZodObject<Readonly<Record<keyof FileSpec, Schema<unknown>>>, z.core.$strict> {
  // Compiling a checker for each map costs more than a file of this size repays, and pages may forbid it.
  z.config({ jitless: true });
  return thing(
    {
      stillair: versionSchema(),
      title: text('what the cabinet is called').optional(),
      currency: text('three letters of the money that prices are in').optional(),
      room: later(() => roomSchema()).optional(),
      outdoors: later(() => outdoorsSchema()).optional(),
      people: later(() => mapOf(personSchema(), 'people in the room', 'person')).optional(),
      cabinet: later(() => carcassSchema()),
      bays: later(() => mapOf(baySchema(), 'compartments', 'bay')).optional(),
      shelves: later(() => mapOf(shelfSchema(), 'boards between bays', 'shelf')).optional(),
      machines: later(() => mapOf(machineSchema(), 'printers', 'machine')).optional(),
      materials: later(() =>
        mapOf(materialSchema(), 'filaments of your own, or what is different about one', 'material'),
      ).optional(),
      air: later(() => mapOf(pathSchema(), 'ways for air', 'air path')).optional(),
      sensors: later(() => mapOf(sensorSchema(), 'thermometers', 'sensor')).optional(),
      heats: later(() => mapOf(heatSchema(), 'lamps, driers, heaters', 'source of heat')).optional(),
      cameras: later(() => mapOf(cameraSchema(), 'cameras that look at prints', 'camera')).optional(),
      power: later(() => powerSchema()).optional(),
      spools: later(() => mapOf(spoolSchema(), 'spools of filament', 'spool')).optional(),
      days: later(() => mapOf(daySchema(), 'days to be looked at', 'day')),
      queue: later(() => queueSchema()).optional(),
      parts: later(() => partsSchema()).optional(),
      overrides: mapAny('what replaces a derived quantity, by its path').optional(),
      limits: mapAny('limits of your own, by their id').optional(),
      prices: z.record(z.string(), money('price')).describe('prices of your own, by kind of part').optional(),
      protection: later(() => protectionSchema()).optional(),
      costs: later(() => costsSchema()).optional(),
      carcasses: later(() => mapOf(carcassOptionSchema(), 'carcasses that you think of', 'carcass')).optional(),
      care: later(() => careSchema()).optional(),
      options: later(() => mapOf(optionSchema(), 'changes that you think of', 'option')).optional(),
      joinery: later(joinerySchema).optional(),
      search: later(() => searchSchema()).optional(),
      fittings: later(() =>
        mapOf(fittingPartSchema(), 'tools, cables, mounts and whatever else needs a place', 'fitting'),
      ).optional(),
      calibration: later(() => calibrationSchema()).optional(),
    },
    'cabinet file',
  );
}

function versionSchema(): Schema<number> {
  const error = ({ input }: { readonly input?: unknown }): string =>
    JSON.stringify({
      code: input === undefined ? 'key-missing' : 'version-unknown',
      what: `version ${String(input)} is not known here`,
      allowed: 'stillair: 1',
      mend: input === undefined ? '' : 'write 1, or use a newer program',
    });
  return z.literal(1, { error }).describe('version of the format');
}

/** Values whose unit depends on their key; they are read with the registry of their kind. */
function mapAny(about: string): Schema<Record<string, string | number>> {
  const error = (): string =>
    JSON.stringify({
      code: 'value-wrong',
      what: 'this is no quantity',
      allowed: 'a number with its unit',
      mend: 'write one quantity',
    });
  return z.record(z.string(), z.union([z.string(), z.number()], { error }), { error }).describe(about);
}

function roomSchema(): Schema<RoomSpec> {
  return thing(
    {
      size: sizes(3, 'width x depth x height').optional(),
      temperature: course('temperature', 'of the room without the cabinet', ROOM).optional(),
      held: yesNo('the temperature is held whatever the cabinet gives off').optional(),
      humidity: quantity('share', 'relative humidity', { from: 0, to: 1 }).optional(),
      'air-changes': quantity('air-change', 'exchange with outdoors', { from: 0, to: 50 }).optional(),
      'heat-loss': quantity('heat-loss', "through the room's walls, without its air change", {
        above: 0,
        to: 5000,
      }).optional(),
      'heat-capacity': quantity('heat-capacity', 'air, furniture and the skin of the walls', {
        above: 0,
        to: 1e9,
      }).optional(),
      background: backgroundSchema('what the air of the room carries without the printers').optional(),
      deposition: quantity('loss-rate', 'particles lost to surfaces', { from: 0, to: 0.01 }).optional(),
      'air-cleaner': quantity('flow', 'clean air of an air cleaner in the room', { from: 0, to: 1 }).optional(),
      ...roomSoundFields,
    },
    'the room around the cabinet',
  );
}

function outdoorsSchema(): Schema<OutdoorsSpec> {
  return thing(
    {
      temperature: course('temperature', 'outdoors', ROOM).optional(),
      humidity: quantity('share', 'relative humidity', { from: 0, to: 1 }).optional(),
      wind: quantity('speed', 'wind', { from: 0, to: 40 }).optional(),
      background: backgroundSchema('what outdoor air carries').optional(),
    },
    'outdoors',
  );
}

function personSchema(): Schema<NonNullable<FileSpec['people']>[string]> {
  return thing(
    {
      at: place(3, "of their head, from the cabinet's inside lower left front corner: right, back, up").optional(),
      hours: oneOrMore(window('when they are there'), 'when they are there').optional(),
      quiet: quietHours().optional(),
    },
    'a person',
  );
}

function doorSchema(): Schema<DoorSpec> {
  return thing(
    {
      'made-of': build('leaf').optional(),
      face: word(['front', 'back', 'left', 'right', 'top', 'bottom'], 'face in which it is').optional(),
      bays: oneOrMore(name('bay'), 'bays that it opens').optional(),
      seal: name('seal of the catalogue').optional(),
      'seal-gap': quantity('length', 'mean gap that is left all round', { from: 0, to: 0.05 }).optional(),
      'seal-depth': quantity('length', "length of that gap along the air's way", { above: 0, to: 0.3 }).optional(),
      sun: course('irradiance', 'sun on the pane', { from: 0, to: 1400 }).optional(),
      hinges: hingesSchema().optional(),
      ...hangFields,
      finish: finish('how its inner face looks').optional(),
    },
    'a door',
  );
}

function carcassSchema(): Schema<CabinetSpec> {
  const face = thing(
    {
      'made-of': build('this face').optional(),
      against: word(['room', 'wall', 'floor'], 'what its outer side looks at').optional(),
      gap: quantity('length', 'air gap to that wall or floor', { from: 0, to: 2 }).optional(),
      finish: finish('how it looks inside').optional(),
    },
    'a face of the cabinet',
  );
  const faceFields = {
    front: face.optional(),
    back: face.optional(),
    left: face.optional(),
    right: face.optional(),
    top: face.optional(),
    bottom: face.optional(),
  };
  const shortDoor = build('leaf of the one door').transform((leaf): DoorSpec => ({ 'made-of': leaf }));
  const hasDoorKeys = (input: unknown): boolean =>
    typeof input === 'object' && input !== null && !Array.isArray(input) && !Object.hasOwn(input, 'layers');
  return thing(
    {
      inside: sizes(3, 'inside width x depth x height'),
      'made-of': build('carcass'),
      faces: thing(faceFields, 'faces that differ').optional(),
      door: choice(
        [shortDoor, doorSchema()],
        (input) => (hasDoorKeys(input) ? 1 : 0),
        'the one door, in the front',
      ).optional(),
      doors: mapOf(doorSchema(), 'doors', 'door').optional(),
      'joint-gap': quantity('length', 'mean gap of board to board', { from: 0, to: 0.01 }).optional(),
      ...carcassStandingFields,
      tolerance: quantity('length', 'by how much the inside may differ from what is written', {
        from: 0,
        to: 0.05,
      }).optional(),
      lining: liningSchema().optional(),
      finish: finish('how faces and shelves look inside').optional(),
    },
    'the carcass',
  ) as unknown as Schema<CabinetSpec>;
}

function baySchema(): Schema<NonNullable<FileSpec['bays']>[string]> {
  return thing(
    {
      z: range('length', 'from its floor to its ceiling, above the inside floor').optional(),
      x: range('length', 'from left to right').optional(),
      'air-zones': count('one well mixed zone, or low and high', 2).optional(),
    },
    'a bay',
  );
}

function shelfSchema(): Schema<NonNullable<FileSpec['shelves']>[string]> {
  return thing(
    {
      between: listOf(name('bay'), 'the two bays'),
      'made-of': build('the board').optional(),
      holes: mapOf(holeSchema(), 'holes in it', 'hole').optional(),
      ...shelfHoldFields,
      finish: finish('how both its faces look').optional(),
    },
    'a board between two bays',
  );
}

function pathSchema(): Schema<PathSpec> {
  return thing(
    {
      from: name('room, outdoors, a bay or a machine’s chamber'),
      to: name('room, outdoors, a bay or a machine’s chamber'),
      hole: section('the hole that it is, or through which it begins').optional(),
      count: count('number of such holes').optional(),
      at: placeSchema('where it pierces the cabinet').optional(),
      blows: word(
        ['in', 'wall', 'away'],
        'where its air leaves: into the bay, along a face, away from the prints',
      ).optional(),
      wind: quantity('number', 'wind pressure coefficient of its outdoor end', { from: -2, to: 2 }).optional(),
      parts: listOf(partSchema(), 'parts one after another').optional(),
    },
    'a way for air',
  );
}

function sensorSchema(): Schema<NonNullable<FileSpec['sensors']>[string]> {
  return thing(
    {
      bay: name('bay in which it hangs'),
      height: quantity('length', 'above the floor of the bay', { from: 0, to: 5 }).optional(),
      offset: quantity('temperature-difference', 'what it shows too much', { from: -20, to: 20 }).optional(),
      lag: quantity('duration', 'its time constant', { from: 0, to: 3600 }).optional(),
    },
    'a thermometer',
  );
}

function daySchema(): Schema<DaySpec> {
  const job = thing(
    {
      machine: name('machine').optional(),
      material: name('material'),
      start: clock('when its heating begins'),
      for: quantity('duration', 'from the start to the end of the print', { above: 0, to: 35 * 86_400 }),
      nozzle: quantity('temperature', 'nozzle', { from: 293.15, to: 773.15 }).optional(),
      bed: quantity('temperature', 'bed', { from: 273.15, to: 473.15 }).optional(),
      mass: quantity('mass', 'filament used', { above: 0, to: 100 }).optional(),
      'part-size': quantity('length', 'largest span of the part', { above: 0, to: 2 }).optional(),
      'bed-stuck': yesNo('a fault: its bed heats at full power from its start to the end of the day').optional(),
    },
    'a print',
  );
  const opening = thing(
    {
      door: name('door').optional(),
      at: clock('when'),
      for: quantity('duration', 'how long', { above: 0, to: 86_400 }),
    },
    'a door is opened',
  );
  return thing(
    {
      title: text('what the day is called').optional(),
      length: quantity('duration', 'of the day', { above: 0, to: 40 * 86_400 }).optional(),
      jobs: mapOf(job, 'prints', 'job').optional(),
      doors: listOf(opening, 'when doors are opened').optional(),
      'room-temperature': course('temperature', 'of the room on this day', ROOM).optional(),
      'outdoor-temperature': course('temperature', 'outdoors on this day', ROOM).optional(),
      'power-cut': window('hours without power').optional(),
      repeated: yesNo('repeated until it begins as it ends').optional(),
    },
    'a day',
  );
}

function buildPartsSchema(): Schema<PartsSpec> {
  const share = { from: 0, to: 1 };
  const board = thing(
    {
      conductivity: quantity('conductivity', 'of heat', { above: 0, to: 500 }),
      density: quantity('density', 'of the board', { above: 0, to: 20_000 }),
      'heat-capacity': quantity('specific-heat', 'of the board', { above: 0, to: 10_000 }),
      emissivity: quantity('number', 'long-wave, of its face', share),
      sunlight: quantity('share', 'share of sunlight that is let through', share).optional(),
      'heat-of-combustion': quantity('specific-energy', 'net, when it burns; 0 for what does not', {
        from: 0,
        to: 1e8,
      }).optional(),
      sheet: sizes(2, 'length x width of the sheet in which it is sold').optional(),
      ...boardStrengthFields,
      ...boardSoundFields,
      reflectance: reflectance().optional(),
      ...entryFields,
    },
    'a board or pane',
  );
  const seal = thing(
    {
      gap: quantity('length', 'mean gap that is left all round', { from: 0, to: 0.05 }),
      depth: quantity('length', "length of that gap along the air's way", { above: 0, to: 0.3 }),
      ...entryFields,
    },
    'a seal of doors',
  );
  return thing(
    {
      boards: later(() => mapOf(board, 'boards and panes', 'board')).optional(),
      seals: later(() => mapOf(seal, 'seals', 'seal')).optional(),
      foams: later(() =>
        mapOf(thing({ ...foamFields, ...entryFields }, 'a foam'), 'foams and pads', 'foam'),
      ).optional(),
      fans: later(() => mapOf(thing({ ...fanFields, ...entryFields }, 'a fan'), 'fans', 'fan')).optional(),
      filters: later(() =>
        mapOf(thing({ ...filterFields, ...entryFields }, 'a filter'), 'particle filters', 'filter'),
      ).optional(),
      carbons: later(() =>
        mapOf(thing({ ...carbonFields, ...entryFields }, 'a carbon stage'), 'carbon stages', 'carbon stage'),
      ).optional(),
      ducts: later(() => mapOf(thing({ ...ductFields, ...entryFields }, 'a duct'), 'ducts', 'duct')).optional(),
      fittings: later(() =>
        mapOf(
          thing({ what: word(fittingNames, 'which part it is'), ...fittingFields, ...entryFields }, 'a fitting'),
          'grilles, louvres, guards, bends, mufflers, adapters',
          'fitting',
        ),
      ).optional(),
      flaps: later(() =>
        mapOf(thing({ ...flapFields, ...entryFields }, 'a flap'), 'back-draught flaps', 'flap'),
      ).optional(),
      machines: later(() =>
        mapOf(thing({ ...machineFields, ...entryFields }, 'a kind of printer'), 'kinds of printers', 'kind of machine'),
      ).optional(),
      heats: later(() =>
        mapOf(
          thing({ ...heatFields, ...entryFields }, 'lamp, drier or heater'),
          'lamps, driers, heaters',
          'source of heat',
        ),
      ).optional(),
      materials: later(() =>
        mapOf(thing({ ...materialFields, ...entryFields }, 'a filament'), 'filaments', 'material'),
      ).optional(),
      finishes: later(() =>
        mapOf(thing({ ...finishFields, ...entryFields }, 'a finish'), 'finishes of faces', 'finish'),
      ).optional(),
      cameras: later(() =>
        mapOf(thing({ ...cameraFields, ...entryFields }, 'a kind of camera'), 'kinds of cameras', 'kind of camera'),
      ).optional(),
    },
    'parts of your own, in the form of the catalogue',
  ) as unknown as Schema<PartsSpec>;
}

function optionSchema(): Schema<OptionSpec> {
  const edit = thing(
    {
      set: z.record(z.string(), z.unknown()).describe('new values by path').optional(),
      add: z.record(z.string(), z.unknown()).describe('new parts by path').optional(),
      remove: listOf(text('path'), 'what goes').optional(),
    },
    'an edit',
  );
  const edits = listOf(edit, 'edits, one after another');
  const full = thing({ title: text('what it is called').optional(), edits }, 'an option with a title');
  const one = edit.transform((only): OptionSpec => ({ edits: [only] }));
  const many = edits.transform((all): OptionSpec => ({ edits: all }));
  const pick = (input: unknown): number =>
    Array.isArray(input) ? 0 : typeof input === 'object' && input !== null && Object.hasOwn(input, 'edits') ? 1 : 2;
  return choice([many, full, one], pick, 'a change to the file, as edits') as Schema<OptionSpec>;
}
