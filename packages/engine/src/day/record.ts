// What a simulated day leaves behind: every accepted step of every state and flow, the events, and the balances.
// All faces, trades and studies read this; nobody solves anything twice.

import type { Network } from '../network/network.ts';

/** Values of several named things at every row of the record: row-major, `values[row·names.length + column]`. */
export interface Table {
  readonly names: readonly string[];
  readonly values: Float64Array;
}

export interface DayEvent {
  /** s */
  readonly time: number;
  /** Thermostat, machine or bed that changed. */
  readonly what: string;
  /** 'on' | 'off' for thermostats; 'heating' | 'holding' | 'coasting' | 'off' for beds; a mode's name for machines. */
  readonly to: string;
}

export interface Warning {
  readonly code: 'several-operating-points' | 'outside-validity' | 'held-back';
  readonly what: string;
  readonly message: string;
}

/** Sums over the run, J; `closure` is (stored − in + out) relative to what moved. */
export interface HeatLedger {
  readonly stored: number;
  readonly sources: number;
  readonly beds: number;
  /** Into the boundary (fixed zones), by kind. */
  readonly conducted: number;
  readonly carriedByAir: number;
  readonly closure: number;
}

export interface ContaminantLedger {
  readonly contaminant: string;
  readonly stored: number;
  readonly emitted: number;
  readonly deposited: number;
  /** Lost in number by particles that joined. */
  readonly coagulated?: number;
  readonly filtered: number;
  readonly toBoundary: number;
  readonly closure: number;
}

export interface Ledger {
  readonly heat: HeatLedger;
  /** Largest |net flow of a solved zone| relative to the largest path flow of its row. */
  readonly airClosure: number;
  readonly contaminants: readonly ContaminantLedger[];
}

export interface DayRecord {
  readonly network: Network;
  /**
   * s, never falling; two rows with equal time are the two sides of a jump (something switched between them).
   * The first row is the start, the last row is the end.
   */
  readonly times: Float64Array;
  /** K: zones, nodes, wall nodes, sensors. */
  readonly temperatures: Table;
  /** dT/dt, K/s, same columns: for cubic interpolation between rows. */
  readonly slopes: Table;
  /** Pa at the zone's own zRef. */
  readonly pressures: Table;
  /** kg/s, + from `from` to `to` (tall openings: the net). */
  readonly flows: Table;
  /** kg/s against the net flow through tall openings; 0 elsewhere. */
  readonly counterFlows: Table;
  /** m³/s each way at the reference density. */
  readonly exchanges: Table;
  /** Share of full speed, 0 when off, by fan name. */
  readonly fanSpeeds: Table;
  /** W, by machine. */
  readonly bedPowers: Table;
  /** 1 on, 0 off. */
  readonly thermostats: Table;
  /** One table of zones a contaminant. */
  readonly concentrations: Readonly<Record<string, Table>>;
  /** dC/dt, same shape: for cubic interpolation between rows (straight lines where it is missing). */
  readonly concentrationSlopes?: Readonly<Record<string, Table>>;
  /** kg/kg, by `bed/contaminant`. */
  readonly carbonLoads: Table;
  readonly events: readonly DayEvent[];
  readonly warnings: readonly Warning[];
  /** Only when asked for: keeping it costs time. */
  readonly ledger?: Ledger;
  readonly work: { readonly steps: number; readonly rejected: number; readonly newton: number };
}
