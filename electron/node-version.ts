/** SQLite's native part ends an older one without a word. */
export const OLDEST_NODE = 22;

/**
 * Whether Pintally can run under this version of Node.
 * @param version  as in `process.versions.node`
 */
export const isNodeNewEnough = (version: string): boolean => Number.parseInt(version, 10) >= OLDEST_NODE;
