/** Printing without a dialog. */
export const printing = {
  'print.printer': 'Printer',
  'print.printer-hint': 'A printer chosen here prints at once, without the print dialog.',
  'print.by-dialog': 'Ask each time',
  'print.dialog-only': 'Print opens this computer’s print dialog.',
  'print.stopped-printer': '{printerName} (stopped)',
  'print.printer-not-here': '{printerName} (not found)',
  'print.under-way': 'Printing …',
  'print.stopped': 'Stopped. Check what came out.',
  'print.updating-title': 'Calls are being updated',
  'print.updating': 'Calls and dates are being updated. What goes on paper now may be old.',
  'print.updated': 'Calls and dates are up to date.',
  'print.anyway': 'Print anyway',
  'print.save-anyway': 'Save as PDF anyway',
  'print.labels-sent':
    '{printerName} printed {labels, plural, one {# label} other {# labels}}. {labels, plural, one {It is} other {They are}} marked as printed.',
  'print.report-sent': '{printerName} printed {pages, plural, one {# page} other {# pages}}.',
  'print.page-sent': '{printerName} printed the test page.',
  'print.waiting': 'Still in the queue of {printerName}{says, select, nothing {} other {: {reason}}}.',
} as const;
