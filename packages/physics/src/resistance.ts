// The two-term law of most things that air is blown through: dp = linear Q + quadratic Q|Q|.

/** Coefficients on volume flow: linear in Pa·s/m³ (media, tight gaps), quadratic in Pa·s²/m⁶ (frames, holes, bends). */
export interface Resistance {
  readonly linear: number;
  readonly quadratic: number;
}
