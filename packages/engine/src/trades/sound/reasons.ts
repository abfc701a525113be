// Why it is as loud as it is: sources and ways, the loudest first, and the hours.

import { noiseRating } from '@stillair/physics';
import { formatClock, formatQuantity } from '../../units/format.ts';
import type { DayRun, Step } from '../measure.ts';
import { levelOf, meanLevel, type Stretch, sharesIn, stretchesOf } from './levels.ts';
import { type Coming, type Heard, heardBy, weighted } from './places.ts';

/** More sources or ways than this are not told. */
const MOST_TOLD = 5;
/** Less than this share of all is not told. */
const LEAST_SHARE = 0.01;
const HOUR = 3600;

export interface Ranked {
  readonly heard: Heard;
  readonly share: number;
  /** A-weighted power now. */
  readonly power: number;
}

/** Sources at a moment, the loudest first; those that are silent left out. */
export function rankedSources(run: DayRun, person: string, at: Stretch): Ranked[] {
  const heard = heardBy(run.cabinet, person);
  const shares = sharesIn(run, heard, at);
  return heard
    .map((one, index): Ranked => ({ heard: one, share: shares[index]!, power: shares[index]! * one.power }))
    .filter(({ power }) => power > 0)
    .sort((a, b) => b.power - a.power);
}

export interface RankedWay extends Pick<Coming, 'part' | 'kind'> {
  readonly power: number;
}

/** Ways by which the sound of ranked sources comes, all together, the loudest first. */
export function rankedWays(sources: readonly Ranked[]): RankedWay[] {
  const ways = new Map<string, { part: string; kind: Coming['kind']; power: number }>();
  for (const { heard, share } of sources)
    for (const { part, kind, heard: octaves } of heard.comings) {
      const key = `${kind}/${part}`;
      const way = ways.get(key) ?? { part, kind, power: 0 };
      way.power += share * weighted(octaves);
      ways.set(key, way);
    }
  return [...ways.values()].filter(({ power }) => power > 0).sort((a, b) => b.power - a.power);
}

const wayWords: Readonly<Record<Coming['kind'], string>> = {
  board: 'through the board',
  gap: 'through the gap round',
  opening: 'through the opening',
  'fan’s own mouth': 'straight from the fan in',
};

export function stepsAt(run: DayRun, person: string, at: Stretch): Step[] {
  const sources = rankedSources(run, person, at);
  const whole = sources.reduce((sum, { power }) => sum + power, 0);
  if (!(whole > 0)) return [{ text: 'nothing runs then' }];
  const counts = ({ power }: { readonly power: number }): boolean => power >= LEAST_SHARE * whole;
  const octaves = sources[0]!.heard.octaves.map((_, band) =>
    levelOf(sources.reduce((sum, { heard, share }) => sum + share * heard.octaves[band]!, 0)),
  );
  const { room } = run.cabinet.sound;
  return [
    ...sources
      .filter(counts)
      .slice(0, MOST_TOLD)
      .map(
        ({ heard: { source }, power }): Step => ({
          text: `${source.words}, heard there`,
          value: levelOf(power),
          unit: 'sound-level',
          formula: 'L = L_W - what box, gaps and parts take off + 10 lg(Q/4πr² + 4/R), by octaves, A-weighted',
          source:
            source.kind === 'fan' ? 'VDI 2081-1 (shape of octaves), fan law 50 lg n' : 'level at 1 m on a table + 8 dB',
          inputs: [source.input],
        }),
      ),
    ...rankedWays(sources)
      .filter(counts)
      .slice(0, MOST_TOLD)
      .map(
        ({ part, kind, power }): Step => ({
          text: `of all that, ${wayWords[kind]} ${part.replace(/^(?:faces|doors|paths)\./, '')}`,
          value: levelOf(power),
          unit: 'sound-level',
        }),
      ),
    {
      text: 'together',
      value: levelOf(whole),
      unit: 'sound-level',
      formula: 'L = 10 lg Σ 10^(L_i/10)',
      inputs: ['sound.room', `people.${person}.at`],
    },
    {
      text: `its noise rating is ${Math.max(Math.round(noiseRating(octaves)), 0)} (bedrooms 25, living rooms 30, offices 35: CIBSE Guide A, second-hand); the room without the cabinet has`,
      value: room.backgroundDbA,
      unit: 'sound-level',
      inputs: ['sound.room.backgroundDbA'],
    },
    { text: 'known to ±5 dB, ±6 dB below 250 Hz; what a machine shakes into shelf and shell is not in it' },
  ];
}

/** Hour by hour, equal hours together. */
export function hourSteps(run: DayRun, person: string): Step[] {
  const all = stretchesOf(run, person);
  const last = all.at(-1)!;
  const hours: { from: number; to: number; words: string }[] = [];
  for (let from = 0; from < last.start + last.length - 1; from += HOUR) {
    const stretch = all.filter(({ start, length }) => start < from + HOUR && start + length > from);
    const cut = stretch.map((one) => ({
      ...one,
      length: Math.min(one.start + one.length, from + HOUR) - Math.max(one.start, from),
    }));
    const level = meanLevel(cut);
    const words = level > 0 ? formatQuantity('sound-level', level) : 'nothing';
    const before = hours.at(-1);
    if (before?.words === words) before.to = from + HOUR;
    else hours.push({ from, to: from + HOUR, words });
  }
  return hours.map(({ from, to, words }) => ({ text: `${formatClock(from)} to ${formatClock(to)}: ${words}` }));
}
