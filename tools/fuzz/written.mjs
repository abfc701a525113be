// Quantities as people write them: in one of the units that the file takes, rounded to a few digits.

const digits = (value, count = 4) => String(Number(value.toPrecision(count)));

/** m; sizes that must meet are written in mm. */
export function length(draw, metres) {
  return draw.pick([
    () => `${digits(metres * 1000)} mm`,
    () => `${digits(metres * 100)} cm`,
    () => `${digits(metres)} m`,
    () => `${digits(metres / 0.0254)} in`,
  ])();
}

export const millimetres = (metres) => `${Math.round(metres * 1000)} mm`;

/** °C */
export function temperature(draw, celsius) {
  return draw.pick([
    () => `${digits(celsius)} °C`,
    () => `${digits(celsius)} degC`,
    () => `${digits(celsius * 1.8 + 32, 5)} °F`,
    () => `${digits(celsius + 273.15, 6)} K`,
  ])();
}

export function share(value) {
  return `${digits(value * 100, 3)} %`;
}

/** s */
export function duration(draw, seconds) {
  const minutes = Math.max(1, Math.round(seconds / 60));
  return draw.pick([
    () => `${minutes} min`,
    () => (minutes >= 60 ? `${Math.floor(minutes / 60)} h ${minutes % 60} min` : `${minutes} min`),
    () => `${minutes * 60} s`,
  ])();
}

/** Seconds after midnight, to the minute. */
export function clock(seconds) {
  const minutes = Math.floor(seconds / 60);
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
}

/** m³/h */
export function flow(draw, cubicMetresPerHour) {
  return draw.pick([
    () => `${digits(cubicMetresPerHour)} m3/h`,
    () => `${digits(cubicMetresPerHour / 3.6)} l/s`,
    () => `${digits(cubicMetresPerHour / 1.699011)} cfm`,
  ])();
}

/** A value that may carry a spread behind it; the value itself is what the day takes. */
export function doubtful(draw, text) {
  return draw.chance(0.15) ? `${text} ± ${draw.whole(2, 20)} %` : text;
}

/** A constant or a course over the day, °C. */
export function temperatureCourse(draw, low, high, steady = 0.5) {
  if (draw.chance(steady)) return temperature(draw, draw.between(low, high));
  const points = draw.whole(2, 5);
  const hours = Array.from({ length: points }, () => draw.whole(0, 23));
  const sorted = [...new Set(hours)].sort((a, b) => a - b);
  return Object.fromEntries(sorted.map((hour) => [`${hour}:00`, temperature(draw, draw.between(low, high))]));
}
