// What pictures are drawn with: ink on paper, and one accent.

export const paper = '#fbfaf6';
export const ink = '#23272d';
export const faint = '#6d6a62';
export const hairline = '#dedacd';
/** Reads as darker than ink's neighbours in greys too, and apart from them for red-green colour blindness. */
export const accent = '#b23a0e';
