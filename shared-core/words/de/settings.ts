import type { settings as english } from '../en/settings.ts';

export const settings = {
  'settings.title': 'Einstellungen',

  'settings.showing': 'Sprache, Einheiten und Farben',
  'settings.language': 'Sprache (Language)',
  'settings.language.system': 'Wie auf diesem Computer',
  'settings.language.en': 'English',
  'settings.language.de': 'Deutsch',
  'settings.units-of': 'Längen, Gewichte und Temperaturen',
  'settings.metric': 'Metrisch (mm, kg, °C)',
  'settings.imperial': 'US (in, lb, °F)',
  'settings.units-of-region': 'Nach der Region Ihres Computers, bis Sie wählen.',
  'settings.units-chosen': 'Von Ihnen gewählt.',
  'settings.theme': 'Farben',
  'settings.theme.system': 'Wie der Computer',
  'settings.theme.light': 'Hell',
  'settings.theme.dark': 'Dunkel',
  'settings.theme.high-contrast': 'Hoher Kontrast, für die Sonne',

  'settings.probing': 'Messen',
  'settings.save-when-settled': 'Messwert speichern, sobald er steht',
  'settings.save-when-settled-hint':
    'Sonst drücken Sie die Leertaste oder Ihr Pedal. Auch die Taste am Messgerät speichert, sobald sie eingerichtet ist.',

  'settings.label-papers': 'Etiketten',
  'settings.edit-papers': 'Papiere unter „Etiketten“ bearbeiten',

  'settings.data': 'Ihre Daten',
  'settings.demo-open': 'Der Beispiel-Holzplatz ist geöffnet.',
  'settings.own-open': 'Ihr eigener Holzplatz ist geöffnet.',
  'settings.where-saved': 'Alles ist in einer Datei auf diesem Computer gespeichert. Nichts wird verschickt.',
  'settings.demo-not-backed-up': 'Der Beispiel-Holzplatz wird nicht gesichert. Ihr eigener Holzplatz schon.',
  'settings.backed-up': 'Gesichert wird an jedem Tag, an dem Sie Pintally öffnen, und nach jeder Messrunde.',
  'settings.file': 'Datei:',
  'settings.open-demo': 'Beispiel-Holzplatz öffnen',
  'settings.open-own': 'Meinen Holzplatz öffnen',
  'settings.version': 'Pintally {version}',
} satisfies Record<keyof typeof english, string>;
