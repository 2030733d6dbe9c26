import type { stations as english } from '../en/stations.ts';

export const stations = {
  'stations.nearest': 'Nächste Wetterstation',
  'stations.hint':
    'Alle Stationen liegen in den USA. Eine Stadt, ein Bundesstaat oder Breite und Länge. Leer lassen für ungefähre Termine.',
  'stations.none':
    'Keine Wetterstation passt zu „{typedText}“. Versuchen Sie eine größere Stadt, fügen Sie den Bundesstaat hinzu, oder lassen Sie das Feld leer.',
  'stations.only-state': '„{typedText}“ hat keine Wetterstation. Wählen Sie die nächste in {stateName}.',

  'epw.label': 'EPW-Wetterdatei',
  'epw.hint': 'Ein typisches Jahr, Stunde für Stunde. Für viele Städte veröffentlicht.',
  'epw.to-save': 'Wird gespeichert: {airSource}.',
  'epw.refused': '{fileName} wurde abgelehnt. {problem}',
  'epw.missing': 'Wählen Sie eine Datei.',
  'epw.too-large':
    'Diese Datei ist zu groß für ein Jahr Wetter. Nichts wurde geändert. Wählen Sie eine EPW-Datei.',
  'epw.not-epw':
    'Das ist keine EPW-Datei. Nichts wurde geändert. Wählen Sie eine, deren Name auf „.epw“ endet.',
  'epw.month-missing':
    '{missingMonth} fehlt oder hat zu wenige Stunden. Nichts wurde geändert. Wählen Sie eine Datei mit einem ganzen Jahr.',
} satisfies Record<keyof typeof english, string>;
