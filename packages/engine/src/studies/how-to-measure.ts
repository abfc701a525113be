// How a person measures an input that decides between two options. Common practice, no source.

const ways: readonly (readonly [RegExp, string])[] = [
  [
    /^(factors\.leakage|jointGap$|doors\..+\.sealGap)/,
    'shut the cabinet, blow into it with a fan of known curve and read the pressure inside, or slide paper of known thickness into the gap',
  ],
  [/\.sealDepth$|\.seatDepth$|\.length$|^people\./, 'with a rule'],
  [/\.seatGap$/, 'take the filter out and slide paper of known thickness between it and its seat'],
  [/^factors\.bedLoss$/, 'a plug-in energy meter on a machine that holds its bed warm for half an hour'],
  [
    /^machines\..+\.(hotEnd|motors|electronics)$/,
    'a plug-in energy meter on the machine while it prints with a cold bed',
  ],
  [
    /^factors\.(insideFilm|outsideFilm)$/,
    'a lamp of known power in the shut cabinet for half a day, and thermometers inside, on the wall and in the room',
  ],
  [
    /^factors\.fanFlow$/,
    'a vane anemometer in a straight piece of pipe at the outlet, or a bag of known volume and a watch',
  ],
  [/^factors\.plume$/, 'thermometers low and high in the bay while a bed is hot'],
  [
    /^(room|factors)\.(roomHeatLoss|heatLoss|heatCapacity)$/,
    'a heater of known power in the room for an evening, and a thermometer that logs',
  ],
  [/^room\.airChangesPerHour$/, 'let carbon dioxide rise with people in the room, leave, and log how fast it falls'],
  [/temperature|\.offset$/, 'a second thermometer beside it for a day, out of the sun'],
  [/\.lag$/, 'carry the sensor from one room to a warmer one and time two thirds of the change'],
  [/humidity/, 'a hygrometer there for a day'],
  [/^(room|outdoors)\.background\.particles$/, 'a particle counter there for a day while nothing is printed'],
  [/^(room|outdoors)\.background\./, 'an air sampler or a sensor for it there for a day while nothing is printed'],
  [/^room\.deposition$/, 'a particle counter in the shut room after a candle was put out: how fast the count falls'],
  [
    /emissions\.particles|^factors\.emissionParticles$/,
    'print a small part in a closed box of known volume with a particle counter in it, or ask for the spool’s test report',
  ],
  [
    /emissions\.|^factors\.emissionVapours$/,
    'the spool’s emission test report, or a sampling tube in a closed box while it is printed',
  ],
  [/efficiency/, 'a particle counter before and behind the filter'],
  [/dischargeCoefficient|\.loss$/, 'a fan of known flow and a pressure gauge across it'],
  [/windSpeed|windCoefficient/, 'a vane anemometer at the opening, on a calm and on a windy day'],
  [/\.mass$|\.partSize$/, 'read it off the sliced print'],
];

export function howToMeasure(path: string): string {
  return ways.find(([pattern]) => pattern.test(path))?.[1] ?? 'look it up in its papers, or measure it';
}
