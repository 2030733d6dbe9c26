/** Labels, and the sheets of them. */
export const labels = {
  'labels.title': 'Labels',
  'labels.lead': 'Choose boards, check the preview, and print.',

  // Which boards.
  'labels.boards': 'Boards',
  'labels.list': 'Boards for labels',
  'labels.board': 'Board',
  'labels.chosen': '{boards, plural, =0 {No boards chosen} one {# board chosen} other {# boards chosen}}',
  'labels.stack': 'Stack',
  'labels.all-stacks': 'All stacks',
  'labels.choose': 'Choose boards',
  'labels.all': 'All',
  'labels.none': 'Select none',
  'labels.group-and-boards': '{groupName} ({boards})',
  'labels.species-and-call': '{speciesName} · {callName}',
  'labels.no-call': 'No call yet',
  'labels.outdated': 'Label out of date',
  'labels.no-boards': 'No boards found.',
  'labels.first-boards-only':
    'These are the first {first} of {boards} boards. Choose a stack to see the others.',

  // The paper.
  'labels.preview': 'Preview',
  'labels.paper': 'Paper',
  'labels.print-on': 'Print on',
  'labels.sheets': 'Sheets, {columns} × {rows} labels',
  'labels.singles': 'Single labels, {widthMm} × {heightMm}',
  'labels.other-sizes': 'Other sizes in Settings',
  'labels.used': 'Labels already used on the first sheet',
  'labels.used-hint':
    'Count along the rows from the top left. The sheet has {labels, plural, one {# label} other {# labels}}.',
  'labels.not-in-yard':
    '{boards, plural, one {# chosen board is} other {# chosen boards are}} not in this yard.',
  'labels.none-chosen': 'No boards chosen. Choose a board to see its label.',

  // Print and PDF.
  'labels.amount':
    '{labels, plural, one {# label} other {# labels}} on {pages, plural, one {# page} other {# pages}}.',
  'labels.actual-size': 'Print at actual size, not fitted to the page.',
  'labels.save-as-pdf': 'Save as PDF',
  'labels.making-pdf': 'Making the PDF …',
  'labels.pdf-stopped': 'Stopped. No PDF made.',
  'labels.pdf-made':
    '{fileName} is ready: {labels, plural, one {# label} other {# labels}} on {pages, plural, one {# page} other {# pages}}.',
  'labels.pdf-title': 'Pintally labels',
  'labels.page': 'Page {page} of {pages}',
  'labels.preview-of-page': 'Preview, page {page} of {pages}',
  'labels.previous-page': 'Previous page',
  'labels.next-page': 'Next page',
  'labels.edges-not-printed': 'Dashed lines are label edges. They are not printed.',

  // On a label, where there is little room.
  'labels.no-readings': 'No readings yet',
  'labels.no-average': 'No usable reading',
  'labels.estimated': 'About {averagePct}',
  'labels.shell-alone': 'Shell {shellPct}',
  'labels.likely': 'Likely {likelyInterval}',
  'labels.rough-over': 'Over {limitPct}: rough',
  'labels.rough-under': 'Under {limitPct}: rough',
  'labels.shell-core': 'Shell {shellPct}, core {corePct}',
  'labels.shell-only': 'Shell {shellPct}, core not probed',
  'labels.core-only': 'Shell not probed, core {corePct}',
  'labels.no-qr-code': 'No room for a QR code',

  // Sizes that do not work.
  'labels.too-wide': '{overMm} too wide for the page. Use narrower labels, fewer columns, or a wider page.',
  'labels.too-tall': '{overMm} too tall for the page. Use shorter labels, fewer rows, or a longer page.',
  'labels.too-narrow-for-code': '{missingMm} too narrow for the ID and its QR code. Use wider labels.',
  'labels.too-short-for-code': '{missingMm} too short for the ID and its QR code. Use taller labels.',
  'labels.single-is-one': 'A single label has one column and one row. Choose a sheet for more.',
  'labels.too-many-used':
    'This sheet has {labels, plural, one {# label} other {# labels}}. Type a whole number from 0 to {mostUsed}.',
} as const;
