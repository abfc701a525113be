// Schema of `spools:` and of a machine's drive.

import { type DriveSpec, guides, holders, type SpoolSpec, type WaySpec } from './filament.ts';
import { name, quantity, type Schema, sizes, thing, word } from './shape.ts';

export function driveSchema(): Schema<DriveSpec> {
  return thing(
    {
      pull: quantity('force', 'that it bears before the filament slips or stalls', { above: 0, to: 200 }).optional(),
      push: quantity('force', 'that the nozzle asks for', { above: 0, to: 500 }).optional(),
      gap: quantity('length', 'unsupported length below the wheels', { above: 0, to: 0.2 }).optional(),
      filament: quantity('length', 'diameter of the filament', { above: 0, to: 0.01 }).optional(),
    },
    'the wheels that drive the filament',
  );
}

function waySchema(): Schema<WaySpec> {
  return thing(
    {
      bends: quantity('angle', 'all bends added up', { from: 0, to: 63 }).optional(),
      guide: word(guides, 'what leads it').optional(),
      friction: quantity('number', 'of filament on that guide', { from: 0, to: 1 }).optional(),
      radius: quantity('length', 'smallest radius of a bend', { above: 0, to: 5 }).optional(),
      unwinding: quantity('force', 'pull of a spool that turns freely', { from: 0, to: 50 }).optional(),
    },
    'the way of the filament',
  );
}

export function spoolSchema(): Schema<SpoolSpec> {
  return thing(
    {
      machine: name('machine that it feeds').optional(),
      material: name('material'),
      mass: quantity('mass', 'of the filament on it', { above: 0, to: 20 }).optional(),
      empty: quantity('mass', 'of the spool without filament', { from: 0, to: 5 }).optional(),
      size: sizes(2, 'diameter x width').optional(),
      where: name('a bay, outside, or a drier of heats:').optional(),
      holder: word(holders, 'on what it turns').optional(),
      path: waySchema().optional(),
      temperature: quantity('temperature', 'of the air in its drier or dry box', {
        from: 253.15,
        to: 423.15,
      }).optional(),
      humidity: quantity('share', 'of the air in its drier or dry box', { from: 0, to: 1 }).optional(),
    },
    'a spool of filament',
  );
}
