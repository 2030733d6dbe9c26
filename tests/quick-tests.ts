/**
 * What `npm run test:quick` has beside lint and types, by parts of paths: the pure core and its published sources without
 * what takes seconds, the architecture, and a cross-section of contract, app, store and window.
 */
export const quickTests: readonly string[] = [
  'tests/reference/',
  'tests/unit/architecture',
  'tests/unit/words/formats',
  'tests/unit/words/german.',
  ...['calendar', 'climate', 'contract', 'gatt', 'probing', 'tally', 'units', 'wood'].map(
    (folder) => `tests/unit/${folder}/`,
  ),
  ...['app/first-stack', 'app/sample-board', 'store/lineage', 'store/uuid'].map(
    (file) => `tests/unit/${file}`,
  ),
  ...['dates/', 'round/round-keys', 'shell/asking', 'shell/navigation', 'stacks/board-sizes'].map(
    (file) => `tests/unit/renderer/${file}`,
  ),
];

/** Those of them that take longest alone: random boards, packets and insertions by the thousand. */
export const tooLongForQuick: readonly string[] = [
  'gatt/propose',
  'probing/call',
  'probing/one-story',
  'probing/read-and-forecast',
  'probing/settle',
].map((file) => `**/${file}.test.ts`);
