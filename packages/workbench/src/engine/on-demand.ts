// The doors to what is loaded only when it is asked for.

export const onDemand = (): Promise<typeof import('./asked-for.ts')> => import('./asked-for.ts');

/** Logs are asked about seldom, and need much that no other study does. */
export const logsOnDemand = (): Promise<typeof import('./asked-of-logs.ts')> => import('./asked-of-logs.ts');

/** What runs and costs is asked about seldom too. */
export const queueOnDemand = (): Promise<typeof import('./asked-of-queue.ts')> => import('./asked-of-queue.ts');
