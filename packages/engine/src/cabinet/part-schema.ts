// Parts through which air goes: as they stand in the catalogue, and as they stand in an air path.

import { concentrationKind, contaminants, rateKind } from './contaminants.ts';
import { control } from './control-schema.ts';
import {
  amounts,
  byKey,
  count,
  type FieldsOf,
  money,
  name,
  points,
  quantity,
  type Schema,
  text,
  thing,
  word,
  yesNo,
} from './shape.ts';
import { fittingSoundFields } from './sound-schema.ts';
import type {
  CarbonSpec,
  DuctSpec,
  Entry,
  FanSpec,
  FilterSpec,
  FittingName,
  FittingSpec,
  FlapSpec,
  HoleSpec,
  PartSpec,
  PlaceSpec,
} from './spec.ts';
import { section } from './text-forms.ts';

export const fittingNames: readonly FittingName[] = ['grille', 'louvre', 'guard', 'bend', 'muffler', 'adapter'];

const efficiency = (about: string): Schema<Partial<Record<string, { value: number }>>> =>
  amounts(
    contaminants,
    (contaminant) => quantity('share', `share of ${contaminant} taken out`, { from: 0, to: 1 }),
    about,
  );

const resistance = (about: string): ReturnType<typeof points> => points('flow', 'pressure', about, { from: 0 });

/** What every catalogue entry may carry besides its physics. */
export const entryFields: FieldsOf<Entry> = {
  source: text('where its numbers come from').optional(),
  price: money('what it costs').optional(),
};

export const fanFields: FieldsOf<FanSpec> = {
  size: quantity('length', 'side of its frame', { above: 0, to: 1 }).optional(),
  curve: points('flow', 'pressure', 'pressure over flow at full speed', { from: 0 }).optional(),
  power: quantity('power', 'electrical power at full speed', { from: 0, to: 500 }).optional(),
  noise: quantity('sound-level', 'free-field level at 1 m, full speed', { from: -20, to: 120 }).optional(),
};

export const filterFields: FieldsOf<FilterSpec> = {
  size: section('its face').optional(),
  resistance: resistance('pressure loss over flow, clean').optional(),
  efficiency: efficiency('what the clean medium takes out').optional(),
  'seat-gap': quantity('length', 'gap at its seat', { from: 0, to: 0.02 }).optional(),
  'seat-depth': quantity('length', 'length of that gap along the air', { above: 0, to: 0.3 }).optional(),
  loading: quantity('share', 'share of its dust capacity that is used', { from: 0, to: 2 }).optional(),
  'dust-capacity': quantity('mass', 'dust that doubles its pressure loss', { above: 0, to: 10 }).optional(),
};

export const carbonFields: FieldsOf<CarbonSpec> = {
  size: section('its face').optional(),
  mass: quantity('mass', 'carbon', { above: 0, to: 100 }).optional(),
  depth: quantity('length', 'thickness of the bed', { above: 0, to: 1 }).optional(),
  grain: quantity('length', 'size of a grain', { above: 0, to: 0.02 }).optional(),
  resistance: resistance('pressure loss over flow').optional(),
  efficiency: efficiency('what it takes out while fresh').optional(),
  load: quantity('share', 'vapour already held, by mass of carbon', { from: 0, to: 1 }).optional(),
};

export const ductFields: FieldsOf<DuctSpec> = {
  size: quantity('length', 'inner diameter', { above: 0, to: 1 }).optional(),
  flexible: yesNo('corrugated').optional(),
};

export const fittingFields: FieldsOf<FittingSpec> = {
  loss: quantity('number', 'loss coefficient K on the speed in its section', { from: 0, to: 1000 }).optional(),
  size: section('its section').optional(),
  ...fittingSoundFields,
};

export const flapFields: FieldsOf<FlapSpec> = {
  'opens-at': quantity('pressure', 'pressure that opens it', { from: 0, to: 1000 }).optional(),
  leak: quantity('area', 'free area while it is shut', { from: 0, to: 0.1 }).optional(),
};

export function placeSchema(about: string): Schema<PlaceSpec> {
  return thing(
    {
      face: word(['front', 'back', 'left', 'right', 'top', 'bottom'], 'face of the cabinet').optional(),
      along: quantity('length', 'from the left (or front) end of the face to the centre').optional(),
      z: quantity('length', 'height of the centre above the inside floor').optional(),
    },
    about,
  );
}

const holeFields = {
  hole: section('hole'),
  count: count('number of equal holes').optional(),
  discharge: quantity('number', 'discharge coefficient', { above: 0, to: 1.2 }).optional(),
};

/** A hole in a shelf. */
export function holeSchema(): Schema<HoleSpec> {
  return thing({ ...holeFields, at: placeSchema('where').optional() }, 'a hole');
}

/** One part of an air path: a kind of the catalogue, with whatever is different about this one. */
export function partSchema(): Schema<PartSpec> {
  const fitting = (part: FittingName): Schema<PartSpec> =>
    thing({ [part]: name('kind of the catalogue'), ...fittingFields }, part).transform((fields) => {
      const { [part]: kind, ...rest } = fields as Record<string, unknown>;
      return { part, kind, ...rest } as unknown as PartSpec;
    });
  const branches = {
    hole: thing(holeFields, 'a hole').transform((fields): PartSpec => ({ part: 'hole', ...fields })),
    fan: thing(
      {
        fan: name('kind of the catalogue'),
        speed: quantity('share', 'share of full speed', { from: 0, to: 1 }).optional(),
        control: control('when it runs').optional(),
        ...fanFields,
      },
      'a fan',
    ).transform(({ fan, ...rest }): PartSpec => ({ part: 'fan', kind: fan, ...rest })),
    filter: thing({ filter: name('kind of the catalogue'), ...filterFields }, 'a particle filter').transform(
      ({ filter, ...rest }): PartSpec => ({ part: 'filter', kind: filter, ...rest }),
    ),
    carbon: thing({ carbon: name('kind of the catalogue'), ...carbonFields }, 'a carbon stage').transform(
      ({ carbon, ...rest }): PartSpec => ({ part: 'carbon', kind: carbon, ...rest }),
    ),
    duct: thing(
      {
        duct: name('kind of the catalogue'),
        length: quantity('length', 'its length', { from: 0, to: 50 }).optional(),
        ...ductFields,
      },
      'a duct',
    ).transform(({ duct, ...rest }): PartSpec => ({ part: 'duct', kind: duct, ...rest })),
    ...Object.fromEntries(fittingNames.map((part) => [part, fitting(part)])),
    flap: thing({ flap: name('kind of the catalogue'), ...flapFields }, 'a back-draught flap').transform(
      ({ flap, ...rest }): PartSpec => ({ part: 'flap', kind: flap, ...rest }),
    ),
    loss: thing(
      { loss: quantity('number', 'loss coefficient K', { from: 0, to: 1000 }), size: section('its section') },
      'any other resistance',
    ).transform((fields): PartSpec => ({ part: 'loss', ...fields })),
  };
  return byKey(branches, 'the part', 'a part in the way of the air') as unknown as Schema<PartSpec>;
}

export function backgroundSchema(about: string): Schema<Partial<Record<string, { value: number }>>> {
  return amounts(
    contaminants,
    (contaminant) => quantity(concentrationKind(contaminant), `${contaminant} in the air`, { from: 0 }),
    about,
  );
}

export function emissionsSchema(about: string): Schema<Partial<Record<string, { value: number }>>> {
  return amounts(
    contaminants,
    (contaminant) => quantity(rateKind(contaminant), `${contaminant} given off while printing`, { from: 0 }),
    about,
  );
}
