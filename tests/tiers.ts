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
].map((name) => `tests/unit/${name}.test.ts`);

export const isQuickTest = (file: string): boolean =>
  !tooLongForQuick.includes(file) && quickTests.some((path) => file.startsWith(path));

/**
 * What `npm test` leaves to `npm run test:all`: the unit tests that take a core 2 seconds or more each, by folder. They
 * are one test of five, and nine tenths of the time. Of each, `npm test` runs what is tagged `core`.
 */
export const longTests: readonly string[] = Object.entries({
  app: [
    'acting-in-slices',
    'backup-paths',
    'backups',
    'bad-caches',
    'beyond-scale',
    'board-days',
    'boards-elsewhere',
    'boards-together',
    'clock-set',
    'closing',
    'cold-morning',
    'core-history',
    'correcting',
    'cutting',
    'damaged-entries',
    'damaged-readings',
    'dates',
    'entered-twice',
    'every-act-undone',
    'first-round',
    'forecast',
    'full-disk',
    'german-paper',
    'half-probed',
    'importing',
    'killed-in-slices',
    'labels',
    'large-yard',
    'learning',
    'life-of-boards',
    'lost-file',
    'lost-lock',
    'measured-places',
    'meter-acts',
    'meter-button',
    'meter-checks',
    'meter-corrections',
    'meters',
    'moving-to-board',
    'one-call',
    'one-insertion',
    'one-owner',
    'one-story-on-paper',
    'outlooks',
    'oven-checks',
    'own-thread',
    'past-round',
    'pictures',
    'place-air',
    'printing',
    'queries',
    'random-acts-undone',
    'redating',
    'reports',
    'restore',
    'round',
    'round-findings',
    'round-together',
    'spot-plans',
    'stack-plan',
    'stack-volume',
    'thickness',
    'transfers',
    'two-windows',
    'typed-ohms',
    'undoing',
    'unknown-temperature',
    'vanished-file',
  ],
  backups: ['rotation'],
  drawing: ['fitted-text'],
  drying: ['forecast'],
  exchange: [
    'bring-in',
    'bring-in-air',
    'bring-in-corrections',
    'bring-in-cuts',
    'everything',
    'export-csv',
    'export-imported',
    'merge',
    'merged-meters',
    'merged-records',
  ],
  gatt: ['propose'],
  host: ['node-version', 'two-sockets', 'two-starts', 'window-pace'],
  labels: ['code128', 'drawing'],
  meter: ['heard-devices'],
  packing: ['licenses'],
  print: ['pdf', 'print-queue'],
  probing: ['call-of-any-board', 'one-story', 'settle'],
  renderer: ['words'],
  'renderer/air': ['air-screen'],
  'renderer/board': [
    'board-form',
    'board-screen',
    'cut-board',
    'forecast',
    'history-chart',
    'merge-board',
    'move-board',
    'sample-board',
  ],
  'renderer/labels': ['labels-screen'],
  'renderer/meter': ['meter-checks', 'meter-screen', 'meters-sheet', 'watch-form'],
  'renderer/past-round': ['which-first'],
  'renderer/pictures': ['pictures'],
  'renderer/places': ['places-screen'],
  'renderer/round': [
    'change-date',
    'depths',
    'hands',
    'held-keys',
    'one-insertion',
    'round-note',
    'round-screen',
    'round-start',
    'signals',
    'typed-meter',
    'typed-values',
    'typed-whole',
  ],
  'renderer/shell': ['app', 'two-windows'],
  'renderer/species': ['species-list-screen', 'species-screen'],
  'renderer/stacks': ['closing', 'stack-screen', 'stacks-screen'],
  'renderer/ui': ['species-field'],
  reports: ['draw-report', 'letters-and-calls'],
  store: ['acts', 'copied-stacks', 'indexes', 'layouts', 'private-files', 'yard-file', 'yard-watch'],
  'store/recovery': ['damaged-schema', 'lost-log', 'salvage', 'wal-frames'],
  words: ['stray-sentences'],
}).flatMap(([folder, names]) =>
  names.map((name) => `tests/unit/${folder}/${name}.test.${folder.startsWith('renderer') ? 'tsx' : 'ts'}`),
);

/** What `npm test` runs of the tests of Bluetooth: the link, and a meter whose description changed. */
export const coreBle: readonly string[] = ['link', 'changed-meter'].map(
  (file) => `tests/ble/${file}.test.ts`,
);

/** What `npm test` runs of the faults. */
export const coreFaults: readonly string[] = ['kills-while-streaming'];
