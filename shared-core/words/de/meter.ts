import type { meter as english } from '../en/meter.ts';

export const meter = {
  'meter.simulated': 'Simuliertes Messgerät',
  'meter.nameless': 'Gerät ohne Namen',
  'meter.the-meter': 'das Messgerät',

  'meter.state.none': 'Kein Messgerät ist verbunden.',
  'meter.state.typed-only': 'Kein Messgerät wird benutzt. Geben Sie die Messwerte ein.',
  'meter.state.looking': 'Messgeräte werden gesucht. Schalten Sie Ihres ein und legen Sie es in die Nähe.',
  'meter.state.connecting': 'Verbindung mit {meterName} …',
  'meter.state.listening': 'Wartet auf {meterName} …',
  'meter.state.discovering': 'Fragt {meterName}, was es sendet …',
  'meter.state.live': 'Verbunden mit {meterName}.',
  'meter.state.heard': 'Empfängt {meterName}. Es sendet seine Werte ohne Verbindung.',
  'meter.state.back': 'Wieder verbunden mit {meterName}. Die Werte werden gestartet …',
  'meter.state.needs-setup': 'Verbunden mit {meterName}. Es ist noch nicht eingerichtet.',
  'meter.state.heard-needs-setup': 'Empfängt {meterName}. Es ist noch nicht eingerichtet.',
  'meter.state.failed':
    'Keine Verbindung mit {meterName}. {why} Schalten Sie das Messgerät ein, gehen Sie näher heran und verbinden Sie erneut.',
  'meter.state.lost': 'Verbindung mit {meterName} verloren. {why}',
  'meter.state.unheard': '{meterName} ist außer Reichweite. {why}',
  'meter.state.reconnecting':
    '{trouble} Gespeicherte Messwerte sind sicher. Pintally versucht es weiter; Sie können inzwischen Messwerte eingeben.',
  'meter.state.simulated-ready': 'Das simulierte Messgerät ist bereit.',
  'meter.state.simulated-live': 'Das simulierte Messgerät ist verbunden. Seine Werte sind erfunden.',

  'meter.why.not-found': 'Das Messgerät wurde nicht gefunden.',
  'meter.why.refused': 'Das Messgerät hat die Verbindung abgelehnt.',
  'meter.why.not-listed': 'Das Messgerät hat nicht angegeben, welche Werte es hat.',
  'meter.why.not-started': 'Das Messgerät hat nicht angefangen zu senden.',
  'meter.why.start-refused': 'Das Messgerät hat seinen Startbefehl abgelehnt.',
  'meter.why.pairing':
    'Das Koppeln mit dem Messgerät ist gescheitert. Schalten Sie es in den Kopplungsmodus, oder koppeln Sie es in den Systemeinstellungen.',
  'meter.why.unheard': 'Seit einer Weile kommt nichts mehr an.',
  'meter.why.no-answer': 'Das Messgerät antwortet nicht.',
  'meter.why.stopped-answering': 'Das Messgerät antwortet nicht mehr.',
  'meter.why.dropped': 'Die Verbindung ist abgerissen.',
  'meter.why.bluetooth-stopped': 'Bluetooth ist unerwartet ausgefallen.',

  'meter.adapter.on': 'Bluetooth ist eingeschaltet.',
  'meter.adapter.starting': 'Bluetooth startet.',
  'meter.adapter.missing':
    'Kein Bluetooth-Adapter gefunden. Stecken Sie einen ein, und suchen Sie noch einmal nach Messgeräten. Messwerte eingeben können Sie auch ohne.',
  'meter.adapter.missing-hci':
    'Kein Bluetooth-Adapter gefunden, und kein Bluetooth-Dienst läuft. Stecken Sie einen Adapter ein, oder geben Sie in einem Terminal ein: sudo systemctl enable --now bluetooth. Suchen Sie dann noch einmal nach Messgeräten. Messwerte eingeben können Sie auch ohne.',
  'meter.adapter.off':
    'Bluetooth ist ausgeschaltet. Schalten Sie es in den Systemeinstellungen ein. Messwerte eingeben können Sie auch ohne.',
  'meter.adapter.off-linux':
    'Bluetooth ist ausgeschaltet. Schalten Sie es in den Systemeinstellungen ein, oder geben Sie in einem Terminal ein: bluetoothctl power on. Messwerte eingeben können Sie auch ohne.',
  'meter.adapter.off-macos':
    'Bluetooth ist ausgeschaltet. Schalten Sie es im Kontrollzentrum ein. Messwerte eingeben können Sie auch ohne.',
  'meter.adapter.off-windows':
    'Bluetooth ist ausgeschaltet. Schalten Sie es unter „Einstellungen“, „Bluetooth und Geräte“ ein. Messwerte eingeben können Sie auch ohne.',
  'meter.adapter.refused':
    'Pintally darf Bluetooth nicht benutzen. Erlauben Sie es in den Datenschutzeinstellungen des Systems, und suchen Sie noch einmal nach Messgeräten. Messwerte eingeben können Sie auch ohne.',
  'meter.adapter.refused-bluez':
    'Ihr Konto darf den Bluetooth-Dienst nicht benutzen. Geben Sie in einem Terminal ein: sudo usermod -aG bluetooth $USER. Melden Sie sich dann ab und wieder an. Messwerte eingeben können Sie auch ohne.',
  'meter.adapter.refused-hci':
    'Pintally darf den Bluetooth-Adapter nicht benutzen, und kein Bluetooth-Dienst läuft. Geben Sie in einem Terminal ein: sudo systemctl enable --now bluetooth. Suchen Sie dann noch einmal nach Messgeräten. Messwerte eingeben können Sie auch ohne.',
  'meter.adapter.refused-macos':
    'Pintally darf Bluetooth nicht benutzen. Öffnen Sie „Systemeinstellungen“, „Datenschutz & Sicherheit“, „Bluetooth“. Schalten Sie Pintally ein, oder das Programm, mit dem Sie es gestartet haben. Starten Sie Pintally dann neu. Messwerte eingeben können Sie auch ohne.',
  'meter.adapter.refused-windows':
    'Windows lässt Pintally Bluetooth nicht benutzen. Öffnen Sie „Einstellungen“, „Datenschutz und Sicherheit“, „Funktechnik“, und erlauben Sie es. Suchen Sie dann noch einmal nach Messgeräten. Messwerte eingeben können Sie auch ohne.',
  'meter.adapter.unsupported':
    'Dieser Bluetooth-Adapter ist zu alt für Messgeräte mit Bluetooth Low Energy. Nehmen Sie einen anderen. Messwerte eingeben können Sie auch ohne.',
  'meter.adapter.unsupported-windows':
    'Windows findet keinen Bluetooth-Adapter für Messgeräte mit Bluetooth Low Energy. Installieren Sie den Treiber Ihres Adapters, oder nehmen Sie einen anderen Adapter. Messwerte eingeben können Sie auch ohne.',
  'meter.adapter.module-missing':
    'Die Bluetooth-Unterstützung fehlt oder gehört zu einer anderen Version. Führen Sie im Ordner von Pintally „npx node electron/meter/native-socket.ts“ aus, und suchen Sie noch einmal nach Messgeräten. Messwerte eingeben können Sie auch ohne.',
  'meter.adapter.no-answer':
    'Der Bluetooth-Adapter antwortet nicht. Schalten Sie Bluetooth aus und wieder ein, oder ziehen Sie den Adapter heraus und stecken Sie ihn wieder ein. Messwerte eingeben können Sie auch ohne.',
  'meter.adapter.no-answer-bluez':
    'Der Bluetooth-Dienst antwortet nicht. Geben Sie in einem Terminal ein: sudo systemctl restart bluetooth. Suchen Sie dann noch einmal nach Messgeräten. Messwerte eingeben können Sie auch ohne.',
  'meter.adapter.service-stopped':
    'Der Bluetooth-Dienst dieses Computers ist ausgefallen. Geben Sie in einem Terminal ein: sudo systemctl start bluetooth. Suchen Sie dann noch einmal nach Messgeräten. Messwerte eingeben können Sie auch ohne.',
  'meter.adapter.stopped':
    'Bluetooth ist unerwartet ausgefallen. Es startet von selbst neu. Gespeicherte Messwerte sind sicher.',

  'meter.radio.bluez': 'Messgeräte verbinden sich über den Bluetooth-Dienst dieses Computers (BlueZ).',
  'meter.radio.hci': 'Messgeräte verbinden sich direkt über den Adapter. Kein Bluetooth-Dienst läuft.',
  'meter.radio.hci-beside-bluez':
    'Messgeräte verbinden sich direkt über den Adapter. Ihr Konto darf den Bluetooth-Dienst nicht benutzen.',
  'meter.radio.macos': 'Messgeräte verbinden sich über macOS.',
  'meter.radio.windows': 'Messgeräte verbinden sich über Windows.',
  'meter.radio.in-browser':
    'Das Bluetooth dieses Computers wird benutzt. Der Browser braucht keine Erlaubnis.',

  'meter.self.format-length':
    'Die Beschreibung, die das Messgerät von seinem Wert gibt, hat {sent, plural, one {# Byte} other {# Bytes}}; es müssen {needed} sein.',
  'meter.self.format-undefined':
    'Das Messgerät gibt für seinen Wert das Format {format} an, das der Bluetooth-Standard nicht kennt.',
  'meter.self.format-unreadable':
    'Das Messgerät gibt für seinen Wert das Format {format} an, das keine Zahl ist.',
  'meter.self.exponent-absurd':
    'Das Messgerät gibt seinen Wert als Vielfaches von 10^{exponent} an. Das kann nicht stimmen.',
  'meter.self.humidity-unconfirmed':
    'Das Messgerät sendet den genormten Wert für Luftfeuchte. Ist damit die Holzfeuchte gemeint, richten Sie es unten ein.',
  'meter.self.several':
    'Das Messgerät bietet {values} Werte an, die der Messwert sein könnten. Wählen Sie unten einen.',
  'meter.self.holds-nothing':
    'Das Messgerät meldet, dass es seinen Wert hält, aber der Wert ändert sich. Prüfen Sie, welche Bits seine Taste sind.',
  'meter.self.changed':
    'Das Messgerät sendet den Wert nicht mehr, an dem es abgelesen wurde. Prüfen Sie, was jetzt gelesen wird.',
  'meter.self.start-refused': '{meterName} hat diesen Befehl abgelehnt. Versuchen Sie einen anderen.',
  'meter.self.not-offered': '{meterName} bietet diesen Wert nicht an. Wählen Sie einen anderen.',

  'meter.value.undescribed': 'Diese Bytes lassen sich erst lesen, wenn das Messgerät eingerichtet ist.',
  'meter.value.format-unreadable': 'Das Format {format} lässt sich nicht als Zahl lesen.',
  'meter.value.bytes-missing':
    'Das Messgerät hat {sent, plural, one {# Byte} other {# Bytes}} gesendet; sein Wert braucht {needed}.',
  'meter.value.bytes-extra':
    'Das Messgerät hat {sent, plural, one {# Byte} other {# Bytes}} gesendet; sein Wert hat genau {needed}.',
  'meter.value.too-large': 'Das Messgerät hat eine Zahl gesendet, die für einen Messwert zu groß ist.',
  'meter.value.not-valid': 'Kein Messwert: Spitzen draußen.',
  'meter.value.above-scale': 'Der Wert liegt über dem, was das Messgerät anzeigen kann.',
  'meter.value.below-scale': 'Der Wert liegt unter dem, was das Messgerät anzeigen kann.',
  'meter.value.not-at-resolution': 'Kein Messwert: Spitzen draußen.',
  'meter.value.reserved-code': 'Das Messgerät hat einen Code gesendet, den der Standard freihält.',
  'meter.value.not-text': 'Das Messgerät hat Bytes gesendet, die kein Text sind.',
  'meter.value.shows-none': 'Das Messgerät zeigt „{shown}“, und das ist kein Messwert.',
  'meter.value.shows-ambiguous': 'Das Messgerät zeigt „{shown}“, und das lässt sich auf zwei Arten lesen.',
  'meter.value.shows-other-unit':
    'Das Messgerät zeigt „{shown}“, ist aber für {unit, select, pct {Prozent} other {Ohm}} eingerichtet.',
  'meter.value.frame-invalid':
    'Das Messgerät hat ein ungültiges Bluetooth-Paket gesendet. Es wurde übergangen.',
  'meter.value.bytes-too-many':
    'Das Messgerät hat {sent} Bytes auf einmal gesendet; Bluetooth erlaubt {allowed}. Sie wurden übergangen.',
  'meter.value.too-fast':
    'Das Messgerät hat zu schnell gesendet: {missed, plural, one {# Wert ging verloren} other {# Werte gingen verloren}}.',

  'meter.format.unsigned': '{bits} Bit ohne Vorzeichen',
  'meter.format.signed': '{bits} Bit mit Vorzeichen',
  'meter.format.float': 'Gleitkommazahl mit {bits} Bit (IEEE 754)',
  'meter.format.sfloat': 'SFLOAT mit 16 Bit (IEEE 11073)',
  'meter.format.medfloat': 'FLOAT mit 32 Bit (IEEE 11073)',
  'meter.format.text': 'Text',
  'meter.format.other': 'Format {format}',

  'meter.chip.label': 'Messgerät:',
  'meter.chip.idle': 'Kein Messgerät',
  'meter.chip.scanning': 'Messgeräte werden gesucht',
  'meter.chip.connecting': 'Verbindet',
  'meter.chip.discovering': 'Verbindet',
  'meter.chip.needs-description': 'Noch einzurichten',
  'meter.chip.live': 'Verbunden',
  'meter.chip.to-confirm': 'Messgerät prüfen',
  'meter.chip.simulated-live': 'Simulation verbunden',
  'meter.chip.paused': 'Messrunde unterbrochen. Nichts wird gespeichert.',
  'meter.chip.reconnecting': 'Verbindet erneut',
  'meter.chip.failed': 'Nicht verbunden',
  'meter.chip.unknown': 'Messgerät: Stand unbekannt',
  'meter.chip.no-bluetooth': 'Kein Bluetooth',
  'meter.chip.battery': 'Batterie\u00a0{batteryPct}',

  'meter.title': 'Messgerät',
  'meter.lead':
    'Verbinden Sie ein Bluetooth-Messgerät mit Messspitzen, das seinen Wert sendet, oder geben Sie die Messwerte ein.',

  'meter.round-paused':
    'Die Messrunde an Stapel {stackName} ist unterbrochen. Werte des Messgeräts werden nur in der Messrunde gespeichert.',
  'meter.back-to-round': 'Zurück zur Messrunde',

  'meter.connect.title': 'Verbindung',
  'meter.connect.look': 'Bluetooth-Messgeräte suchen',
  'meter.connect.looking': 'Sucht …',
  'meter.connect.simulate': 'Simuliertes Messgerät verwenden',
  'meter.connect.connect': 'Verbinden',
  'meter.connect.connect-to': '{meterName} verbinden',
  'meter.connect.set-up-below': 'Richten Sie es unten ein.',
  'meter.connect.disconnect': 'Trennen',
  'meter.connect.stop': 'Anhalten',
  'meter.connect.devices': 'Gefundene Bluetooth-Geräte',
  'meter.connect.used-before': 'schon benutzt',
  'meter.connect.none-found':
    'Noch nichts gefunden. Schalten Sie das Messgerät ein und halten Sie es nahe heran. Manche sind nur wach, solange eine Taste gedrückt ist.',

  'meter.signal': '{strength}, {dbm} dBm',
  'meter.signal.strong': 'stark',
  'meter.signal.good': 'gut',
  'meter.signal.weak': 'schwach',
  'meter.signal.very-weak': 'sehr schwach',
  'meter.signal.unknown': 'Signalstärke unbekannt',

  'meter.live.title': 'Anzeige',
  'meter.live.raw': 'roh, wie am Messgerät',
  'meter.live.spread-pct': 'Streuung der letzten Augenblicke: {spreadPoints}',
  'meter.live.spread-ohm': 'Streuung der letzten Augenblicke: {spreadOhm}',
  'meter.live.received': 'Empfangen',
  'meter.live.decoded': 'Gelesen',
  'meter.live.no-reading': 'Spitzen draußen',
  'meter.live.other': 'Ohne Wert',
  'meter.live.refused': 'Unlesbar',
  'meter.live.last-refused': 'Zuletzt unlesbar: {why}',
  'meter.live.temp': 'Holztemperatur, vom Messgerät: {woodTempC}.',
  'meter.live.setting': 'Am Messgerät eingestellte Holzart: {setting}.',
  'meter.live.setting-differs':
    'Das Messgerät steht auf {setting}. Eingerichtet haben Sie es mit {expected}. Stellen Sie es zurück, bevor Sie Messwerte speichern.',
  'meter.live.battery-at': 'Batterie {batteryPct}.',

  'meter.details': 'Einzelheiten',
  'meter.reading.title-new': 'Dieses Messgerät einrichten',
  'meter.reading.title': 'Wie der Wert gelesen wird',
  'meter.reading.self-described': 'Das Messgerät beschreibt seinen Wert selbst.',
  'meter.reading.by-hand': 'Von Ihnen eingerichtet.',
  'meter.reading.beside': 'Außerdem verwendet',
  'meter.reading.hold': 'seine Taste',
  'meter.reading.species': 'seine Holzarteneinstellung',
  'meter.reading.temperature': 'seine Temperatur',
  'meter.reading.battery': 'seine Batterie',
  'meter.reading.format': 'Format',
  'meter.reading.first-byte': 'Erstes Byte',
  'meter.reading.first-bit': 'Erstes Bit',
  'meter.reading.bits':
    '{bits, plural, one {# Bit} other {# Bits}} {sign, select, signed {mit Vorzeichen} other {ohne Vorzeichen}}',
  'meter.reading.nth': 'Wievielte Zahl im Text',
  'meter.reading.byte-order': 'Reihenfolge der Bytes',
  'meter.reading.low-first': 'Niederwertiges Byte zuerst (üblich)',
  'meter.reading.high-first': 'Höherwertiges Byte zuerst',
  'meter.reading.power': 'Zehnerpotenz',
  'meter.reading.times': 'Malgenommen mit',
  'meter.reading.plus': 'Dazu',
  'meter.reading.unit': 'Einheit',
  'meter.reading.unit-pct': '% Holzfeuchte',
  'meter.reading.unit-ohm': 'Ohm',
  'meter.reading.range': 'Kann anzeigen',
  'meter.reading.range-pct': '{rawLowest}–{rawHighestPct}',
  'meter.reading.range-ohm': '{rawLowestOhm} bis {rawHighestOhm}',
  'meter.reading.set-up': 'Selbst einrichten',

  'meter.offered.caption': 'Werte, die das Messgerät anbietet, mit ihren neuesten Bytes',
  'meter.offered.characteristic': 'Merkmal',
  'meter.offered.description': 'Eigene Beschreibung',
  'meter.offered.sends': 'Sendet von selbst',
  'meter.offered.sends-yes': 'ja',
  'meter.offered.sends-no': 'nein',
  'meter.offered.bytes': 'Neueste Bytes',
  'meter.offered.bytes-none': 'noch keine',
  'meter.offered.service': 'im Dienst',
  'meter.offered.read': '◀ der Messwert',

  'meter.form.title': 'Messgerät einrichten',
  'meter.form.how':
    'Stechen Sie die Spitzen in ein Brett. Ändern Sie die Felder, bis die Vorschau mit der Anzeige des Messgeräts übereinstimmt.',
  'meter.form.preview': 'Vorschau',
  'meter.form.preview-none': 'Von diesem Merkmal kamen noch keine Bytes, daher gibt es keine Vorschau.',
  'meter.form.characteristic': 'Merkmal',
  'meter.form.characteristic-choose': 'Wählen Sie eines',
  'meter.form.first-byte-hint': '0 ist das erste.',
  'meter.form.power-hint': '−1, wenn 126 für 12,6 steht.',
  'meter.form.bits-format': 'Bits',
  'meter.form.bits': 'Anzahl der Bits',
  'meter.form.times': 'Malnehmen mit',
  'meter.form.plus': 'Dann dazuzählen',
  'meter.form.lowest': 'Kleinster Wert der Anzeige',
  'meter.form.highest': 'Größter Wert der Anzeige',
  'meter.form.save': 'Speichern',
  'meter.form.saved': 'Gespeichert. Pintally liest dieses Messgerät künftig ebenso.',

  'meter.form.wrong.characteristic': 'Wählen Sie das Merkmal, in dem der Messwert steht.',
  'meter.form.wrong.times': 'Geben Sie eine andere Zahl als 0 ein. 1 ändert nichts.',
  'meter.form.wrong.plus': 'Geben Sie eine Zahl ein. 0 ändert nichts.',
  'meter.form.wrong.lowest': 'Geben Sie den kleinsten Wert ein, den das Messgerät anzeigen kann.',
  'meter.form.wrong.highest': 'Geben Sie den größten Wert ein, den das Messgerät anzeigen kann.',
  'meter.form.wrong.order': 'Der größte Wert muss über dem kleinsten liegen.',

  'meter-profile.question': 'Auf welche Holzart ist Ihr Messgerät eingestellt? Wie lang sind seine Spitzen?',
  'meter-profile.question-ohms': 'Zeigt Ihr Messgerät Ohm und nicht Prozent? Wie lang sind seine Spitzen?',
  'meter-profile.question-of': 'Auf welche Holzart ist {meterName} eingestellt? Wie lang sind die Spitzen?',
  'meter-profile.answer': 'Antworten',
  'meter-profile.unknown': 'Weiß ich nicht',
  'meter-profile.unknown-saved':
    'Gespeichert. Messwerte bleiben weniger sicher. Sie können später auf der Seite „Messgerät“ antworten.',

  'meter-profile.title': 'Über {meterName}',
  'meter-profile.title-new': 'Ihr Messgerät',
  'meter-profile.name': 'Name',
  'meter-profile.usual-name': '{number, plural, =1 {Handmessgerät} other {Handmessgerät #}}',
  'meter-profile.scale': 'Worauf ist es eingestellt?',
  'meter-profile.scale.usual': 'Grundeinstellung (Douglasie)',
  'meter-profile.scale.species': 'Eine Holzart',
  'meter-profile.scale.ohms': 'Auf keine: Es zeigt Ohm (MΩ)',
  'meter-profile.species': 'Holzart',
  'meter-profile.compensates': 'Korrigiert es die Temperatur?',
  'meter-profile.compensates.yes': 'Ja',
  'meter-profile.compensates.no': 'Nein',
  'meter-profile.scale-temp': 'Holztemperatur, für die seine Skala gilt',
  'meter-profile.scale-temp-hint': 'Siehe Anleitung. Oft {usualTempC}.',
  'meter-profile.pins': 'Wie lang sind die Spitzen?',
  'meter-profile.pins-other': 'Andere Länge',
  'meter-profile.pin-length': 'Länge der Spitzen',
  'meter-profile.pin-length-missing': 'Geben Sie die Länge der Spitzen ein.',
  'meter-profile.insulated': 'Sind die Spitzen isoliert?',
  'meter-profile.insulated.yes': 'Ja, bis auf die Enden',
  'meter-profile.insulated.no': 'Nein, blankes Metall',
  'meter-profile.more': 'Genauigkeit',
  'meter-profile.accuracy': 'Genauigkeit, ±',
  'meter-profile.accuracy-unit': 'Prozentpunkte',
  'meter-profile.accuracy-hint': 'Aus der Anleitung. Leer lassen, wenn unbekannt.',
  'meter-profile.accuracy-wrong': 'Geben Sie eine Zahl von 0,4 bis 8 ein, oder lassen Sie das Feld leer.',

  'meter-profile.is-set-to': 'Eingestellt auf',
  'meter-profile.is-usual': 'Grundeinstellung (Douglasie)',
  'meter-profile.shows': 'Zeigt',
  'meter-profile.is-ohms': 'Ohm',
  'meter-profile.is-unknown': 'Unbekannt (Grundeinstellung angenommen)',
  'meter-profile.temperature': 'Temperatur',
  'meter-profile.compensates-is.yes': 'Korrigiert das Messgerät',
  'meter-profile.compensates-is.no': 'Korrigiert das Messgerät nicht',
  'meter-profile.compensates-is.unknown': 'Korrektur unbekannt',
  'meter-profile.is-made-for': 'Skala für {scaleTempC}',
  'meter-profile.pins-are': 'Spitzen',
  'meter-profile.pins-is': '{pinsMm}{insulated, select, yes {, isoliert} no {, nicht isoliert} other {}}',
  'meter-profile.pins-is-unknown':
    'Länge unbekannt{insulated, select, yes {, isoliert} no {, nicht isoliert} other {}}',
  'meter-profile.accuracy-is': '±{accuracyPoints}',

  'round-meter.title': 'Messgerät für eingegebene Messwerte',
  'round-meter.from-now-on': 'Ab jetzt',

  'meters.title': 'Ihre Messgeräte',
  'meters.none': 'Noch kein Messgerät. Pintally fragt bei Ihrem ersten Messwert.',
  'meters.kind': '{kind, select, typed {Handmessgerät.} simulated {Simuliert.} other {Bluetooth.}}',
  'meters.is-typing': 'In Gebrauch für eingegebene Messwerte.',
  'meters.add': 'Handmessgerät hinzufügen',
  'meters.typing': 'Für eingegebene Messwerte verwenden',
  'meters.typing-named': 'Für eingegebene Messwerte verwenden: {meterName}',
  'meters.added': '{meterName} hinzugefügt, in Gebrauch für eingegebene Messwerte.',
  'meters.added-aside': '{meterName} hinzugefügt. Für eingegebene Messwerte bleibt {usedName} in Gebrauch.',
  'meters.used-now': 'Messgerät für eingegebene Messwerte',
  'meters.used-new': 'Das neue Messgerät',
  'meters.used-before': '{usedName}, wie bisher',
  'meters.edited': '{meterName} gespeichert.',
  'meters.delete': 'Löschen',
  'meters.delete-named': '{meterName} löschen',
  'meters.deleted': '{meterName} gelöscht.',
  'meters.remove': 'Entfernen',
  'meters.removed': '{meterName} entfernt. Die Messwerte bleiben.',
  'meters.edit-named': '{meterName} bearbeiten',
  'meter-file.save': 'Als Datei speichern',
  'meter-file.use': 'Gerätedatei verwenden',
  'meter-file.use-for': 'Gerätedatei für {meterName} verwenden',
  'meter-file.name': '{meterName}.meter.json',
  'meter-file.used': '{meterName} ist wie in der Datei eingerichtet.',
  'meter-file.used-but-species':
    '{meterName} ist wie in der Datei eingerichtet. Die eingestellte Holzart gibt es auf diesem Holzplatz nicht. Bearbeiten Sie {meterName}, um eine zu wählen.',
  'meter-file.refused': '{fileName} wurde nicht verwendet. {problem} Nichts wurde geändert.',
  'meter-file.too-large': 'Eine Gerätedatei ist kleiner als 100\u00a0kB.',
  'meter-file.not-one': 'Das ist keine Gerätedatei von Pintally.',
  'meter-file.version': 'Sie hat die Version {version}. Dieses Pintally liest Version {readable}.',
  'meter-file.of-hand-meter':
    'Sie gehört zu einem Handmessgerät. Wie ein Bluetooth-Messgerät zu lesen ist, steht nicht darin.',
  'meter-file.wrong': 'Der Eintrag „{entry}“ fehlt oder ist falsch.',
  'meter-file.unknown': 'Der Eintrag „{entry}“ ist unbekannt.',
  'meters.earlier':
    '{readings, plural, one {# früherer Messwert hat} other {# frühere Messwerte haben}} noch die alten Einstellungen.',
  'meters.update-earlier': 'Auch für {readings, plural, one {diesen} other {diese}} verwenden',
  'meters.updating': 'Messwerte werden korrigiert …',
  'meters.update-stopped': 'Abgebrochen. Keine Messwerte wurden geändert.',
  'meters.updated': '{readings, plural, one {# Messwert ist} other {# Messwerte sind}} neu korrigiert.',

  'meter.same.one': 'Das sieht nach {meterName} mit neuer Adresse aus.',
  'meter.same.several': 'Das sieht nach einem Ihrer Messgeräte mit neuer Adresse aus.',
  'meter.same.ask': 'Ist es das?',
  'meter.same.ask-which': 'Welches ist es?',
  'meter.same.ask-renamed':
    'Dieses Messgerät nennt sich {ownName}. {meterName} hatte dieselbe Adresse. Ist es dasselbe Messgerät?',
  'meter.same.ask-renamed-which':
    'Dieses Messgerät nennt sich {ownName}. {meterName} hatte dieselbe Adresse. Welches ist es?',
  'meter.same.it-is': 'Es ist dasselbe',
  'meter.same.another': 'Ein anderes Messgerät',
  'meter.same.done': '{meterName} hat seine neue Adresse. Die Messwerte werden ab jetzt gespeichert.',
  'meter.same.renamed': 'Es heißt jetzt {meterName}. Die Messwerte werden ab jetzt gespeichert.',
  'meter.same.is-another': 'Es ist jetzt ein eigenes Messgerät.',
  'meter.same.in-reach': '{meterName} ist in Reichweite. Ist es Ihres, mit neuer Adresse?',

  'meter.confirm.changed': 'Dieses Messgerät hat sich geändert oder ist ein anderes.',
  'meter.confirm.not-saved':
    'Die Werte werden erst gespeichert, wenn Sie es bestätigen. Eingeben können Sie Messwerte.',
  'meter.confirm.push-in': 'Stechen Sie die Spitzen zum Prüfen in ein Brett.',
  'meter.confirm.ask': 'Was zeigt das Messgerät an?',
  'meter.confirm.as-before': '{shown}, wie bisher',
  'meter.confirm.other': 'Eine andere Zahl',
  'meter.confirm.set-up': 'Zeigt es eine andere Zahl, richten Sie es unten ein.',
  'meter.confirm.done': 'Messwerte dieses Messgeräts werden wieder gespeichert.',

  'meter.held-elsewhere': 'Ein anderes Fenster benutzt das Messgerät.',
  'meter.held-nowhere': 'Kein Fenster benutzt das Messgerät.',
  'meter.use-here': 'Hier verwenden',
} satisfies Record<keyof typeof english, string>;
