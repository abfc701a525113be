/** The text of cabinet `number` under `seed`; its one day is called `day`. */
export function cabinetText(seed: number, number: number): string;
