// A quantity of the trade that has no single value: about one in ten cases lies below `low`, one in ten above `high`.

/** Low, central and high value of a quantity in its own unit. */
export interface TypicalRange {
  readonly low: number;
  readonly central: number;
  readonly high: number;
}
