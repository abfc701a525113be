// A machine's bed as physics describes it: what it would lose at any temperatures.

import type { Bed as BedDescription } from '@stillair/physics';
import type { Bed } from './cabinet.ts';

/** Conductivity of foam under a bed, W/(m·K): EN 12524, 0.04 to 0.05. */
const FOAM = 0.045;
/** Coated rims and foam: 0.9, usual for all but bare metal, from memory. */
const USUAL_EMISSIVITY = 0.9;

export function describedBed(bed: Bed): BedDescription {
  return {
    width: bed.width,
    depth: bed.depth,
    rim: bed.thickness,
    topEmissivity: bed.emissivityTop,
    rimEmissivity: USUAL_EMISSIVITY,
    undersideEmissivity: bed.underside.kind === 'bare' ? bed.underside.emissivity : USUAL_EMISSIVITY,
    undersideResistance: bed.underside.kind === 'foam' ? bed.underside.thickness / FOAM : 0,
    stirring: 1,
  };
}
