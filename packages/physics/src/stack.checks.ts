import { ATMOSPHERE, GAS_CONSTANT_AIR, ICE_POINT } from './constants.ts';
import type { OutsideCheck } from './outside-check.ts';
import { heatDrivenStack, neutralLevel, stackFlow, stackOutflow, stackPressure, type TwoOpenings } from './stack.ts';

const density = (celsius: number) => ATMOSPHERE / (GAS_CONSTANT_AIR * (celsius + ICE_POINT));

const warmBay: TwoOpenings = {
  lowerDischarge: 0.61 * 0.0055,
  upperDischarge: 0.61 * 0.0055,
  height: 0.9,
  outside: density(21),
  inside: density(45),
};
const closedForm =
  'two openings of 55 cm² 0.07 and 0.97 m up, 45 °C in 21 °C: closed form and an independent network program';

export const checks: readonly OutsideCheck[] = [
  {
    what: 'stack mass flow',
    formula: 'stackFlow',
    source: closedForm,
    known: 'independent',
    expected: 0.003220058133,
    unit: 'kg/s',
    tolerance: 1e-11,
    got: () => stackFlow(warmBay),
  },
  {
    what: 'neutral level above the floor',
    formula: 'neutralLevel',
    source: closedForm,
    known: 'independent',
    expected: 0.5023615875,
    unit: 'm',
    tolerance: 1e-9,
    got: () => 0.07 + neutralLevel(warmBay),
  },
  {
    what: 'pressure across the lower opening',
    formula: 'stackPressure',
    source: closedForm,
    known: 'independent',
    expected: 0.383821887,
    unit: 'Pa',
    tolerance: 1e-8,
    got: () => stackPressure(warmBay.outside, warmBay.inside, neutralLevel(warmBay)),
  },
  {
    what: 'equal openings of 100 cm² 1.5 m apart, Cd 0.65, 35 and 22 °C',
    formula: 'stackOutflow',
    source: 'ASHRAE Fundamentals 2009 ch. 16 equation (38), evaluated by an independent script',
    known: 'independent',
    expected: 0.00512135,
    unit: 'm³/s',
    tolerance: 0.005 * 0.00512135,
    got: () => stackOutflow(0.65 * 0.01, 0.75, 308.15, 295.15),
  },
  {
    what: 'flow of a heat-driven stack grows with the cube root of the heat: eight times the heat',
    formula: 'heatDrivenStack',
    source: 'similarity of buoyant flow, V ~ Q^(1/3) (e.g. Linden, Annu. Rev. Fluid Mech. 31, 1999)',
    known: 'memory',
    expected: 2,
    unit: '-',
    tolerance: 1e-9,
    got: () => heatDrivenStack(0.003, 1, 800, 300, 1190) / heatDrivenStack(0.003, 1, 100, 300, 1190),
  },
];
