// Every limit that the vibration trade holds against a machine and what it stands on.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Limit } from '../measure.ts';
import { limitFor, ownLimit } from '../person-limit.ts';

/** Slab against the machine that stands on it; only for beds that travel. */
export function slabShareLimit(cabinet: Cabinet): Limit {
  return limitFor(cabinet, {
    id: 'slab-share',
    kind: 'at-least',
    value: 1,
    source:
      'common practice, no source: a machine whose bed travels needs a paving slab to be quiet; taken here as one as heavy as itself',
    standing: 'trade',
  });
}

/** Sway of the machine at its usual strokes, against standing fast. */
export function reversalLimit(cabinet: Cabinet): Limit {
  return limitFor(cabinet, {
    id: 'reversal-gain',
    kind: 'at-most',
    value: 2,
    source:
      'a spring answers twofold from 0.7 of its natural frequency on (follows from its law); strokes are kept out of 0.7 to 1.4 of it: common practice, no source',
    standing: 'trade',
  });
}

/** Motor steps that get through the foam: a tenth of the power is heard half as loud. */
export function stepLimit(cabinet: Cabinet): Limit {
  return limitFor(cabinet, {
    id: 'step-transmission',
    kind: 'at-most',
    value: 10 ** (-10 / 20),
    source: '10 dB less is heard as half as loud (S. S. Stevens, from memory)',
    standing: 'trade',
  });
}

export function strainLimit(cabinet: Cabinet, usable: number): Limit {
  return limitFor(cabinet, {
    id: 'foam-strain',
    kind: 'at-most',
    value: usable,
    source:
      'compression up to which the foam stays springy: usable-strain of the catalogue, from memory, or of its papers',
    standing: 'trade',
  });
}

/** Only the person can say how much it may shake. */
export function shakeLimit(cabinet: Cabinet): Limit | undefined {
  return ownLimit(cabinet, 'shake', 'at-most');
}
