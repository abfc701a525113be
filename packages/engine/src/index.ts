export type { AssumedInput } from './cabinet/assumed-inputs.ts';
export { assumedInputs, inputLabel } from './cabinet/assumed-inputs.ts';
export type { Cabinet, Edit, Option } from './cabinet/cabinet.ts';
export type { Complaint, Span } from './cabinet/complaint.ts';
export { formatComplaint } from './cabinet/complaint.ts';
export { editText } from './cabinet/edits.ts';
export { originAt } from './cabinet/ledger.ts';
export { nearest } from './cabinet/nearest.ts';
export type { Origin, Origins, Spread } from './cabinet/origin.ts';
export type { CabinetAnswer } from './cabinet/read-cabinet.ts';
export { readCabinet } from './cabinet/read-cabinet.ts';
export { setInput } from './cabinet/set-input.ts';
export type { CrossingsAnswer, NetworkAnswer, RunAnswer } from './day/network-answer.ts';
export { answerNetwork } from './day/network-answer.ts';
export type { DayEvent, DayRecord, Table, Warning } from './day/record.ts';
export type { DayOptions } from './day/simulate-day.ts';
export { DayStopped, simulateDay } from './day/simulate-day.ts';
export type { Assembly } from './network/assembly.ts';
export type { Network } from './network/network.ts';
export type { Analysis, NetworkFile, NetworkRun } from './network/read-network.ts';
export { readNetwork } from './network/read-network.ts';
export { writeNetwork } from './network/write-network.ts';
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
