import type { tally as english } from '../en/tally.ts';

export const tally = {
  'tally.title': 'Holzliste',
  'tally.lead': 'Wie viel Holz hier liegt und was es wiegt.',
  'tally.open': 'Holzliste',
  'tally.open-by': 'Holzliste nach Holzart, Dicke oder Urteil',
  'tally.of': 'Gezählte Bretter',
  'tally.all-stacks': 'Alle Stapel',
  'tally.split-by': 'Aufteilen nach',
  'tally.by.species': 'Holzart',
  'tally.by.thickness': 'Dicke',
  'tally.by.call': 'Urteil',
  'tally.by.stack': 'Stapel',
  'tally.none': 'Noch keine Bretter hier.',
  'tally.total': '{boards, plural, one {# Brett} other {# Bretter}} zusammen',
  'tally.weights':
    'Gewicht{which, select, all {} other { von {boards, plural, one {# Brett} other {# Brettern}}}}: {nowKg} bei der letzten Messung, {thenKg} am Ziel.',
  'tally.boards': 'Bretter',
  'tally.measured': 'von {boards, plural, one {# Brett} other {# Brettern}}',
  'tally.volume': 'Volumen',
  'tally.weight-now': 'Gewicht bei der letzten Messung',
  'tally.weight-then': 'Gewicht am Ziel',
  'tally.save-csv': 'Als CSV speichern',
  'tally.file': 'Holzliste',
  'tally.saved': '{fileName} ist fertig. Sie finden die Datei bei Ihren Downloads.',
  'tally.how-metric': 'Volumen: Breite in vollen Zentimetern, Länge in vollen Zehntelmetern.',
  'tally.board-feet-how':
    'Board Feet: Länge in vollen Fuß, jedes Brett auf den ganzen Quadratfuß, mal Dicke in vollen Vierteln, mindestens 4/4.',
  'tally.weight-how': 'Das Gewicht ist das der letzten Messung.',
} satisfies Record<keyof typeof english, string>;
