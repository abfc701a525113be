// Temperatures and reserves at which a machine's socket may be switched off.

const C = 273.15;

/** A number of practice, and how it is known. */
export interface Practice {
  readonly value: number;
  readonly source: string;
}

const PRACTICE = 'common practice, no printed source';

/** Below this a bed may be left without power and touched, K. */
export const BED_COOL: Practice = {
  value: 45 + C,
  source:
    'common practice, 3 K below the burn threshold for 10 minutes of contact: 48 °C, EN ISO 13732-1 (2008), from memory',
};
/** Above this a hot end needs its fan, or filament softens above it and jams, K. */
export const HOT_END_COOL: Practice = { value: 50 + C, source: PRACTICE };
/** Added to the reckoned cool-down, as a share of it. */
export const RESERVE: Practice = { value: 0.25, source: PRACTICE };
/** Whole width within which beds are switched, K: a few kelvins at simple boards, less where power is metered out. */
export const BED_BAND: Practice = { value: 4, source: 'from memory; boards with a finer control swing less' };
/** How many times apart from its threshold the draws must lie that a switch is to tell from each other. */
export const TELL_APART: Practice = {
  value: 1.4,
  source: 'judgement: small meters are off by some watts near nothing',
};

export const SHUT_OFF_CAUTION =
  'A reckoned time is no thermometer: it holds for the day as it stands in the file. A switch in a strip is no cut-off for fire, and none of this replaces the makers’ papers, local codes and licensed practice.';
