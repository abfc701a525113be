// A worker thread that tries the cabinets whose numbers it is given.

import { parentPort, workerData } from 'node:worker_threads';
import { tryCabinet } from './try-cabinet.mjs';

parentPort?.on('message', ({ number, peaks }) => {
  parentPort?.postMessage(tryCabinet(workerData.seed, number, { peaks }));
});
