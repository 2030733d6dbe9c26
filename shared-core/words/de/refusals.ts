import type { refusals as english } from '../en/refusals.ts';

export const refusals = {
  'refusal.no-yard': 'Kein Holzplatz ist geöffnet. Öffnen Sie zuerst einen.',
  'refusal.other-yard':
    '{kind, select, demo {Der Beispiel-Holzplatz} other {Ein anderer Holzplatz}} ist jetzt geöffnet. Nichts wurde geändert.',
  'refusal.act-reused':
    'Das wurde schon mit anderen Werten gespeichert. Nichts wurde geändert. Prüfen Sie, was auf dem Bildschirm steht, und versuchen Sie es erneut.',
  'refusal.not-found':
    '{what, select, board {Dieses Brett gibt es auf diesem Holzplatz nicht.} stack {Diesen Stapel gibt es auf diesem Holzplatz nicht.} place {Diesen Ort gibt es auf diesem Holzplatz nicht.} round {Diese Messrunde gibt es auf diesem Holzplatz nicht.} reading {Diesen Messwert gibt es auf diesem Holzplatz nicht.} species {Diese Holzart gibt es auf diesem Holzplatz nicht.} paper {Dieses Etikettenpapier gibt es auf diesem Holzplatz nicht.} other {Diesen Eintrag gibt es auf diesem Holzplatz nicht.}} Nichts wurde geändert. Gehen Sie zurück und wählen Sie neu.',
  'refusal.boards-edited-meanwhile':
    '{boards, plural, one {# Brett wurde} other {# Bretter wurden}} inzwischen bearbeitet: {someCodes}. Nichts wurde gespeichert. Wählen Sie, was geschehen soll.',
  'refusal.reading-damaged':
    'Ein Fehler der Festplatte hat diesen Messwert beschädigt. Nichts wurde verschoben. Messen Sie an der Stelle noch einmal.',
  'refusal.reading-there-already':
    'Dieser Messwert gehört schon zu {boardCode}. Nichts wurde verschoben. Wählen Sie ein anderes Brett.',
  'refusal.reading-before-sawn':
    '{boardCode} wurde am {sawnOn} eingeschnitten, nach diesem Messwert. Nichts wurde verschoben. Wählen Sie ein anderes Brett, oder berichtigen Sie den Tag des Einschnitts.',
  'refusal.reading-after-left':
    '{boardCode} ging am {leftOn} ab, vor diesem Messwert. Nichts wurde verschoben. Wählen Sie ein anderes Brett.',
  'refusal.reading-before-cut':
    '{boardCode} wurde am {cutOn} aus {otherCode} geschnitten, nach diesem Messwert. Nichts wurde verschoben. Wählen Sie {otherCode}. Dessen frühere Messwerte gelten auch für {boardCode}.',
  'refusal.reading-before-place':
    '{boardCode} ist seit {movedOn} am Ort {placeName}, also erst nach diesem Messwert. Nichts wurde verschoben. War es schon vor diesem Tag am Ort {placeName}?',
  'refusal.reading-moved':
    'Dieser Messwert gehört jetzt zu {boardCode}. Nichts wurde geändert. Bearbeiten Sie ihn dort.',
  'refusal.correction-slip':
    'Eingegeben wurde {rawPct}, aber {rawMeantPct} würde passen. Nichts wurde geändert. Was hat das Messgerät gezeigt?',
  'refusal.correction-slip.ohm':
    'Eingegeben wurde {rawOhm}, aber {rawMeantOhm} würde passen. Nichts wurde geändert. Was hat das Messgerät gezeigt?',
  'refusal.correction-unused':
    '{why} Der Wert würde nicht verwendet. Nichts wurde geändert. Hat das Messgerät das gezeigt?',
  'refusal.meter-sent-it':
    'Diesen Wert hat das Messgerät gesendet, er lässt sich nicht bearbeiten. Schließen Sie ihn aus, wenn er falsch ist.',
  'refusal.deeper-than-board':
    'Das Brett ist nur {boardThickness} dick: So tiefe Spitzen reichen bis zur anderen Seite. Nichts wurde geändert.',
  'refusal.nothing-saved': '{why} Nichts wurde gespeichert.',
  'refusal.nothing-changed': '{why} Nichts wurde geändert.',
  'refusal.request-unknown':
    'Dieses Fenster gehört zu einer anderen Version von Pintally. Nichts wurde getan. Starten Sie Pintally neu.',
  'refusal.foreign-page':
    'Diese Seite kann Pintally nicht benutzen. Nichts wurde geändert. Nehmen Sie das Fenster, das Pintally geöffnet hat.',
  'refusal.yard-left':
    'Bevor das erledigt war, haben Sie {kind, select, demo {den Beispiel-Holzplatz} other {einen anderen Holzplatz}} geöffnet. Nichts wurde geändert.',
  'refusal.stopped': 'Abgebrochen. Nichts wurde geändert.',
  'refusal.taken-back-later':
    'Die Festplatte ist voll oder fällt aus. Einige Bretter sind jetzt geändert. Schaffen Sie Platz. Pintally macht diese Änderungen dann rückgängig.',
  'refusal.partly-changed': 'Einige Bretter sind noch durch eine abgebrochene Bearbeitung geändert.',
  'refusal.closing':
    'Pintally wird gerade geschlossen. Nichts wurde geändert. Öffnen Sie es wieder, und versuchen Sie es erneut.',
  'refusal.machine-stopped':
    'Pintally hielt an, bevor es das bestätigt hat. Gespeicherte Messwerte sind sicher. Prüfen Sie nach dem Verbinden Ihre letzte Änderung.',
  'refusal.machine-away':
    'Pintally antwortet nicht. Nichts wurde getan. Versuchen Sie es erneut, wenn der Hinweis oben verschwunden ist.',

  'refusal.no-print-queue':
    'Keine Druckerwarteschlange gefunden. Nichts wurde gedruckt. Nehmen Sie den Druckdialog.',
  'refusal.print-queue-silent':
    'Die Druckerwarteschlange antwortet nicht. Sehen Sie nach dem Drucker, bevor Sie noch einmal drucken.',
  'refusal.printer-locked':
    'Die Druckerwarteschlange verlangt ein Kennwort. Nichts wurde gedruckt. Nehmen Sie den Druckdialog.',
  'refusal.printer-gone':
    '{printerName} wurde nicht gefunden. Nichts wurde gedruckt. Wählen Sie einen anderen Drucker.',
  'refusal.printer-stopped':
    '{printerName} ist angehalten{says, select, nothing {} other {: {reason}}}. Nichts wurde gedruckt. Starten Sie den Drucker in den Einstellungen dieses Computers.',
  'refusal.printer-without-paper':
    '{printerName} nimmt kein Papier von {widthMm} × {heightMm}. Nichts wurde gedruckt. Fügen Sie diese Größe in den Druckereinstellungen hinzu, oder nehmen Sie den Druckdialog.',
  'refusal.print-failed':
    '{printerName} hat nicht gedruckt{says, select, nothing {} other {: {reason}}}. Prüfen Sie den Drucker, und drucken Sie noch einmal.',
  'refusal.print-canceled':
    'Der Druck auf {printerName} wurde abgebrochen. Sehen Sie nach, was herausgekommen ist.',

  'refusal.file-in-use':
    'Ein anderes Programm benutzt die Datei des Holzplatzes. {undone} Schließen Sie dieses Programm. {again}',
  'refusal.disk-failed': 'Die Festplatte ist voll oder fällt aus. {undone} Schaffen Sie Platz. {again}',
  'refusal.yard-read-only':
    'Pintally darf nicht in die Datei des Holzplatzes oder ihren Ordner schreiben. {undone} Erlauben Sie das, und starten Sie Pintally neu. {again}',
  'refusal.unexpected':
    'Etwas ist schiefgegangen. {undone} Starten Sie Pintally neu. {again} Den Fehlerbericht finden Sie in den Einstellungen.',
  'refusal.undone': 'Nichts wurde gespeichert. Frühere Messwerte sind sicher.',
  'refusal.try-again': 'Versuchen Sie es dann erneut.',
  'refusal.value-not-saved': 'Der Messwert wurde nicht gespeichert. Frühere Messwerte sind sicher.',
  'refusal.press-space': 'Drücken Sie dann die Leertaste, solange die Spitzen noch im Holz sind.',
  'refusal.saved-not-updated':
    'Das Gespeicherte ist sicher, aber die Urteile sind nicht auf dem neuesten Stand.',
  'refusal.open-again': 'Öffnen Sie dann diese Seite erneut.',
  'refusal.meter-waits':
    'Die Werte des Messgeräts lassen sich noch nicht speichern. Frühere Messwerte sind sicher.',
  'refusal.goes-on': 'Pintally macht dann von selbst weiter.',
  'refusal.saved-or-not': 'Vielleicht wurde es gespeichert.',
  'refusal.not-twice': 'Versuchen Sie es dann erneut. Es wird nicht doppelt gespeichert.',
  'refusal.window-failed':
    'Etwas ist schiefgegangen. Gespeicherte Messwerte sind sicher. Versuchen Sie es erneut, oder starten Sie Pintally neu.',

  'refusal.yard-newer':
    'Die Datei des Holzplatzes {file} stammt von einem neueren Pintally. Sie wurde nicht geändert. Installieren Sie die neuere Version, um sie zu öffnen.',
  'refusal.yard-foreign':
    'Die Datei {file} stammt nicht von Pintally. Sie wurde nicht geändert. Verschieben Sie sie in einen anderen Ordner, und versuchen Sie es erneut.',
  'refusal.yard-missing':
    'Von der Datei des Holzplatzes {file} liegen nur noch die letzten Änderungen im Ordner. Nichts wurde geändert. Legen Sie die Datei zurück, stellen Sie eine Sicherung wieder her, oder beginnen Sie einen neuen Holzplatz.',
  'refusal.yard-vanished':
    'Die Datei des Holzplatzes {file} fehlt oder ist leer. Früher wurde darin gespeichert. Jetzt wurde nichts geändert. Legen Sie die Datei zurück und versuchen Sie es erneut, stellen Sie eine Sicherung wieder her, oder beginnen Sie einen neuen Holzplatz.',
  'refusal.yard-moved':
    '{what, select, changes {Die letzten Änderungen von {file} wurden} other {Die Datei des Holzplatzes {file} wurde}} {how, select, deleted {gelöscht oder verschoben} replaced {ersetzt} cut {abgeschnitten} other {überschrieben}}, während sie geöffnet war. {unsaved, select, yes {Alles Gespeicherte ist in dieser Kopie: {rescuedFile}. Diese Änderung wurde nicht gespeichert.} other {Alles Gespeicherte ist in dieser Kopie: {rescuedFile}.}} {state, select, replaced {Öffnen Sie die Kopie. „Erneut versuchen“ öffnet die Datei, die jetzt dort liegt.} spoiled {Öffnen Sie die Kopie.} other {Öffnen Sie die Kopie, oder legen Sie die Datei zurück und versuchen Sie es erneut.}}',
  'refusal.yard-gone':
    'Alles, was in {file} gespeichert war, ist in dieser Kopie: {rescuedFile}. Öffnen Sie die Kopie, oder legen Sie die Datei zurück und versuchen Sie es erneut.',
  'refusal.yard-not-rescued':
    '{what, select, changes {Die letzten Änderungen von {file} wurden} other {Die Datei des Holzplatzes {file} wurde}} {how, select, deleted {gelöscht oder verschoben} replaced {ersetzt} cut {abgeschnitten} other {überschrieben}}, während sie geöffnet war. Alles Gespeicherte ist noch in Pintally, ließ sich aber nicht in den Ordner kopieren. Schließen Sie Pintally nicht. Prüfen Sie den Ordner und die Festplatte, und versuchen Sie es erneut.',
  'refusal.yard-partly-rescued':
    '{what, select, changes {Die letzten Änderungen von {file} wurden} other {Die Datei des Holzplatzes {file} wurde}} {how, select, deleted {gelöscht oder verschoben} replaced {ersetzt} cut {abgeschnitten} other {überschrieben}}, während sie geöffnet war. Was sich noch lesen ließ, ist in dieser Kopie: {rescuedFile}. Sie hat {boards, plural, one {# Brett} other {# Bretter}} und {readings, plural, one {# Messwert} other {# Messwerte}}. {unsaved, select, yes {Der Rest war nicht lesbar, und diese Änderung wurde nicht gespeichert.} other {Der Rest war nicht lesbar.}} {kind, select, demo {Öffnen Sie die Kopie.} other {Öffnen Sie die Kopie, oder stellen Sie eine Sicherung wieder her.}}',
  'refusal.yard-partly-gone':
    'Was sich von {file} noch lesen ließ, ist in dieser Kopie: {rescuedFile}. Der Rest war nicht lesbar. Öffnen Sie die Kopie, oder stellen Sie eine Sicherung wieder her.',
  'refusal.yard-cut-not-rescued':
    '{what, select, changes {Die letzten Änderungen von {file} wurden} other {Die Datei des Holzplatzes {file} wurde}} {how, select, deleted {gelöscht oder verschoben} replaced {ersetzt} cut {abgeschnitten} other {überschrieben}}, während sie geöffnet war. Ein Teil des Gespeicherten ist noch in Pintally, ließ sich aber nicht in den Ordner kopieren. Schließen Sie Pintally nicht. Prüfen Sie den Ordner und die Festplatte, und versuchen Sie es erneut.',
  'refusal.demo-not-removed':
    'Der Beispiel-Holzplatz wurde nicht entfernt: Seine Datei {file} wird benutzt oder ist geschützt. Ihr eigener Holzplatz ist geöffnet, unverändert.',
  'refusal.yard-damaged':
    'Pintally kann die Datei des Holzplatzes {file} nicht vollständig lesen. Es ändert nichts daran.',
  'refusal.yard-changes-unreadable':
    'In der Datei des Holzplatzes {file} {changes, plural, one {ist die neueste Änderung} other {sind die neuesten # Änderungen}} nicht lesbar. Nichts wurde geändert.',
  'refusal.yard-in-use':
    'Ein anderes Programm benutzt die Datei des Holzplatzes {file}. Nichts wurde geändert. Schließen Sie dieses Programm, und versuchen Sie es erneut.',
  'refusal.yard-owned':
    'Pintally hat {file} am {openedAt} {program, select, window {in seinem eigenen Fenster} other {in einem Browser}} geöffnet, auf dem Computer {computerName}. Nichts wurde geändert. Schließen Sie Pintally dort, und versuchen Sie es erneut. Finden Sie es nicht, beenden Sie den Prozess {processId}.',
  'refusal.yard-two-names':
    'Die Datei des Holzplatzes {file} hat auf dieser Festplatte einen zweiten Namen (Hardlink). Zwei Programme könnten dann gleichzeitig hineinschreiben. Die Datei wurde nicht geändert. Löschen Sie den zweiten Namen, und versuchen Sie es erneut.',
  'refusal.yard-name-taken':
    'Um die Datei des Holzplatzes {file} zu öffnen, braucht Pintally den Namen {name}. Etwas anderes heißt schon so. Nichts wurde geändert. Verschieben Sie, was {name} heißt, in einen anderen Ordner, und versuchen Sie es erneut.',
  'refusal.yard-unreadable':
    'Pintally konnte {file} nicht benutzen. Nichts wurde geändert. Prüfen Sie, ob der Ordner da ist, ob Sie dort schreiben dürfen und ob die Festplatte voll ist.',
  'refusal.yard-sound':
    'Die Datei des Holzplatzes ist nicht beschädigt. Sie bleibt, wo sie ist. Nichts wurde geändert.',

  'refusal.backup-no-room':
    'In {folder} ließ sich nichts speichern: Der Platz reicht nicht. Ihr Holzplatz ist unverändert. Schaffen Sie Platz, oder wählen Sie einen anderen Ordner.',
  'refusal.backup-folder-refused':
    'In {folder} ließ sich nichts speichern. Ihr Holzplatz ist unverändert. Prüfen Sie, ob die Festplatte da ist und Sie darauf schreiben dürfen, oder wählen Sie einen anderen Ordner.',
  'refusal.backup-folder-not-changed':
    'In {folder} lassen sich keine Sicherungen speichern. Der Ordner für Sicherungen wurde nicht geändert. Prüfen Sie, ob die Festplatte da ist und Sie darauf schreiben dürfen, oder wählen Sie einen anderen Ordner.',
  'refusal.backup-folder-no-folder':
    'Das ist kein Ordner. Der Ordner für Sicherungen wurde nicht geändert. Wählen Sie einen anderen Ordner.',
  'refusal.backup-folder-own':
    'Dieser Ordner gehört Pintally selbst. Der Ordner für Sicherungen wurde nicht geändert. Wählen Sie einen anderen Ordner.',
  'refusal.backup-disk-failed':
    'In {folder} ließ sich nichts speichern: Die Festplatte fällt aus. Ihr Holzplatz ist unverändert. Wählen Sie einen Ordner auf einer anderen Festplatte.',
  'refusal.backup-damaged':
    'Die Sicherung hat ihre Prüfung nicht bestanden und wurde gelöscht. Ihr Holzplatz ist unverändert. Starten Sie Pintally neu; es prüft den Holzplatz.',
  'refusal.backup-own-not-open':
    'Ihr eigener Holzplatz ist nicht geöffnet. Keine Sicherung wurde gemacht. Öffnen Sie ihn, und versuchen Sie es erneut.',
  'refusal.backup-failed':
    'Etwas ist schiefgegangen. Ihr Holzplatz ist unverändert. Starten Sie Pintally neu. Den Fehlerbericht finden Sie in den Einstellungen.',
  'refusal.disk-silent':
    'Die Festplatte oder das Netzlaufwerk antwortet nicht. Nichts wurde geändert. Prüfen Sie den Anschluss, oder nehmen Sie etwas anderes.',
  'refusal.path-letters':
    'Ein Pfad darf keine Zeilenumbrüche oder Steuerzeichen haben. Nichts wurde geändert.',
  'refusal.path-relative': 'Geben Sie den vollständigen Pfad ein. Nichts wurde geändert.',
  'refusal.copy-is-folder': 'Das ist ein Ordner. Nichts wurde gespeichert. Hängen Sie einen Dateinamen an.',
  'refusal.copy-no-folder':
    'Den Ordner {folder} gibt es nicht. Nichts wurde gespeichert. Wählen Sie einen vorhandenen Ordner.',
  'refusal.copy-name-reserved':
    'Solche Namen benutzt Pintally selbst. Nichts wurde gespeichert. Wählen Sie einen anderen Namen.',
  'refusal.copy-no-plain-file':
    'Was so heißt, ist keine gewöhnliche Datei. Nichts wurde geändert. Wählen Sie einen anderen Namen.',
  'refusal.copy-in-use':
    'Diese Datei ist ein Holzplatz oder eine Datenbank in Gebrauch. Sie wurde nicht geändert. Wählen Sie einen anderen Namen.',
  'refusal.copy-in-data':
    'Dieser Ordner gehört Pintally selbst. Nichts wurde gespeichert. Wählen Sie einen anderen Ordner.',
  'refusal.restore-damaged':
    'Diese Datei ist beschädigt. Ihr Holzplatz ist unverändert. Wählen Sie eine andere Datei oder Sicherung.',
  'refusal.restore-no-yard':
    'Diese Datei ist kein Holzplatz. Nichts wurde geändert. Wählen Sie eine andere Datei.',
  'refusal.restore-newer':
    'Diese Datei stammt von einem neueren Pintally. Nichts wurde geändert. Installieren Sie die neuere Version, um sie wiederherzustellen.',
  'refusal.restore-open-yard':
    'Das ist der Holzplatz, der gerade geöffnet ist. Nichts wurde geändert. Wählen Sie eine andere Datei.',
  'refusal.restore-own-not-open':
    'Ihr eigener Holzplatz ist nicht geöffnet. Nichts wurde geändert. Öffnen Sie ihn, und stellen Sie dann wieder her.',
  'refusal.restore-busy':
    'Eine Sicherung wird gerade wiederhergestellt. Sonst wurde nichts geändert. Warten Sie, bis das fertig ist.',
  'refusal.restore-none':
    'Es wurde nichts wiederhergestellt, das sich rückgängig machen ließe. Nichts wurde geändert.',
  'refusal.restore-file-in-use':
    'Ein anderes Programm schreibt in diese Datei. Nichts wurde geändert. Schließen Sie dieses Programm, und versuchen Sie es erneut.',
  'refusal.restore-no-room':
    'In {folder} reicht der Platz nicht. Nichts wurde geändert. Schaffen Sie Platz, und versuchen Sie es erneut.',
  'refusal.restore-in-use':
    'Ein anderes Programm liest die Datei des Holzplatzes. Nichts wurde geändert. Schließen Sie dieses Programm, und versuchen Sie es erneut.',
  'refusal.restore-no-plain-file':
    'Das ist keine gewöhnliche Datei. Nichts wurde geändert. Wählen Sie die Datei eines Holzplatzes.',
  'refusal.picture-unknown':
    'Das ist kein Foto im Format JPEG, PNG oder WebP. Es wurde nicht gespeichert. Wählen Sie eine andere Datei.',
  'refusal.picture-incomplete':
    'Dieses Foto ist beschädigt oder unvollständig. Es wurde nicht gespeichert. Kopieren Sie es noch einmal von der Kamera.',
  'refusal.picture-too-large':
    'Diese Datei ist größer als 25\u00a0MB. Sie wurde nicht gespeichert. Wählen Sie ein kleineres Foto.',
  'refusal.picture-too-many-pixels':
    'Dieses Foto hat mehr als 100 Megapixel. Es wurde nicht gespeichert. Wählen Sie ein kleineres Foto.',
  'refusal.picture-too-many':
    'Hier haben höchstens {pictures} Fotos Platz. Es wurde nicht gespeichert. Löschen Sie zuerst eines.',
  'refusal.picture-there': 'Dieses Foto ist schon da.',
  'refusal.picture-no-room':
    'Die Festplatte ist voll. Das Foto wurde nicht gespeichert. Schaffen Sie Platz, und fügen Sie es noch einmal hinzu.',
  'refusal.picture-disk':
    'Die Festplatte lässt Pintally dieses Foto nicht speichern oder lesen. Prüfen Sie den Ordner mit der Datei des Holzplatzes.',
  'refusal.picture-missing':
    'Die Datei dieses Fotos fehlt. Alles andere ist in Ordnung. Stellen Sie eine Sicherung wieder her, um nach ihr zu suchen.',
  'refusal.picture-damaged':
    'Ein Fehler der Festplatte hat die Datei dieses Fotos beschädigt. Alles andere ist in Ordnung. Stellen Sie eine Sicherung wieder her, um nach ihr zu suchen.',
  'refusal.upload-stopped':
    'Das Hochladen wurde nicht fertig. Nichts wurde geändert. Fangen Sie noch einmal an.',
  'refusal.download-stopped':
    'Das Herunterladen wurde nicht fertig. Nichts wurde geändert. Fangen Sie noch einmal an.',
  'refusal.restore-file-gone':
    'Diese Datei lässt sich nicht öffnen. Nichts wurde geändert. Prüfen Sie den Pfad und die Festplatte.',

  'refusal.place-name-taken':
    'Einen Ort namens {placeName} gibt es schon. Nichts wurde gespeichert. Wählen Sie einen anderen Namen.',
  'refusal.stack-name-taken':
    'Einen Stapel namens {stackName} gibt es schon. Nichts wurde gespeichert. Wählen Sie einen anderen Namen.',
  'refusal.board-code-taken':
    'Ein Brett {boardCode} gibt es schon. Nichts wurde gespeichert. Wählen Sie eine andere Brettnummer.',
  'refusal.day-to-come':
    'Dieser Tag liegt in der Zukunft. Nichts wurde gespeichert. Geben Sie heute oder einen früheren Tag ein.',
  'refusal.read-before-sawn':
    '{boardCode} wurde am {readOn} gemessen, also vorher. Nichts wurde gespeichert. Berichtigen Sie den Tag des Einschnitts, oder schließen Sie diesen Messwert aus.',
  'refusal.sawn-after-left':
    '{boardCode} ging am {leftOn} ab, also vorher. Nichts wurde gespeichert. Berichtigen Sie den Tag des Einschnitts.',
  'refusal.species-unknown':
    'Die Holzart {speciesId} gibt es auf diesem Holzplatz nicht. Brett {boardCode} wurde nicht gespeichert. Wählen Sie eine Holzart aus der Liste.',
  'refusal.curve-unknown':
    'Die Kennlinie {curveId} gibt es nicht. {undone} Wählen Sie eine Kennlinie aus der Liste, oder keine.',
  'refusal.species-exists':
    'Eine Holzart {speciesId} gibt es schon. Nichts wurde gespeichert. Wählen Sie einen anderen Namen.',
  'refusal.use-exists':
    'Eine Verwendung {useId} gibt es schon. Nichts wurde gespeichert. Wählen Sie einen anderen Namen.',
  'refusal.species-not-saved': 'Die Holzart wurde nicht gespeichert.',
  'refusal.meter-used':
    '{meterName} wurde nicht gelöscht: Damit wurde schon gemessen oder geprüft. Sie können aufhören, es für eingegebene Messwerte zu verwenden.',
  'refusal.meter-connected':
    '{meterName} ist in Gebrauch. Nichts wurde geändert. Drücken Sie erst „Trennen“.',
  'refusal.meter-name-taken':
    'Ein Messgerät namens {meterName} gibt es schon. Nichts wurde gespeichert. Wählen Sie einen anderen Namen.',
  'refusal.meter-as-before': 'Das Messgerät wird wie bisher gelesen.',
  'refusal.move-before-sawn':
    '{boardCode} wurde am {sawnOn} eingeschnitten, also später. War damals schon der Stamm dort?',
  'refusal.here-before-sawn':
    'Eingeschnitten wurde am {sawnOn}, also später. Nichts wurde gespeichert. Geben Sie den Tag ein, an dem das Brett hierherkam.',
  'refusal.sawn-after-move':
    '{boardCode} ist seit {movedOn} am Ort {placeName}, also schon vorher. War damals der Stamm dort?',
  'refusal.move-to-come':
    'Dieser Tag liegt in der Zukunft. Nichts wurde umgelagert. Geben Sie den Tag ein, an dem die Bretter umgelagert wurden.',

  'refusal.weighed-to-come':
    'Diese Zeit liegt in der Zukunft. Nichts wurde gespeichert. Geben Sie ein, wann gewogen wurde.',
  'refusal.weighed-already':
    '{piece} hat für diese Zeit schon ein Gewicht. Nichts wurde gespeichert. Geben Sie eine andere Zeit ein, oder schließen Sie das andere Gewicht aus.',
  'refusal.piece-heavier-than-wet':
    '{weightGrams} ist mehr als {wetGrams}, das Nassgewicht von {piece}. Nichts wurde gespeichert. Prüfen Sie die Zahl und das Stück.',
  'refusal.section-heavier-than-wet':
    '{weightGrams} ist mehr als {wetGrams}, das Gewicht des Abschnitts beim Schneiden. Nichts wurde gespeichert. Prüfen Sie die Zahl und den Abschnitt.',
  'refusal.reading-impossible':
    '{reading} kann für {speciesName} kein Messwert sein. Die Darrprobe wurde nicht gespeichert. Berichtigen Sie den Messwert.',
  'refusal.checks-not-used':
    'Ihre Darrproben lassen sich noch nicht verwenden. {why} Messwerte werden wie bisher korrigiert.',

  'refusal.stack-empty':
    'Stapel {stackName} hat keine Bretter. Keine Messrunde wurde gestartet. Fügen Sie erst seine Bretter hinzu.',
  'refusal.round-finished':
    'Diese Messrunde ist beendet. Nichts wurde geändert. Öffnen Sie sie wieder, oder starten Sie eine neue.',
  'refusal.round-running':
    'An Stapel {stackName} läuft eine andere Messrunde. Nichts wurde geändert. Beenden Sie erst diese.',
  'refusal.round-dated':
    'Diese Messrunde hat ein früheres Datum, daher wurde der Wert des Messgeräts nicht gespeichert. Geben Sie ihre Messwerte ein.',
  'refusal.round-before-sawn':
    'Am {startedOn} war im Stapel {stackName} noch kein Brett eingeschnitten. Keine Messrunde wurde gestartet. Geben Sie einen späteren Tag ein, oder berichtigen Sie die Tage des Einschnitts.',
  'refusal.round-to-come':
    'Dieser Tag liegt in der Zukunft. Keine Messrunde wurde gestartet. Geben Sie heute oder einen früheren Tag ein.',
  'refusal.round-open':
    'Diese Messrunde läuft noch. Nichts wurde geändert. Beenden Sie sie, und ändern Sie dann ihr Datum.',
  'refusal.redated-to-come':
    'Diese Zeit liegt in der Zukunft. Nichts wurde geändert. Geben Sie eine frühere Zeit ein.',
  'refusal.redated-ends-to-come':
    'Der letzte Messwert der Runde läge in der Zukunft. Nichts wurde geändert. Geben Sie eine frühere Zeit ein.',
  'refusal.redated-before-sawn':
    '{boardCode} wurde am {sawnOn} eingeschnitten, also später. Nichts wurde geändert. Geben Sie einen späteren Tag ein, oder berichtigen Sie den Tag des Einschnitts.',
  'refusal.redated-after-left':
    '{boardCode} ging am {leftOn} ab, also vorher. Nichts wurde geändert. Geben Sie einen früheren Tag ein, oder holen Sie das Brett erst zurück.',
  'refusal.project-name-taken':
    'Ein Auftrag namens {projectName} besteht schon. Nichts wurde gespeichert. Wählen Sie einen anderen Namen.',
  'refusal.planned-move-empty':
    'Stapel {stackName} hat keine Bretter. Nichts wurde umgelagert. Löschen Sie stattdessen die geplante Umlagerung.',
  'refusal.sensor-known': 'Dieser Sensor ist schon als {sensorName} hinzugefügt. Nichts wurde gespeichert.',
  'refusal.sensor-no-place':
    'Ein Hygrometer braucht einen Ort. Nichts wurde gespeichert. Wählen Sie einen Ort.',
  'refusal.sensor-is-probe':
    'Ein Einstechthermometer steckt im Holz und gehört zu keinem Ort. Nichts wurde gespeichert. Lassen Sie den Ort weg.',
  'refusal.sensor-while-probing':
    'Spitzen sind im Holz, daher wird {sensorName} jetzt nicht gelesen. Ziehen Sie sie heraus, und lesen Sie noch einmal.',
  'refusal.sensor-silent-beside':
    '{sensorName} hat nicht geantwortet, während das Messgerät verbunden ist. Holen Sie den Sensor näher heran, oder trennen Sie das Messgerät, und lesen Sie noch einmal.',
  'refusal.sensor-busy.meter':
    'Ein Messgerät belegt Bluetooth, daher lässt sich {sensorName} nicht lesen. Drücken Sie auf der Seite „Messgerät“ auf „Trennen“, und lesen Sie noch einmal.',
  'refusal.sensor-busy.meter-search':
    'Pintally sucht Messgeräte, daher lässt sich {sensorName} nicht lesen. Drücken Sie auf der Seite „Messgerät“ auf „Anhalten“, und lesen Sie noch einmal.',
  'refusal.sensor-silent':
    '{sensorName} hat nicht geantwortet. Holen Sie den Sensor näher heran, prüfen Sie seine Batterie, und lesen Sie noch einmal.',
  'refusal.sensor-later':
    'Dieser Tag kommt erst noch. Nichts wurde gespeichert. Wählen Sie einen anderen Tag.',
  'refusal.air-later': 'Dieser Tag kommt erst noch. Nichts wurde gespeichert. Wählen Sie einen anderen Tag.',
  'refusal.air-other':
    'Für den {measuredOn} sind schon {airTempC} und {humidityRhPct} Luftfeuchte gespeichert. Ersetzen?',
  'refusal.air-no-days':
    'An diesen Tagen gibt es keine Werte von Sensoren. Nichts wurde gespeichert. Wählen Sie andere Tage.',
  'refusal.air-known': 'Dieser Luftwert vom {measuredOn} am Ort {placeName} ist schon gespeichert.',
  'refusal.planned-move-there':
    '{name} ist schon am Ort {placeName}. Nichts wurde gespeichert. Wählen Sie einen anderen Ort.',
  'refusal.page-board-twice':
    'Zwei Zeilen der Seite gehören zu Brett {boardCode}. Nichts wurde gespeichert. Schreiben Sie seine Messwerte in eine Zeile.',
  'refusal.page-empty': 'Noch kein Messwert ist eingegeben. Nichts wurde gespeichert.',
  'refusal.page-to-come':
    'Diese Zeit liegt in der Zukunft. Nichts wurde gespeichert. Geben Sie einen früheren Tag oder eine frühere Uhrzeit ein.',
  'refusal.page-place-later':
    'Die Bretter wurden am {startedOn} gemessen. Nichts wurde gespeichert. Dorthin kamen sie an diesem oder einem früheren Tag: Geben Sie den ein.',
  'refusal.page-before-sawn':
    '{boardCode} wurde am {sawnOn} eingeschnitten, also später. Nichts wurde gespeichert. Geben Sie einen späteren Tag ein, oder berichtigen Sie den Tag des Einschnitts.',
  'refusal.page-before-cut':
    '{boardCode} wurde am {cutOn} aus {fromCode} geschnitten, also später. Nichts wurde gespeichert. Schreiben Sie die Messwerte in die Zeile von {fromCode}.',
  'refusal.page-after-left':
    '{boardCode} ging am {leftOn} ab, also vorher. Nichts wurde gespeichert. Geben Sie einen früheren Tag ein, oder holen Sie das Brett erst zurück.',
  'refusal.page-deeper-than-board':
    '{boardCode} ist nur {boardThickness} dick: So tiefe Spitzen reichen bis zur anderen Seite. Nichts wurde gespeichert. Berichtigen Sie die Tiefe.',
  'refusal.board-done':
    'Jede Messstelle von {boardCode} hat ihren Messwert. Nichts wurde gespeichert. Wählen Sie eine Messstelle, um sie noch einmal zu messen, oder gehen Sie zum nächsten Brett.',
  'refusal.test-block-unknown':
    'Was {meterName} daran anzeigen sollte, ist unbekannt. Nichts wurde gespeichert. Nehmen Sie einen Block, dessen Wert die Einheit der Anzeige hat.',
  'refusal.test-block-beyond':
    '{meterName} kann diesen Wert nicht anzeigen. Nichts wurde gespeichert. Nehmen Sie einen Block im Messbereich.',
  'refusal.check-excluded':
    'Diese Prüfung von {meterName} ist ausgeschlossen. Nichts wurde geändert. Beziehen Sie sie erst wieder ein.',
  'refusal.check-other-unit':
    '{meterName} hatte bei der Prüfung eine andere Einheit. Nichts wurde geändert. Prüfen Sie noch einmal.',
  'refusal.meter-too-far-off':
    '{meterName} liegt zu weit daneben, um zu korrigieren. Nichts wurde geändert. Prüfen Sie Batterie, Spitzen und Einstellung, und machen Sie die Prüfung noch einmal.',
  'refusal.no-value':
    'Das Messgerät zeigt keinen Wert. Nichts wurde gespeichert. Stechen Sie die Spitzen ein, oder geben Sie den Wert ein.',
  'refusal.no-new-value':
    'Seit {seconds}\u00a0s kein neuer Wert. Nichts wurde gespeichert. Sehen Sie nach dem Messgerät, oder geben Sie den Wert ein.',
  'refusal.meter-unconfirmed':
    'Dieses Messgerät hat sich geändert oder ist ein anderes. Nichts wurde gespeichert. Beantworten Sie die Frage dazu, oder geben Sie den Wert ein.',
  'refusal.spot-changed':
    'Diese Messstelle von {boardCode} hat inzwischen einen anderen Messwert. Nichts wurde gespeichert. Sehen Sie ihn an, und speichern Sie dann noch einmal.',
  'refusal.insertion-saved':
    'Die Spitzen sind noch im Holz, und ihr Messwert auf {boardCode} ist gespeichert. Mehr wurde nicht gespeichert. Ziehen Sie sie für die nächste Messstelle heraus.',
  'refusal.insertion-maybe-saved':
    'Das kann der Messwert sein, der auf {boardCode} schon gespeichert ist. Mehr wurde nicht gespeichert. Ziehen Sie die Spitzen für die nächste Messstelle heraus.',
  'refusal.insertion-elsewhere':
    'Eingestochen wurde auf {boardCode}. Nichts wurde gespeichert. Ziehen Sie die Spitzen heraus, oder drücken Sie noch einmal die Leertaste, um hier zu speichern.',
  'refusal.meter-elsewhere':
    'Ein anderes Fenster benutzt das Messgerät. Nichts wurde gespeichert. Drücken Sie erst „Hier verwenden“.',
  'refusal.board-left-stack':
    '{boardCode} ist nicht mehr in diesem Stapel. Nichts wurde gespeichert. Wählen Sie ein anderes Brett.',
  'refusal.meter-not-found':
    'Kein Messgerät dieses Namens wurde gefunden. Nichts wurde geändert. Suchen Sie erst nach Messgeräten.',
  'refusal.simulated-elsewhere':
    'Das simulierte Messgerät erfindet seine Werte. Es arbeitet nur auf dem Beispiel-Holzplatz. Nichts wurde geändert.',
  'refusal.meter-other-unit':
    '{meterName} misst in einer anderen Einheit. Nichts wurde geändert. Wählen Sie ein Messgerät mit derselben Einheit.',
  'refusal.meter-keeps-unit':
    '{meterName} hat Messwerte in {unit, select, pct {Prozent} other {Ohm}}. Nichts wurde geändert. Fügen Sie für {unit, select, pct {Ohm} other {Prozent}} ein weiteres Handmessgerät hinzu.',
  'refusal.meter-file-not-offered':
    '{meterName} sendet den Wert nicht, den diese Datei beschreibt. Nichts wurde geändert.',
  'refusal.meter-sends-percent':
    '{meterName} sendet Prozent, nicht Ohm. Nichts wurde geändert. Wählen Sie, worauf es eingestellt ist.',
  'refusal.typed-other-unit':
    'Eingegeben wurde in {unit, select, pct {Prozent} other {Megaohm}}, aber das Messgerät zeigt jetzt {unit, select, pct {Ohm} other {Prozent}}. Nichts wurde gespeichert. Geben Sie den Wert neu ein, oder wählen Sie das andere Messgerät.',
  'refusal.typed-off-removed':
    '{meterName} wurde entfernt. Nichts wurde gespeichert. Wählen Sie ein anderes Messgerät, und speichern Sie noch einmal.',
  'refusal.meter-removed':
    '{meterName} wurde entfernt. Nichts wurde geändert. Machen Sie das im Verlauf rückgängig, um es wieder zu verwenden.',
  'refusal.meter-said':
    'Welches Messgerät das ist, wurde schon beantwortet, oder es ist nicht mehr verbunden. Nichts wurde geändert.',
  'refusal.meter-not-connected':
    'Kein Messgerät ist verbunden. Nichts wurde geändert. Verbinden Sie zuerst eines.',
} satisfies Record<keyof typeof english, string>;
