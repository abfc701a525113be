// All that long work needs, loaded when the first of it comes.

export { openHands } from './hands.ts';
export { helping } from './helping.ts';
export { longWork } from './long-work.ts';
