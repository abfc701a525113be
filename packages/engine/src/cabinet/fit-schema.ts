// Keys of the file that only fit asks for: how machines move, how doors hang.

import type { Hinge, SpoolPlace } from './fit.ts';
import { type FieldsOf, quantity, type Schema, sizes, thing, word } from './shape.ts';
import type { Given, Lengths } from './spec.ts';

type Maybe<T> = T | undefined;

export interface MotionSpec {
  readonly frame?: Maybe<Lengths>;
  readonly 'bed-travel'?: Given;
  readonly 'bed-offset'?: Given;
  readonly 'clip-front'?: Given;
  readonly 'cable-rear'?: Given;
  readonly 'carriage-left'?: Given;
  readonly 'carriage-right'?: Given;
  readonly 'tube-arch'?: Given;
  readonly spool?: Maybe<SpoolPlace>;
  readonly 'spool-size'?: Maybe<Lengths>;
  readonly 'spool-lift'?: Given;
  readonly plug?: Given;
  readonly 'without-top'?: Given;
  readonly lid?: Given;
}

export interface HangSpec {
  readonly hinge?: Maybe<Hinge>;
  readonly 'hinge-takes'?: Given;
  readonly 'stands-in'?: Given;
  readonly lip?: Given;
  readonly before?: Given;
}

const span = (about: string, to = 1): Schema<NonNullable<Given>> => quantity('length', about, { from: 0, to });

export function motionSchema(): Schema<MotionSpec> {
  return thing(
    {
      frame: sizes(3, 'width x depth x height of the frame that stands still').optional(),
      'bed-travel': span('whole way of a bed that moves in depth', 2).optional(),
      'bed-offset': quantity('length', 'middle of that way behind the middle of the frame', {
        from: -1,
        to: 1,
      }).optional(),
      'clip-front': span('knob or clip before the plate').optional(),
      'cable-rear': span('cable, strain relief and its bend behind the plate').optional(),
      'carriage-left': span('what reaches beyond the frame on the left').optional(),
      'carriage-right': span('what reaches beyond the frame on the right').optional(),
      'tube-arch': span('highest arch of tube and cable above the frame').optional(),
      spool: word(['top', 'left', 'right', 'back', 'away'], 'where the spool hangs; away: not in this bay').optional(),
      'spool-size': sizes(2, 'diameter x width of the largest spool').optional(),
      'spool-lift': span('axle and holder between frame and spool').optional(),
      plug: span('mains plug and the bend of its cord behind the frame').optional(),
      'without-top': span('height that is left when its upper part comes off', 3).optional(),
      lid: span('height of its own open lid above the frame').optional(),
    },
    'what moves, hangs or sticks out',
  );
}

export const hangFields: FieldsOf<HangSpec> = {
  hinge: word(['left', 'right', 'top', 'bottom', 'slides', 'lifts off'], 'side on which it hangs').optional(),
  'hinge-takes': span('what hinge and open leaf take of the clear width').optional(),
  'stands-in': span('how far leaf, stop or handle stand into the bay').optional(),
  lip: span("what a rail, plinth or stop takes of the opening's height").optional(),
  before: quantity('length', 'free floor before the cabinet', { from: 0, to: 20 }).optional(),
};
