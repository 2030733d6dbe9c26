import type { round as english } from '../en/round.ts';

export const round = {
  'round-start.title': 'Messrunde starten',
  'round-start.air-here':
    'Luft hier, {measuredAt}: {airTempC}, {humidityRhPct} Luftfeuchte. Das Holz kann kälter sein.',
  'round-start.lead': 'Messen Sie die Bretter eines Stapels, eines nach dem anderen.',
  'round-start.no-boards':
    'Noch kein Stapel hat Bretter. Fügen Sie zuerst einen Stapel mit seinen Brettern hinzu.',
  'round-start.stack': 'Stapel',
  'round-start.choose-stack': 'Stapel wählen',
  'round-start.stack-option': '{stackName} ({boards, plural, one {# Brett} other {# Bretter}}, {placeName})',
  'round-start.unfinished': 'Dieser Stapel hat eine unfertige Messrunde. Ihre Messwerte sind gespeichert.',
  'round-start.resume': 'Messrunde fortsetzen',
  'round-start.start': 'Messrunde starten',
  'round-start.start-anyway': 'Trotzdem starten',
  'round-start.year-right': 'Ja, Messrunde starten',
  'round-start.caution':
    'Die Spitzen sind nadelspitz und brechen bei seitlichem Druck. Stechen Sie sie gerade ein. Halten Sie die andere Hand von den Spitzen fern. Setzen Sie zwischen den Brettern die Kappe auf. Prüfen Sie, ob der Stapel sicher liegt, bevor Sie klettern oder heben.',
  'round-start.pins-along':
    'Auf einer Breitseite stehen beide Spitzen in Faserrichtung hintereinander, wenn die Anleitung des Messgeräts nichts anderes sagt. Auf einem frischen Querschnitt stehen sie parallel zu den Breitseiten.',
  'round-start.meter-live':
    '{kind, select, simulated {Das simulierte Messgerät ist verbunden. Seine Werte sind erfunden.} other {Das Messgerät ist verbunden.}} Wenn die Messrunde läuft, stechen Sie die Spitzen ein und halten still. Der Messwert wird gespeichert, sobald er steht.',
  'round-start.meter-live-by-press':
    '{kind, select, simulated {Das simulierte Messgerät ist verbunden. Seine Werte sind erfunden.} other {Das Messgerät ist verbunden.}} Wenn die Messrunde läuft, stechen Sie die Spitzen ein. Mit der Leertaste speichern Sie den Messwert.',
  'round-start.typed': 'Geben Sie die Messwerte eines früheren Tages ein.',
  'round-start.no-meter': 'Geben Sie die Messwerte Ihres Messgeräts ein, oder verbinden Sie jederzeit eines.',
  'round-start.other-date': 'Datum ändern',
  'round-start.date': 'Tag der Messung',
  'round-start.date-hint': 'Leer heißt heute.',
  'round-start.keys': 'Tasten in der Messrunde',

  'clock.before-last-act':
    'Die Uhr dieses Computers steht auf {nowAt}. Ihre letzte Änderung wurde am {lastAt} gespeichert. Stellen Sie die Uhr, bevor Sie anfangen. Fangen Sie jetzt an, berichtigen Sie das Datum, wenn die Messrunde beendet ist.',
  'clock.before-build':
    'Die Uhr dieses Computers steht auf {nowAt}. Diese Version von Pintally ist vom {builtOn}, also neuer. Stellen Sie die Uhr, bevor Sie anfangen. Fangen Sie jetzt an, berichtigen Sie das Datum, wenn die Messrunde beendet ist.',

  'round.title': 'Messrunde',
  'round.window-title': '{boardCode}, Messrunde an Stapel {stackName}',
  'round.progress': '{stackName} · Brett {board} von {boards}',
  'round.dated': '· Messwerte vom {startedOn}',
  'round.board': 'Brett',
  'round.size-and-length': '{thickness}, {lengthMm} lang',
  'round.reading': 'Messwert',
  'round.save-now': 'Jetzt speichern',
  'round.save-for': 'Für {boardCode} speichern',
  'round.undo-last': 'Letzten rückgängig machen',
  'round.next-board': 'Nächstes Brett',
  'round.back': 'Zurück',
  'round.go-to': 'Gehe zu …',
  'round.wood-temp': 'Holz {woodTempC}',
  'round.wood-temp-own': 'Holz {woodTempC}, dieses Brett',
  'round.wood-temp-probe': 'Holz {woodTempC}, {sensorName}',
  'round.wood-temp-unknown': 'Holztemperatur unbekannt',
  'round.note': 'Notiz',
  'round.far-view': 'Fernansicht',
  'round.near-view': 'Nahansicht',
  'round.keys': 'Tasten und Optionen',
  'round.type': 'Eingeben',
  'round.finish': 'Beenden',
  'round.not-a-number':
    '„{typedText}“ ist keine Zahl. Nichts wurde gespeichert. Geben Sie den Messwert so ein, wie ihn das Messgerät zeigt, etwa {rawExample}.',
  'round.without-number':
    '„{typedText}“ enthält keine Zahl. Nichts wurde gespeichert. Ist das Messgerät am Ende seiner Skala, geben Sie dieses Ende ein, etwa >30.',
  'round.two-numbers':
    '„{typedText}“ kann zwei verschiedene Zahlen bedeuten. Nichts wurde gespeichert. Geben Sie höchstens zwei Nachkommastellen ein, etwa {rawExample}.',
  'round.is-board':
    '{boardCode} ist eine Brettnummer. Das ist Brett {boardCode}; kein Messwert wurde gespeichert.',
  'round.pull-pins': 'Dieser Messwert ist gespeichert. Ziehen Sie die Spitzen heraus.',
  'round.now-on': 'Jetzt {boardCode}.',
  'round.undone':
    '{depth, select, core {Innen} average {Mittel} other {Außen}} {reading} zurückgenommen. Messen Sie diese Stelle noch einmal.',
  'round.excluded':
    '{depth, select, core {Innen} average {Mittel} other {Außen}} {reading} ausgeschlossen. „Einbeziehen“ holt den Messwert zurück.',
  'round.unsaved': '„{typedText}“ für {boardCode} ist noch nicht gespeichert.',
  'round.unsaved-finished':
    'Die Messrunde wurde beendet, bevor „{typedText}“ für {boardCode} gespeichert war. Öffnen Sie die Runde wieder, um zu speichern.',
  'round.unsaved-go-to': 'Dorthin',
  'round.unsaved-discard': 'Verwerfen',
  'round.keys-not-used':
    'Tasten, die vor dem Öffnen der Messrunde gedrückt wurden, zählen nicht. Geben Sie den Wert noch einmal ein.',
  'round.left-open':
    '{boardCode} hat noch {spots, plural, one {# offene Messstelle} other {# offene Messstellen}}: Ein Messwert wurde nicht verwendet. Gehen Sie zurück, um dort noch einmal zu messen.',
  'round.leaves-open':
    '{spots, plural, one {# Messstelle ist} other {# Messstellen sind}} offen. Drücken Sie noch einmal {by, select, pedal {das Pedal} other {die Eingabetaste}}, um {spots, plural, one {sie} other {sie}} auszulassen.',
  'round.by-itself': 'Zum nächsten Brett',
  'round.by-itself-off': 'Wenn ich eine Taste drücke',
  'round.by-itself-at-once': 'Sofort',
  'round.by-itself-after': 'Nach {seconds}\u00a0s',
  'round.board-left': '{boardCode} ist nicht mehr in diesem Stapel. Als Nächstes kommt {nextCode}.',
  'round.pins-saved':
    'Die Spitzen sind noch im Holz, und ihr Messwert auf {boardCode} ist gespeichert. Ziehen Sie sie für die nächste Messstelle heraus.',
  'round.pins-maybe-saved':
    'Das kann der Messwert sein, der auf {boardCode} schon gespeichert ist. Ziehen Sie die Spitzen für die nächste Messstelle heraus.',
  'round.save-here': 'Auch hier speichern',
  'round.filled-meanwhile':
    '{how, select, typed {Ein anderes Fenster hat hier {shownValue} gespeichert} other {Das Messgerät hat an dieser Messstelle {shownValue} gespeichert}}, während Sie tippten.',
  'round.stack-emptied': '{boardCode} ist nicht mehr in diesem Stapel. Kein Brett ist übrig.',
  'round.replace': 'Ersetzen',
  'round.save-at-next': 'An der nächsten Messstelle speichern',
  'round.boards': 'Bretter dieser Messrunde',
  'round.not-probed': 'nicht gemessen',
  'round.spots-read': '{filled} von {spots}',
  'round.being-judged': 'wird beurteilt',

  'spot.at': '{depth, select, core {Innen} average {Mittel} other {Außen}}, {along}',
  'spot.from-left': '{fromDistanceMm} vom linken Ende',
  'spot.from-right': '{fromDistanceMm} vom rechten Ende',
  'spot.nearer-left': 'näher am linken Ende',
  'spot.nearer-right': 'näher am rechten Ende',
  'spot.in-middle': 'in der Mitte, {fromDistanceMm} von beiden Enden',
  'spot.half-way': 'Mitte',
  'spot.quarter-from-left': 'linkes Viertel',
  'spot.quarter-from-right': 'rechtes Viertel',
  'spot.third-from-left': 'linkes Drittel',
  'spot.third-from-right': 'rechtes Drittel',
  'spot.along': 'nach {alongSharePct} der Länge, vom linken Ende',
  'spot.cut-left': 'frischer Querschnitt, linke Hälfte',
  'spot.cut-right': 'frischer Querschnitt, rechte Hälfte',
  'spot.fresh-rip': 'frischer Längsschnitt, {along}',
  'spot.fresh-split': 'frische Spaltfläche, {along}',
  'spot.unknown': 'Messstelle unbekannt',
  'spot.all-unknown': 'Messstelle und Tiefe unbekannt',
  'spot.elsewhere': 'anderswo auf dem Brett',
  'spot.pins-long': 'lange isolierte Spitzen bis {depthMm}, halbe Dicke',
  'spot.pins-in-cut': 'Spitzen auf halber Dicke, {depthMm} von jeder Breitseite',
  'spot.pins-in-split': 'Spitzen in der Mitte der frischen Fläche',
  'spot.how-cut':
    'Schneiden Sie das Brett mindestens {fromEndDistanceMm} von einem Ende durch. Messen Sie den Schnitt sofort. Beide Spitzen stehen parallel zu den Breitseiten. Spannen Sie das Brett ein. Die Säge ist scharf, die Spitzen sind nadelspitz.',
  'spot.how-cut-middle':
    'Schneiden Sie das Brett in der Mitte durch. Messen Sie den Schnitt sofort. Beide Spitzen stehen parallel zu den Breitseiten. Spannen Sie das Brett ein. Die Säge ist scharf, die Spitzen sind nadelspitz.',
  'spot.how-same-cut':
    'Messen Sie denselben Schnitt. Beide Spitzen stehen parallel zu den Breitseiten. Vorsicht, die Spitzen sind nadelspitz.',
  'spot.how-rip':
    'Trennen Sie das Brett mindestens {insideMm} von einer Kante auf. Messen Sie die neue Kante sofort. Spannen Sie das Brett ein. Die Säge ist scharf, die Spitzen sind nadelspitz.',
  'spot.how-split':
    'Spalten Sie das Stück. Messen Sie sofort in der Mitte der frischen Fläche. Beide Spitzen stehen in Faserrichtung. Die Axt ist scharf, die Spitzen sind nadelspitz.',
  'spot.how-long-pins': 'Schlagen Sie sie gerade ein, und ziehen Sie sie gerade heraus.',
  'spot.pins':
    'Spitzen {depth, select, core {bis zur halben Dicke} average {ein Viertel der Dicke tief} other {knapp unter der Oberfläche}}',
  'spot.pins-to': 'Spitzen {depthMm} tief',
  'spot-plan.short-board':
    'Dieses Brett ist nur {boardLengthMm} lang, also liegt keine Stelle {clearDistanceMm} von beiden Enden. Messen Sie in der Mitte. Enden trocknen zuerst, daher kann es feuchter sein als gemessen.',
  'spot-plan.fewer':
    'Dieses Brett ist nur {boardLengthMm} lang. Mindestens {clearDistanceMm} von beiden Enden hat es Platz für {count, plural, one {# Messstelle} other {# Messstellen}}, nicht für {places}.',
  'spot-plan.pins-assumed': 'Länge der Spitzen unbekannt: {pinsMm} angenommen.',
  'spot-plan.length-unknown': 'Bleiben Sie {clearDistanceMm} von beiden Enden weg.',

  'round-step.spot': '{spot}: {pins}.',
  'round-step.pull-pins': '{spot}: gespeichert. Ziehen Sie die Spitzen heraus.',
  'round-step.pull-questionable': '{spot}: fraglich. Ziehen Sie die Spitzen heraus.',
  'round-step.pull-not-used': '{spot}: nicht verwendet. Ziehen Sie die Spitzen heraus.',
  'round-step.same-pins':
    'Dieselben Spitzen wie auf {boardCode}? Ziehen Sie sie heraus, oder drücken Sie die Leertaste.',
  'round-step.by-itself': 'Nächstes Brett in {seconds}\u00a0s. Jede Taste hält das an.',
  'round-step.next-board':
    'Drücken Sie {by, select, pedal {das Pedal} other {die Eingabetaste}} für das nächste Brett.',
  'round-step.waits':
    'Ein Messwert ist fraglich, daher wartet dieses Brett. Drücken Sie {by, select, pedal {das Pedal} other {die Eingabetaste}} für das nächste Brett.',
  'round-step.finish':
    'Letztes Brett. Drücken Sie {by, select, pedal {das Pedal} other {die Eingabetaste}}, wenn Sie fertig sind.',
  'round-step.choose-spot': 'Wählen Sie die Messstelle, an der Sie noch einmal messen.',
  'round-step.save-for': 'Die Eingabetaste speichert das als ersten Messwert von {boardCode}.',
  'round-step.board-done': 'Alle Messstellen gemessen. Urteil: {callName}. {next}',
  'round-step.core-or-next':
    'C, um innen zu messen, oder {by, select, pedal {das Pedal} other {die Eingabetaste}} für das nächste Brett.',
  'round-step.core-or-finish':
    'Letztes Brett. C, um innen zu messen, oder {by, select, pedal {das Pedal} other {die Eingabetaste}}, wenn Sie fertig sind.',
  'round-step.frozen': 'Gefroren. Lassen Sie es auftauen. {next}',
  'round-step.core-not-read': 'Innen nicht gemessen. Mit C messen Sie innen. {next}',

  'round.dryness-question': 'Kam es aus einer Trockenkammer oder aus trockenerer Luft?',

  'spots.title': 'Messstellen',
  'spots.probe-here': '▶ Hier messen: {pins}',
  'spots.probe-next': 'Danach: {pins}',
  'spots.pull-pins':
    '{saved, select, sound {✓ Gespeichert.} questionable {? Fraglich.} other {✕ Nicht verwendet.}} Ziehen Sie die Spitzen heraus.',
  'spots.meter-off': '? Das Messgerät wich bei der Prüfung ab.',
  'spots.last-round': '{takenOn}: {mcPct}',
  'spots.elsewhere': 'Anderswo auf dem Brett',
  'spots.core-by': 'Innen: {way}',
  'spots.read-core': 'Innen messen …',
  'spots.change-core': 'Ändern …',
  'spots.one-more': 'Noch einer anderswo',
  'spots.one-more-depth': '{depth, select, core {+ Innen} average {+ Mittel} other {+ Außen}}',

  'core.title': '{boardCode} innen messen',
  'core.out-of-reach': '{pinsMm} lange Spitzen reichen nicht nach innen, {coreDepthMm} tief.',
  'core.average-only': 'Diese Spitzen messen das Mittel dieses Bretts.',
  'core.out-of-reach-assumed':
    'Länge der Spitzen unbekannt. Sind sie {pinsMm} lang, reichen sie nicht nach innen, {coreDepthMm} tief.',
  'core.average-only-assumed':
    'Länge der Spitzen unbekannt. Sind sie {pinsMm} lang, messen sie das Mittel dieses Bretts.',
  'core.way': 'Innen messen',
  'core.skip': 'Auslassen',
  'core.fresh-cut': 'Frischer Querschnitt',
  'core.fresh-rip': 'Frischer Längsschnitt',
  'core.fresh-split': 'Frisch gespalten',
  'core.long-pins': 'Lange isolierte Spitzen',
  'core.skip-effect': 'Innen nicht gemessen.',
  'core.for-round': 'Für die ganze Messrunde',
  'core.for-round-hint': 'Bretter, die schon Messwerte haben, behalten ihren Plan.',

  'depth.known': '{depthMm} tief',
  'depth.on-cut': '{depthMm} von der Breitseite, auf dem Schnitt',
  'depth.middle-of-cut': 'halbe Dicke, auf dem Schnitt',
  'depth.planned': '{depthMm} geplant',
  'depth.unknown': 'Tiefe unbekannt',
  'depth.title': 'Tiefe der Messung',
  'depth.on-split': '{depthMm} von der Breitseite, auf der Spaltfläche',
  'depth.of-tips': 'Spitzen unter der Oberfläche',
  'depth.from-face': 'Spitzen von der nächsten Breitseite',
  'depth.only-planned': 'Bisher nur geplant. Wie tief waren die Spitzen im Holz?',
  'depth.beyond-pins': 'Ihre Spitzen sind {pinsMm} lang. Hatten Sie andere?',
  'depth.past-middle':
    'Die Mitte des Bretts liegt {middleMm} tief. Waren die Spitzen tiefer, von der Seite aus, auf der sie eingestochen wurden?',
  'depth.so-deep': 'Ja, so tief',
  'depth.other-pins': 'Ja, andere Spitzen',
  'depth.change': 'Tiefe ändern',
  'depth.for': 'Gilt für',
  'depth.for-this': 'Diesen Messwert',
  'depth.for-round':
    '{depth, select, core {Alle Messwerte innen} average {Alle Messwerte im Mittel} other {Alle Messwerte außen}} in dieser Messrunde',
  'depth.given-too':
    '{readings, plural, one {Auch 1 Messwert ändern, dessen Tiefe Sie angegeben haben} other {Auch # Messwerte ändern, deren Tiefe Sie angegeben haben}}',
  'depth.given-change':
    '{readings, plural, one {Er verliert die von Ihnen angegebene Tiefe.} other {Sie verlieren die von Ihnen angegebenen Tiefen.}}',
  'depth.changing': 'Tiefen werden geändert …',
  'depth.changed': '{readings, plural, one {Tiefe} other {Tiefe von # Messwerten}} auf {depthMm} geändert.',

  'reading-edit.of': '{recordName} bearbeiten',
  'reading-edit.value': 'Was das Messgerät gezeigt hat',
  'reading-edit.sent':
    'Das Messgerät hat {shownValue} gesendet. Ist das falsch, schließen Sie den Messwert aus.',
  'reading-edit.saved-as': 'Gespeichert als {shownValue}',
  'reading-edit.effect': 'Der erste Wert bleibt gespeichert. Das Urteil wird aktualisiert.',
  'reading-edit.save-as-typed': 'Wie eingegeben speichern',
  'reading-edit.changed': 'Messwert von {shownValue} auf {newValue} geändert.',
  'reading-edit.temperature-changed': 'Holztemperatur dieses Messwerts geändert.',
  'reading-edit.by-hand': 'Von Hand geändert. War {shownValue}.',
  'reading-move.button': 'Anderem Brett zuordnen',
  'reading-move.of': 'Anderem Brett zuordnen: {recordName}',
  'reading-move.effect': 'Die Urteile beider Bretter werden aktualisiert.',
  'reading-move.which-board': 'Welches Brett wurde gemessen?',
  'reading-move.choose-board': 'Wählen Sie das gemessene Brett.',
  'reading-move.choose-spot': 'Wählen Sie eine Messstelle.',
  'reading-move.which': 'Was verschieben',
  'reading-move.one': 'Diesen Messwert',
  'reading-move.all':
    '{readings, plural, one {Den Messwert} other {Alle # Messwerte}} von {boardCode} in dieser Messrunde',
  'reading-move.swap':
    'Alle Messwerte dieser Messrunde mit {readings, plural, one {dem} other {den #}} von {boardCode} tauschen',
  'reading-move.spot': 'Messstelle auf {boardCode}',
  'reading-move.spot-hint': '{boardCode} hat keine solche Messstelle. Wo wurde gemessen?',
  'reading-move.save': 'Anderem Brett zuordnen',
  'reading-move.was-there': 'Ja, es war dort',
  'reading-move.done': '{readings, plural, one {Messwert} other {# Messwerte}} nach {boardCode} verschoben.',
  'reading-move.swapped': 'Messwerte von {boardCode} und {otherCode} getauscht.',
  'reading-move.to': 'Nach {boardCode} verschoben',
  'reading-move.came': 'Von {boardCode} hierher verschoben',
  'reading-edit.date': 'Um das Datum zu berichtigen, ändern Sie das Datum der Messrunde.',

  'board-call.enough-read':
    '{read} von {planned} Messstellen gemessen: genug für ein Urteil. Messen Sie auch die übrigen, um sicherer zu sein, oder gehen Sie weiter.',
  'board-call.title': 'Bisheriges Urteil',
  'board-call.being-judged': 'Wird beurteilt …',
  'board-call.for-use': 'Verwendung: {endUseName}',
  'board-call.average': 'Mittel',
  'board-call.shell': 'Außen',
  'board-call.core': 'Innen',

  'live.saved': '✓ {depth, select, core {Innen} average {Mittel} other {Außen}} gespeichert:',
  'live.questionable': '? {depth, select, core {Innen} average {Mittel} other {Außen}} fraglich:',
  'live.not-used': '✕ {depth, select, core {Innen} average {Mittel} other {Außen}} nicht verwendet:',
  'live.unused-by.far':
    '{rule, select, frozen {Gefroren: auftauen lassen.} slip {Vertippt?} other {Nicht möglich: nachmessen.}}',
  'live.missed': 'Nicht gespeichert: Die Messrunde war da nicht offen. Die Leertaste speichert.',
  'live.missed.far': '✕ Nicht gespeichert. Leertaste drücken.',
  'live.silent': 'Seit {seconds}\u00a0s kein neuer Wert.',
  'live.was-away':
    'Die Verbindung oder die Einrichtung hat sich geändert. Ziehen Sie die Spitzen einmal heraus, oder drücken Sie die Leertaste, um zu speichern.',
  'live.was-away.far': 'Spitzen herausziehen, oder Leertaste drücken.',
  'live.warning.no-species-correction':
    'Keine Korrektur für diese Holzart. Nur die Temperatur ist korrigiert.',
  'live.warning.temperature-unknown': 'Holztemperatur unbekannt. Nicht dafür korrigiert.',
  'live.warning.temperature-of-air': 'Holztemperatur unbekannt. Für die Luft hier korrigiert.',
  'live.warning.temperature-out-of-range': 'Die Holztemperatur liegt außerhalb des Bereichs der Korrektur.',
  'live.warning.frozen': 'Nass und gefroren: Dieser Messwert gilt nicht.',
  'live.warning.below-freezing': 'Unter dem Gefrierpunkt: ungenauer.',
  'live.warning.below-meter-range': 'Zu trocken für ein Messgerät mit Messspitzen.',
  'live.warning.above-fiber-saturation': 'Über Fasersättigung: nass; die genaue Holzfeuchte ist unbekannt.',
  'live.warning.above-fiber-saturation.far': 'Nass. Die genaue Holzfeuchte ist unbekannt.',
  'live.warning.outside-curve': 'Außerhalb der veröffentlichten Daten für diese Holzart; ungenau.',
  'live.warning.not-a-reading': 'Das kann keine Holzfeuchte sein.',

  'typed.meter': 'Messgerät: {meterName}',
  'typed.label': 'Anzeige des Messgeräts, {unit, select, pct {%} other {MΩ}}',
  'typed.use-meter': 'Verbundenes Messgerät verwenden',
  'typed.connect-meter': 'Messgerät verbinden',
  'typed.hint':
    'Geben Sie einen Messwert ein, dann die Eingabetaste.{unit, select, pct {} other { Auch 800k oder 2,2G geht.}}',
  'typed.not-saved': 'Nicht gespeichert. Wartet auf Pintally.',
  'round.nothing-saved': 'Jetzt wird nichts gespeichert. Wartet auf Pintally.',
  'round.nothing-saved.far': '✕ Jetzt wird nichts gespeichert.',
  'round.meter-lost.far':
    '{phase, select, reconnecting {✕ Messgerät weg. Verbindet erneut.} other {✕ Messgerät nicht verbunden.}}',

  'saved.used': '{depth, select, core {Innen} average {Mittel} other {Außen}} {mcPct} gespeichert',
  'saved.not-used':
    '{depth, select, core {Innen} average {Mittel} other {Außen}} gespeichert, nicht verwendet',
  'saved.on-board': '{boardCode}: {what}',
  'saved.raw': '(roh {shownValue})',
  'saved.use-meant': '{shownValue} verwenden',
  'saved.questionable': 'Fraglich. {why}',
  'saved.meter-off': 'Das Messgerät wich bei der Prüfung ab.',
  'saved.frozen': 'Gefroren.',
  'saved.dry-too-soon': 'So bald nach dem Einschnitt unwahrscheinlich.',
  'saved.dry-too-soon.later': 'Trockener, als es an seinen Orten werden kann.',

  'finish.title': 'Messrunde beenden?',
  'finish.open-spots':
    '{boardCode} hat {spots, plural, one {# offene Messstelle} other {# offene Messstellen}}.',
  'finish.more-open':
    '{boards, plural, one {# weiteres Brett hat} other {# weitere Bretter haben}} offene Messstellen.',
  'finish.unread':
    '{unread, plural, one {# Brett hat keine Messwerte. Es behält sein früheres Urteil, wenn es eines hat.} other {# Bretter haben keine Messwerte. Sie behalten ihr früheres Urteil, wenn sie eines haben.}}',
  'finish.unsaved':
    '{values, plural, one {# eingegebener Wert ist nicht gespeichert. Er wartet, bis Sie die Messrunde wieder öffnen.} other {# eingegebene Werte sind nicht gespeichert. Sie warten, bis Sie die Messrunde wieder öffnen.}}',
  'finish.effect': 'Eine beendete Messrunde können Sie wieder öffnen.',
  'finish.keep-probing': 'Weiter messen',
  'finish.finish': 'Messrunde beenden',

  'go-to.title': 'Zu einem Brett gehen',
  'go-to.label': 'Brettnummer',
  'go-to.hint': 'Geben Sie die Brettnummer oder einen Teil davon ein, oder scannen Sie das Etikett',
  'go-to.missing': 'Geben Sie die Brettnummer ein, oder scannen Sie das Etikett.',
  'go-to.unknown': 'Stapel {stackName} hat kein Brett {boardCode}. Prüfen Sie die Brettnummer.',
  'go-to.several':
    '{boards} Bretter haben „{boardCode}“ in ihrer Brettnummer, etwa {someCodes}. Geben Sie mehr davon ein.',
  'go-to.go': 'Los',

  'round-temp.right': 'Bestätigen',
  'round-temp.correct': 'Berichtigen',
  'round-temp.confirmed': 'Holz {woodTempC}, wie eingegeben.',
  'round-temp.title': 'Holztemperatur von {boardCode}',
  'round-temp.from-meter': '{woodTempC} vom Messgerät übernehmen',
  'round-temp.from-probe':
    'Die Messwerte übernehmen {woodTempC} von {sensorName}, wenn dieses Brett keine eigene Temperatur hat.',
  'round-temp.for-round': 'Für die ganze Messrunde',
  'round-temp.for-round-hint': 'Bretter mit eigener Temperatur behalten sie.',

  'key.space': 'Leertaste',
  'key.digits': '0–9',
  'key.backspace': 'Rücktaste',
  'key.delete': 'Entf',
  'key.enter': 'Eingabe',
  'key.escape': 'Esc',
  'key.page-down': 'Bild ↓',
  'key.page-up': 'Bild ↑',
  'key.scan': 'Etikettenscanner',
  'key.as-is': '{key}',
  'key.point': 'Komma, Punkt',
  'key.play': 'Wiedergabe',
  'key.stop': 'Stopp',
  'key.next-track': 'Nächster Titel',
  'key.previous-track': 'Voriger Titel',
  'key.louder': 'Lauter',
  'key.quieter': 'Leiser',
  'round-keys.title': 'Tasten und Optionen',
  'round-keys.save': 'Angezeigten Wert jetzt speichern, auch wenn er wandert',
  'round-keys.type': 'Messwert eingeben. Eingabe speichert; Esc geht zurück zum Messgerät',
  'round-keys.undo': 'Letzten Messwert dieses Bretts rückgängig machen',
  'round-keys.exclude': 'Letzten Messwert dieses Bretts ausschließen, mit Grund',
  'round-keys.use-meant': 'Nach einem Tippfehler den gemeinten Wert verwenden',
  'round-keys.replace': 'Messwert dieser Messstelle ersetzen',
  'round-keys.save-at-next': 'Eingegebenen Wert an der nächsten Messstelle speichern',
  'round-keys.next': 'Nächstes Brett; fragt, wenn Messstellen offen sind',
  'round-keys.skip': 'Nächstes Brett, auch mit offenen Messstellen',
  'round-keys.scan': 'Zum gescannten Brett',
  'round-keys.back': 'Ein Brett zurück',
  'round-keys.ends': 'Erstes Brett, letztes Brett',
  'round-keys.go-to': 'Zu einem Brett nach seiner Brettnummer',
  'round-keys.spot': 'Messstelle wählen',
  'round-keys.core': 'Wählen, wie innen gemessen wird',
  'round-keys.note': 'Notiz oder Foto hinzufügen',
  'round-keys.meter': 'Messgerät für eingegebene Messwerte',
  'round-keys.wood-temp': 'Holztemperatur dieses Bretts',
  'round-keys.far': 'Zwischen Fern- und Nahansicht wechseln',
  'round-keys.help': 'Alle Tasten',

  'round-page.title': 'Messrunde an Stapel {stackName}',
  'round-page.lead': 'Gemessen am {startedOn}. {summary} Für {endUseName}, am Ort {placeName}.',
  'round-page.labels-probed':
    'Etiketten für {boards, plural, one {das gemessene Brett} =2 {beide gemessenen Bretter} other {alle # gemessenen Bretter}}',
  'round-page.next-page': 'Nächste Seite eingeben',
  'round-page.labels-ready':
    'Etiketten für {boards, plural, one {das fertige Brett} other {# fertige Bretter}}',
  'round-page.go-to-stack': 'Zum Stapel',
  'round-page.reopen': 'Wieder öffnen',
  'round-date.change': 'Datum ändern',
  'round-date.title': 'Datum der Messrunde',
  'round-date.moves-all':
    'Alle Messwerte der Messrunde bekommen das neue Datum, aber keiner eines in der Zukunft. Urteile und Prognosen werden aktualisiert.',
  'round-date.start': 'Beginn der Messrunde',
  'round-date.year-right': 'Ja, ändern',
  'round-date.long-before-stack':
    'Das ist {years} Jahre, bevor dieser Stapel hinzugefügt wurde. {change, select, start {Keine Messrunde wurde gestartet.} page {Nichts wurde gespeichert.} other {Nichts wurde geändert.}} Stimmt das Jahr?',
  'round-date.changed': 'Beginn der Messrunde von {was} auf {is} geändert.',
  'round-page.nothing-probed': 'In dieser Messrunde wurde kein Brett gemessen.',
  'round-page.boards': 'Brett für Brett',
  'round-page.updating':
    '{boards, plural, one {Das Urteil von # Brett wird} other {Die Urteile von # Brettern werden}} aktualisiert.',
  'findings.board': 'Brett',
  'findings.species': 'Holzart',
  'findings.average': 'Mittlere Feuchte',
  'findings.shell-core': 'Außen / innen',
  'findings.core-not-read': 'nicht gemessen',
  'findings.call': 'Urteil',
  'findings.why': 'Warum',
  'findings.being-judged': 'Wird beurteilt',
  'findings.not-probed': 'Nicht gemessen',
  'findings.read-since': 'Stand von damals. Seitdem wieder gemessen.',
} satisfies Record<keyof typeof english, string>;
