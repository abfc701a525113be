// Every limit of fittings.

import { CHANNEL_SHARE, cableBend, creepLimit } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { CableRun } from '../../cabinet/fittings.ts';
import type { Limit } from '../measure.ts';
import { tradeLimit } from '../person-limit.ts';

const PRACTICE = 'common practice, no source';

export const bendLimit = (cabinet: Cabinet, { diameter, moved }: CableRun): Limit =>
  tradeLimit(
    cabinet,
    'cable-bend',
    'at-least',
    cableBend(diameter, moved),
    `${moved ? '7.5 outside diameters for a cable that moves' : '4 outside diameters for a cable that is laid once'} (data sheet of a PVC cable to EN 50525-2-51, read)`,
  );

export const fillLimit = (cabinet: Cabinet): Limit =>
  tradeLimit(
    cabinet,
    'channel-fill',
    'at-most',
    CHANNEL_SHARE,
    'cables take at most 45 % of a channel, so that they can be drawn in and keep cool (trunking practice, guidance to BS 7671, from memory)',
  );

export const socketsLimit = (cabinet: Cabinet): Limit =>
  tradeLimit(cabinet, 'sockets-left', 'at-least', 0, 'an adapter wider than the pitch covers its neighbours’ sockets');

export const fittingGap = (cabinet: Cabinet): Limit =>
  tradeLimit(cabinet, 'fitting-gap', 'at-least', 0.02, `20 mm of air beside hot or moving parts, ${PRACTICE}`);

export const fittingReach = (cabinet: Cabinet): Limit =>
  tradeLimit(cabinet, 'fitting-reach', 'at-most', 0.55, `beyond 550 mm a forearm does not work reliably, ${PRACTICE}`);

export const blurLimit = (cabinet: Cabinet): Limit =>
  tradeLimit(cabinet, 'camera-blur', 'at-most', 1, 'what swings by less than a pixel cannot be seen; own choice');

export const warmthLimit = (cabinet: Cabinet, material: string, glassTransition: number): Limit =>
  tradeLimit(
    cabinet,
    'bracket-warmth',
    'at-most',
    creepLimit(glassTransition),
    `${material} creeps under load from 5 K below the lower end of its glass transition (pages of polymer data; ${PRACTICE})`,
  );

export const extinguisherLimit = (cabinet: Cabinet): Limit =>
  tradeLimit(
    cabinet,
    'extinguisher',
    'at-least',
    1,
    'in the room, by the way out, where a fire does not bar the way to it (idea of NFPA 10), from memory. Local fire code and training decide',
  );
