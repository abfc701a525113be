// How a person measures an input, and how exactly that goes with what is to be had. Common practice, no source.

import type { Spread } from '../cabinet/origin.ts';
import { normalQuantile } from '../numerics/normal.ts';

/** One standard deviation of what a reading is wrong by: as share of what is read, or in the input's own SI unit and in words. */
export type Exactly =
  | { readonly kind: 'share'; readonly value: number }
  | { readonly kind: 'plus'; readonly value: number; readonly says: string };

export interface Way {
  readonly how: string;
  /** Absent where nobody measures such a thing at home: it stays as it is. */
  readonly exactly?: Exactly;
}

const share = (value: number): Exactly => ({ kind: 'share', value });
const plus = (value: number, says: string): Exactly => ({ kind: 'plus', value, says });
const millimetre = plus(0.001, '1 mm');

/** The first that fits is taken. */
const ways: readonly (readonly [RegExp, string, Exactly | undefined])[] = [
  [
    /^(factors\.leakage|jointGap$|doors\..+\.sealGap)/,
    'shut the cabinet, blow into it with a fan of known curve and read the pressure inside, or slide paper of known thickness into the gap',
    share(0.25),
  ],
  [/\.lag$/, 'carry the sensor from one room to a warmer one and time two thirds of the change', share(0.15)],
  [/\.sealDepth$|\.seatDepth$|\.length$|^people\./, 'with a rule', millimetre],
  [/\.seatGap$/, 'take the filter out and slide paper of known thickness between it and its seat', share(0.3)],
  [/\.(?:leakArea|opensAt)$/, 'a fan of known flow and a pressure gauge across it', share(0.2)],
  [/^factors\.bedLoss$/, 'a plug-in energy meter on a machine that holds its bed warm for half an hour', share(0.05)],
  [
    /^machines\..+\.(hotEnd|motors|electronics)$/,
    'a plug-in energy meter on the machine while it prints with a cold bed',
    share(0.1),
  ],
  [
    /^factors\.(insideFilm|outsideFilm)$/,
    'a lamp of known power in the shut cabinet for half a day, and thermometers inside, on the wall and in the room',
    share(0.1),
  ],
  [
    /^factors\.fanFlow$|\.exhaustFlow$/,
    'a vane anemometer in a straight piece of pipe at the outlet, or a bag of known volume and a watch',
    share(0.05),
  ],
  [/^factors\.plume$/, 'thermometers low and high in the bay while a bed is hot', share(0.15)],
  [
    /^(room|factors)\.(roomHeatLoss|heatLoss|heatCapacity)$/,
    'a heater of known power in the room for an evening, and a thermometer that logs',
    share(0.15),
  ],
  [
    /^room\.airChangesPerHour$/,
    'let carbon dioxide rise with people in the room, leave, and log how fast it falls',
    share(0.15),
  ],
  [/temperature|\.offset$/, 'a second thermometer beside it for a day, out of the sun', plus(0.3, '0.3 K')],
  [/humidity/, 'a hygrometer there for a day', plus(0.03, '3 % relative humidity')],
  [
    /^(room|outdoors)\.background\.particles$/,
    'a particle counter there for a day while nothing is printed',
    share(0.3),
  ],
  [
    /^(room|outdoors)\.background\./,
    'an air sampler or a sensor for it there for a day while nothing is printed',
    share(0.3),
  ],
  [
    /^room\.deposition$/,
    'a particle counter in the shut room after a candle was put out: how fast the count falls',
    share(0.3),
  ],
  [
    /emissions\.particles|^factors\.emissionParticles$/,
    'print a small part in a closed box of known volume with a particle counter in it, or ask for the spool’s test report',
    share(0.5),
  ],
  [
    /emissions\.|^factors\.emissionVapours$/,
    'the spool’s emission test report, or a sampling tube in a closed box while it is printed',
    share(0.3),
  ],
  [
    /^power\.supplies\..+\.efficiency$|[pP]owerFactor$/,
    'a plug-in energy meter that shows power factor, with a known load behind it',
    share(0.03),
  ],
  [/\.inrush$|\.leakage$|^power\.magnet$/, 'look it up in its papers', share(0.1)],
  [/^power\.tariff/, 'read it off the bill', share(0.01)],
  [/efficiency|Filter\./, 'a particle counter before and behind the filter', share(0.1)],
  [/dischargeCoefficient|\.loss$/, 'a fan of known flow and a pressure gauge across it', share(0.05)],
  [/windSpeed|windCoefficient/, 'a vane anemometer at the opening, on a calm and on a windy day', share(0.3)],
  [/^machines\.[^.]+\.mass$/, 'bathroom scales', share(0.02)],
  [/^protection\.stored\..+\.mass$/, 'kitchen scales, or its label', share(0.05)],
  [/\.mass$|\.partSize$/, 'read it off the sliced print', share(0.05)],
  [/\.(?:headMass|bedMass)$/, 'kitchen scales under what moves, or its papers', share(0.1)],
  [/\.shaking\./, 'read it off the sliced print and the settings of the machine', share(0.15)],
  [
    /\.foam\.(?:stiffness|creep)$/,
    'load a piece of it with known masses and read how far it gives, at once and after a week',
    share(0.1),
  ],
  [/\.foam\./, 'knock the slab on it and count its swings with a phone that logs acceleration', share(0.15)],
  [/\.slab\.density$/, 'weigh it and measure it', share(0.02)],
  [/^sound\.machines\./, 'a sound level meter at 1 m from the machine on a table, doors open', plus(1.5, '1.5 dB')],
  [/^sound\.room\.background/, 'a sound level meter at the desk while all is off', plus(1.5, '1.5 dB')],
  [/^sound\.room\./, 'clap and log how the sound dies away', share(0.2)],
  [
    /^sound\.doubt\.(?:panelsDb|lowBandsDb)$/,
    'a steady noise in the cabinet and a sound level meter outside, doors open and shut',
    plus(2, '2 dB'),
  ],
  [/^sound\.doubt\./, 'a sound level meter beside the fan, built in and held free', plus(2, '2 dB')],
  [/^light\.reflectances\./, 'a luminance or camera reading of it beside white paper in the same light', share(0.1)],
  [/^light\.lamps\..+\.ripple$/, 'a photodiode on an oscilloscope, or a phone with short exposure', share(0.2)],
  [/^light\.(?:lamps|chamberLamps)\..+\.at\./, 'with a rule', millimetre],
  [/^light\./, 'a lux meter at a known distance in the dark', share(0.1)],
  [/^cameras\./, 'look it up in its papers', share(0.05)],
  [/\.path\.|\.drive\.push$/, 'a luggage scale on the filament while it is pulled slowly', share(0.15)],
  [/\.drive\.gap$/, 'feeler gauges', share(0.1)],
  [
    /^structure\.boards\.|\.endFixity$|\.lipping\./,
    'load the shelf with a known mass and read how far it sags',
    share(0.1),
  ],
  [/^structure\.hinges\./, 'look it up in its papers', share(0.1)],
  [/^structure\.feet\.|^fit\.|^fittings\..+\.arm\.(?!shake|frequency)/, 'with a rule', millimetre],
  [/^fittings\..+\.arm\./, 'knock the arm and log its swings', share(0.2)],
  [/^protection\.chain\./, 'look it up in its papers', plus(2, '2 K')],
  [/^costs\.kerf$/, 'saw into a scrap and measure the cut', plus(0.0001, '0.1 mm')],
  [/^costs\.pricePosition$/, 'ask the shops for what is on the list', plus(0.05, 'a twentieth of their range')],
  [/^costs\.(?:failures|waste)$/, 'keep a list of a month’s prints', share(0.2)],
  [/^(?:room|people)\./, 'with a rule', share(0.01)],
  [/^(?:protection|costs)\./, 'nothing at home measures it', undefined],
];

const unlisted: Way = { how: 'look it up in its papers, or measure it', exactly: share(0.1) };

export function wayToMeasure(path: string): Way {
  const found = ways.find(([pattern]) => pattern.test(path));
  if (found === undefined) return unlisted;
  const [, how, exactly] = found;
  return exactly === undefined ? { how } : { how, exactly };
}

export function howToMeasure(path: string): string {
  return wayToMeasure(path).how;
}

/** `within 10 %`, `within 0.5 K`. */
export function exactlyInWords(exactly: Exactly): string {
  return exactly.kind === 'plus' ? `to ${exactly.says}` : `to ${Math.round(100 * exactly.value)} %`;
}

const Z90 = normalQuantile(0.9);

/** Standard deviation of a reading's error, as share of the standard deviation that is assumed of the input. */
export function readingError({ p10, p50, p90, shape }: Spread, exactly: Exactly): number {
  if (shape === 'log-normal' && p10 > 0) {
    const deviation = Math.log(p90 / p10) / (2 * Z90);
    return Math.log1p(exactly.kind === 'share' ? exactly.value : exactly.value / p50) / deviation;
  }
  const deviation = (p90 - p10) / (2 * Z90);
  return (exactly.kind === 'share' ? exactly.value * Math.abs(p50) : exactly.value) / deviation;
}
