// Amounts of money, with their currency kept: nothing here converts one into another.

import { decimalComma, fault, isFault, parseQuantity, show, type TextFault } from './quantity.ts';

export interface Money {
  readonly low: number;
  readonly high: number;
  /** Three letters of ISO 4217. */
  readonly currency: string;
  /** What it is paid for: a piece, a square metre, a metre, a kilogram, a kilowatt-hour or an hour. */
  readonly per: 'piece' | 'm2' | 'm' | 'kg' | 'kWh' | 'h';
}

const signs: Readonly<Record<string, string>> = { '€': 'EUR', $: 'USD', '£': 'GBP' };

/**
 * Reads `12 EUR`, `10 to 14 EUR`, `30 to 45 EUR/m2`, `€ 12`.
 *
 * @example A range for a square metre
 * ```ts
 * parseMoney('30 to 45 EUR/m2').per; // => m2
 * ```
 */
export function parseMoney(text: string): Money | TextFault {
  const comma = decimalComma(text);
  if (comma !== undefined) return comma;
  const front = /^\s*([€$£]|[A-Z]{3})\s*(.*)$/.exec(text);
  const back = /^(.*?)\s*([€$£]|[A-Z]{3})\s*(?:(?:\/|per)\s*(m2|m²|m|kg|kWh|h|piece))?\s*$/.exec(text);
  const [amount, sign, per = 'piece'] = back !== null ? back.slice(1) : front !== null ? [front[2], front[1]] : [];
  if (amount === undefined || sign === undefined) {
    return fault(
      'money-wrong',
      0,
      Math.max(1, text.length),
      `${show(text)} is no amount of money`,
      'a number and a currency, such as 12 EUR or 10 to 14 EUR',
      'write the currency with three letters behind the number',
    );
  }
  const read = parseQuantity('number', amount);
  if (isFault(read)) return read;
  if (read.value < 0) {
    return fault(
      'money-wrong',
      0,
      text.length,
      `${show(text)} is below nothing`,
      'an amount of 0 or more',
      'take the minus away',
    );
  }
  return {
    low: read.low ?? read.value,
    high: read.high ?? read.value,
    currency: signs[sign] ?? sign,
    per: per === 'm²' ? 'm2' : (per as Money['per']),
  };
}
