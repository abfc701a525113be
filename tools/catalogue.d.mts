/** The text of the generated data file. */
export function catalogueData(): string;
