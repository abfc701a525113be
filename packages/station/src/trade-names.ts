/** The trades that findings are of, in the order in which they are told; written out here because help does not wait for the engine. */
export const tradeNames: readonly string[] = [
  'fit',
  'structure',
  'vibration',
  'heat',
  'airflow',
  'draught',
  'air-quality',
  'sound',
  'light',
  'fire',
  'fittings',
  'power',
  'filament',
  'cost',
];
