declare const BUILT_AT: string | undefined;

/** When this app was built, UTC; null where its sources run as they are, as in tests. */
export const builtAt: string | null = typeof BUILT_AT === 'undefined' ? null : BUILT_AT;
