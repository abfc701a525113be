// What `protection:`, `costs:` and `carcasses:` refer to, and whether their money is the file's.

import type { Money } from '../units/money.ts';
import { kindsOf } from './catalogue.ts';
import { type Check, keysOf, mustBeKnown } from './check.ts';
import { bayIds } from './check-carcass.ts';
import { quoted } from './complaint.ts';
import { keptThings } from './fill-protection.ts';
import type { FilePath } from './source-tree.ts';

/** All states of the members are tried, which are 2 to their number. */
const MOST_MEMBERS = 16;

export function checkProtection(check: Check): void {
  const { protection = {} } = check.spec;
  const bays = bayIds(check);
  const members = Object.keys(protection.chain ?? {}).length;
  if (members > MOST_MEMBERS)
    check.say(
      ['protection', 'chain'],
      {
        code: 'chain-too-long',
        what: `${members} devices stand in it`,
        allowed: `at most ${MOST_MEMBERS} devices in one chain`,
        mend: 'name those in series with one contactor',
      },
      { key: true },
    );
  for (const [id, { bay }] of Object.entries(protection.chain ?? {}))
    if (bay !== undefined) mustBeKnown(check, ['protection', 'chain', id, 'bay'], 'bay', bay, bays);
  for (const [id, { where, what, class: heatClass }] of Object.entries(protection.detectors ?? {})) {
    const path: FilePath = ['protection', 'detectors', id];
    mustBeKnown(check, [...path, 'where'], 'bay or air path', where, ['room', ...bays, ...check.ids('air')]);
    if (what === 'smoke' && heatClass !== undefined)
      check.say([...path, 'class'], {
        code: 'class-of-smoke',
        what: `${quoted(id)} notices smoke, and the classes A1 to G are of heat detectors`,
        allowed: 'class: beside what: heat',
        mend: 'take class: out, or write what: heat',
      });
  }
  const materials = [...check.ids('materials'), ...kindsOf(check.spec.parts, 'materials')];
  for (const [id, { of, where }] of Object.entries(protection.stored ?? {})) {
    const path: FilePath = ['protection', 'stored', id];
    mustBeKnown(check, [...path, 'of'], 'thing that burns', of, [...Object.keys(keptThings), ...materials]);
    mustBeKnown(check, [...path, 'where'], 'bay', where, ['outside', ...bays]);
  }
}

export function checkCosts(check: Check): void {
  const { costs = {}, carcasses = {}, parts } = check.spec;
  const own = (path: FilePath, money: Money | undefined, per: readonly Money['per'][]): void =>
    checkMoney(check, path, money, per);
  own(['costs', 'carcass'], costs.carcass, ['piece']);
  own(['costs', 'hour'], costs.hour, ['h']);
  own(['costs', 'hand-hour'], costs['hand-hour'], ['h']);
  own(['costs', 'cut'], costs.cut, ['piece']);
  own(['costs', 'wear'], costs.wear, ['h']);
  for (const board of keysOf(costs.sheets))
    mustBeKnown(check, ['costs', 'sheets', board], 'board', board, kindsOf(parts, 'boards'));
  for (const day of keysOf(costs.times)) mustBeKnown(check, ['costs', 'times', day], 'day', day, check.ids('days'));
  for (const [id, { price, changes = {} }] of Object.entries(carcasses)) {
    own(['carcasses', id, 'price'], price, ['piece']);
    for (const [what, money] of Object.entries(changes)) own(['carcasses', id, 'changes', what], money, ['piece']);
  }
}

const forEach: Readonly<Record<Money['per'], string>> = {
  piece: 'an amount',
  m2: 'an amount for a square metre',
  m: 'an amount for a metre',
  kg: 'an amount for a kilogram',
  kWh: 'an amount for a kilowatt-hour',
  h: 'an amount for an hour',
};

function checkMoney(check: Check, path: FilePath, money: Money | undefined, per: readonly Money['per'][]): void {
  if (money === undefined) return;
  const currency = check.spec.currency ?? 'EUR';
  if (money.currency !== currency) {
    check.say(path, {
      code: 'currency-wrong',
      what: `it is in ${money.currency}, but the file reckons in ${currency}`,
      allowed: `an amount in ${currency}`,
      mend: `convert it, or write currency: ${money.currency} at the top`,
    });
  } else if (!per.includes(money.per)) {
    check.say(path, {
      code: 'money-wrong',
      what: `it is ${forEach[money.per]}`,
      allowed: `${forEach[per[0]!]}, such as ${per[0] === 'h' ? `45 ${currency}/h` : `45 ${currency}`}`,
      mend: `write it as ${forEach[per[0]!]}`,
    });
  }
}
