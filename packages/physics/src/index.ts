export {
  BOLTZMANN,
  type CoagulatingBox,
  coagulationCoefficient,
  DEPOSITION,
  meanFreePath,
  meanParticleMass,
  numberAfter,
  settledNumber,
} from './aerosol.ts';
export { airConductivity, airDensity, airExpansion, airKinematicViscosity, airPrandtl, airViscosity } from './air.ts';
export {
  airLayerConductance,
  airLayerResistance,
  nusseltLevelGap,
  nusseltTallGap,
  nusseltUprightGap,
} from './air-gap.ts';
export { type Arc, arcBox, arcMiddle, arcRound, type PlanePoint } from './arc-move.ts';
export { type BeamAnswer, type BeamEnds, type BeamLoad, pointSag, simpleBeam, spreadSag } from './beam.ts';
export { beamFrequency, sagFrequency } from './beam-frequency.ts';
export {
  type BoxSize,
  type Panel,
  type ShellFace,
  type ShellPanel,
  type SkinFace,
  shellPanels,
  skinJoints,
  skinPanels,
} from './box-panels.ts';
export { type CabinetAndRoom, settledTogether, type TwoConcentrations, togetherAfter } from './cabinet-and-room.ts';
export { CHANNEL_SHARE, cableBend, channelFill, FIXED_BEND, MOVED_BEND } from './cable-room.ts';
export { armFollows, armFrequency, armStiffness, swingBlur } from './camera-arm.ts';
export { fieldWidth, type InPicture, placeInPicture, type View } from './camera-view.ts';
export { breakthroughTime, carbonAffinity, carbonRate, freshPenetration } from './carbon-bed.ts';
export { carbonCapacity, carbonEquilibrium, MICROPORE_VOLUME } from './carbon-capacity.ts';
export {
  airHeat,
  closedAirHeat,
  type Molecule,
  netFromGross,
  netHeatByOxygen,
  OXYGEN_BY_MASS,
  OXYGEN_BY_VOLUME,
  OXYGEN_HEAT,
} from './combustion.ts';
export { MOLAR_GAS_CONSTANT, massConcentration, partsPerMillion } from './concentration.ts';
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
export { gradedLines, type Section, type SectionResult, type SectionSurface, solveSection } from './conduction-2d.ts';
export {
  factorToDisk,
  factorToParallelCorner,
  factorToPolygon,
  factorToUprightCorner,
  type Vector,
} from './configuration-factor.ts';
export * from './constants.ts';
export { crackFlow, crackSlope, leakageAreaLaw, type PowerLaw, smoothCrackFlow } from './crack.ts';
export { finalSag } from './creep.ts';
export { type PlyStiffness, plywoodStiffness } from './cross-ply.ts';
export { type Curve, type CurvePoint, curveAt, curveSlope, monotoneCurve, straightCurve } from './curve.ts';
export { type Contact, statesThatStayOn } from './cut-off-chain.ts';
export {
  areaServed,
  carbonDioxideRise,
  cleanAirDelivery,
  concentrationAfter,
  lossRate,
  type MixedZone,
  nearAndFar,
  purgeTime,
  settledConcentration,
} from './dilution.ts';
export { draughtRate, draughtSpeed } from './draught-rate.ts';
export {
  colebrookFriction,
  type Duct,
  ductFriction,
  ductPressure,
  dynamicLoss,
  HOSE_FRICTION_MULTIPLIER,
  haalandFriction,
  hydraulicDiameter,
  laminarFriction,
} from './duct.ts';
export { edgeTransmittance } from './edge-loss.ts';
export {
  burstFactor,
  EMISSION_SHAPE,
  heatUpPulse,
  meanBurstFactor,
  tailFactor,
  temperatureFactor,
} from './emission.ts';
export { erf, erfc, scaledErfc } from './error-function.ts';
export {
  exposureTime,
  exposureValue,
  INCIDENT_CONSTANT,
  illuminanceAtValue,
  luminanceAtValue,
  motionBlur,
  REFLECTED_CONSTANT,
} from './exposure.ts';
export {
  affinity,
  type FanRatio,
  type FanScale,
  type FanShape,
  fanNoise,
  genericFanPoints,
  scaleFanPoints,
} from './fan.ts';
export { curvePathFlow, curvePathSlope, quadraticPathFlow, quadraticPathSlope } from './fan-path.ts';
export { bendStrain, filamentLength, windingMass } from './filament.ts';
export { clampedBuckling, longestGap, rodMoment } from './filament-gap.ts';
export { pullAfterBends, spoolDrag, spoolStart } from './filament-path.ts';
export { type FilmLaw, filmLaw, naturalFilm, type Orientation } from './film-law.ts';
export {
  type FilterPanel,
  loadingFactor,
  MEDIA_RESISTANCE,
  panelResistance,
  penetrationAtSpeed,
  resistancePressure,
} from './filter.ts';
export { type Bypass, seatBypass, seatedEfficiency } from './filter-bypass.ts';
export { type FilterClass, filterClasses, ULTRAFINE_ON_FINE_FILTER } from './filter-class.ts';
export { type FireOpening, hotBoxAir, OPENING_AIR, openingAir } from './fire-air.ts';
export { fireGrowth, type GrowthClass, growingFire, timeToHeat, timeToPower } from './fire-growth.ts';
export {
  bendLoss,
  contractionLoss,
  DUSTY_GRILLE_MULTIPLIER,
  EXIT_LOSS,
  entranceLoss,
  expansionLoss,
  GUARD_LOSS,
  grilleLoss,
  lossOnArea,
  mitreLoss,
  perforatedPlateLoss,
  RE_ENTRANT_LOSS,
  wireScreenLoss,
} from './fittings.ts';
export {
  type FlickerLine,
  flickerBound,
  flickerIndex,
  percentFlicker,
  pulseBanding,
  rippleBanding,
} from './flicker.ts';
export {
  type Mixing,
  mixedConvection,
  nusseltCylinder,
  nusseltPlateStream,
  stirredSpeed,
  streamFilm,
} from './forced-convection.ts';
export { type Gap, gapAsPowerLaw, gapFlow, gapResistance } from './gap.ts';
export { glassFallsOut } from './glass-in-fire.ts';
export {
  CLASS_A_PRACTICE,
  exhaustRise,
  fireForAnswer,
  type HeatDetectorClass,
  type HeatDetectorRow,
  heatDetectorFor,
  heatDetectors,
  LINK_TOLERANCE,
  longestExposure,
} from './heat-detector.ts';
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
export { areaIlluminance, lambertianIlluminance, pointIlluminance, stripIlluminance } from './illuminance.ts';
export { cavityMultiplier, fluxForIlluminance, interreflect } from './interreflection.ts';
export {
  forcedAmplitude,
  hystereticTransmissibility,
  naturalFrequency,
  neededDeflection,
  padStiffness,
  swayStiffness,
  transmissibility,
} from './isolator.ts';
export {
  mergedJetVelocity,
  ROUND_JET_DECAY,
  roundJetCore,
  roundJetVelocity,
  SLOT_JET_DECAY,
  slotJetCore,
  slotJetVelocity,
  WALL_JET_FACTOR,
} from './jet.ts';
export { lampHeat, PEAK_EFFICACY, WHITE_EFFICACY } from './lamp-heat.ts';
export { solveLinear } from './linear-equations.ts';
export {
  type BoxFace,
  type BoxLamp,
  type BoxPatch,
  boxPatches,
  boxTransfer,
  elementFactors,
  lampOnElement,
  lampShares,
  obstructed,
} from './lit-box.ts';
export { peakOfLoads, type SteppedLoad } from './load-steps.ts';
export { biotNumber, coolingShare, coolingTime, naturalCoolingShare } from './lumped-cooling.ts';
export {
  type BreakerCurveName,
  CONTINUOUS_TIME,
  continuousCurrent,
  leakageBudget,
  lineCurrent,
  magneticBand,
  supplyShare,
} from './mains.ts';
export { meanRadiantFactors, starWeights } from './mean-radiant-star.ts';
export { boxIngress, desiccantTime, GAS_CONSTANT_VAPOUR, strandTime, strandUptake, vapourDensity } from './moisture.ts';
export { type BedMotion, bedReach, deltaFootprint, type Reach, sweptDepth } from './motion-envelope.ts';
export { arcSpeed, cornerSpeed, moveTime, reachedSpeed } from './moves.ts';
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
export {
  fansInParallel,
  fansInSeries,
  flowAtPressure,
  type OperatingPoint,
  operatingPoints,
} from './operating-point.ts';
export { lossOfDischarge, orificeFlow, orificeSlope, parallelArea, plateDischarge, seriesArea } from './orifice.ts';
export { check, type Knowledge, type OutsideCheck } from './outside-check.ts';
export { type PackedBed, packedBedResistance } from './packed-bed.ts';
export { draughtThreshold, partFilm, richardsonNumber } from './part-cooling.ts';
export { doorSweep, narrowestOpening, turnedWidth, turningWidth } from './passage.ts';
export { firePlume, PLUME_ENTRAINMENT, type Plume, roomPlume, virtualOrigin } from './plume.ts';
export { type PrintCost, type PrintCostParts, printCost } from './print-cost.ts';
export {
  besideBed,
  CREEP_MARGIN,
  creepLimit,
  type PrintedMaterial,
  type PrintedName,
  printedMaterials,
} from './printed-part.ts';
export { blackEmission, parallelExchange, radiationFilm, radiationToRoom } from './radiation.ts';
export { type FaceRadiation, type RadiatingFace, radiosity } from './radiosity.ts';
export type { Resistance } from './resistance.ts';
export { type BendingSection, bendingSection, bendingStress, type SectionPart } from './section.ts';
export {
  airStepShare,
  planeSourceRise,
  surfaceFluxRise,
  surfaceStepHeat,
  surfaceStepShare,
  type ThickBody,
} from './semi-infinite.ts';
export {
  type LaidPart,
  partsInLength,
  type Sheet as CuttingSheet,
  type SheetCount,
  type SheetPart,
  sheetsFor,
} from './sheet-cutting.ts';
export { insideTolerance, SAW_CUT, sandedTolerance, sheetMovement, type Tolerance } from './sheet-tolerance.ts';
export {
  exchangeUnderPressure,
  FLOODING_SHAPE,
  floodingPressure,
  holeExchangeByShape,
  shelfHoleExchange,
} from './shelf-hole.ts';
export { type PinStress, pinStress, plywoodEmbedment } from './shelf-pin.ts';
export { captureVelocity, sinkVelocity } from './sink.ts';
export { type SlabShares, slabCooling, type WallResponse, wallStepResponse } from './slab.ts';
export { type Axis, type Point, type Solid, solidGap } from './solid-gap.ts';
export { molarPolarisation, type Solvent, type SolventName, solventSaturation, solvents } from './solvent.ts';
export {
  boxInsertionLoss,
  buildUp,
  type SoundLink,
  soundInBoxes,
} from './sound-enclosure.ts';
export { fanOctaves } from './sound-fan.ts';
export {
  AIR_IMPEDANCE,
  addLevels,
  aLevel,
  aWeighting,
  exactOctaveBands,
  octaveBands,
  octaveWeights,
  SOUND_SPEED,
} from './sound-level.ts';
export { endReflection, expansionBoxLoss, linedDuctLoss, type Plenum, plenumLoss } from './sound-muffler.ts';
export {
  compositeLoss,
  criticalFrequency,
  doubleLeafResonance,
  massLawLoss,
  panelLoss,
  panelOctaves,
  type SoundPanel,
} from './sound-panel.ts';
export { noiseRating, ratingCurve } from './sound-rating.ts';
export {
  type Directivity,
  eyringTime,
  powerFromPressure,
  reverberationTime,
  roomConstant,
  roomTransfer,
} from './sound-room.ts';
export { type Slit, slitFriction, slitOctaves, slitTransmission } from './sound-slit.ts';
export { heatDrivenStack, neutralLevel, stackFlow, stackOutflow, stackPressure, type TwoOpenings } from './stack.ts';
export { reversalFrequency, stepFrequency, strokeAt } from './stroke.ts';
export {
  doorSwingVolume,
  doorwayExchange,
  type TallOpening,
  type TwoWayFlow,
  tallOpeningFlow,
} from './tall-opening.ts';
export { settlingTime, type ThermostatCycle, thermostatCycle } from './thermostat-cycle.ts';
export { hingePull, type StandingMass, tiltLimit, tippingPush, tipRatio } from './tipping.ts';
export { gradualContractionLoss, gradualExpansionLoss } from './transition.ts';
export { type SpringMass, twoMassFrequencies, twoMassTransmission } from './two-masses.ts';
export type { TypicalRange } from './typical-range.ts';
export { cornerViewFactor, parallelViewFactor } from './view-factors.ts';
export {
  ambientFactor,
  COPPER_COEFFICIENT,
  COPPER_RESISTIVITY,
  copperFactor,
  copperResistance,
  cordCurrent,
  flexibleResistance,
  gaugeArea,
  gaugeCurrent,
  voltageDrop,
} from './wire.ts';
