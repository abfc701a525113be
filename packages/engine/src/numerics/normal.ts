// The normal distribution's quantiles.

const LOWEST = 1e-9;

/**
 * Standard normal quantile: the z below which a share `p` of a normal distribution lies.
 * Seven digits (M. J. Wichura, algorithm AS 241, PPND7, Applied Statistics 37 (1988) 477-484; from memory, tested against
 * tables). `p` is held within 1e-9 of 0 and 1: no sample of ours lies further out.
 */
export function normalQuantile(p: number): number {
  const q = Math.min(Math.max(p, LOWEST), 1 - LOWEST) - 0.5;
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q;
    const above = ((59.10937472 * r + 159.29113202) * r + 50.434271938) * r + 3.3871327179;
    const below = ((67.18756 * r + 78.757757664) * r + 17.895169469) * r + 1;
    return (q * above) / below;
  }
  const r = Math.sqrt(-Math.log(0.5 - Math.abs(q))) - 1.6;
  const above = ((0.17023821103 * r + 1.3067284816) * r + 2.75681539) * r + 1.4234372777;
  const below = (0.12021132975 * r + 0.737001642) * r + 1;
  return Math.sign(q) * (above / below);
}
