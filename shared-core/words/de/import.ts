import type { importing as english } from '../en/import.ts';

export const importing = {
  'import.no-code': 'Keine Brettnummer.',
  'import.totals': '„{cellTypedText}“ sieht nach einer Summenzeile aus. Überspringen Sie sie.',
  'import.names-line':
    '„{cellTypedText}“ sieht nach einer Überschrift aus und nicht nach einer Brettnummer. Überspringen Sie die Zeile.',
  'import.bad-code':
    '„{cellTypedText}“ kann keine Brettnummer sein. Eine Brettnummer hat bis zu 16 Buchstaben, Ziffern und Bindestriche.',
  'import.codes-clash': 'Aus „{cellTypedText}“ und „{otherTypedText}“ würde beide Male {boardCode}.',
  'import.no-length': '„{cellTypedText}“ ist keine Länge.',
  'import.length-impossible':
    '„{cellTypedText}“ liegt nicht zwischen {leastMm} und {mostMm}. Prüfen Sie die Einheit.',
  'import.no-date': '„{cellTypedText}“ ist kein Datum. Prüfen Sie die Reihenfolge von Tag und Monat.',
  'import.no-year': '„{cellTypedText}“ hat kein Jahr. Ergänzen Sie es.',
  'import.date-impossible': '{givenOn} liegt in der Zukunft oder zu lange zurück.',
  'import.later-today': 'Diese Zeit liegt in der Zukunft.',
  'import.no-time': '„{cellTypedText}“ ist keine Uhrzeit.',
  'import.no-month': '„{cellTypedText}“ ist kein Monat.',
  'import.place-unknown': 'Auf dem Holzplatz gibt es keinen Ort namens {placeName}.',
  'import.species-unknown': 'Keine Holzart hier heißt {speciesName}, oder mehrere heißen so.',
  'import.too-long': 'Das ist länger als {mostLetters} Zeichen. Kürzen Sie es.',
  'import.no-layer': '„{cellTypedText}“ ist keine Lage von 1 bis 100.',
  'import.no-reading': '„{cellTypedText}“ ist kein Messwert.',
  'import.reading-below-scale':
    '„{cellTypedText}“ liegt unter der Skala des Messgeräts. Leeren Sie die Zelle, oder überspringen Sie die Zeile.',
  'import.reading-is-date':
    '„{cellTypedText}“ kann ein Datum sein. Schreiben Sie mehrere Messwerte als 12; 13; 14, oder wählen Sie eine andere Spalte.',
  'import.reading-above':
    '„{cellTypedText}“ liegt über {mostLimitPct}. Prüfen Sie den Messwert und seine Einheit.',
  'import.reading-below':
    '„{cellTypedText}“ liegt unter {leastLimitPct}. Prüfen Sie den Messwert und seine Einheit.',
  'import.no-reading-unit': '„{cellTypedText}“ ist keine Einheit für Messwerte.',
  'import.reading-without-date': 'Der Messwert hat kein Datum.',
  'import.read-before-sawn': 'Gemessen am {readOn}, vor dem Einschnitt am {sawnOn}.',
  'import.read-after-left':
    'Gemessen am {readOn}, nach dem Abgang des Bretts mit dieser Nummer am {leftOn}. Berichtigen Sie das Datum, oder geben Sie einem anderen Brett eine andere Brettnummer.',
  'import.sawn-after-left':
    'Eingeschnitten am {sawnOn}, nach dem Abgang des Bretts mit dieser Nummer am {leftOn}. Berichtigen Sie das Datum, oder geben Sie einem anderen Brett eine andere Brettnummer.',
  'import.read-after-cut':
    'Gemessen am {readOn}, nachdem das Brett mit dieser Nummer am {leftOn} zerschnitten wurde. Berichtigen Sie das Datum, oder nennen Sie die Brettnummer eines Teilstücks.',
  'import.sawn-after-cut':
    'Eingeschnitten am {sawnOn}, nachdem das Brett mit dieser Nummer am {leftOn} zerschnitten wurde. Berichtigen Sie das Datum, oder geben Sie einem anderen Brett eine andere Brettnummer.',
  'import.depth-impossible': '{depthMm} ist tiefer, als das Brett dick ist.',
  'import.no-temperature': '„{cellTypedText}“ ist keine Temperatur.',
  'import.temperature-impossible': '{woodTempC} ist keine brauchbare Holztemperatur. Prüfen Sie die Einheit.',
  'import.air-impossible': '{airTempC} ist keine brauchbare Lufttemperatur. Prüfen Sie die Einheit.',
  'import.no-humidity': '„{cellTypedText}“ ist keine Luftfeuchte von 0 bis 100\u00A0%.',
  'import.no-species': 'Keine Holzart.',
  'import.no-thickness': 'Keine Dicke.',
  'import.no-stack': 'Kein Stapel.',
  'import.other-log':
    'In Zeile {line} gehört diese Brettnummer zu einem anderen Stamm. Beginnen die Brettnummern bei jedem Stamm von vorn, wählen Sie „Brettnummer“ auch für den Stamm.',
  'import.other-stack': 'In Zeile {line} steht diese Brettnummer am selben Tag in einem anderen Stapel.',
  'import.other-species': 'In Zeile {line} hat dieses Brett eine andere Holzart.',
  'import.other-thickness': 'In Zeile {line} ist dieses Brett {rowThickness} dick.',
  'import.yard-other-species': '{boardCode} hat auf diesem Holzplatz die Holzart {speciesName}.',
  'import.yard-other-thickness': '{boardCode} ist auf diesem Holzplatz {yardThickness} dick.',
  'import.twice-turned':
    '{boardCode} steht über zwei Spalten der Tabelle. Geben Sie jedem Brett eine eigene Brettnummer.',
  'import.row-twice': 'Gleich wie Zeile {line}. Überspringen Sie sie.',
  'import.no-weight': '„{cellTypedText}“ ist kein Gewicht.',
  'import.no-piece': 'Kein Stück.',
  'import.no-meter-value': 'Kein Wert des Messgeräts.',
  'import.weights-impossible':
    'Das Nassgewicht ist mehr als das Vierfache des Darrgewichts. Prüfen Sie die Einheiten.',
  'import.dry-before': 'Das Darrgewicht hat ein früheres Datum als das Nassgewicht.',
  'import.dry-heavier': 'Das Darrgewicht ist höher als das Nassgewicht.',

  'import.role.unused': 'Nicht importiert',
  'import.role.code': 'Brettnummer',
  'import.role.species': 'Holzart',
  'import.role.thickness': 'Dicke',
  'import.role.width': 'Breite',
  'import.role.length': 'Länge',
  'import.role.sawn-on': 'Eingeschnitten am',
  'import.role.log': 'Stamm',
  'import.role.layer': 'Lage',
  'import.role.stack': 'Stapel',
  'import.role.place': 'Ort',
  'import.role.note': 'Notiz',
  'import.role.day': 'Datum',
  'import.role.time': 'Uhrzeit',
  'import.role.reading': 'Messwert',
  'import.role.reading-unit': 'Einheit des Messwerts',
  'import.role.depth': 'Tiefe',
  'import.role.wood-temp': 'Holztemperatur',
  'import.role.excluded': 'Warum ausgeschlossen',
  'import.role.month': 'Monat',
  'import.role.air-temp': 'Lufttemperatur',
  'import.role.humidity': 'Relative Luftfeuchte',
  'import.role.piece': 'Stück',
  'import.role.wet-weight': 'Gewicht vor dem Trocknen',
  'import.role.dry-weight': 'Gewicht aus dem Darrofen',

  'import.row-read': 'Zeile {line}, Brett {boardCode}: {rowSentences}',
  'import.row-known': 'Schon hier.',
  'import.row-board': '{speciesName}, {boardThickness}, in {stackName}.',
  'import.row-board.width': '{speciesName}, {boardThickness} × {widthMm}, in {stackName}.',
  'import.row-board.length': '{speciesName}, {boardThickness} × {boardLengthMm} lang, in {stackName}.',
  'import.row-board.sizes': '{speciesName}, {boardThickness} × {widthMm} × {boardLengthMm}, in {stackName}.',
  'import.row-log': 'Stamm {logName}.',
  'import.row-sawn': 'Eingeschnitten am {sawnOn}.',
  'import.row-readings': 'Gemessen am {readOn}: {readings}.',
  'import.row-reading.above': 'über {reading}',
  'import.row-reading.shell': '{reading} (außen)',
  'import.row-reading.core': '{reading} (innen)',
  'import.row-reading.average': '{reading} (Mittel)',
  'import.row-reading.temp': '{reading} bei {woodTempC}',

  'import.column-missing': 'Keine Spalte ist als „{roleName}“ eingestellt. Wählen Sie oben eine.',
  'import.board-missing':
    'Keine Spalte ist als „Brettnummer“ eingestellt. Wählen Sie oben eine, oder geben Sie die Brettnummer ein, falls alle Zeilen von einem Brett sind.',
  'import.board-missing-mean':
    'Keine Spalte ist als „Brettnummer“ eingestellt. Geben Sie die Brettnummer ein, falls alle Zeilen von einem Brett sind. Ist jede Spalte ein Brett, löschen Sie Spalte {columnName}, und importieren Sie die Tabelle noch einmal.',
  'import.choose-order':
    'In Spalte {columnName} kann der Tag oder der Monat vorn stehen. Wählen Sie die Reihenfolge.',
  'import.role-twice': 'Zwei Spalten sind als „{roleName}“ eingestellt. Lassen Sie nur eine.',
  'import.choose-place': 'Wählen Sie den Ort des neuen Stapels.',
  'import.months-missing':
    '{placeName} ist neu und braucht alle zwölf Monate. Der Ort wird nicht importiert.',
  'import.month-thin':
    'Weniger als 20 Tage im {thinMonth}: Das typische Klima dieses Monats bleibt, wie es ist.',
  'import.known-boards':
    '{boards, plural, one {# Brett ist schon hier. Seine Maße bleiben.} other {# Bretter sind schon hier. Ihre Maße bleiben.}} Neue Messwerte kommen hinzu.',
  'import.merged-board': '{boardCode} wurde mit {intoCode} zusammengeführt. Die Messwerte gehen dorthin.',
  'import.renamed-board':
    '{boardCode} heißt jetzt {intoCode}. Die Messwerte gehen dorthin. Ist {boardCode} ein anderes Brett, fügen Sie es zuerst hinzu.',
  'import.more-other-ids':
    '{boards, plural, one {# weiteres Brett dieser Tabelle hat} other {# weitere Bretter dieser Tabelle haben}} jetzt eine andere Brettnummer. {boards, plural, one {Seine} other {Ihre}} Messwerte gehen dorthin.',
  'import.left-boards':
    '{boards, plural, one {# Brett dieser Tabelle ist} other {# Bretter dieser Tabelle sind}} abgegangen: {someCodes}. Nur Messwerte von davor kommen hinzu. Geben Sie einem anderen Brett eine andere Brettnummer.',
  'import.cut-boards':
    '{boards, plural, one {# Brett dieser Tabelle wurde} other {# Bretter dieser Tabelle wurden}} zerschnitten: {someCodes}. Nur Messwerte von davor kommen hinzu. Geben Sie einem anderen Brett eine andere Brettnummer.',
  'import.moved-or-probed-first':
    '{boards, plural, one {# Brett wurde an einem Tag seiner Messwerte umgelagert} other {# Bretter wurden an einem Tag ihrer Messwerte umgelagert}}: {someCodes}. Wählen Sie, was zuerst war.',
  'import.numbers-unused': 'Spalte {columnName} sieht nach Messwerten aus und wird nicht importiert.',
  'import.in-two-stacks':
    '{boards, plural, one {# Brett ist} other {# Bretter sind}} in mehreren Stapeln dieser Tabelle und {boards, plural, one {kommt} other {kommen}} in den ersten. Beginnen die Brettnummern bei jedem Stapel von vorn, wählen Sie „Brettnummer“ auch für den Stapel.',
  'import.without-number':
    'In {cells, plural, one {# Zelle} other {# Zellen}} steht „{cellTypedText}“ als Messwert. {cells, plural, one {Sie wird} other {Sie werden}} nicht importiert. Lag der Wert über der Skala, schreiben Sie deren Ende, wie >30.',
  'import.rows-alike':
    '{rows, plural, one {# Zeile gleicht} other {# Zeilen gleichen}} einer früheren. {rows, plural, one {Sie wird} other {Sie werden}} als Messwerte anderer Messstellen importiert.',
  'import.temperature-missing':
    'Manche Messwerte haben keine Holztemperatur. Sie werden importiert und sind weniger sicher.',
  'import.depth-missing':
    'Manche Messwerte haben keine Tiefe. Sie werden importiert und sind weniger sicher.',
  'import.at-place-since':
    'Neue Bretter sind an ihrem Ort seit dem Einschnitt oder seit ihrem ersten Messwert.',

  'import.refused-spreadsheet':
    'Das ist eine Arbeitsmappe oder eine andere gepackte Datei. Nichts wurde gelesen. Speichern Sie das Blatt in der Tabellenkalkulation als CSV, und wählen Sie diese Datei. Oder kopieren Sie die Zellen, und fügen Sie sie hier ein.',
  'import.refused-kind':
    'Diese Datei ist keine Texttabelle. Nichts wurde gelesen. Wählen Sie eine CSV- oder TSV-Datei.',
  'import.refused-large':
    'Diese Datei ist größer als 64\u00A0MB. Nichts wurde gelesen. Teilen Sie sie, und importieren Sie die Teile nacheinander.',
  'import.refused-empty':
    'Diese Tabelle ist leer. Nichts wurde gelesen. Wählen Sie eine andere Datei, oder fügen Sie Zellen mit ihren Überschriften ein.',
  'import.refused-line':
    'Eine Zeile dieser Datei ist zu lang. Nichts wurde gelesen. Wählen Sie eine CSV- oder TSV-Datei.',
  'import.refused-quotes':
    'Ein Anführungszeichen in Zeile {line} wird nie geschlossen. Nichts wurde gelesen. Schließen Sie es, und wählen Sie die Datei noch einmal.',
  'import.refused-rows':
    'Sie hat mehr als {most} Zeilen. Nichts wurde gelesen. Teilen Sie sie, und importieren Sie die Teile nacheinander.',
  'import.refused-columns':
    'Sie hat mehr als {most} Spalten. Nichts wurde gelesen. Prüfen Sie, ob ihre Zellen durch Komma, Semikolon oder Tabulator getrennt sind.',
  'import.refused-gone':
    'Diese Tabelle ist nicht mehr offen. Nichts wurde importiert. Wählen Sie die Datei noch einmal.',
  'import.refused-earlier':
    'Die Tabelle wurde noch einmal geprüft. Nichts wurde importiert. Sehen Sie die Zeilen durch, und importieren Sie dann.',
  'import.refused-no-file':
    'Diese Datei lässt sich nicht lesen. Nichts wurde importiert. Prüfen Sie, ob es sie noch gibt.',
  'import.refused-changed':
    'Brett {boardCode} hat sich geändert, seit diese Tabelle geprüft wurde. Nichts wurde importiert. Die Tabelle wurde noch einmal geprüft: Sehen Sie die Zeilen durch, und importieren Sie dann.',
  'import.refused-nothing': 'In dieser Tabelle ist nichts neu. Nichts wurde importiert.',

  'import.title': 'Tabelle importieren',
  'import.lead':
    'Bretter, Messwerte, Klima oder Darrproben aus einer Tabellenkalkulation. Nichts wird gespeichert, bis Sie importieren.',
  'import.from-empty': 'Stattdessen eine Tabelle importieren',
  'import.file': 'Eine Datei',
  'import.file-hint': 'CSV oder TSV. Speichern Sie das Blatt einer Tabellenkalkulation zuerst als CSV.',
  'import.choose-file': 'Datei wählen',
  'import.paste': 'Oder Zellen einfügen',
  'import.pasted': 'Zellen mit ihren Spaltennamen',
  'import.read-pasted': 'Zellen lesen',
  'import.reading': 'Liest die Tabelle …',
  'import.stopped': 'Abgebrochen. Nichts wurde importiert.',
  'import.stack-default': 'Importiert',
  'import.other-file': 'Andere Datei wählen',
  'import.reshaped.turned': 'Die Bretter waren Spalten. Jedes ist jetzt eine Zeile.',
  'import.reshaped.below': 'Die Listen standen nebeneinander. Sie stehen jetzt untereinander.',
  'import.how-read': 'Spalten',
  'import.kind': 'Inhalt der Tabelle',
  'import.kind.boards': 'Bretter und Messwerte',
  'import.kind.air': 'Klima von Orten',
  'import.kind.oven': 'Darrproben',
  'import.header-row': 'Spaltennamen in',
  'import.no-header': 'Keine',
  'import.line': 'Zeile {line}',
  'import.decimal-mark': 'Dezimalstellen',
  'import.decimal-point': '12.4',
  'import.decimal-comma': '12,4',
  'import.column': 'Spalte {number}',
  'import.unit-of': 'Einheit: {head}',
  'import.unit.mm': 'Millimeter',
  'import.unit.cm': 'Zentimeter',
  'import.unit.m': 'Meter',
  'import.unit.in': 'Zoll',
  'import.unit.ft': 'Fuß',
  'import.unit.quarters': 'Viertelzoll',
  'import.unit.pct': 'Prozent',
  'import.unit.share': 'Teile von 1',
  'import.unit.megohm': 'MΩ',
  'import.unit.ohm': 'Ω',
  'import.unit.kohm': 'kΩ',
  'import.unit.gigohm': 'GΩ',
  'import.unit.c': '°C',
  'import.unit.f': '°F',
  'import.unit.g': 'Gramm',
  'import.unit.kg': 'Kilogramm',
  'import.unit.oz': 'Unzen',
  'import.unit.lb': 'Pfund (453,6\u00A0g)',
  'import.order-of': 'Reihenfolge: {head}',
  'import.order.ymd': 'Jahr, Monat, Tag',
  'import.order.mdy': 'Monat, Tag, Jahr',
  'import.order.dmy': 'Tag, Monat, Jahr',
  'import.order.serial': 'Tage seit 1899',
  'import.order-open': 'Reihenfolge wählen',
  'import.date-read': '{cellTypedText} heißt {readOn}',
  'import.read-on': 'Gemessen am: {head}',
  'import.fill-down': 'Leer heißt wie darüber',
  'import.fill-down-of': 'Leer heißt wie darüber: {head}',
  'import.for-all': 'Für Zeilen, in denen es fehlt',
  'import.board-of-all': 'Brettnummer für alle Zeilen',
  'import.stack': 'Stapel',
  'import.new-place': 'Ein neuer Ort im Freien, mit dem mittleren Klima Ihrer Region',
  'import.meter': 'Messgerät',
  'import.meter-unknown': 'Nicht bekannt',
  'import.names': 'Namen in dieser Tabelle',
  'import.names-lead': 'Wählen Sie für jedes leere Feld eine Holzart. Ändern Sie, was falsch ist.',
  'import.name-in-rows': '{name} ({rows, plural, one {# Zeile} other {# Zeilen}})',
  'import.what-goes-in': 'Was importiert wird',
  'import.first-rows': 'Die ersten Zeilen, wie gelesen',
  'import.reopens-stack': 'Der Stapel {stackName} ist abgeschlossen. Der Import öffnet ihn wieder.',
  'import.reopens-place': 'Der Ort {placeName} ist abgeschlossen. Der Import öffnet ihn wieder.',
  'import.counts':
    '{boards, plural, =0 {Keine neuen Bretter} one {# neues Brett} other {# neue Bretter}}, {readings, plural, =0 {keine neuen Messwerte} one {# neuer Messwert} other {# neue Messwerte}}{stacks, plural, =0 {} one {, # neuer Stapel} other {, # neue Stapel}}{places, plural, =0 {} one {, # neuer Ort} other {, # neue Orte}}{airValues, plural, =0 {} one {, # Klimawert} other {, # Klimawerte}}{ovenChecks, plural, =0 {} one {, # Darrprobe} other {, # Darrproben}}.',
  'import.nothing-new': 'In dieser Tabelle ist nichts neu.',
  'import.names-open':
    'Noch lässt sich nichts importieren. Wählen Sie oben, was {names, plural, one {dieser Name bedeutet} other {diese Namen bedeuten}}: {openNames}.',
  'import.more-names': '{names, plural, one {# weiterer Name} other {# weitere Namen}}',
  'import.all-refused':
    'Noch lässt sich nichts importieren. Korrigieren oder überspringen Sie die Zeilen unten.',
  'import.are-in-yard':
    '{boards, plural, one {Es ist das Brett} other {Es sind die Bretter}} dieses Holzplatzes. Fügen Sie die Messwerte hinzu; Holzart und Dicke bleiben.',
  'import.known-readings': '{readings, plural, one {# Messwert ist} other {# Messwerte sind}} schon hier.',
  'import.refused': '{rows, plural, one {# Zeile wird} other {# Zeilen werden}} nicht importiert',
  'import.refused-shown': '{first}–{last} von {refused}',
  'import.refused-before': 'Vorherige zeigen',
  'import.refused-after': 'Nächste zeigen',
  'import.leave-out': 'Überspringen',
  'import.leave-out-line': 'Zeile {line} überspringen',
  'import.left-out': '{rows, plural, one {# Zeile} other {# Zeilen}} übersprungen.',
  'import.take-back-in': 'Wieder einbeziehen',
  'import.save':
    '{rows, plural, one {# Zeile} other {# Zeilen}} importieren{leftOut, plural, =0 {} other {, # überspringen}}',
  'import.save-none': 'Importieren',
  'import.checking': 'Prüft …',
  'import.saving': 'Importiert …',
  'import.done':
    'Importiert: {parts}.{leftOut, plural, =0 {} one { # Zeile wurde übersprungen.} other { # Zeilen wurden übersprungen.}}',
  'import.restored':
    'Rückgängig Gemachtes wiederhergestellt: {parts}.{leftOut, plural, =0 {} one { # Zeile wurde übersprungen.} other { # Zeilen wurden übersprungen.}}',
} satisfies Record<keyof typeof english, string>;
