// What each camera gets: light on what it sees, in the shadows too, exposure, blur, bands.

import { exposureTime, fieldWidth, motionBlur, pulseBanding, rippleBanding } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Camera, Pulsation } from '../../cabinet/light.ts';
import { type Cause, causes } from '../causes.ts';
import type { Measure, Remedy, Step } from '../measure.ts';
import { brighter, moreSensitive, steadier, wholePeriods } from './edits.ts';
import { bandingLimit, blurLimit, cameraLightLimit, exposureLimit, shadowLightLimit } from './limits.ts';
import { type Lit, lensOf, litPrint, sideLight } from './lit.ts';
import { causeOf, THROWN } from './print-light.ts';

export function cameraMeasures(cabinet: Cabinet): Measure[] {
  return Object.entries(cabinet.cameras).flatMap(([id, camera]) => {
    if (cabinet.machines[camera.looksAt] === undefined) return [];
    const lit = litPrint(cabinet, camera.looksAt);
    return lit.space.lamps.length === 0 ? [dark(cabinet, id, camera, lit)] : measuresOf(cabinet, id, camera, lit);
  });
}

function dark(cabinet: Cabinet, id: string, camera: Camera, { space }: Lit): Measure {
  return {
    trade: 'light',
    quantity: 'camera-light',
    part: id,
    title: 'light on what the camera sees',
    missing: `no lamp burns in ${space.name}: add one under heats:`,
    unit: 'illuminance',
    limit: cameraLightLimit(cabinet, camera),
    steps: [],
    remedies: [],
    weight: 0.3,
    better: 'higher',
  };
}

function measuresOf(cabinet: Cabinet, id: string, camera: Camera, lit: Lit): Measure[] {
  const side = sideLight(lit, lensOf(camera, lit));
  const seen = side.direct + side.thrown;
  const lightRemedies = (): readonly Remedy[] => brighter(cabinet, camera.looksAt);
  const thrown: Step = {
    text: 'thrown back by the inside, onto the side of the print that the camera sees',
    value: side.thrown,
    unit: 'illuminance',
    formula: THROWN,
    inputs: lit.space.finishes,
  };
  const light: Measure = {
    trade: 'light',
    quantity: 'camera-light',
    part: id,
    title: 'light on what the camera sees',
    value: seen,
    unit: 'illuminance',
    logarithmic: true,
    limit: cameraLightLimit(cabinet, camera),
    get steps(): readonly Step[] {
      return [
        {
          text: 'straight from the lamps, onto the side of the print that the camera sees',
          value: side.direct,
          unit: 'illuminance',
          inputs: lit.space.lamps.map(({ path }) => path),
        },
        thrown,
        ...(camera.at === undefined ? [{ text: 'the camera is taken to look from the middle of the front' }] : []),
      ];
    },
    get remedies(): readonly Remedy[] {
      return lightRemedies();
    },
    get cause(): Cause {
      return causeOf(lit);
    },
    weight: 0.3,
    better: 'higher',
    compared: true,
  };
  const shadow: Measure = {
    trade: 'light',
    quantity: 'shadow-light',
    part: id,
    title: 'light in the shadows that the camera sees',
    value: side.thrown,
    unit: 'illuminance',
    logarithmic: true,
    limit: shadowLightLimit(cabinet),
    get steps(): readonly Step[] {
      return [
        thrown,
        { text: 'on the bed, lit', value: lit.mean, unit: 'illuminance' },
        {
          text: 'stops between the lit bed and the shadows; a small camera shows about 8 at a time, from memory',
          value: side.thrown > 0 ? Math.log2(Math.max(lit.mean, 1e-9) / side.thrown) : 99,
          unit: 'number',
          formula: 'log2(E lit/E shadow)',
        },
      ];
    },
    get remedies(): readonly Remedy[] {
      return lightRemedies();
    },
    get cause(): Cause {
      return causeOf(lit);
    },
    weight: 0.3,
    better: 'higher',
  };
  if (!(seen > 0)) return [light, shadow];
  const needed = exposureTime(seen, camera.aperture, camera.iso);
  const open = camera.shutter > 0 ? camera.shutter : needed;
  return [
    light,
    shadow,
    exposure(cabinet, id, camera, seen, needed),
    blur(cabinet, id, camera, lit, open),
    ...banding(cabinet, id, camera, lit, open),
  ];
}

function exposure(cabinet: Cabinet, id: string, camera: Camera, seen: number, needed: number): Measure {
  return {
    trade: 'light',
    quantity: 'exposure-time',
    part: id,
    title: 'exposure that the picture needs',
    value: needed,
    unit: 'exposure-time',
    logarithmic: true,
    limit: exposureLimit(cabinet, camera),
    steps: [
      { text: 'light on what the camera sees', value: seen, unit: 'illuminance' },
      {
        text: `at f/${camera.aperture} and ISO ${Math.round(camera.iso)}, for a thing of middling brightness: black filament wants up to four times as long, white a third`,
        value: needed,
        unit: 'exposure-time',
        formula: 't = C N²/(E S), C = 250 lx s',
        source: 'ISO 2720:1974, second-hand',
        inputs: [`cameras.${id}.aperture`, `cameras.${id}.iso`],
      },
    ],
    get remedies(): readonly Remedy[] {
      return [...moreSensitive(id, camera), ...brighter(cabinet, camera.looksAt)].slice(0, 4);
    },
    cause: causes.littleLight,
    weight: 0.3,
    better: 'lower',
  };
}

function blur(cabinet: Cabinet, id: string, camera: Camera, lit: Lit, open: number): Measure {
  const value = motionBlur(camera.subjectSpeed, open);
  const limit = blurLimit(cabinet, camera);
  return {
    trade: 'light',
    quantity: 'motion-blur',
    part: id,
    title: 'smear of what moves in the picture',
    value,
    unit: 'length',
    logarithmic: true,
    ...(limit === undefined ? {} : { limit }),
    get steps(): readonly Step[] {
      const [x, y, z] = lensOf(camera, lit);
      const distance = Math.hypot(x - lit.spot.x, y - lit.spot.y, z - lit.spot.z - lit.spot.partSize / 2);
      const pixel = fieldWidth(Math.max(distance, 0.01), camera.view[0]) / camera.pixels[0];
      return [
        { text: 'the shutter is open for', value: open, unit: 'exposure-time', inputs: [`cameras.${id}.shutter`] },
        {
          text: 'what the camera looks at moves at',
          value: camera.subjectSpeed,
          unit: 'speed',
          inputs: [`cameras.${id}.subjectSpeed`],
        },
        { text: 'meanwhile it moves', value, unit: 'length', formula: 'v t' },
        { text: 'one pixel shows', value: pixel, unit: 'length', formula: '2 d tan(angle/2)/pixels' },
        {
          text: 'from the first row to the last it moves by, so that upright edges lean',
          value: motionBlur(camera.subjectSpeed, camera.readout),
          unit: 'length',
          inputs: [`cameras.${id}.readout`],
        },
      ];
    },
    get remedies(): readonly Remedy[] {
      return camera.shutter > 0 ? [] : brighter(cabinet, camera.looksAt);
    },
    cause: causes.littleLight,
    weight: 0.2,
    better: 'lower',
  };
}

/** Nobody sees less, and logarithms want something. */
const LEAST_STRIPES = 1e-4;

/** One finding for the camera: the lamp that stripes its picture most. */
function banding(cabinet: Cabinet, id: string, camera: Camera, lit: Lit, open: number): Measure[] {
  const known = lit.space.lamps.flatMap((lamp) => {
    const pulsation = cabinet.light.lamps[lamp.id]?.pulsation;
    return pulsation === undefined || (pulsation.by === 'pwm' && pulsation.frequency === 0)
      ? []
      : [{ lamp, pulsation, stripes: stripesOf(pulsation, open, camera.shutter > 0) }];
  });
  const worst = known.toSorted((a, b) => b.stripes - a.stripes)[0];
  if (worst === undefined) return [];
  const { lamp, pulsation, stripes } = worst;
  const common = {
    trade: 'light',
    quantity: 'banding',
    part: id,
    title: 'stripes that a pulsating lamp makes in the picture',
    value: Math.max(stripes, LEAST_STRIPES),
    unit: 'share',
    logarithmic: true,
    limit: bandingLimit(cabinet),
    cause: causes.pulsatingLight,
    weight: 0.2,
    better: 'lower' as const,
  };
  if (pulsation.by === 'dc') return [{ ...common, steps: [{ text: `${lamp.id} burns steadily` }], remedies: [] }];
  const { frequency } = pulsation;
  return [
    {
      ...common,
      steps: [
        {
          text: `${lamp.id} pulsates`,
          value: frequency,
          unit: 'frequency',
          inputs: [`light.lamps.${lamp.id}.pulsation`],
        },
        { text: 'each row is exposed for', value: open, unit: 'exposure-time' },
        {
          text: 'brightest row less darkest, as a share of the mean',
          value: stripes,
          unit: 'share',
          formula:
            pulsation.by === 'pwm'
              ? camera.shutter > 0
                ? '(min(D, r) − max(0, D + r − 1))/(D f T), r = f T less its whole part'
                : 'min(D, 1 − D)/(D f T): the camera chooses its exposure, so the worst phase'
              : camera.shutter > 0
                ? '2 m |sin(π f T)|/(π f T)'
                : '2 m/(π f T): the camera chooses its exposure, so the worst phase',
          source: 'integral of the waveform over the exposure; rows of a rolling shutter meet every phase',
        },
        {
          text: 'stripes in a picture',
          value: frequency * camera.readout,
          unit: 'number',
          formula: 'f · readout',
          inputs: [`cameras.${id}.readout`],
        },
      ],
      get remedies(): readonly Remedy[] {
        return [...steadier(lamp.id), ...wholePeriods(id, pulsation, open)];
      },
    },
  ];
}

/** A camera that chooses its exposure hits whole periods only by luck. */
export function stripesOf(pulsation: Pulsation, time: number, fixed: boolean): number {
  switch (pulsation.by) {
    case 'dc':
      return 0;
    case 'pwm': {
      const { frequency, duty } = pulsation;
      if (fixed) return pulseBanding(frequency, duty, time);
      return Math.min(Math.min(duty, 1 - duty) / (duty * frequency * time), 1 / duty);
    }
    case 'mains': {
      const { frequency, ripple } = pulsation;
      if (fixed) return rippleBanding(frequency, ripple, time);
      const angle = Math.PI * frequency * time;
      return angle < Math.PI / 2 ? rippleBanding(frequency, ripple, time) : (2 * ripple) / angle;
    }
  }
}
