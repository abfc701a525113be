// How the carcass is put together: what the file says of its corners, grooves and leaves, and what a caliper says of its boards.
// Plain data, metres. What the rest of the program computes does not depend on it; what is sawn does.

/** How the boards of the carcass meet at its corners. */
export const corners = ['butt', 'rebate'] as const;
export type Corner = (typeof corners)[number];

/** A leaf lies before the edges of the carcass, or in its opening. */
export const leafPlaces = ['before', 'in'] as const;
export type LeafPlace = (typeof leafPlaces)[number];

export interface Leaf {
  /** Absent when nobody has said: then it follows from how thick the edges are. */
  readonly lies?: LeafPlace;
  /** Between the leaf and what stands beside it. */
  readonly gap: number;
}

export interface Joinery {
  readonly corners: Corner;
  /** Depth of the groove that takes the end of a shelf; absent: a third of the board with the groove. */
  readonly housing?: number;
  readonly leaves: Readonly<Record<string, Leaf>>;
  /** True thickness by board and written thickness, such as `plywood 18`, in millimetres. */
  readonly measured: Readonly<Record<string, number>>;
}

/** Name under which the true thickness of a board is kept. */
export function measuredName(board: string, thickness: number): string {
  return `${board} ${Math.round(thickness * 1e5) / 100}`;
}
