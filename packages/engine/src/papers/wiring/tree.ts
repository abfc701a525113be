// What hangs on what, from the wall to the last lamp: the tree that a single-line diagram draws, and the lines of its labels.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import { WALL } from '../../cabinet/power.ts';
import { fansIn } from '../../trades/plant.ts';

/** A blank at which no line is broken. */
const JOINED = '\u00a0';

export type SymbolName = 'strip' | 'machine' | 'supply' | 'fuse' | 'fan' | 'lamp' | 'heater' | 'other';

export interface TreeNode {
  readonly symbol: SymbolName;
  readonly label: string;
  /** Beside the line that leads here. */
  readonly line: string;
  readonly children: readonly TreeNode[];
}

/** Strips in the wall, whatever is in no strip, and all that hangs on them. */
export function wiringTree(cabinet: Cabinet): readonly TreeNode[] {
  const { strips } = cabinet.power;
  return [
    ...Object.keys(strips)
      .filter((id) => strips[id]!.from === WALL)
      .map((id) => stripNode(cabinet, id, [])),
    ...inNoStrip(cabinet).map((user) =>
      cabinet.paths[user] === undefined
        ? userNode(cabinet, user)
        : loadNode(cabinet, user, 'what feeds it is not said'),
    ),
  ];
}

/** What the file puts into no strip and behind no supply or wire. */
export function inNoStrip({ machines, heats, paths, power: { strips, supplies, wires } }: Cabinet): readonly string[] {
  const fed = new Set(
    [...Object.values(strips), ...Object.values(supplies), ...Object.values(wires)].flatMap(({ feeds }) => feeds),
  );
  const blown = Object.keys(paths).filter((id) => fansIn(paths[id]!).length > 0);
  return [...Object.keys(machines), ...Object.keys(supplies), ...Object.keys(heats), ...blown].filter(
    (user) => !fed.has(user),
  );
}

function stripNode(cabinet: Cabinet, id: string, above: readonly string[]): TreeNode {
  const { strips } = cabinet.power;
  const { rating, sockets, feeds, where } = strips[id]!;
  // A ring of strips is refused when the file is read; if one got here, it must not be followed for ever.
  const further = Object.keys(strips).filter((other) => strips[other]!.from === id && !above.includes(other));
  return {
    symbol: 'strip',
    label: `${id}, ${where}`,
    line: `${rating} A${sockets > 0 ? `, ${sockets} sockets` : ''}`,
    children: [
      ...feeds.map((user) => userNode(cabinet, user)),
      ...further.map((other) => stripNode(cabinet, other, [...above, id])),
    ],
  };
}

function userNode(cabinet: Cabinet, user: string): TreeNode {
  const { machines, power } = cabinet;
  const machine = machines[user];
  if (machine !== undefined)
    return { symbol: 'machine', label: `${user}, ${machine.bay}`, line: machine.kind, children: [] };
  const supply = power.supplies[user];
  if (supply === undefined) return loadNode(cabinet, user, '');
  const wires = Object.entries(power.wires).filter(([, wire]) => wire.supply === user);
  const wired = new Set(wires.flatMap(([, { feeds }]) => feeds));
  return {
    symbol: 'supply',
    label: `${user}, ${supply.where}`,
    line: `${supply.voltage} V, ${supply.watts} W`,
    children: [
      ...wires.map(
        ([id, wire]): TreeNode => ({
          symbol: 'fuse',
          label: wire.fuse === undefined ? 'NO FUSE SAID' : `${wire.fuse} A`,
          // A number stays with its unit.
          line: `${id}: ${`${sectionText(wire)},`.replace(' ', JOINED)} ${wire.length.toFixed(1)}${JOINED}m`,
          children: wire.feeds.map((load) => loadNode(cabinet, load, '')),
        }),
      ),
      ...supply.feeds.filter((load) => !wired.has(load)).map((load) => loadNode(cabinet, load, 'wire not said')),
    ],
  };
}

function loadNode(cabinet: Cabinet, load: string, line: string): TreeNode {
  const path = cabinet.paths[load];
  const heat = cabinet.heats[load];
  if (path !== undefined) {
    const watts = fansIn(path).reduce((sum, fan) => sum + fan.watts, 0);
    const count = fansIn(path).length;
    return {
      symbol: 'fan',
      label: `${count === 1 ? 'fan' : `${count} fans`} of ${load}, ${round(watts)} W`,
      line,
      children: [],
    };
  }
  if (heat !== undefined)
    return {
      symbol: heat.what === 'lamp' ? 'lamp' : heat.what === 'heater' || heat.what === 'drier' ? 'heater' : 'other',
      label: `${load}, ${heat.bay}, ${round(heat.watts)} W`,
      line,
      children: [],
    };
  return { symbol: 'other', label: load, line, children: [] };
}

const round = (value: number): number => Math.round(10 * value) / 10;

export function sectionText({ section, gauge }: { readonly section: number; readonly gauge?: number }): string {
  return gauge === undefined ? `${Math.round(section * 1e8) / 100} mm²` : `${gauge} AWG`;
}
