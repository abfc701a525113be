/** Processor time that this process has used so far, all its threads together, ms. */
export function cpuMilliseconds() {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e3;
}
