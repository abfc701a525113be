// `protection:` of the cabinet file: what is to happen when something burns.

import type { Agent, ChainWhat, HeatClass } from './protection.ts';
import { mapOf, name, quantity, type Schema, shortOr, thing, word, yesNo } from './shape.ts';
import type { Given } from './spec.ts';

type Maybe<T> = T | undefined;

export interface ChainDeviceSpec {
  readonly what: ChainWhat;
  readonly contact?: Maybe<'opens' | 'closes'>;
  readonly through?: Maybe<'wire' | 'program'>;
  readonly bay?: Maybe<string>;
  readonly 'opens-at'?: Given;
  readonly holds?: Given;
}

export interface DetectorSpec {
  readonly what: 'smoke' | 'heat';
  readonly where: string;
  readonly filter?: Maybe<'before' | 'after'>;
  readonly class?: Maybe<HeatClass>;
  readonly 'rate-of-rise'?: Maybe<boolean>;
}

export interface StoredSpec {
  readonly of: string;
  readonly mass?: Given;
  readonly where: string;
}

export interface ProtectionSpec {
  readonly chain?: Maybe<Readonly<Record<string, ChainDeviceSpec>>>;
  readonly latch?: Maybe<boolean>;
  readonly detectors?: Maybe<Readonly<Record<string, DetectorSpec>>>;
  readonly 'on-alarm'?: Maybe<{
    readonly fans?: Maybe<'stop' | 'run'>;
    readonly heaters?: Maybe<'cut' | 'run'>;
    readonly flaps?: Maybe<'shut' | 'open'>;
  }>;
  readonly stored?: Maybe<Readonly<Record<string, StoredSpec>>>;
  readonly extinguisher?: Maybe<{ readonly agent: Agent; readonly mass: NonNullable<Given> }>;
}

const devices: readonly ChainWhat[] = [
  'stop button',
  'smoke relay',
  'heat relay',
  'reset thermostat',
  'self-reset thermostat',
  'thermal link',
  'watchdog',
  'door switch',
];

const HOT = { from: 273.15, to: 573.15 };

export function protectionSchema(): Schema<ProtectionSpec> {
  const what = word(devices, 'device that opens the circuit');
  const device = thing(
    {
      what,
      contact: word(['opens', 'closes'], 'what its contact does when it trips').optional(),
      through: word(['wire', 'program'], 'whether it acts by wire alone or needs a running program').optional(),
      bay: name('bay in which it feels the heat').optional(),
      'opens-at': quantity('temperature', 'at which a link or thermostat opens', HOT).optional(),
      holds: quantity('temperature', 'highest that a link carries for good', HOT).optional(),
    },
    'a member of the cut-off chain',
  );
  const short = what.transform((only): ChainDeviceSpec => ({ what: only }));
  const detector = thing(
    {
      what: word(['smoke', 'heat'], 'what it notices'),
      where: name('a bay, an air path, or room'),
      filter: word(['before', 'after'], 'on which side of the filter it sits in an air path').optional(),
      class: word(['A1', 'A2', 'B', 'C', 'D', 'E', 'F', 'G'], 'class of a heat detector, EN 54-5').optional(),
      'rate-of-rise': yesNo('answers to a fast rise too').optional(),
    },
    'a detector',
  );
  const stored = thing(
    {
      of: name('a filament, or aerosol, solvent, wipes, paper, cardboard or wood'),
      mass: quantity('mass', 'how much', { above: 0, to: 1000 }).optional(),
      where: name('a bay, or outside'),
    },
    'something that burns and is kept',
  );
  return thing(
    {
      chain: mapOf(
        shortOr(short, device, 'a member of the cut-off chain'),
        'devices in series that each open the circuit',
        'device',
      ).optional(),
      latch: yesNo('stays off until somebody switches it on again').optional(),
      detectors: mapOf(detector, 'smoke and heat detectors', 'detector').optional(),
      'on-alarm': thing(
        {
          fans: word(['stop', 'run'], 'what the fans do on alarm').optional(),
          heaters: word(['cut', 'run'], 'what beds, nozzles and heaters do on alarm').optional(),
          flaps: word(['shut', 'open'], 'what flaps and openings with a shutter do on alarm').optional(),
        },
        'what an alarm does',
      ).optional(),
      stored: mapOf(stored, 'what is kept that burns, besides what is being printed', 'thing').optional(),
      extinguisher: thing(
        {
          agent: word(
            ['carbon dioxide', 'clean agent', 'powder', 'foam', 'water', 'blanket'],
            'what is in the extinguisher',
          ),
          mass: quantity('mass', 'of that agent', { above: 0, to: 100 }),
        },
        'the extinguisher at hand',
      ).optional(),
    },
    'what is to happen when something burns',
  ) as unknown as Schema<ProtectionSpec>;
}
