// JavaScript: its message is for a Node too old to read TypeScript.

/** SQLite's native part ends an older one without a word. */
export const OLDEST_NODE = 22;

/** The first that runs TypeScript as it is written, as our scripts are. */
const OLDEST_FOR_SOURCES = '22.18.0';

/**
 * Whether Pintally as it is built can run under this version of Node.
 * @param {string} version  as in `process.versions.node`
 */
export const isNodeNewEnough = (version) => Number.parseInt(version, 10) >= OLDEST_NODE;

/**
 * Whether this version of Node runs Pintally's sources, its tests among them.
 * @param {string} version  as in `process.versions.node`
 */
export function runsSources(version) {
  const [oldest = [], given = []] = [OLDEST_FOR_SOURCES, version].map((each) => each.split('.').map(Number));
  const differs = oldest.findIndex((part, index) => part !== given[index]);
  return differs < 0 || (given[differs] ?? 0) > (oldest[differs] ?? 0);
}

/** Ends the process with one sentence where its Node is too old for a script of ours, which would fail obscurely. */
export function endOnOldNode() {
  const { node } = process.versions;
  if (runsSources(node)) return;
  console.error(
    `Pintally needs Node ${OLDEST_FOR_SOURCES} or newer, and this is Node ${node}: "npm ci" brings the right one, and "npm run" and "npx node" use it.`,
  );
  process.exit(1);
}
