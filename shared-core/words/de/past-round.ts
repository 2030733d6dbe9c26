import type { pastRound as english } from '../en/past-round.ts';

export const pastRound = {
  'past-round.title': 'Frühere Messungen eingeben',
  'past-round.lead': '{stackName}: Geben Sie die Messwerte aus Ihrem Notizbuch ein.',
  'past-round.in-other-window':
    'Diese Seite ist in einem anderen Fenster offen. Was dort eingegeben wurde, geht nicht verloren.',
  'past-round.type-here': 'Hier eingeben',
  'past-round.day': 'Tag der Messung',
  'past-round.time': 'Uhrzeit, falls bekannt',
  'past-round.meter': 'Messgerät',
  'past-round.no-meter': 'Unbekanntes Messgerät',
  'past-round.temperature': 'Temperatur',
  'past-round.temperature.wood': 'Holz',
  'past-round.temperature.air': 'Luft',
  'past-round.temperature.unknown': 'Unbekannt',
  'past-round.temp-missing': 'Geben Sie die Temperatur ein, oder wählen Sie „Unbekannt“.',
  'past-round.wood-temp': 'Holztemperatur',
  'past-round.air-temp': 'Lufttemperatur',
  'past-round.air-effect': 'Die Messwerte werden für diese Luft korrigiert. Die Urteile sind weniger sicher.',
  'past-round.unknown-effect':
    'Die Messwerte werden für die übliche Luft am Ort {placeName} in diesem Monat korrigiert. Die Urteile sind weniger sicher.',
  'past-round.depth': 'Tiefe der Spitzen',
  'past-round.depth.pins': 'Länge der Spitzen',
  'past-round.depth.pins-length': 'Länge der Spitzen, {pinsMm}',
  'past-round.depth.typed': 'Eingeben',
  'past-round.depth.unknown': 'Unbekannt',
  'past-round.depth-unknown-effect': 'Ohne Tiefe sind die Urteile weniger sicher.',
  'past-round.depth-of': 'Tiefe von Spalte {column}',
  'past-round.enter-moves': 'Eingabetaste geht',
  'past-round.enter-moves.down': 'Nach unten',
  'past-round.enter-moves.across': 'Nach rechts',
  'past-round.readings': 'Messwerte',
  'past-round.grid': 'Bretter und ihre Messwerte',
  'past-round.board': 'Brett',
  'past-round.column': 'Messwert {column}',
  'past-round.column-depth': '{depth, select, core {Innen} average {Mittel} other {Außen}} {column}',
  'past-round.cell':
    '{boardCode}, Messwert {column}: {depth, select, core {innen} average {Mittel} other {außen}}',
  'past-round.cell-unknown': '{boardCode}, Messwert {column}: Tiefe unbekannt',
  'past-round.more-columns': 'Spalte hinzufügen',
  'past-round.fewer-columns': 'Letzte Spalte entfernen',
  'past-round.paste-hint': 'Spalten aus einer Tabelle können Sie in jede Zelle einfügen.',
  'past-round.boards-of-today':
    'Das sind die Bretter von heute. Geben Sie einen Tag ein, um die Bretter jenes Tages zu sehen.',
  'past-round.other-id': 'Nummer eines weiteren Bretts auf der Seite',
  'past-round.add-line': 'Zeile hinzufügen',
  'past-round.no-such-board':
    'Kein Brett hat die Brettnummer {boardCode}. Fügen Sie es zum Stapel {stackName} hinzu, oder berichtigen Sie die Brettnummer.',
  'past-round.add-board': 'Brett {boardCode} hinzufügen',
  'past-round.checks': 'Prüfung',
  'past-round.corrected': 'Korrigiert: {correctedInterval}',
  'past-round.corrected-above': 'Korrigiert: über {abovePct}',
  'past-round.corrected-both': 'Korrigiert: {correctedInterval} und über {abovePct}',
  'past-round.of-columns': '{columnNames}: {why}',
  'past-round.not-used': '{columnNames}, nicht verwendet: {why}',
  'past-round.use-meant': '{shownValue} verwenden',
  'past-round.use-meant-of': '{shownValue} für {boardCode}, Messwert {column}, verwenden',
  'past-round.sawn-later': 'Eingeschnitten am {sawnOn}, also später.',
  'past-round.cut-later': 'Aus {fromCode} geschnitten am {cutOn}, also später.',
  'past-round.left':
    '{why, select, ripped {Aufgetrennt} crosscut {Abgelängt} sold {Verkauft} used {Verwendet} scrapped {Ausgesondert} other {Abgegangen}} am {leftOn}.',
  'past-round.entered-too': 'Auch eingegeben als {otherCodes}.',
  'past-round.of-other-stack': 'Jetzt im Stapel {stackName}.',
  'past-round.gone':
    'Nicht auf dieser Seite, weil {boards, plural, one {es} other {sie}} vor jenem Tag {boards, plural, one {abging} other {abgingen}}: {boardCodes}.',
  'past-round.in-other-stack': 'Bis {cameOn} im Stapel {stackName}.',
  'past-round.at-other-place': 'War damals am Ort {placeName}.',
  'past-round.moved-or-probed-first':
    '{boardCode} wurde am {movedOn} auch umgelagert. Nichts wurde gespeichert. Wählen Sie, was zuerst war.',
  'past-round.there':
    '{boards, plural, one {# Brett ist} other {# Bretter sind}} erst seit {sinceOn} am Ort {placeNames}. {boards, plural, one {War es} other {Waren sie}} am {startedOn} dort?',
  'past-round.there.sawn': 'Ja, seit {boards, plural, one {seinem} other {ihrem}} Einschnitt',
  'past-round.there.day': 'Ja, seit einem Tag',
  'past-round.there.no': 'Nein, oder unbekannt',
  'past-round.there-day': 'Dort seit',
  'past-round.there-effect': 'Prognosen verwenden dann ab jenem Tag das Klima dieses Orts.',
  'past-round.there-missing': 'Wählen Sie, wo die Bretter waren. Nichts wurde gespeichert.',
  'past-round.there-day-missing':
    'Geben Sie den Tag ein, an dem sie dorthin kamen. Nichts wurde gespeichert.',
  'past-round.same-day':
    'Dieser Stapel hat an jenem Tag schon eine Messrunde mit {boards, plural, one {# Brett} other {# Brettern}}. Ist das eine weitere Seite davon?',
  'past-round.same-day-open': 'Diese Messrunde öffnen',
  'past-round.pasted-beyond':
    '{values, plural, one {# eingefügter Wert passte} other {# eingefügte Werte passten}} nicht hinein. Nach dem letzten Brett wurde nichts verwendet.',
  'past-round.save':
    '{readings, plural, =0 {Speichern} one {# Messwert speichern} other {# Messwerte speichern}}',
  'past-round.saved-already':
    'Diese Messwerte wurden schon am {savedOn} für {boards, plural, one {# Brett} other {# Bretter}} gespeichert. Jetzt wurde nichts gespeichert. Noch einmal speichern?',
  'past-round.save-again': 'Ja, noch einmal speichern',
  'past-round.date-right': 'Ja, speichern',
  'past-round.saving': 'Messwerte werden gespeichert …',
  'past-round.saved': '{readings, plural, one {# Messwert} other {# Messwerte}} vom {startedOn} gespeichert.',
  'past-round.discard': 'Seite verwerfen',
  'past-round.discard-title': 'Diese Seite verwerfen?',
  'past-round.discard-effect':
    '{readings, plural, one {# eingegebener Messwert wird} other {# eingegebene Messwerte werden}} gelöscht.',
  'past-round.not-numbers':
    '{values, plural, one {# Zelle ist} other {# Zellen sind}} kein Messwert. Zum Speichern berichtigen oder leeren Sie {values, plural, one {sie} other {diese}}.',
  'past-round.not-a-number':
    '„{typedText}“ ist keine Zahl. Geben Sie den Messwert ein, etwa {rawExample}, oder leeren Sie die Zelle.',
  'past-round.without-number':
    '„{typedText}“ enthält keine Zahl. War das Messgerät am Ende seiner Skala, geben Sie dieses Ende ein, etwa >30.',
  'past-round.two-numbers':
    '„{typedText}“ kann zweierlei bedeuten. Geben Sie höchstens zwei Nachkommastellen ein, etwa {rawExample}.',
  'past-round.kept': 'Diese Seite bleibt auf diesem Computer, bis Sie sie speichern oder verwerfen.',
  'past-round.no-boards': 'Dieser Stapel hatte an jenem Tag keine Bretter.',
  'notebook.title': 'Seiten aus dem Notizbuch',
  'notebook.lead': 'Geben Sie Messwerte eines früheren Tages vom Papier ein, einen Stapel nach dem anderen.',
  'notebook.stack': 'Stapel der Seite',
  'notebook.stack-missing': 'Wählen Sie den Stapel der Seite.',
  'notebook.type': 'Seite aus dem Notizbuch eingeben',
  'notebook.not-saved': 'Noch nicht gespeichert',
  'notebook.page': '{stackName}: {readings, plural, one {# Messwert} other {# Messwerte}}',
  'notebook.page-of': '{stackName}, {startedOn}: {readings, plural, one {# Messwert} other {# Messwerte}}',
} satisfies Record<keyof typeof english, string>;
