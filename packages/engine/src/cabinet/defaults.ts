// What is assumed where a file says nothing: each value with its spread from the 10th to the 90th percentile, and why.
// One table, so that a person can read at one place what the program takes for granted.

import { type Assumption, decades, normal } from './assumption.ts';
import { type PowerDefaultName, powerDefaults } from './power-defaults.ts';

export type DefaultName =
  | 'roomWidth'
  | 'roomDepth'
  | 'roomHeight'
  | 'roomTemperature'
  | 'roomHumidity'
  | 'roomAirChanges'
  | 'roomLossPerArea'
  | 'roomCapacityPerArea'
  | 'roomParticles'
  | 'roomFineDust'
  | 'roomTvoc'
  | 'roomDeposition'
  | 'outdoorTemperature'
  | 'outdoorHumidity'
  | 'outdoorWind'
  | 'outdoorParticles'
  | 'outdoorFineDust'
  | 'outdoorTvoc'
  | 'personDistance'
  | 'personHeight'
  | 'sealGap'
  | 'sealDepth'
  | 'jointGap'
  | 'wallGap'
  | 'seatGap'
  | 'seatDepth'
  | 'sensorOffset'
  | 'sensorLag'
  | 'discharge'
  | 'windCoefficient'
  | 'ductLength'
  | 'insideFilm'
  | 'outsideFilm'
  | 'bedLoss'
  | 'leakage'
  | 'fanFlow'
  | 'plume'
  | 'printRate'
  | 'partSize'
  | 'machineMass'
  | 'headMass'
  | 'movingBedMass'
  | 'accelerationOfMovingBed'
  | 'accelerationOfFixedBed'
  | 'strokeSpeed'
  | 'stroke'
  | 'slabDensity'
  | 'boardStress'
  | 'sagGrowth'
  | 'housingFixity'
  | 'gluedFixity'
  | 'lippingStiffness'
  | 'hingeCarries'
  | 'feetInset'
  | 'clipFront'
  | 'cableRear'
  | 'carriage'
  | 'tubeArch'
  | 'spoolDiameter'
  | 'spoolWidth'
  | 'spoolLift'
  | 'plug'
  | 'hingeTakes'
  | 'doorStandsIn'
  | 'cableDiameter'
  | 'armLength'
  | 'armWidth'
  | 'armThickness'
  | 'cameraMass'
  | 'armShake'
  | 'armFrequency'
  | 'cameraDistance'
  | 'cameraSees'
  | 'cameraPixels'
  | 'lampEfficacy'
  | 'lampFromFront'
  | 'rippleDepth'
  | 'boardReflectance'
  | 'machineReflectance'
  | 'cameraIso'
  | 'cameraAperture'
  | 'cameraReadout'
  | 'subjectSpeed'
  | PowerDefaultName;

/** What a room's temperature is worth when somebody writes one number for the whole day, K. Common practice, from memory. */
export const ROOM_TEMPERATURE_DOUBT = 1;

const MEMORY = 'common practice, from memory';

const CELSIUS = 273.15;

export const defaults: Readonly<Record<DefaultName, Assumption>> = {
  roomWidth: normal(4, 3, 5.5, `width of a usual room; ${MEMORY}`),
  roomDepth: normal(3.5, 3.4, 3.6, `depth of a usual room, its doubt is in the width; ${MEMORY}`),
  roomHeight: normal(2.5, 2.4, 2.7, `height of a usual room; ${MEMORY}`),
  roomTemperature: normal(21 + CELSIUS, 19 + CELSIUS, 23.5 + CELSIUS, `a heated room that people sit in; ${MEMORY}`),
  roomHumidity: normal(0.5, 0.35, 0.62, `a lived-in room over the year; ${MEMORY}`),
  roomAirChanges: decades(0.5, 0.2, 1.5, `windows shut to tilted; ${MEMORY}`),
  /** W/m² K over all faces of the room, inside walls included. */
  roomLossPerArea: decades(0.7, 0.35, 1.4, `mixture of inner and outer walls; ${MEMORY}`),
  /** J/K per m² of floor: air, furniture and the skin of the walls within hours. */
  roomCapacityPerArea: decades(24_000, 12_000, 60_000, `air, furniture and plaster within a few hours; ${MEMORY}`),
  roomParticles: decades(
    3000e6,
    1000e6,
    10_000e6,
    'WHO 2021 calls below 1000 /cm3 low and above 10 000 /cm3 high (24 h), from memory',
  ),
  roomFineDust: decades(6, 3, 12, `a room without smoke or cooking; ${MEMORY}`),
  roomTvoc: decades(100, 40, 300, 'below the first hygiene level of 300 µg/m3 (Seifert 1999), second-hand'),
  /** 1/s */
  roomDeposition: decades(
    1 / 3600,
    0.3 / 3600,
    3 / 3600,
    'own estimate between published 0.3 and 5 /h by size and stirring',
  ),
  outdoorTemperature: normal(10 + CELSIUS, 0 + CELSIUS, 22 + CELSIUS, `mean of a temperate year; ${MEMORY}`),
  outdoorHumidity: normal(0.8, 0.6, 0.95, `mean of a temperate year; ${MEMORY}`),
  outdoorWind: decades(2, 0.7, 5, `at a wall in a town; ${MEMORY}`),
  outdoorParticles: decades(6000e6, 2500e6, 15_000e6, `town air; ${MEMORY}`),
  outdoorFineDust: decades(10, 5, 20, `town air; ${MEMORY}`),
  outdoorTvoc: decades(20, 8, 60, `town air; ${MEMORY}`),
  personDistance: normal(1.5, 1, 2.5, 'sits in front of the cabinet at a desk'),
  personHeight: normal(1.2, 1.1, 1.3, `ears and nose of a sitting person; ${MEMORY}`),
  sealGap: decades(0.0007, 0.0002, 0.002, `a door without or with a simple seal; ${MEMORY}`),
  sealDepth: normal(0.018, 0.01, 0.022, 'as deep as the board of the carcass'),
  jointGap: decades(0.0001, 0.00003, 0.0003, `screwed and glued boards; ${MEMORY}`),
  wallGap: decades(0.03, 0.01, 0.08, 'furniture stands off a wall by its skirting board'),
  seatGap: decades(0.0001, 0.00003, 0.0005, `filter on a flat gasket; ${MEMORY}`),
  seatDepth: normal(0.02, 0.012, 0.03, `frame of a small filter; ${MEMORY}`),
  sensorOffset: normal(0, -0.5, 0.5, `a cheap thermometer or thermostat; ${MEMORY}`),
  sensorLag: decades(60, 25, 150, 'a small sensor in slow air'),
  discharge: normal(
    0.61,
    0.58,
    0.65,
    'sharp-edged hole at any likely Reynolds number (ISO 5167 to network defaults), second-hand',
  ),
  windCoefficient: normal(0, -0.3, 0.3, `a wall outlet of unknown direction; ${MEMORY}`),
  ductLength: normal(1, 0.5, 2, 'a duct whose length is not given'),
  insideFilm: normal(
    1,
    0.8,
    1.25,
    'correlations of natural convection against one another in a small box, fans included',
  ),
  outsideFilm: normal(1, 0.85, 1.15, 'correlations of natural convection on a wall'),
  bedLoss: normal(1, 0.75, 1.25, 'published correlations of a hot plate differ by a quarter'),
  leakage: decades(1, 0.6, 1.6, 'law of flow through a crack of known gap'),
  fanFlow: normal(1, 0.9, 1.1, 'a fan against its sheet'),
  plume: normal(1, 0.8, 1.2, 'constants of plume theory against one another'),
  /** kg/s of filament on an ordinary job. */
  printRate: decades(0.012 / 3600, 0.006 / 3600, 0.025 / 3600, `0.4 mm nozzle; ${MEMORY}`),
  partSize: decades(0.1, 0.05, 0.2, 'a part of a hand’s size'),
  machineMass: decades(10, 6, 18, `a printer for a desk; ${MEMORY}`),
  headMass: decades(0.4, 0.25, 0.65, `nozzle, drive and what carries them; ${MEMORY}`),
  movingBedMass: decades(1.3, 0.8, 2.2, `plate, sheet and what carries them; ${MEMORY}`),
  /** m/s² */
  accelerationOfMovingBed: decades(1.5, 0.6, 4, `set in most machines whose bed travels; ${MEMORY}`),
  accelerationOfFixedBed: decades(5, 2, 12, `set in most machines whose bed stands still; ${MEMORY}`),
  strokeSpeed: decades(0.1, 0.06, 0.2, `speed of filling a part; ${MEMORY}`),
  stroke: decades(0.012, 0.003, 0.05, 'filling a part: from thin walls to the whole of a small part; own estimate'),
  slabDensity: normal(2350, 2250, 2450, `concrete of paving slabs; ${MEMORY}`),
  boardStress: decades(8e6, 4e6, 16e6, 'any board that does not say; own estimate'),
  sagGrowth: decades(0.8, 0.4, 1.6, 'any board that does not say, as plywood; own estimate'),
  housingFixity: normal(0.15, 0, 0.3, 'a groove lets ends turn nearly freely; own estimate between free and fixed'),
  gluedFixity: normal(0.4, 0.15, 0.65, 'glue in a stiff side holds them partly; own estimate between free and fixed'),
  lippingStiffness: normal(10e9, 8e9, 12e9, 'softwood, EN 338 C24 about, second-hand'),
  /** kg, each. */
  hingeCarries: normal(4, 2.5, 5.5, 'cup hinges and clamps for glass, 5 to 8 kg a pair upwards; no printed source'),
  feetInset: normal(0.02, 0, 0.04, `furniture feet; ${MEMORY}`),
  clipFront: normal(0.01, 0, 0.02, `knob or clip of a bed that moves; ${MEMORY}`),
  cableRear: normal(0.05, 0.03, 0.07, `cable and strain relief of a bed that moves; ${MEMORY}`),
  carriage: normal(0.04, 0.02, 0.06, `motor or cable loop beside the frame; ${MEMORY}`),
  tubeArch: normal(0.08, 0.04, 0.13, `guide tube and cable over the frame; ${MEMORY}`),
  spoolDiameter: normal(0.2, 0.195, 0.205, `a spool of 1 kg, 70 mm wide; ${MEMORY}, no standard`),
  spoolWidth: normal(0.07, 0.055, 0.075, `a spool of 1 kg; ${MEMORY}, no standard`),
  spoolLift: normal(0.03, 0.02, 0.045, `axle under a spool; ${MEMORY}`),
  plug: normal(0.068, 0.04, 0.075, `mains inlet plug with its cord, straight 60 to 75 mm, angled 40 mm; ${MEMORY}`),
  hingeTakes: normal(0.014, 0.008, 0.02, `hinge and leaf at 90 degrees take 8 to 20 mm of the clear width; ${MEMORY}`),
  cableDiameter: normal(0.007, 0.005, 0.009, `a mains cord or a bundle to a bed; ${MEMORY}`),
  armLength: normal(0.15, 0.1, 0.25, `a printed arm; ${MEMORY}`),
  armWidth: normal(0.02, 0.015, 0.03, `a printed arm; ${MEMORY}`),
  armThickness: normal(0.008, 0.006, 0.012, `a printed arm; ${MEMORY}`),
  cameraMass: normal(0.05, 0.02, 0.12, `a small camera in its case; ${MEMORY}`),
  /** Half the way, m. */
  armShake: decades(0.00005, 0.00001, 0.0002, `frame of a machine that reverses a bed; ${MEMORY}`),
  /** 1/s */
  armFrequency: decades(12, 6, 25, `reversals of short lines at printing speed; ${MEMORY}`),
  cameraDistance: normal(0.35, 0.25, 0.5, `a camera in the bay of its machine; ${MEMORY}`),
  cameraSees: normal(0.35, 0.28, 0.45, 'bed and a margin round it'),
  cameraPixels: normal(1920, 1900, 1940, `a usual picture; ${MEMORY}`),
  doorStandsIn: normal(0.004, 0, 0.018, `a leaf before the carcass, to one that lies in it; ${MEMORY}`),
  /** lm/W */
  lampEfficacy: decades(90, 65, 120, `bare strips and small panels; ${MEMORY}`),
  /** Of the bay's depth. */
  lampFromFront: normal(0.15, 0.05, 0.5, 'under the ceiling behind the front, where most people fix a lamp'),
  rippleDepth: decades(0.15, 0.02, 0.6, `a small LED lamp on the mains; ${MEMORY}`),
  boardReflectance: decades(0.4, 0.15, 0.7, 'a board of your own that does not say how bright it is'),
  machineReflectance: decades(0.15, 0.06, 0.4, `black to grey frames, black plates; ${MEMORY}`),
  cameraIso: decades(800, 400, 1600, `a small camera before its pictures get grainy; ${MEMORY}`),
  cameraAperture: normal(2.2, 1.8, 2.8, `lens of a small camera; ${MEMORY}`),
  cameraReadout: normal(0.03, 0.015, 0.045, `rows of a small camera are read one after another; ${MEMORY}`),
  /** m/s */
  subjectSpeed: decades(0.1, 0.05, 0.2, `nozzle of an ordinary print; ${MEMORY}`),
  ...powerDefaults,
};
