// A single fault of one part, written as edits of the cabinet file.

import type { Edit } from '../cabinet/cabinet.ts';

export type FaultKind =
  | 'fan stopped'
  | 'fan never stops'
  | 'fan reversed'
  | 'filter clogged'
  | 'filter seat leaks'
  | 'carbon spent'
  | 'flap stuck shut'
  | 'flap stuck open'
  | 'opening blocked'
  | 'sensor reads high'
  | 'sensor reads low'
  | 'sensor fallen down'
  | 'heater stuck on'
  | 'heat source left on'
  | 'heat source dead'
  | 'bed stuck on'
  | 'seal worn'
  | 'door ajar'
  | 'door left open'
  | 'power cut'
  | 'room unheated'
  | 'room hot';

export interface Fault {
  /** `fan stopped/exhaust`, stable. */
  readonly id: string;
  readonly kind: FaultKind;
  /** Id of the part; absent when it is the room's or the house's. */
  readonly part?: string;
  /** What has happened, in words. */
  readonly says: string;
  readonly edits: readonly Edit[];
  /** What is tried where the file cannot take `edits`: some parts can be written in two ways. */
  readonly otherwise?: readonly Edit[];
}

export const faultId = (kind: FaultKind, part?: string): string => (part === undefined ? kind : `${kind}/${part}`);
