// Random numbers that are the same on every machine and in every run: seeded, 32 bits, no state outside the stream.

const GOLDEN = 0x9e3779b9;

/** Scrambles 32 bits so that every input bit moves every output bit (A. Appleby's finaliser of a public-domain hash). */
export function scramble(bits: number): number {
  let h = bits >>> 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

/** 32 bits that stand for a text: FNV-1a over its UTF-16 units, scrambled. */
export function textSeed(text: string): number {
  let h = 0x811c9dc5;
  for (let at = 0; at < text.length; at += 1) h = Math.imul(h ^ text.charCodeAt(at), 0x01000193);
  return scramble(h);
}

/**
 * A stream of numbers, evenly spread over 0 ≤ u < 1: a counter that advances by the golden ratio, scrambled
 * (the construction of Steele, Lea & Flood 2014, here with 32 bits). Good for sampling, not for secrets.
 */
export function randomStream(seed: number): () => number {
  let counter = scramble(seed);
  return () => {
    counter = (counter + GOLDEN) >>> 0;
    return scramble(counter) / 2 ** 32;
  };
}

/** The whole numbers 0 … count − 1 in random order (Fisher & Yates). */
export function shuffled(count: number, random: () => number): number[] {
  const order = Array.from({ length: count }, (_, at) => at);
  for (let last = count - 1; last > 0; last -= 1) {
    const other = Math.floor(random() * (last + 1));
    [order[last], order[other]] = [order[other]!, order[last]!];
  }
  return order;
}
