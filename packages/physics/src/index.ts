export { airConductivity, airDensity, airExpansion, airKinematicViscosity, airPrandtl, airViscosity } from './air.ts';
export * from './constants.ts';
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
export type { Knowledge, OutsideCheck } from './outside-check.ts';
