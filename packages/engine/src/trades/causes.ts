// What lies behind findings: those with one cause are told together, under these words.

export const causes = {
  notEnoughAir: 'not enough air passes through the bay',
  tooMuchAir: 'more air passes than the material wants',
  starvedByInlet: 'the fan is starved by its inlet',
  starvedByFilter: 'the fan is too weak for its filter',
  starvedByPath: 'the fan is too weak for its path',
  unstableFan: 'the fan works where its curve is unstable',
  electronicsInWarmAir: 'electronics stand in the warm air',
  bayTooCool: 'the bay is not warm enough',
  doorOpened: 'the door is opened during a print',
  dampAir: 'damp air meets a cold surface',
  hotSurface: 'an outer surface gets hot',
  inletBlows: 'an inlet blows at the print',
  turnedAirBlows: 'a fan that turns the air round blows at the print',
  leaksOut: 'air leaves the bay past the filter',
  noFilter: 'what leaves the bay is not filtered',
  noCarbon: 'nothing holds back the vapours',
  lateFan: 'the fan starts late or stops early',
  backFlow: 'air flows back through a stopped fan',
  strongSource: 'the material gives off more than the room carries off',
  spentStage: 'a filter or carbon stage is nearly spent',
  noise: 'the fans are loud',
  lostHeat: 'warm air is blown away',
} as const;

export type Cause = (typeof causes)[keyof typeof causes];
