import type { validation as english } from '../en/validation.ts';

export const validation = {
  'validation.fix-fields': 'Noch nicht gespeichert. Berichtigen Sie die markierten Felder.',
  'validation.not-understood': 'Einer der Werte ist ungültig. Prüfen Sie sie.',

  'validation.missing': 'Füllen Sie das aus.',
  'validation.path-missing': 'Geben Sie einen Pfad ein.',
  'validation.path-too-long': 'Dieser Pfad ist zu lang. Wählen Sie einen kürzeren.',
  'validation.upload-too-large':
    'Diese Datei ist größer, als ein Holzplatz sein kann. Wählen Sie eine andere Datei.',
  'validation.not-whole': 'Geben Sie eine ganze Zahl ein.',
  'validation.text-too-long': 'Höchstens {letters} Zeichen.',
  'validation.least-length': 'Mindestens {boundLengthMm}.',
  'validation.most-length': 'Höchstens {boundLengthMm}.',
  'validation.least-size': 'Mindestens {boundMm}.',
  'validation.most-size': 'Höchstens {boundMm}.',
  'validation.least-temperature': 'Mindestens {boundTempC}.',
  'validation.most-temperature': 'Höchstens {boundTempC}.',
  'validation.least-weight': 'Mindestens {boundKg}.',
  'validation.most-weight': 'Höchstens {boundKg}.',
  'validation.least-percent': 'Mindestens {boundLimitPct}.',
  'validation.most-percent': 'Höchstens {boundLimitPct}.',
  'validation.least': 'Mindestens {rawBound}.',
  'validation.most': 'Höchstens {rawBound}.',
  'validation.most-at-once': 'Höchstens {most} auf einmal. Fügen Sie den Rest danach hinzu.',

  'validation.name-missing': 'Geben Sie einen Namen ein.',
  'validation.name-too-long': 'Höchstens 80 Zeichen.',
  'validation.merged-with-itself': 'Wählen Sie ein anderes Brett.',
  'validation.pieces-alike': 'Zwei Teilstücke haben dieselbe Brettnummer. Geben Sie jedem eine eigene.',
  'validation.board-code':
    'Eine Brettnummer hat bis zu 16 Buchstaben, Ziffern und Bindestriche, etwa EICHE-07.',
  'validation.not-a-number': '„{typedText}“ ist keine Zahl. Geben Sie sie in Ziffern ein.',
  'validation.two-numbers':
    '„{typedText}“ kann zwei verschiedene Zahlen bedeuten. Geben Sie {rawWhole} oder {rawDecimal} ein.',
  'validation.weight-not-above-zero': 'Geben Sie ein Gewicht über 0 ein.',
  'validation.section-weight-missing': 'Geben Sie das Gewicht von mindestens einem Abschnitt ein.',
  'validation.piece-missing': 'Geben Sie dem Stück ein Zeichen, etwa A1.',
  'validation.readings-missing': 'Geben Sie mindestens einen Messwert ein.',
  'validation.per-layer-missing': 'Geben Sie die Bretter je Lage ein, oder lassen Sie alle drei Felder leer.',
  'validation.first-column-too-high':
    'Spalte {firstColumn} liegt außerhalb der {perLayer, plural, one {# Brett breiten} other {# Bretter breiten}} Lage.',
  'validation.too-many-layers':
    'Das ergibt {layers} Lagen. Ein Stapel hat höchstens {mostLayers}. Legen Sie mehr Bretter in eine Lage.',

  'validation.zero-reading':
    '0 ist kein Messwert. Ein Messgerät zeigt dann nichts oder einen Strich. Lassen Sie die Messstelle offen, oder messen Sie dort noch einmal.',
  'validation.negative-reading': 'Ein Messwert liegt über 0. Prüfen Sie das Vorzeichen.',
  'validation.pins-short':
    'So kurze Spitzen messen nur die Oberfläche. Prüfen Sie ihre Länge und die Einheit.',
  'validation.most-humidity':
    'Die relative Luftfeuchte ist hier höchstens 99\u00a0%. Bei Nebel nehmen Sie 99\u00a0%.',
  'validation.no-meter-shows': 'Kein Messgerät zeigt diese Zahl. Prüfen Sie sie.',
  'validation.place-missing': 'Wählen Sie einen Ort.',
  'validation.stack-missing': 'Wählen Sie einen Stapel.',
  'validation.use-missing': 'Wählen Sie eine Verwendung.',
  'validation.day-too-early': 'Geben Sie das Jahr mit vier Ziffern ein, 1900 oder später.',
  'validation.time-missing': 'Geben Sie Datum und Uhrzeit ein.',
  'validation.day-missing': 'Geben Sie den Tag ein.',
  'validation.nothing-to-change': 'Ändern Sie mindestens ein Feld.',
} satisfies Record<keyof typeof english, string>;
