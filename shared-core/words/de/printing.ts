import type { printing as english } from '../en/printing.ts';

export const printing = {
  'print.printer': 'Drucker',
  'print.printer-hint': 'Ein hier gewählter Drucker druckt sofort, ohne den Druckdialog.',
  'print.by-dialog': 'Jedes Mal fragen',
  'print.dialog-only': '„Drucken“ öffnet den Druckdialog dieses Computers.',
  'print.stopped-printer': '{printerName} (angehalten)',
  'print.printer-not-here': '{printerName} (nicht gefunden)',
  'print.under-way': 'Druckt …',
  'print.stopped': 'Abgebrochen. Sehen Sie nach, was herausgekommen ist.',
  'print.updating-title': 'Urteile werden aktualisiert',
  'print.updating':
    'Urteile und Termine werden aktualisiert. Was jetzt auf Papier kommt, kann veraltet sein.',
  'print.updated': 'Urteile und Termine sind aktuell.',
  'print.anyway': 'Trotzdem drucken',
  'print.save-anyway': 'Trotzdem als PDF speichern',
  'print.labels-sent':
    '{printerName} hat {labels, plural, one {# Etikett} other {# Etiketten}} gedruckt. {labels, plural, one {Es ist} other {Sie sind}} als gedruckt vermerkt.',
  'print.report-sent': '{printerName} hat {pages, plural, one {# Seite} other {# Seiten}} gedruckt.',
  'print.page-sent': '{printerName} hat die Testseite gedruckt.',
  'print.waiting':
    'Noch in der Warteschlange von {printerName}{says, select, nothing {} other {: {reason}}}.',
} satisfies Record<keyof typeof english, string>;
