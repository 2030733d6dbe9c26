import type { help as english } from '../en/help.ts';

export const help = {
  'nav.help': 'Hilfe',
  'help.title': 'Hilfe',
  'help.lead': 'Wie Sie Pintally benutzen: vom ersten Stapel bis zum letzten Etikett.',
  'help.find': 'In der Anleitung suchen',
  'help.find-hint': 'Beliebige Wörter, in beliebiger Reihenfolge.',
  'help.found':
    '{found, plural, =0 {Nichts in der Anleitung enthält „{typedText}“.} one {# Teil der Anleitung} other {# Teile der Anleitung}}',
  'help.no-chapter': 'Dieses Kapitel gibt es in der Anleitung nicht. Wählen Sie unten ein anderes.',
  'help.methods-lead': 'Alle Formeln, Annahmen, Grenzen und Quellen.',
  'help.chapters': 'Kapitel',
  'help.turn': 'Andere Kapitel',
  'help.all': 'Alle Kapitel',
  'help.previous': 'Zurück: {chapterTitle}',
  'help.next': 'Weiter: {chapterTitle}',
  'help.push-pins': 'So werden die Spitzen eingestochen',
  'help.read-calls': 'So werden die Urteile gelesen',
} satisfies Record<keyof typeof english, string>;
