import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Cabinet } from '../cabinet/cabinet.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { temperatureSeries, valueAt } from '../day/series.ts';
import { simulateDay } from '../day/simulate-day.ts';
import { assemble } from './assemble.ts';
import type { Network } from './network.ts';
import { networkDifferences } from './network-difference.ts';
import { readNetwork } from './read-network.ts';

const folder = new URL('../../cases/assemble/', import.meta.url);
const textOf = (file: string): string => readFileSync(new URL(file, folder), 'utf8');

function cabinetOf(file: string, option?: string): Cabinet {
  const text = textOf(file);
  const base = readCabinet(file, text);
  if (!base.ok) throw new Error(JSON.stringify(base.complaints));
  if (option === undefined) return base.cabinet;
  const edited = readCabinet(file, text, base.cabinet.options[option]!.edits);
  if (!edited.ok) throw new Error(JSON.stringify(edited.complaints));
  return edited.cabinet;
}

/** Written by cases/assemble/by_hand.py, which shares no line with the program. */
function byHand(file: string): Network {
  const answer = readNetwork(file, textOf(file));
  if ('complaints' in answer) throw new Error(JSON.stringify(answer.complaints));
  return answer.network;
}

const cases = [
  ['reference-cabinet.yaml', undefined, 'one-zone.network.yaml'],
  ['reference-cabinet.yaml', 'held-room', 'one-zone-held.network.yaml'],
  ['reference-cabinet-two-zones.yaml', undefined, 'two-zones.network.yaml'],
  ['reference-cabinet-two-zones.yaml', 'held-room', 'two-zones-held.network.yaml'],
] as const;

describe('the network of the reference cabinet', () => {
  it.each(cases)('cross: %s (%s) becomes the hand-written %s, part by part', (cabinet, option, network) => {
    expect(networkDifferences(assemble(cabinetOf(cabinet, option), 'usual').network, byHand(network), 1e-9)).toEqual(
      [],
    );
  });

  it.each(cases)('cross: %s (%s) and %s have the same day', (cabinet, option, network) => {
    const tolerance = 1e-3;
    const mine = simulateDay(assemble(cabinetOf(cabinet, option), 'usual').network, { tolerance });
    const theirs = simulateDay(byHand(network), { tolerance });
    const turns = (record: typeof mine): readonly string[] =>
      record.events.map(({ what, to }) => `${what} ${to}`).sort();
    expect(turns(mine)).toEqual(turns(theirs));
    expect(turns(mine).length).toBeGreaterThan(5);
    for (const name of mine.temperatures.names) {
      const [one, other] = [temperatureSeries(mine, name), temperatureSeries(theirs, name)];
      for (let time = 0; time <= 86400; time += 450)
        expect(Math.abs(valueAt(one, time) - valueAt(other, time)), `${name} at ${time} s`).toBeLessThan(1e-6);
    }
  });
});
