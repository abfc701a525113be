// The frozen days at the usual tolerance: time, steps, and the largest error against a run a thousand times tighter
// (npm run peers shows that tight runs agree with two general-purpose solvers).

import { simulateDay } from '../packages/engine/dist/index.js';
import { frozenDay } from './frozen.mjs';
import { line, measure } from './measure.mjs';
import { largestDifference } from './peers/curve.mjs';
import { sampleRecord } from './peers/sample-record.mjs';

const TOLERANCE = 0.02;

export function run() {
  return [...oneDay('day-43', 'frozen day', 3), ...oneDay('day-43-switching', 'frozen day, narrow thermostat', 10)];
}

function oneDay(name, title, limit) {
  const network = frozenDay(name);
  const simulate = () => simulateDay(network, { tolerance: TOLERANCE });
  const { median, least, ratio } = measure(simulate, { warm: 300, samples: 41 });
  const { work, events, warnings } = simulate();
  const tight = sampleRecord(simulateDay(network, { tolerance: TOLERANCE / 1000 }), 60);
  const error = largestDifference(sampleRecord(simulate(), 60), tight);
  const note = `${work.steps} steps, ${work.rejected} rejected, ${work.newton} air rounds, ${events.length} events, ${warnings.length} warnings; least ${least.toPrecision(3)} ms`;
  return [
    line(`${title} at ${TOLERANCE} K`, median, 'ms', { ratio, limit, note }),
    line(`${title}: largest error of any temperature in any minute`, error, 'K'),
  ];
}
