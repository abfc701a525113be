// The cut-off chain as a circuit: every member's contact in series with the coil of the contactor, start button and holding contact.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import { line, type Mark, text } from '../frame/mark.ts';
import { brokenLines } from '../frame/text-width.ts';
import { actuated, breakContact, coil, makeContact } from './symbols.ts';

const STEP = 30;
const ROW = 24;
/** From the top to the line of the first row: heads of actuators stand above it. */
const TOP = 9;
const LABEL = 2.5;

/** Marks from their own corner, and their height. */
export function chainDiagram(
  chain: NonNullable<Cabinet['protection']['chain']>,
  latch: boolean | undefined,
  width: number,
): { readonly marks: readonly Mark[]; readonly height: number } {
  const members = Object.entries(chain);
  const perRow = Math.max(1, Math.floor((width - 12) / STEP));
  const start = latch === true ? [{ name: 'S1: start', kind: 'start' as const, by: undefined }] : [];
  const steps = [
    ...members.map(([id, { what, contact }]) => ({
      name: id === what ? id : `${id}: ${what}`,
      kind: contact ?? ('not said' as const),
      by: actuatorOf(what),
    })),
    ...start,
    { name: 'K1: coil', kind: 'coil' as const, by: undefined },
  ];
  const rows = Math.ceil(steps.length / perRow);
  const marks = steps.flatMap(({ name, kind, by }, at): Mark[] => {
    const row = Math.floor(at / perRow);
    const [x, y] = [10 + (at % perRow) * STEP + STEP / 2, TOP + row * ROW];
    const [left, right] = [x - STEP / 2, x + STEP / 2];
    const half = kind === 'coil' ? 2.2 : 6;
    return [
      line('outline', [left, y], [x - half, y]),
      line('outline', [x + half, y], [right, y]),
      ...(kind === 'coil'
        ? coil(x, y)
        : kind === 'start'
          ? startButton(x, y)
          : kind === 'closes'
            ? makeContact(x, y)
            : kind === 'opens'
              ? breakContact(x, y)
              : [text([x, y + 1], '?', 4, { align: 'middle', bold: true })]),
      ...(by === undefined || kind === 'not said' ? [] : actuated(by, x, y, kind === 'closes' ? y - 1.2 : y + 0.8)),
      ...brokenLines(name, STEP - 2, LABEL)
        .slice(0, 3)
        .map(
          (words, index): Mark =>
            text([x, y + (kind === 'start' ? 12.4 : 6.8) + index * 3], words, LABEL, { align: 'middle' }),
        ),
      // On to the next row.
      ...(at % perRow === perRow - 1 && at < steps.length - 1
        ? [line('outline', [right, y], [right, y + ROW / 2 + 4], [10, y + ROW / 2 + 4], [10, y + ROW])]
        : []),
    ];
  });
  const last = steps.length - 1;
  const end = 10 + (last % perRow) * STEP + STEP;
  const bottom = TOP + (rows - 1) * ROW;
  return {
    marks: [
      text([0, TOP + 1], 'L', 3),
      line('outline', [4, TOP], [10, TOP]),
      ...marks,
      text([Math.min(end + 1, width - 3), bottom + 1], 'N', 3),
    ],
    height: rows * ROW + 4,
  };
}

/** How a member is worked, where its name tells: by hand, or by warmth. */
function actuatorOf(what: string): 'mushroom' | 'heat' | undefined {
  if (/button|stop/.test(what)) return 'mushroom';
  return /thermal|thermostat|temperature|link/.test(what) ? 'heat' : undefined;
}

/** A push button that closes, and beside it the contactor's own contact that holds. */
function startButton(x: number, y: number): Mark[] {
  return [
    ...makeContact(x, y),
    ...actuated('push', x, y, y - 1.2),
    line('outline', [x - 6, y], [x - 6, y + 7]),
    line('outline', [x + 6, y], [x + 6, y + 7]),
    ...makeContact(x, y + 7),
    text([x + 7, y + 8], 'K1', 2.2),
  ];
}
