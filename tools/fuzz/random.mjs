// Draws that are the same on every machine: one stream a cabinet, so that any of them can be made again alone.

/** 32 bits, every input bit moving every output bit (finaliser of a public-domain hash by A. Appleby). */
function scramble(bits) {
  let h = bits >>> 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

/** Draws of the cabinet of this number under this seed. */
export function drawsOf(seed, number) {
  let counter = scramble(scramble(seed) ^ Math.imul(number + 1, 0x9e3779b9));
  const share = () => {
    counter = (counter + 0x9e3779b9) >>> 0;
    return scramble(counter) / 2 ** 32;
  };
  const between = (low, high) => low + (high - low) * share();
  return {
    share,
    between,
    /** Evenly in logarithms. */
    scaled: (low, high) => low * (high / low) ** share(),
    whole: (low, high) => Math.floor(between(low, high + 1)),
    chance: (probability) => share() < probability,
    pick: (list) => list[Math.floor(share() * list.length)],
  };
}
