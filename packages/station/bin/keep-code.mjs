// node keep-code.mjs FOLDER WORDS…: runs the bundle in a folder with these words, and keeps what was compiled for the next start.

import { openBundle } from './run-bundle.mjs';

const [folder, ...words] = process.argv.slice(2);
const bundle = openBundle(folder);
process.argv.splice(2, process.argv.length, ...words);
process.on('exit', bundle.keep);
bundle.load('stillair.js');
