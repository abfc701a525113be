// Constants of nature and the conventional values that every formula here shares.

/** Standard acceleration of gravity, m/s². Source: ISO 80000-3:2019 (conventional value of the 3rd CGPM, 1901). */
export const GRAVITY = 9.80665;

/** Stefan-Boltzmann constant, W/(m²·K⁴). Source: CODATA 2018 (exact by definition of the SI, 2019). */
export const STEFAN_BOLTZMANN = 5.670374419e-8;

/** Specific gas constant of dry air, J/(kg·K). Source: US Standard Atmosphere 1976 (molar mass 28.9644 g/mol). */
export const GAS_CONSTANT_AIR = 287.055;

/** Standard atmospheric pressure, Pa. Source: ISO 2533:1975. */
export const ATMOSPHERE = 101325;

/** Ice point, K: adds to degrees Celsius. Source: ITS-90. */
export const ICE_POINT = 273.15;

/** Isobaric heat capacity of air near room temperature, J/(kg·K). Source: ASHRAE Fundamentals 2017 ch. 1 (1.006 kJ/kg K). */
export const AIR_HEAT_CAPACITY = 1006;

/** Density at which fan catalogues and volumetric flows are stated, kg/m³. Source: ISO 5801:2017 (standard air). */
export const REFERENCE_DENSITY = 1.2;
