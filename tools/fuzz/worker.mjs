// A process that tries the cabinets whose numbers it is given; one of its own, so that its processor time is known.

import { tryCabinet } from './try-cabinet.mjs';

const seed = Number(process.argv[2]);

process.on('message', ({ number, peaks }) => {
  // Whoever asked may have been interrupted: then nobody listens.
  process.send(tryCabinet(seed, number, { peaks }), () => {});
});
