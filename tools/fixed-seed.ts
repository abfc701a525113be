// Properties are tried on the same draws every time: a test that fails today failed yesterday. `SEED=… npm run unit` draws others.

import fc from 'fast-check';

fc.configureGlobal({ seed: Number(process.env['SEED'] ?? 20261125) });
