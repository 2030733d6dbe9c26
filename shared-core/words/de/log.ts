import type { log as english } from '../en/log.ts';

export const log = {
  'log.title': 'Fehlerbericht',
  'log.what': 'Pintally hält jeden Fehler in einer Datei auf diesem Computer fest.',
  'log.without': 'Im Fehlerbericht stehen keine Messwerte und keine Namen von Brettern.',
  'log.open': 'Fehlerbericht öffnen',
  'log.opened': 'Fehlerbericht geöffnet.',
  'log.newest': 'Neueste Fehler',
  'log.empty': 'Bisher ist nichts schiefgegangen.',
  'log.not-written':
    'Der Fehlerbericht lässt sich nicht schreiben. Erlauben Sie das Schreiben in seinen Ordner, oder schaffen Sie Platz auf der Festplatte.',
  'log.save': 'Fehlerbericht speichern',
} satisfies Record<keyof typeof english, string>;
