// Does electricity lead from the wall to what it feeds: strips, supplies and wires that exist, each thing plugged in once.

import { type Check, mustBeKnown } from './check.ts';
import { bayIds, itemPath } from './check-carcass.ts';
import { quoted } from './complaint.ts';
import { OUTSIDE, WALL } from './power.ts';
import { oneOf } from './shape.ts';
import type { FilePath } from './source-tree.ts';

export function checkPower(check: Check): void {
  const { power } = check.spec;
  if (power === undefined) return;
  const { strips = {}, supplies = {}, wires = {} } = power;
  const lowVoltage = [...check.ids('air'), ...check.ids('heats')];
  const places = [OUTSIDE, ...bayIds(check)];
  const where = (path: FilePath, place: string | undefined): void => {
    if (place !== undefined) mustBeKnown(check, [...path, 'where'], 'place', place, places);
  };
  checkCurrency(check);

  const plugged = new Map<string, string>();
  for (const [id, { feeds, from, where: place }] of Object.entries(strips)) {
    const path: FilePath = ['power', 'strips', id];
    if (id === WALL) sayReserved(check, path);
    where(path, place);
    const users = [...check.ids('machines'), ...check.ids('heats'), ...Object.keys(supplies), 'low-voltage'];
    feedsOnce(check, [...path, 'feeds'], id, feeds ?? [], users, plugged);
    const others = Object.keys(strips).filter((other) => other !== id);
    if (from !== undefined && mustBeKnown(check, [...path, 'from'], 'strip', from, [WALL, ...others]))
      checkRing(check, [...path, 'from'], id);
  }
  const fed = new Map<string, string>();
  for (const [id, { feeds, where: place }] of Object.entries(supplies)) {
    const path: FilePath = ['power', 'supplies', id];
    where(path, place);
    feedsOnce(check, [...path, 'feeds'], id, feeds ?? [], lowVoltage, fed);
  }
  for (const [id, { supply, feeds = [], where: place }] of Object.entries(wires)) {
    const path: FilePath = ['power', 'wires', id];
    where(path, place);
    const known = power.supplies === undefined ? ['low-voltage'] : Object.keys(supplies);
    if (supply !== undefined) mustBeKnown(check, [...path, 'supply'], 'supply', supply, known);
    else if (known.length > 1)
      check.say(
        path,
        {
          code: 'key-missing',
          what: `there is no "supply" in ${quoted(path.join('.'))}, and there are ${known.length} supplies`,
          allowed: oneOf(known),
          mend: 'add supply: and the one that feeds it',
        },
        { key: true },
      );
    for (const [index, user] of feeds.entries())
      mustBeKnown(check, itemPath(check, [...path, 'feeds'], index), 'air path or source of heat', user, lowVoltage);
  }
}

/** Nothing is plugged into two strips, nor fed by two supplies. */
function feedsOnce(
  check: Check,
  path: FilePath,
  id: string,
  feeds: readonly string[],
  known: readonly string[],
  taken: Map<string, string>,
): void {
  for (const [index, user] of feeds.entries()) {
    const at = itemPath(check, path, index);
    if (!mustBeKnown(check, at, 'user of electricity', user, known)) continue;
    const other = taken.get(user);
    if (other !== undefined)
      check.say(at, {
        code: 'fed-twice',
        what: `${quoted(user)} is fed by ${quoted(other)} already`,
        allowed: 'each thing in one place',
        mend: 'take it out of one of the two lists',
      });
    taken.set(user, id);
  }
}

/** Following a strip's plug must end at the wall. */
function checkRing(check: Check, path: FilePath, id: string): void {
  const strips = check.spec.power?.strips ?? {};
  let here: string | undefined = strips[id]?.from;
  for (let step = 0; here !== undefined && here !== WALL && step < Object.keys(strips).length; step += 1) {
    if (here === id) {
      check.say(path, {
        code: 'strips-in-a-ring',
        what: `${quoted(id)} is plugged into itself, through ${quoted(strips[id]!.from!)}`,
        allowed: 'strips whose plugs lead to the wall',
        mend: 'write from: wall for one of them',
      });
      return;
    }
    here = strips[here]?.from;
  }
}

function sayReserved(check: Check, path: FilePath): void {
  check.say(
    path,
    {
      code: 'id-taken',
      what: `${quoted(WALL)} means the socket in the wall`,
      allowed: 'another id for the strip',
      mend: 'call it by its place',
    },
    { key: true },
  );
}

/** A price of electricity is in the money of the file: nothing here converts one currency into another. */
function checkCurrency(check: Check): void {
  const { tree, spec } = check;
  const written = (tree.plain['power'] as { readonly tariff?: unknown } | undefined)?.tariff;
  const prices: [FilePath, unknown][] =
    typeof written === 'object' && written !== null
      ? Object.entries(written).map(([time, price]) => [['power', 'tariff', time], price])
      : [[['power', 'tariff'], written]];
  const currency = spec.currency ?? 'EUR';
  for (const [path, price] of prices) {
    const named = /([A-Z]{3})\s*\/\s*kWh/.exec(String(price))?.[1];
    if (named === undefined || named === currency) continue;
    check.say(path, {
      code: 'currency-differs',
      what: `the price is in ${named}, and the money of this file is ${currency}`,
      allowed: `a price in ${currency}/kWh`,
      mend: `write the price in ${currency}, or currency: ${named} at the top`,
    });
  }
}
