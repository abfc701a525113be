// Does what is said about sound make sense: linings of boards that exist, one way of saying what the room swallows.

import { kindsOf } from './catalogue.ts';
import { type Check, mustBeKnown } from './check.ts';
import type { FilePath } from './source-tree.ts';
import type { LayerSpec, PartSpec } from './spec.ts';

export function checkSound(check: Check): void {
  const { cabinet, room, air = {}, parts = {} } = check.spec;
  const lining = check.tree.plain['cabinet'] as { readonly lining?: unknown } | undefined;
  checkLining(check, cabinet?.lining?.of, ['cabinet', 'lining', ...(typeof lining?.lining === 'string' ? [] : ['of'])]);
  for (const [id, path] of Object.entries(air)) {
    for (const [index, part] of (path.parts ?? []).entries())
      checkLining(check, linedWith(part), ['air', id, 'parts', index, 'lined-with']);
  }
  for (const [id, fitting] of Object.entries(parts.fittings ?? {}))
    checkLining(check, fitting['lined-with'], ['parts', 'fittings', id, 'lined-with']);
  if (room?.absorption !== undefined && room.reverberation !== undefined) {
    check.say(
      ['room', 'absorption'],
      {
        code: 'said-twice',
        what: 'reverberation: already says what the room swallows',
        allowed: 'absorption: or reverberation:, one of the two',
        mend: 'leave the one that was measured',
      },
      { key: true },
    );
  }
}

function linedWith(part: PartSpec): LayerSpec | undefined {
  return 'lined-with' in part ? part['lined-with'] : undefined;
}

function checkLining(check: Check, layer: LayerSpec | undefined, at: FilePath): void {
  if (layer === undefined) return;
  mustBeKnown(check, at, 'board', layer.board, kindsOf(check.spec.parts, 'boards'), { at: 0, length: layer.length });
}
