// The fire trade: what burns, what feeds it, who notices, what cuts it off. It never says that a fire would be harmless.

import { asks, type DayTrade, type StandingTrade } from '../measure.ts';
import { chain } from './chain.ts';
import { detectors, heatDetectorsOn } from './detectors.ts';
import { extinguisher } from './extinguisher.ts';
import { doorFires, fanFires, ventFires } from './feed.ts';
import { fuel } from './fuel.ts';
import { links } from './links.ts';
import { smoke } from './smoke.ts';

export const fire: StandingTrade & DayTrade = {
  id: 'fire',
  title: 'Fire',
  standing: asks(chain, detectors, fuel, ventFires, doorFires, extinguisher),
  measure: (run) => [...fanFires(run), ...heatDetectorsOn(run), ...links(run), ...smoke(run)],
};
