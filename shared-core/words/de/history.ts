import type { history as english } from '../en/history.ts';

export const history = {
  'act.title': 'Verlauf',
  'act.lead':
    'Änderungen an diesem Holzplatz, die neueste zuerst. Machen Sie spätere vor früheren rückgängig.',
  'act.list': 'Was getan wurde',
  'act.of-board': 'Verlauf',
  'act.none': 'Noch keine Änderungen.',
  'act.what': 'Was getan wurde',
  'act.when': 'Wann',
  'act.actions': 'Rückgängig machen oder erneut ausführen',
  'act.is-undone': 'Rückgängig gemacht',
  'act.older': 'Ältere zeigen',
  'act.undo-this': 'Rückgängig machen: {line}',
  'act.redo-this': 'Erneut ausführen: {line}',
  'act.undone': 'Rückgängig gemacht: {line}',
  'act.redone': 'Erneut ausgeführt: {line}',
  'act.nothing-to-undo': 'Hier ist nichts mehr rückgängig zu machen. Siehe „Verlauf“.',
  'act.nothing-to-redo': 'Hier ist nichts mehr erneut auszuführen. Siehe „Verlauf“.',
  'act.keys-too-late':
    'Eine andere Änderung wurde noch gespeichert. Nichts wurde rückgängig gemacht oder wiederholt. Drücken Sie die Tasten noch einmal.',
  'act.undo-earlier': 'Diese frühere Änderung rückgängig machen?',
  'act.undo-earlier-what': '{atText}: {line}',
  'act.record.board': 'Brett {recordName}',
  'act.record.stack': 'Stapel {recordName}',
  'act.record.place': 'Ort {recordName}',
  'act.record.species': 'Holzart {recordName}',
  'act.record.use': 'Verwendung {recordName}',
  'act.record.test-block': '{recordName}',
  'act.record.meter': 'Messgerät {recordName}',
  'act.record.sensor': 'Sensor {recordName}',
  'act.record.meter-check': 'Eine Prüfung von {recordName}',
  'act.record.project': 'Auftrag {recordName}',
  'act.record.move': 'Eine Umlagerung von Brett {recordName}',
  'act.record.round': 'Eine Messrunde von Stapel {recordName}',
  'act.record.reading': 'Ein Messwert von Brett {recordName}',
  'act.record.of': 'Ein Eintrag von {recordName}',
  'act.record.other': 'Ein Eintrag',
  'act.board.added': '{rows, plural, one {Brett {recordName} hinzugefügt.} other {# Bretter hinzugefügt.}}',
  'act.board.deleted': '{rows, plural, one {Brett {recordName} gelöscht.} other {# Bretter gelöscht.}}',
  'act.stack.added': '{rows, plural, one {Stapel {recordName} hinzugefügt.} other {# Stapel hinzugefügt.}}',
  'act.stack.deleted': '{rows, plural, one {Stapel {recordName} gelöscht.} other {# Stapel gelöscht.}}',
  'act.place.added': '{rows, plural, one {Ort {recordName} hinzugefügt.} other {# Orte hinzugefügt.}}',
  'act.place.deleted': '{rows, plural, one {Ort {recordName} gelöscht.} other {# Orte gelöscht.}}',
  'act.species.added':
    '{rows, plural, one {Holzart {recordName} hinzugefügt.} other {# Holzarten hinzugefügt.}}',
  'act.species.deleted': '{rows, plural, one {Holzart {recordName} gelöscht.} other {# Holzarten gelöscht.}}',
  'act.project.added':
    '{rows, plural, one {Auftrag {recordName} hinzugefügt.} other {# Aufträge hinzugefügt.}}',
  'act.project.deleted': '{rows, plural, one {Auftrag {recordName} gelöscht.} other {# Aufträge gelöscht.}}',
  'act.board.added-to':
    '{rows, plural, one {Brett {recordName} zu {stackName} hinzugefügt.} other {# Bretter zu {stackName} hinzugefügt.}}',
  'act.board.put':
    '{rows, plural, one {Brett {recordName} in {stackName} gelegt.} other {# Bretter in {stackName} gelegt.}}',
  'act.board.ripped':
    '{rows, plural, one {Brett {parentName} aufgetrennt: {recordName}.} other {Brett {parentName} in # Bretter aufgetrennt.}}',
  'act.board.crosscut':
    '{rows, plural, one {Brett {parentName} abgelängt: {recordName}.} other {Brett {parentName} in # Bretter abgelängt.}}',
  'act.board.merged': 'Brett {parentName} mit {recordName} zusammengeführt.',
  'act.stack.merged':
    'Stapel {recordName} mit {intoName} zusammengeführt: {rows, plural, =0 {keine Bretter} one {# Brett} other {# Bretter}}.',
  'act.place.merged': 'Ort {recordName} mit {intoName} zusammengeführt.',
  'act.place.merged-with-air':
    'Ort {recordName} mit {intoName} zusammengeführt, mit dem Klima von {recordName}.',
  'act.use.added':
    '{rows, plural, one {Verwendung {recordName} hinzugefügt.} other {# Verwendungen hinzugefügt.}}',
  'act.meter.added':
    '{rows, plural, one {Messgerät hinzugefügt: {recordName}.} other {# Messgeräte hinzugefügt.}}',
  'act.test-block.added': '{rows, plural, one {{recordName} hinzugefügt.} other {# Prüfblöcke hinzugefügt.}}',
  'act.test-block.removed': '{recordName} entfernt.',
  'act.test-block.back': '{recordName} wieder in Gebrauch.',
  'act.meter-check.added':
    '{rows, plural, one {{recordName} geprüft.} other {# Geräteprüfungen gespeichert.}}',
  'act.meter-check.right': '{recordName} geprüft: richtig.',
  'act.meter-check.off.pct': '{recordName} geprüft: Abweichung {offPoints}.',
  'act.meter-check.off.ohm': '{recordName} geprüft: Abweichung {offSharePct}.',
  'act.meter-check.excluded':
    '{readings, plural, =0 {Prüfung von {recordName} ausgeschlossen.} one {Prüfung von {recordName} ausgeschlossen. # Messwert wird nicht mehr danach korrigiert.} other {Prüfung von {recordName} ausgeschlossen. # Messwerte werden nicht mehr danach korrigiert.}}',
  'act.meter-check.included': 'Prüfung von {recordName} wieder einbezogen.',
  'act.meter-check.corrected':
    '{readings, plural, =0 {Messgerät {recordName} nach einer Prüfung korrigiert.} one {# Messwert nach einer Prüfung von {recordName} korrigiert.} other {# Messwerte nach einer Prüfung von {recordName} korrigiert.}}',
  'act.meter.deleted': 'Messgerät {recordName} gelöscht.',
  'act.meter.file': 'Gerätedatei für {recordName} verwendet.',
  'act.meter.removed': '{recordName} entfernt.',
  'act.meter.back': '{recordName} wieder in Gebrauch.',
  'act.meter.set-up': '{recordName} eingerichtet.',
  'act.meter.recognized-name': '{recordName} unter einem neuen Namen erkannt.',
  'act.meter.recognized': '{recordName} unter einer neuen Adresse erkannt.',
  'act.meter.typing': 'Messgerät {recordName} gilt jetzt für eingegebene Messwerte.',
  'act.sensor.added':
    '{rows, plural, one {Sensor {recordName} hinzugefügt.} other {# Sensoren hinzugefügt.}}',
  'act.sensor.removed': '{rows, plural, one {Sensor {recordName} entfernt.} other {# Sensoren entfernt.}}',
  'act.sensor.moved': 'Sensor {recordName} ist am Ort {placeName}.',
  'act.sensor.nowhere': 'Sensor {recordName} von seinem Ort entfernt.',
  'act.air.measured': 'Klima am Ort {placeName} am {measuredOn}: {airTempC}, {humidityRhPct} Luftfeuchte.',
  'act.air.edited':
    'Klima am Ort {placeName} für {measuredOn} ist jetzt {airTempC}, {humidityRhPct} Luftfeuchte.',
  'act.air.deleted': 'Klima am Ort {placeName} für {measuredOn} gelöscht.',
  'act.air.excluded':
    '{rows, plural, one {Klima am Ort {placeName} für {measuredOn} ausgeschlossen.} other {Klima von # Tagen am Ort {placeName} ausgeschlossen, der erste {measuredOn}.}}',
  'act.air.included':
    '{rows, plural, one {Klima am Ort {placeName} für {measuredOn} einbezogen.} other {Klima von # Tagen am Ort {placeName} einbezogen, der erste {measuredOn}.}}',
  'act.air.measured-often':
    '{rows, plural, one {Ein Klimawert am Ort {placeName} gespeichert.} other {# Klimawerte am Ort {placeName} gespeichert.}}',
  'act.meter.profile': '{rows, plural, other {Einstellungen von Messgerät {recordName} gespeichert.}}',
  'act.moved':
    '{rows, plural, one {Brett {recordName} nach {placeName} umgelagert.} other {# Bretter nach {placeName} umgelagert.}}',
  'act.move.since':
    '{rows, plural, one {Brett {recordName} seit {sinceOn} am Ort {placeName}.} other {# Bretter seit {sinceOn} am Ort {placeName}.}}',
  'act.move.deleted':
    '{rows, plural, one {Eine Umlagerung von Brett {recordName} nach {placeName} gelöscht.} other {# Umlagerungen gelöscht.}}',
  'act.planned-move.added':
    '{rows, plural, one {Umlagerung von {recordName} nach {placeName} geplant.} other {# geplante Umlagerungen gespeichert.}}',
  'act.planned-move.deleted':
    '{rows, plural, one {Eine geplante Umlagerung von {recordName} gelöscht.} other {# geplante Umlagerungen gelöscht.}}',
  'act.reservation.added':
    '{rows, plural, one {Brett {recordName} reserviert.} other {# Bretter reserviert.}}',
  'act.reservation.edited':
    '{rows, plural, one {Brett {recordName} für einen anderen Auftrag reserviert.} other {# Bretter für einen anderen Auftrag reserviert.}}',
  'act.reservation.deleted':
    '{rows, plural, one {Brett {recordName} nicht mehr reserviert.} other {# Bretter nicht mehr reserviert.}}',
  'act.picture.added':
    '{rows, plural, one {Ein Foto von {recordName} hinzugefügt.} other {# Fotos hinzugefügt.}}',
  'act.picture.edited': '{rows, plural, one {Ein Foto von {recordName} geändert.} other {# Fotos geändert.}}',
  'act.picture.deleted':
    '{rows, plural, one {Ein Foto von {recordName} gelöscht.} other {# Fotos gelöscht.}}',
  'act.round.started':
    '{rows, plural, one {Messrunde an Stapel {recordName} gestartet.} other {# Messrunden gestartet.}}',
  'act.round.started-on':
    '{rows, plural, one {Messrunde vom {date} an Stapel {recordName} gestartet.} other {# Messrunden gestartet.}}',
  'act.round.entered':
    '{rows, plural, one {Messrunde vom {date} für Stapel {recordName} eingegeben.} other {# Messrunden eingegeben.}}',
  'act.round.finished': 'Messrunde an Stapel {recordName} beendet.',
  'act.round.reopened': 'Messrunde an Stapel {recordName} wieder geöffnet.',
  'act.round.dated': 'Messrunde an Stapel {recordName}: Datum von {beforeDate} auf {afterDate} geändert.',
  'act.reading.added': 'Messwert {reading} an Brett {recordName} gespeichert.',
  'act.readings.added':
    '{rows, plural, one {Messwert an Brett {recordName} gespeichert.} other {# Messwerte gespeichert.}}',
  'act.reading.excluded':
    '{rows, plural, one {Ein Messwert von Brett {recordName} ausgeschlossen.} other {# Messwerte ausgeschlossen.}}',
  'act.weight.excluded':
    '{rows, plural, one {Eine Wägung von {recordName} ausgeschlossen.} other {# Wägungen ausgeschlossen.}}',
  'act.reading.included':
    '{rows, plural, one {Ein Messwert von Brett {recordName} einbezogen.} other {# Messwerte einbezogen.}}',
  'act.weight.included':
    '{rows, plural, one {Eine Wägung von {recordName} einbezogen.} other {# Wägungen einbezogen.}}',
  'act.reading.depth':
    '{rows, plural, one {Tiefe eines Messwerts von Brett {recordName} geändert.} other {Tiefe von # Messwerten geändert.}}',
  'act.reading.meter':
    '{rows, plural, one {Messgerät eines Messwerts von Brett {recordName} geändert.} other {Messgerät von # Messwerten geändert.}}',
  'act.reading.corrected':
    '{rows, plural, one {Ein Messwert von Brett {recordName} bearbeitet.} other {# Messwerte bearbeitet.}}',
  'act.reading.value':
    '{rows, plural, one {Messwert von Brett {recordName} von {before} auf {after} geändert.} other {# Messwerte geändert.}}',
  'act.reading.moved':
    '{rows, plural, one {Messwert {reading} von Brett {recordName} auf {toName} verschoben.} other {# Messwerte von Brett {recordName} auf {toName} verschoben.}}',
  'act.readings.swapped': 'Messwerte der Bretter {recordName} und {otherName} vertauscht.',
  'act.reading.temperature':
    '{rows, plural, one {Holztemperatur eines Messwerts von Brett {recordName} auf {valueTempC} geändert.} other {Holztemperatur von # Messwerten geändert.}}',
  'act.reading.temperature-unknown':
    '{rows, plural, one {Holztemperatur eines Messwerts von Brett {recordName} auf unbekannt geändert.} other {Holztemperatur von # Messwerten geändert.}}',
  'act.temperature': 'Holztemperatur auf {valueTempC} gesetzt.',
  'act.temperature-unknown': 'Holztemperatur auf unbekannt gesetzt.',
  'act.spot-plan': 'Gewählt, wie innen gemessen wird.',
  'act.species-confirmed':
    '{rows, plural, one {Holzart von Brett {recordName} bestätigt.} other {Holzart von # Brettern bestätigt.}}',
  'act.oven-check.added':
    '{rows, plural, one {Darrprobe von {recordName} hinzugefügt.} other {# Darrproben hinzugefügt.}}',
  'act.oven-check.weighed':
    '{rows, plural, one {Darrprobe von {recordName} gewogen.} other {# Gewichte von Darrproben gespeichert.}}',
  'act.own-fit-on': 'Messwerte der Holzart {speciesName} werden nach Ihren Darrproben korrigiert.',
  'act.own-fit-off': 'Messwerte der Holzart {speciesName} werden nicht nach Ihren Darrproben korrigiert.',
  'act.sample.cut':
    '{rows, plural, one {Abschnitte neben Brett {recordName} geschnitten.} other {Abschnitte neben # Brettern geschnitten.}}',
  'act.sample.dried':
    '{rows, plural, one {Darrgewicht eines Abschnitts von Brett {recordName} gespeichert.} other {Darrgewichte von # Abschnitten gespeichert.}}',
  'act.sample.weighed':
    '{rows, plural, one {Gewicht von Brett {recordName} gespeichert.} other {# Gewichte von Brettern gespeichert.}}',
  'act.labels-printed':
    '{rows, plural, one {Etikett von Brett {recordName} gedruckt.} other {# Etiketten gedruckt.}}',
  'act.settings': 'Einstellungen geändert.',
  'act.field-edited': '{field} von {before} auf {after} geändert: {what}.',
  'act.field-set': '{field} auf {after} gesetzt: {what}.',
  'act.fields-edited': '{fields} geändert: {what}.',
  'act.edited': 'Geändert: {what}.',
  'act.ended': 'Abgang: {what}.',
  'act.left':
    '{why, select, sold {Als verkauft vermerkt} used {Als verwendet vermerkt} scrapped {Als ausgesondert vermerkt} other {Gelöscht}}: {what}.',
  'act.closed': 'Abgeschlossen: {what}.',
  'act.reopened': 'Wieder geöffnet: {what}.',
  'act.back': 'Wieder auf dem Holzplatz: {what}.',
  'act.imported': '{fileName} importiert: {parts}.',
  'act.imported-table': 'Eine Tabelle importiert: {parts}.',
  'act.merged': 'Mit {fileName} zusammengeführt: {parts}.',
  'act.merged-nothing': 'Mit {fileName} verglichen. Nichts wurde geändert.',
  'act.merged.edited': '{count, plural, one {# Eintrag} other {# Einträge}} geändert',
  'act.merged.deleted': '{count, plural, one {# Eintrag} other {# Einträge}} gelöscht',
  'act.merged.left': '{count, plural, one {# Eintrag} other {# Einträge}} aus den Listen verschwunden',
  'act.other': 'Andere Änderungen.',
  'act.all': '{allSentences}',
  'act.what.board': '{rows, plural, one {Brett {recordName}} other {# Bretter}}',
  'act.what.stack': '{rows, plural, one {Stapel {recordName}} other {# Stapel}}',
  'act.what.move': '{rows, plural, one {eine Umlagerung von Brett {recordName}} other {# Umlagerungen}}',
  'act.what.place': '{rows, plural, one {Ort {recordName}} other {# Orte}}',
  'act.what.use': '{rows, plural, one {Verwendung {recordName}} other {# Verwendungen}}',
  'act.what.meter': '{rows, plural, one {Messgerät {recordName}} other {# Messgeräte}}',
  'act.what.test-block': '{rows, plural, one {{recordName}} other {# Prüfblöcke}}',
  'act.what.sensor': '{rows, plural, one {Sensor {recordName}} other {# Sensoren}}',
  'act.what.project': '{rows, plural, one {Auftrag {recordName}} other {# Aufträge}}',
  'act.what.planned-move':
    '{rows, plural, one {die geplante Umlagerung von {recordName}} other {# geplante Umlagerungen}}',
  'act.what.round': '{rows, plural, one {eine Messrunde von Stapel {recordName}} other {# Messrunden}}',
  'act.what.species': '{rows, plural, one {Holzart {recordName}} other {# Holzarten}}',
  'act.value.mm': '{valueMm}',
  'act.value.length': '{valueLengthMm}',
  'act.value.day': '{valueOn}',
  'act.value.thickness': '{thickness}',
  'act.value.pct': '{rawPct}',
  'act.value.ohm': '{rawOhm}',
  'act.value.above': '>{reading}',
  'act.field.name': 'Name',
  'act.field.place': 'Ort',
  'act.field.moved-on': 'Datum',
  'act.field.use': 'Verwendung',
  'act.field.cover': 'Abdeckung',
  'act.field.kind': 'Art',
  'act.field.tolerance': 'Toleranz',
  'act.field.air': 'Klima',
  'act.field.needed-by': 'Gebraucht bis',
  'refusal.undone-already': 'Schon rückgängig gemacht. Nichts wurde geändert.',
  'refusal.not-undone': 'Schon erneut ausgeführt oder nie rückgängig gemacht. Nichts wurde geändert.',
  'refusal.undo-changed-by':
    '{record} wurde später geändert. Deshalb wurde nichts {what, select, redo {erneut ausgeführt} other {rückgängig gemacht}}. {later, select, undone {Führen Sie zuerst das erneut aus} other {Machen Sie zuerst das rückgängig}} ({laterAt}): {laterLine}',
  'refusal.redo-repeated':
    '{record}: Diese Messwerte wurden später noch einmal gespeichert. Deshalb wurde nichts erneut ausgeführt. Machen Sie zuerst das rückgängig ({laterAt}): {laterLine}',
  'refusal.undo-changed':
    '{record} wurde später geändert. Nichts wurde {what, select, redo {erneut ausgeführt} other {rückgängig gemacht}}.',
  'refusal.undo-used':
    '{record} wird von einer späteren Änderung gebraucht. Deshalb wurde nichts {what, select, redo {erneut ausgeführt} other {rückgängig gemacht}}. Machen Sie zuerst das rückgängig ({laterAt}): {laterLine}',
  'refusal.undo-lost':
    '{record} wurde gelöscht. Deshalb wurde nichts {what, select, redo {erneut ausgeführt} other {rückgängig gemacht}}. {later, select, undone {Führen Sie zuerst das erneut aus} other {Machen Sie zuerst das rückgängig}} ({laterAt}): {laterLine}',
  'refusal.undo-taken':
    '{record} kann nicht zurückkommen: Die Brettnummer oder der Name ist inzwischen vergeben. Nichts wurde {what, select, redo {erneut ausgeführt} other {rückgängig gemacht}}.',
} satisfies Record<keyof typeof english, string>;
