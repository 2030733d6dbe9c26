import type { life as english } from '../en/life.ts';

export const life = {
  'life.more': 'Mehr',
  'life.put-in-stack': 'In einen anderen Stapel legen',
  'life.sold': 'Als verkauft vermerken',
  'life.used': 'Als verwendet vermerken',
  'life.scrapped': 'Als ausgesondert vermerken',
  'life.delete': 'Löschen',
  'life.bring-back': 'Zurückholen',

  'life.mark-board':
    '{boardCode} als {why, select, sold {verkauft} used {verwendet} other {ausgesondert}} vermerken',
  'life.mark-boards':
    '{boards, plural, one {# Brett} other {# Bretter}} als {why, select, sold {verkauft} used {verwendet} other {ausgesondert}} vermerken',
  'life.mark-amount':
    '{leftBoardFeet}{missing, plural, =0 {} one {, ohne # Brett, das keine Breite oder Länge hat} other {, ohne # Bretter, die keine Breite oder Länge haben}}.',
  'life.mark-effect':
    '{boards, plural, one {Es erscheint} other {Sie erscheinen}} nicht mehr in Listen, Messrunden und auf Etiketten. Sie finden {boards, plural, one {es} other {sie}} unter „Alle Bretter“, „Abgegangen“. Die Messwerte bleiben gespeichert.',
  'life.note': '{why, select, sold {Verkauft an} used {Verwendet für} other {Warum}}',
  'life.insert-move': 'Einfügen',
  'life.was-log': 'Ja, damals war es noch der Stamm',
  'life.change-order': 'Reihenfolge ändern',
  'life.day-order': 'An diesem Tag',
  'life.day-order.moved-first': 'Erst umgelagert, dann gemessen',
  'life.day-order.probed-first': 'Erst gemessen, dann umgelagert',
  'life.move-time': 'Uhrzeit, falls bekannt',
  'life.edit-move': 'Umlagerung nach {placeName} am {movedOn} bearbeiten',
  'life.delete-move': 'Umlagerung nach {placeName} am {movedOn} löschen',
  'life.move-of': 'Umlagerung von {boardCode}',
  'life.moves-together': 'Für alle {boards} Bretter ändern, die zusammen umgelagert wurden',
  'life.deletes-together': 'Für alle {boards} Bretter löschen, die zusammen umgelagert wurden',
  'life.delete-move-of': 'Diese Umlagerung von {boardCode} löschen?',
  'life.delete-move-effect':
    '{boardCode} ist dann die ganze Zeit am Ort {beforeName}. Prognose und Urteil richten sich danach.',
  'life.changing-moves': 'Umlagerung wird geändert',
  'life.move-changed': 'Umlagerung von {boardCode} geändert.',
  'life.move-deleted': 'Umlagerung von {boardCode} gelöscht.',
  'life.note-hint':
    '{why, select, sold {Kann leer bleiben. Nur der Name. Damit finden Sie die Bretter wieder.} other {Kann leer bleiben.}}',
  'life.day': 'Tag',
  'life.archive-button': 'Als {why, select, sold {verkauft} used {verwendet} other {ausgesondert}} vermerken',
  'life.archiving-boards': 'Bretter werden vermerkt',
  'life.board-archived':
    '{boardCode} als {why, select, sold {verkauft} used {verwendet} other {ausgesondert}} vermerkt.',
  'life.boards-archived':
    '{boards, plural, one {# Brett} other {# Bretter}} als {why, select, sold {verkauft} used {verwendet} other {ausgesondert}} vermerkt.',

  'life.archive-anyway': 'Trotzdem vermerken',
  'life.released': 'Die Reservierung ist aufgehoben.',
  'life.released-of':
    'Nicht mehr reserviert: {boardCodes}{more, plural, =0 {} one { und # weiteres Brett} other { und # weitere Bretter}}.',

  'life.delete-board': '{boardCode} löschen?',
  'life.not-deleted': '{boardCode} lässt sich nicht löschen',
  'life.not-deleted-why': 'Es hat Messwerte, und diese bleiben gespeichert.',
  'life.not-deleted-instead':
    'Doppelt eingegeben? Führen Sie es zusammen. Nicht mehr da? Vermerken Sie es als verkauft, verwendet oder ausgesondert. Messwerte aus Versehen? Machen Sie sie im Verlauf rückgängig.',
  'life.open-history': 'Verlauf',
  'life.delete-boards': '{boards, plural, one {# Brett} other {# Bretter}} löschen?',
  'life.delete-effect':
    'Für Bretter, die aus Versehen eingegeben wurden. Ein Brett mit Messwerten lässt sich nicht löschen: Vermerken Sie es als verkauft, verwendet oder ausgesondert.',
  'life.deleting-boards': 'Bretter werden gelöscht',
  'life.board-deleted': '{boardCode} gelöscht.',
  'life.boards-deleted': '{boards, plural, one {# Brett} other {# Bretter}} gelöscht.',

  'life.cut': 'Auftrennen oder ablängen',
  'life.cut-board': '{boardCode} zerschneiden',
  'life.cut-effect':
    'Jedes Teilstück wird ein neues Brett. Es behält Holzart, Dicke, Ort, Umlagerungen und alle Messwerte bis zum Schnitt.',
  'life.cut-how': 'Schnitt',
  'life.cut-ripped': 'Aufgetrennt, in Faserrichtung',
  'life.cut-crosscut': 'Abgelängt, quer zur Faser',
  'life.pieces': 'Teilstücke',
  'life.piece-id': 'Brettnummer von Teilstück {rawNumber}',
  'life.piece-width': 'Breite von Teilstück {rawNumber}',
  'life.piece-length': 'Länge von Teilstück {rawNumber}',
  'life.piece-optional': 'Kann leer bleiben.',
  'life.fresh-ends': 'Frische Enden trocknen schneller und können reißen. Versiegeln Sie sie.',
  'life.cut-button': 'Schnitt speichern',
  'life.cut-anyway': 'Trotzdem speichern',
  'life.cut-done':
    '{boardCode} in {pieces, plural, one {# Brett} other {# Bretter}} {how, select, ripped {aufgetrennt} other {abgelängt}}.',
  'life.pieces-reserved': 'Weiter reserviert für {projectName}.',
  'life.merge': 'Mit einem anderen Brett zusammenführen',
  'life.merge-board': '{boardCode} mit einem anderen Brett zusammenführen',
  'life.merge-effect':
    'Für ein doppelt eingegebenes Brett. Sie wählen, welche Brettnummer bleibt. Das Etikett mit der anderen Brettnummer öffnet dann dieses Brett.',
  'life.merge-search': 'Das andere Brett nach seiner Brettnummer suchen',
  'life.merge-other': 'Welches Brett ist dasselbe?',
  'life.merge-none': 'Kein anderes Brett hat so eine Nummer.',
  'life.merge-not-chosen': 'Wählen Sie das Brett, das dasselbe ist.',
  'life.merge-not-compared': 'Nichts wurde zusammengeführt. Warten Sie, bis beide Bretter verglichen sind.',
  'life.merge-readings':
    '{boardCode} hat {readings, plural, =0 {keine Messwerte} one {# Messwert} other {# Messwerte}}.',
  'life.merge-all-stay': 'Alle Messwerte und Fotos bleiben.',
  'life.merge-species-differs':
    'Die Holzarten sind verschieden. Ist es dasselbe Brett? Alle Messwerte werden für die gewählte Holzart korrigiert.',
  'life.merge-thickness-differs': 'Die Dicken sind verschieden. Ist es dasselbe Brett?',
  'life.merge-stays': 'Welche Brettnummer bleibt?',
  'life.merge-target': 'für {endUseName}',
  'life.merge-moves': 'Umlagerungen',
  'life.merge-moves-of-both': 'Von beiden, nach Datum',
  'life.merge-both-notes': 'Beide',
  'life.merge-reserved': 'Reserviert für',
  'life.merge-button': 'Zusammenführen',
  'life.merge-done': '{boardCode} mit {intoCode} zusammengeführt.',
  'life.not-given': 'keine Angabe',
  'life.stay': '{placeName} seit {sinceOn}',
  'life.origin':
    '{how, select, ripped {Aufgetrennt aus} crosscut {Abgelängt von} merged {Zusammengeführt mit} other {Entstanden aus}}',
  'life.origin-day': 'am {cutOn}',
  'life.became': 'Jetzt:',
  'spot.on-board': 'auf {boardCode}',

  'life.bring-back-board': '{boardCode} zurückholen',
  'life.bring-back-effect': 'Es kommt mit allen Messwerten zurück in den Stapel {stackName}.',
  'life.bringing-back': 'Bretter werden zurückgeholt',
  'life.bringing-back-stopped': 'Abgebrochen. Kein Brett wurde zurückgeholt.',
  'life.board-back': '{boardCode} in den Stapel {stackName} zurückgeholt.',
  'life.boards-back': '{boards, plural, one {# Brett} other {# Bretter}} zurückgeholt.',

  'archived.sold': 'Verkauft',
  'archived.used': 'Verwendet',
  'archived.scrapped': 'Ausgesondert',
  'archived.ripped': 'Aufgetrennt',
  'archived.crosscut': 'Abgelängt',
  'archived.merged': 'Zusammengeführt',
  'archived.merged-into': 'Zusammengeführt mit {intoCode}',
  'archived.deleted': 'Gelöscht',
  'archived.undone': 'Rückgängig gemacht',
  'archived.unknown': 'Abgegangen',
  'archived.on': '{why} am {leftOn}.',
  'archived.effect':
    'In Listen, Messrunden und Zählungen fehlt es. Sie können es nicht umlagern oder reservieren.',
  'left.became': 'Grund des Abgangs',
  'left.all': 'Alle',
  'left.sold': 'Verkauft',
  'left.used': 'Verwendet',
  'left.scrapped': 'Ausgesondert',
  'left.cut': 'Zerschnitten',
  'left.year': 'Jahr',
  'left.all-years': 'Alle Jahre',
  'left.sold-to': 'Verkauft an',
  'left.all-buyers': 'Alle Käufer',
  'left.no-buyer': 'Ohne Namen',
  'filter.archived': 'Abgegangen',
  'stacks.column-archived': 'Abgegangen',
  'forecast.archived': 'Keine Prognose: Das Brett ist abgegangen.',

  'refusal.board-in-round':
    '{boardCode} ist in einer Messrunde. Nichts wurde geändert. Beenden Sie erst diese Runde.',
  'refusal.cut-to-come':
    'Dieser Tag liegt in der Zukunft. Nichts wurde geändert. Geben Sie den Tag des Schnitts ein.',
  'refusal.cut-before-sawn':
    '{boardCode} wurde am {sawnOn} eingeschnitten, also später. Nichts wurde geändert. Geben Sie einen späteren Tag ein, oder berichtigen Sie den Einschnitt.',
  'refusal.cut-before-read':
    '{boardCode} wurde am {readOn} gemessen, also später. Nichts wurde geändert. Geben Sie diesen oder einen späteren Tag ein.',
  'refusal.pieces-wider':
    'Die Teilstücke sind zusammen {piecesMm} breit, aber {boardCode} nur {boardMm}. Nichts wurde geändert. Trotzdem speichern?',
  'refusal.pieces-longer':
    'Die Teilstücke sind zusammen {piecesLengthMm} lang, aber {boardCode} nur {boardLengthMm}. Nichts wurde geändert. Trotzdem speichern?',
  'refusal.board-became':
    '{boardCode} wurde zerschnitten in: {ofCode}. Nichts wurde zurückgeholt. Machen Sie den Schnitt im Verlauf rückgängig, oder löschen Sie die Teilstücke.',
  'refusal.board-merged':
    '{boardCode} wurde mit {ofCode} zusammengeführt. Nichts wurde zurückgeholt. Machen Sie das im Verlauf rückgängig.',
  'refusal.merged-with-piece':
    '{pieceCode} wurde aus {boardCode} geschnitten, es sind also zwei Bretter. Nichts wurde zusammengeführt. Wählen Sie ein anderes Brett.',
  'refusal.merged-already':
    '{boardCode} ist schon mit {intoCode} zusammengeführt, es ist also ein Brett. Nichts wurde geändert.',
  'refusal.merged-note-too-long':
    'Beide Notizen zusammen sind zu lang. Nichts wurde zusammengeführt. Wählen Sie eine davon.',
  'refusal.move-before-other': 'Das ist, bevor {boardCode} am {movedOn} nach {placeName} kam. Dort einfügen?',
  'refusal.move-after-other':
    'Das ist, nachdem {boardCode} am {movedOn} nach {placeName} kam. Reihenfolge ändern?',
  'refusal.moved-or-probed-first': '{boardCode} wurde am {movedOn} auch gemessen. Was war zuerst?',
  'refusal.no-room-for-move':
    'Andere Umlagerungen und Messwerte von {boardCode} an diesem Tag lassen dafür keine Zeit. Nichts wurde geändert. Geben Sie die Uhrzeit der Umlagerung ein.',
  'refusal.first-move':
    'Das ist der erste Ort von {boardCode}. Nichts wurde gelöscht. Bearbeiten Sie ihn stattdessen: Jedes Brett braucht einen ersten Ort.',
  'refusal.stack-closed':
    'Stapel {stackName} ist abgeschlossen. Nichts wurde gespeichert. Öffnen Sie ihn erst wieder.',
  'refusal.place-closed':
    'Ort {placeName} ist abgeschlossen. Nichts wurde gespeichert. Öffnen Sie ihn erst wieder.',
  'refusal.stack-has-boards':
    '{boards, plural, one {# Brett ist} other {# Bretter sind}} im Stapel {stackName}. Nichts wurde abgeschlossen. Legen Sie sie in einen anderen Stapel, oder vermerken Sie sie als verkauft, verwendet oder ausgesondert.',
  'refusal.stack-round-open':
    'Eine Messrunde von Stapel {stackName} ist nicht beendet. Nichts wurde geändert. Beenden Sie erst die Runde.',
  'refusal.stack-has-records':
    'Zu Stapel {stackName} sind Bretter, Messrunden oder Fotos gespeichert. Nichts wurde gelöscht. Schließen Sie ihn stattdessen ab.',
  'refusal.place-in-use':
    'Ort {placeName} wird benutzt von: {stackNames}. Nichts wurde abgeschlossen. Lagern Sie diese erst um, oder führen Sie den Ort mit einem anderen zusammen.',
  'refusal.place-planned':
    'Eine Umlagerung von {name} nach {placeName} ist geplant. Nichts wurde abgeschlossen. Ändern Sie das erst auf der Seite „Termine“.',
  'refusal.place-has-records':
    'Bretter oder Stapel waren am Ort {placeName}, oder eine Umlagerung dorthin ist geplant. Nichts wurde gelöscht. Schließen Sie ihn stattdessen ab.',
  'refusal.left-to-come':
    'Dieser Tag liegt in der Zukunft. Nichts wurde geändert. Geben Sie heute oder einen früheren Tag ein.',
  'refusal.left-before-read':
    '{boardCode} wurde am {readOn} gemessen, also später. Nichts wurde geändert. Stimmt der Tag?',
  'refusal.left-before-sawn':
    '{boardCode} wurde am {sawnOn} eingeschnitten, also später. Nichts wurde geändert. Geben Sie einen späteren Tag ein, oder berichtigen Sie den Tag des Einschnitts.',
  'refusal.left-before-move':
    '{boardCode} kam am {movedOn} nach {placeName}, also später. Nichts wurde geändert. Stimmt der Tag?',
  'refusal.left-reserved':
    '{boards, plural, one {{boardCode} ist reserviert für {projectName}.} other {# dieser Bretter sind reserviert, darunter {boardCode} für {projectName}.}} Nichts wurde geändert. {boards, plural, one {Es} other {Sie}} trotzdem als {why, select, sold {verkauft} other {ausgesondert}} vermerken?',
  'refusal.board-archived':
    '{boardCode} ist schon abgegangen. Nichts wurde geändert. Heben Sie die Auswahl auf, oder holen Sie es erst zurück.',
  'refusal.board-has-readings':
    '{boardCode} hat Messwerte oder Gewichte. Nichts wurde gelöscht. Vermerken Sie es als verkauft, verwendet oder ausgesondert.',
  'refusal.board-code-taken-since':
    'Ein anderes Brett heißt jetzt {boardCode}. Nichts wurde zurückgeholt. Öffnen Sie das Brett und geben Sie ihm eine andere Brettnummer.',
} satisfies Record<keyof typeof english, string>;
