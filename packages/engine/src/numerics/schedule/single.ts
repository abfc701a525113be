// Tasks that all need the one thing of which there is one: who cannot come before, between or after the others.
// Edge finding in its plain form over all windows (J. Carlier and E. Pinson, Management Science 35:164, 1989; from memory).

import { type Domain, keepWithin, type Model, onlyOption } from './model.ts';

interface Piece {
  readonly option: number;
  /** From its start to where it begins to draw. */
  readonly from: number;
  readonly length: number;
  /** Earliest that it begins to draw, latest that it ends. */
  readonly release: number;
  readonly due: number;
}

export function placeOnSingles(model: Model, domain: Domain): boolean {
  for (const resource of model.single) {
    const pieces = piecesOn(model, domain, resource);
    if (pieces.length > 1 && !placeOn(model, domain, pieces)) return false;
  }
  return true;
}

function piecesOn(model: Model, { lo, hi }: Domain, resource: number): Piece[] {
  return model.optionsOf.flatMap((_, task) => {
    const option = onlyOption(model, { lo, hi } as Domain, task);
    const draw = option < 0 ? undefined : model.options[option]!.draws.find((each) => each.resource === resource);
    if (draw === undefined) return [];
    const { from, to } = draw;
    return [{ option, from, length: to - from, release: lo[option]! + from, due: hi[option]! + to }];
  });
}

function placeOn(model: Model, domain: Domain, pieces: readonly Piece[]): boolean {
  const releases = [...new Set(pieces.map(({ release }) => release))].sort((a, b) => b - a);
  const dues = [...new Set(pieces.map(({ due }) => due))].sort((a, b) => a - b);
  const earliest = pieces.map(({ release }) => release);
  const latest = pieces.map(({ due }) => due);
  for (const release of releases)
    for (const due of dues) {
      if (due <= release) continue;
      let work = 0;
      for (const piece of pieces) if (piece.release >= release && piece.due <= due) work += piece.length;
      if (work === 0) continue;
      if (release + work > due) return false;
      for (const [at, piece] of pieces.entries()) {
        if (piece.release >= release && piece.due <= due) continue;
        // It fits neither before nor among them: it comes after. And the mirror of it.
        if (Math.min(release, piece.release) + work + piece.length > due)
          earliest[at] = Math.max(earliest[at]!, release + work);
        if (release + work + piece.length > Math.max(due, piece.due)) latest[at] = Math.min(latest[at]!, due - work);
      }
    }
  return pieces.every(({ option, from, length }, at) =>
    keepWithin(model, domain, option, earliest[at]! - from, latest[at]! - length - from),
  );
}
