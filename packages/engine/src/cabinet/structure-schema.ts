// Keys of carrying and shaking: what machines weigh and stand on, how shelves are held, what boards bear, hinges, feet, strap.

import { fault, isFault, parseQuantity, type TextFault } from '../units/quantity.ts';
import { choice, count, type FieldsOf, fromText, quantity, type Schema, sizes, thing, word, yesNo } from './shape.ts';
import { joints } from './structure.ts';
import type {
  BoardStrengthSpec,
  CarcassStandingSpec,
  FoamKindSpec,
  FoamSpec,
  HingesSpec,
  LippingSpec,
  ShelfHoldSpec,
  StandingSpec,
  StandsOnSpec,
} from './structure-spec.ts';

const mass = (about: string, to = 500): ReturnType<typeof quantity> => quantity('mass', about, { from: 0, to });
const length = (about: string, to: number): ReturnType<typeof quantity> => quantity('length', about, { above: 0, to });
const modulus = (about: string): ReturnType<typeof quantity> => quantity('stress', about, { above: 0, to: 1e12 });

export const standingFields: FieldsOf<StandingSpec> = {
  mass: quantity('mass', 'of the whole machine, without filament', { above: 0, to: 500 }).optional(),
  feet: sizes(2, 'between the centres of its feet, width x depth').optional(),
  shaking: thing(
    {
      'head-mass': mass('what moves with the print head', 20).optional(),
      'bed-mass': mass('what moves with a bed that travels', 100).optional(),
      acceleration: quantity('acceleration', 'at which strokes begin and end', { above: 0, to: 200 }).optional(),
      speed: quantity('speed', 'of usual strokes', { above: 0, to: 5 }).optional(),
      stroke: length('a usual stroke between two reversals', 2).optional(),
      'travel-per-turn': length('way of the belt in one turn of its motor', 1).optional(),
      'steps-per-turn': quantity('number', 'full steps of that motor in a turn', { above: 0, to: 10_000 }).optional(),
    },
    'how it moves while it prints',
  ).optional(),
};

const FOAM_FORM = 'a foam and its thickness, such as seating foam 20 mm';

/** `seating foam 20 mm` */
function parseFoam(text: string): FoamSpec | TextFault {
  const split = /^\s*(.*?[^\s\d])\s+([\d.,].*)$/.exec(text);
  if (split === null) {
    const what = `"${text}" does not say how thick it is`;
    return fault('foam-wrong', 0, Math.max(1, text.length), what, FOAM_FORM, 'write the thickness behind the foam');
  }
  const [, foam = '', thick = ''] = split;
  const at = text.length - thick.length;
  const thickness = parseQuantity('length', thick);
  if (isFault(thickness)) return { ...thickness, at: at + thickness.at, allowed: FOAM_FORM };
  if (thickness.value <= 0 || thickness.value > 0.5) {
    const allowed = `${FOAM_FORM}, up to 500 mm`;
    return fault(
      'value-out-of-bounds',
      at,
      thick.length,
      `${thick} is no thickness of foam`,
      allowed,
      'measure it again',
    );
  }
  return { foam, thickness: thickness.value, length: foam.length + (text.length - text.trimStart().length) };
}

const STANDS_FORM = 'board, or a map such as { slab: 400 mm x 400 mm x 40 mm, foam: seating foam 20 mm }';

function parseBoard(text: string): StandsOnSpec | TextFault {
  if (text.trim() === 'board') return {};
  const what = `"${text}" does not say how large and how thick it is`;
  return fault('stands-on-wrong', 0, Math.max(1, text.length), what, STANDS_FORM, 'write it as one of these');
}

/** `board` when it stands on it as it is, or a map of slab and foam. */
export function standsOn(): Schema<StandsOnSpec> {
  const bare = fromText((input) => parseBoard(String(input)), false, 'the bare board', STANDS_FORM);
  const full = thing(
    {
      slab: sizes(3, 'width x depth x thickness of a paving slab below the machine').optional(),
      slabs: count('how many of them, one upon another', 10).optional(),
      'slab-density': quantity('density', 'of the slab', { above: 0, to: 10_000 }).optional(),
      foam: fromText(
        (input) => parseFoam(String(input)),
        false,
        'foam below the slab, or below the feet',
        FOAM_FORM,
      ).optional(),
      pads: count('number of pads that the foam is cut into', 50).optional(),
      'pad-size': sizes(2, 'width x depth of one pad').optional(),
    },
    'what is between the machine and the board',
  );
  const pick = (input: unknown): number => (typeof input === 'object' && input !== null ? 1 : 0);
  return choice([bare, full], pick, 'what the machine stands on: board, or slab and foam') as Schema<StandsOnSpec>;
}

export const foamFields: FieldsOf<FoamKindSpec> = {
  stiffness: modulus('in slow compression at small strain'),
  stiffening: quantity('number', 'how much stiffer it is against fast motion', { from: 1, to: 10 }),
  damping: quantity('number', 'damping ratio', { above: 0, to: 1 }),
  creep: quantity('share', 'share of its thickness lost in the first weeks under load', { from: 0, to: 1 }),
  'usable-strain': quantity('share', 'compression up to which it stays springy', { above: 0, to: 1 }),
  solid: yesNo('it bulges at its sides, as rubber does, instead of being pressed together').optional(),
};

export const boardStrengthFields: FieldsOf<BoardStrengthSpec> = {
  bending: modulus('stiffness in bending along the grain; of one veneer where veneer is given').optional(),
  'bending-across': modulus('stiffness in bending across the grain').optional(),
  veneer: length(
    'thickness of one of the crossed veneers it is built of: stiffness then follows from them',
    0.02,
  ).optional(),
  'bending-stress': modulus('bending stress that it may bear for years').optional(),
  'sag-growth': quantity('number', 'sag gained over the years, as a share of the first', {
    from: 0,
    to: 20,
  }).optional(),
};

export const shelfHoldFields: FieldsOf<ShelfHoldSpec> = {
  joint: word(joints, 'how its ends are held').optional(),
  lipping: lippingSchema().optional(),
  grain: word(['along', 'across'], 'grain of its faces along its span or across it').optional(),
  pins: thing(
    {
      count: count('number of pins', 100).optional(),
      size: length('diameter of a pin', 0.05).optional(),
      depth: length('how deep it sits in the board', 0.1).optional(),
    },
    'shelf pins',
  ).optional(),
  posts: count('posts or uprights below it, evenly spaced', 20).optional(),
  load: mass('what else lies on it').optional(),
  'pulls-out': quantity('length', 'how far it pulls out to the front', { from: 0, to: 2 }).optional(),
};

/** `40 mm x 20 mm` (height x breadth), or a map. */
function lippingSchema(): Schema<LippingSpec> {
  const size = sizes(2, 'height x breadth of the strip');
  const full = thing(
    {
      size,
      edges: word(['front', 'front and back'], 'edges that have one').optional(),
      stiffness: modulus('stiffness of the strip').optional(),
    },
    'a strip on edge under a long edge',
  );
  const short = size.transform((only): LippingSpec => ({ size: only }));
  const pick = (input: unknown): number => (typeof input === 'object' && input !== null ? 1 : 0);
  return choice([short, full], pick, 'a strip on edge under its front edge, glued on or folded') as Schema<LippingSpec>;
}

export const hingesSchema = (): Schema<HingesSpec> =>
  thing(
    {
      count: count('number of hinges', 20).optional(),
      spacing: length('between the outermost hinges', 5).optional(),
      carries: mass('mass that one such hinge carries, as its papers say', 200).optional(),
      holes: thing(
        {
          'from-edge': length('from the hinged edge of the leaf to the middles of its holes', 0.5),
          apart: length('between the two holes of one hinge, along the edge', 0.5),
          diameter: length('width of the holes', 0.05),
        },
        'holes that each hinge wants in a leaf that takes no cup: a pane, a sheet of metal, a thin board',
      ).optional(),
    },
    'hinges of a leaf',
  );

export const carcassStandingFields: FieldsOf<CarcassStandingSpec> = {
  'wall-strap': yesNo('it is strapped or screwed to the wall').optional(),
  feet: thing(
    {
      count: count('number of feet', 40).optional(),
      size: length('side or diameter of a foot', 0.5).optional(),
      height: length('of the feet', 0.5).optional(),
      inset: quantity('length', 'from the outer faces of the cabinet to the feet', { from: 0, to: 0.5 }).optional(),
    },
    'feet of the cabinet',
  ).optional(),
  bottom: thing(shelfHoldFields, 'how its bottom is stiffened and held, where it stands on feet').optional(),
};
