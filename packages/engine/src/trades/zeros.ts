// Columns of numbers, cut one after another from pieces of memory: a day asks for hundreds of short ones, and to get and give back each by
// itself takes longer than to fill it.

/** Numbers in a piece. */
const PIECE = 16_384;

let piece = new Float64Array(0);
let used = 0;

/** So many zeros, to be written over. */
export function zeros(rows: number): Float64Array {
  if (used + rows > piece.length) {
    piece = new Float64Array(Math.max(PIECE, rows));
    used = 0;
  }
  used += rows;
  return piece.subarray(used - rows, used);
}
