export type { Complaint, Span } from './cabinet/complaint.ts';
export { formatComplaint } from './cabinet/complaint.ts';
export { nearest } from './cabinet/nearest.ts';
export { dailyProfile, parseClock, parseWindow } from './units/clock.ts';
export type { UnitSystem } from './units/format.ts';
export {
  formatBand,
  formatClock,
  formatDuration,
  formatNumber,
  formatQuantity,
  shownUnitName,
} from './units/format.ts';
export type { Money } from './units/money.ts';
export { parseMoney } from './units/money.ts';
export type { Quantity, TextFault } from './units/quantity.ts';
export { isFault, parsePlace, parseQuantity, parseRange, parseSizes } from './units/quantity.ts';
export type { KindName } from './units/unit-table.ts';
export { kindNames, kindOf } from './units/unit-table.ts';
