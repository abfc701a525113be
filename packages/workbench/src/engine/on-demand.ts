// The door to what is loaded only when it is asked for.

export const onDemand = (): Promise<typeof import('./asked-for.ts')> => import('./asked-for.ts');
