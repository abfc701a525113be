export { airConductivity, airDensity, airExpansion, airKinematicViscosity, airPrandtl, airViscosity } from './air.ts';
export {
  airLayerConductance,
  airLayerResistance,
  nusseltLevelGap,
  nusseltTallGap,
  nusseltUprightGap,
} from './air-gap.ts';
export {
  boxShapeFactor,
  type HeatFlow,
  INDOOR_SURFACE_RESISTANCE,
  jointTemperatures,
  layerResistance,
  OUTDOOR_SURFACE_RESISTANCE,
  surfaceResistance,
  uValue,
} from './conduction.ts';
export * from './constants.ts';
export { draughtRate, draughtSpeed } from './draught-rate.ts';
export { erf, erfc, scaledErfc } from './error-function.ts';
export { type FilmLaw, filmLaw, naturalFilm, type Orientation } from './film-law.ts';
export {
  type Mixing,
  mixedConvection,
  nusseltCylinder,
  nusseltPlateStream,
  stirredSpeed,
  streamFilm,
} from './forced-convection.ts';
export { type Bed, type BedLoss, bedChangeTime, bedLoss, type Sheet, sheetsCapacity } from './heated-bed.ts';
export { blockLoss, meltPower, motorLoss, supplyLoss } from './hot-end.ts';
export {
  dewPoint,
  humidityRatio,
  humidityRatioAt,
  humidityRatioFromWetBulb,
  moistAirDensity,
  moistAirEnthalpy,
  moistAirVolume,
  relativeHumidity,
  saturationPressure,
  vapourPressure,
} from './humid-air.ts';
export { solveLinear } from './linear-equations.ts';
export { biotNumber, coolingShare, coolingTime, naturalCoolingShare } from './lumped-cooling.ts';
export { meanRadiantFactors, starWeights } from './mean-radiant-star.ts';
export {
  nusseltBlock,
  nusseltHotFaceDown,
  nusseltHotFaceUp,
  nusseltHotFaceUpBlend,
  nusseltVerticalPlate,
  nusseltVerticalPlateIntegral,
  nusseltVerticalPlateLaminar,
  rayleighInAir,
  rayleighNumber,
} from './natural-convection.ts';
export type { Knowledge, OutsideCheck } from './outside-check.ts';
export { blackEmission, parallelExchange, radiationFilm, radiationToRoom } from './radiation.ts';
export { type FaceRadiation, type RadiatingFace, radiosity } from './radiosity.ts';
export {
  airStepShare,
  planeSourceRise,
  surfaceFluxRise,
  surfaceStepHeat,
  surfaceStepShare,
  type ThickBody,
} from './semi-infinite.ts';
export { type SlabShares, slabCooling, type WallResponse, wallStepResponse } from './slab.ts';
export { cornerViewFactor, parallelViewFactor } from './view-factors.ts';
