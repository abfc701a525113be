export function firstLoad(dist: string): { readonly files: readonly string[]; readonly kilobytes: number };
