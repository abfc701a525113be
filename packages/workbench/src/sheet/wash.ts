// The colour of air by its temperature: cool blue to warm orange, in even steps of lightness and hue as the eye takes them
// (OKLab), told apart by people who see red and green alike, since lightness falls all the way.

/** K: below and above these the wash stays as it is. */
export const COOL = 288.15;
export const WARM = 338.15;

interface Lab {
  readonly lightness: number;
  readonly a: number;
  readonly b: number;
}

const onPaper: readonly [Lab, Lab, Lab] = [
  { lightness: 0.94, a: -0.03, b: -0.045 },
  { lightness: 0.885, a: 0.012, b: 0.035 },
  { lightness: 0.74, a: 0.085, b: 0.12 },
];
const onSlate: readonly [Lab, Lab, Lab] = [
  { lightness: 0.3, a: -0.02, b: -0.06 },
  { lightness: 0.38, a: 0.015, b: 0.02 },
  { lightness: 0.54, a: 0.09, b: 0.11 },
];

/** CSS colour of air at a temperature, K. */
export function washOf(kelvin: number, dark: boolean): string {
  const { lightness, a, b } = labOf(kelvin, dark);
  return `oklab(${lightness.toFixed(4)} ${a.toFixed(4)} ${b.toFixed(4)})`;
}

/** The same as linear red, green and blue, 0…1, for a renderer. */
export function rgbOf(kelvin: number, dark: boolean): [number, number, number] {
  const { lightness, a, b } = labOf(kelvin, dark);
  // B. Ottosson, "A perceptual color space for image processing" (2020).
  const l = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const m = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const s = (lightness - 0.0894841775 * a - 1.291485548 * b) ** 3;
  const clamp = (value: number): number => Math.min(1, Math.max(0, value));
  return [
    clamp(4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s),
    clamp(-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s),
    clamp(-0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s),
  ];
}

function labOf(kelvin: number, dark: boolean): Lab {
  const share = Math.min(1, Math.max(0, (kelvin - COOL) / (WARM - COOL)));
  const [cool, middle, warm] = dark ? onSlate : onPaper;
  return share < 0.5 ? mixed(cool, middle, share * 2) : mixed(middle, warm, share * 2 - 1);
}

function mixed(from: Lab, to: Lab, share: number): Lab {
  const between = (key: keyof Lab): number => from[key] + share * (to[key] - from[key]);
  return { lightness: between('lightness'), a: between('a'), b: between('b') };
}
