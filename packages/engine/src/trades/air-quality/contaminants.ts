// What the air carries, under one spelling, with the words and units in which it is told.

/** `PM2.5`, `pm25` and `Pm2_5` are one contaminant. */
export function contaminantKey(name: string): string {
  return name.toLowerCase().replaceAll(/[^a-z0-9]/g, '');
}

const WORDS: Readonly<Record<string, string>> = {
  particles: 'ultrafine particles',
  pm25: 'fine particles by mass (PM2.5)',
  tvoc: 'all vapours together (TVOC)',
};

export function contaminantWords(name: string): string {
  return WORDS[contaminantKey(name)] ?? name;
}

/** Unit kind of its concentrations. */
export function concentrationUnit(name: string): 'particle-concentration' | 'mass-concentration' {
  return contaminantKey(name) === 'particles' ? 'particle-concentration' : 'mass-concentration';
}

export function isParticulate(name: string): boolean {
  return familyOf(name) === 'particles';
}

export function familyOf(name: string): 'particles' | 'vapours' {
  return ['particles', 'pm25'].includes(contaminantKey(name)) ? 'particles' : 'vapours';
}
