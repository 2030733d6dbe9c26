/** Meters, connected or typed. */
export const meter = {
  'meter.simulated': 'Simulated meter',
  /** A device that gives itself no name, in a list. */
  'meter.nameless': 'Unnamed device',
  /** In a sentence, a meter that gives itself no name. */
  'meter.the-meter': 'the meter',

  // What the link does.
  'meter.state.none': 'No meter is connected.',
  'meter.state.typed-only': 'No meter is used. Type the readings.',
  'meter.state.looking': 'Looking for meters. Turn yours on and keep it close.',
  'meter.state.connecting': 'Connecting to {meterName} …',
  'meter.state.listening': 'Listening for {meterName} …',
  'meter.state.discovering': 'Asking {meterName} what it sends …',
  'meter.state.live': 'Connected to {meterName}.',
  'meter.state.heard': 'Listening to {meterName}. It sends its values without a connection.',
  'meter.state.back': 'Connected to {meterName} again. Starting its readings …',
  'meter.state.needs-setup': 'Connected to {meterName}. It is not set up yet.',
  'meter.state.heard-needs-setup': 'Listening to {meterName}. It is not set up yet.',
  'meter.state.failed':
    'Could not connect to {meterName}. {why} Turn the meter on, bring it close, and connect again.',
  'meter.state.lost': 'Lost the connection to {meterName}. {why}',
  'meter.state.unheard': '{meterName} is out of reach. {why}',
  'meter.state.reconnecting':
    '{trouble} Saved readings are safe. Pintally keeps trying; you can type readings meanwhile.',
  'meter.state.simulated-ready': 'The simulated meter is ready.',
  'meter.state.simulated-live': 'The simulated meter is connected. Its values are made up.',

  // Why it could not connect, or lost the meter.
  'meter.why.not-found': 'The meter was not found.',
  'meter.why.refused': 'The meter refused the connection.',
  'meter.why.not-listed': 'The meter did not list its values.',
  'meter.why.not-started': 'The meter did not start sending.',
  'meter.why.start-refused': 'The meter refused its start command.',
  'meter.why.pairing':
    'Pairing with the meter failed. Put it in pairing mode, or pair it in the system settings.',
  'meter.why.unheard': 'Nothing heard from it for a while.',
  'meter.why.no-answer': 'The meter does not answer.',
  'meter.why.stopped-answering': 'The meter stopped answering.',
  'meter.why.dropped': 'The connection dropped.',
  'meter.why.bluetooth-stopped': 'Bluetooth stopped unexpectedly.',

  // The Bluetooth adapter.
  'meter.adapter.on': 'Bluetooth is on.',
  'meter.adapter.starting': 'Bluetooth is starting.',
  'meter.adapter.missing':
    'No Bluetooth adapter found. Plug one in, then look for meters again. Typed readings work without it.',
  'meter.adapter.missing-hci':
    'No Bluetooth adapter found, and no Bluetooth service is running. Plug an adapter in, or type in a terminal: sudo systemctl enable --now bluetooth. Then look for meters again. Typed readings work without it.',
  'meter.adapter.off': 'Bluetooth is off. Turn it on in the system settings. Typed readings work without it.',
  'meter.adapter.off-linux':
    'Bluetooth is off. Turn it on in the system settings, or type in a terminal: bluetoothctl power on. Typed readings work without it.',
  'meter.adapter.off-macos':
    'Bluetooth is off. Turn it on in Control Center. Typed readings work without it.',
  'meter.adapter.off-windows':
    'Bluetooth is off. Turn it on in Settings, Bluetooth & devices. Typed readings work without it.',
  'meter.adapter.refused':
    'Pintally is not allowed to use Bluetooth. Allow it in the system’s privacy settings, then look for meters again. Typed readings work without it.',
  'meter.adapter.refused-bluez':
    'Your account is not allowed to use the Bluetooth service. Type in a terminal: sudo usermod -aG bluetooth $USER. Then log out and back in. Typed readings work without it.',
  'meter.adapter.refused-hci':
    'Pintally is not allowed to use the Bluetooth adapter, and no Bluetooth service is running. Type in a terminal: sudo systemctl enable --now bluetooth. Then look for meters again. Typed readings work without it.',
  'meter.adapter.refused-macos':
    'Pintally is not allowed to use Bluetooth. Open System Settings, Privacy & Security, Bluetooth. Turn on Pintally, or the program it was started from. Then restart Pintally. Typed readings work without it.',
  'meter.adapter.refused-windows':
    'Windows does not let Pintally use Bluetooth. Open Settings, Privacy & security, Radios, and allow it. Then look for meters again. Typed readings work without it.',
  'meter.adapter.unsupported':
    'This Bluetooth adapter is too old for Low Energy meters. Use another one. Typed readings work without it.',
  'meter.adapter.unsupported-windows':
    'Windows finds no Bluetooth adapter for Low Energy meters. Install your adapter’s driver, or use another adapter. Typed readings work without it.',
  'meter.adapter.module-missing':
    'Bluetooth support is missing or was built for another version. Run "npx node electron/meter/native-socket.ts" in Pintally’s folder, then look for meters again. Typed readings work without it.',
  'meter.adapter.no-answer':
    'The Bluetooth adapter does not answer. Turn Bluetooth off and on, or unplug the adapter and plug it in again. Typed readings work without it.',
  'meter.adapter.no-answer-bluez':
    'The Bluetooth service does not answer. Type in a terminal: sudo systemctl restart bluetooth. Then look for meters again. Typed readings work without it.',
  'meter.adapter.service-stopped':
    'The Bluetooth service of this computer stopped. Type in a terminal: sudo systemctl start bluetooth. Then look for meters again. Typed readings work without it.',
  'meter.adapter.stopped': 'Bluetooth stopped unexpectedly. It restarts by itself. Saved readings are safe.',

  // How the radio is reached.
  'meter.radio.bluez': 'Meters connect through the Bluetooth service of this computer (BlueZ).',
  'meter.radio.hci': 'Meters connect directly through the adapter. No Bluetooth service is running.',
  'meter.radio.hci-beside-bluez':
    'Meters connect directly through the adapter. Your account is not allowed to use the Bluetooth service.',
  'meter.radio.macos': 'Meters connect through macOS.',
  'meter.radio.windows': 'Meters connect through Windows.',
  'meter.radio.in-browser': 'This computer’s Bluetooth is used. The browser needs no permission.',

  // What a meter says about its own values.
  'meter.self.format-length':
    'The meter’s description of its value has {sent, plural, one {# byte} other {# bytes}}; it must have {needed}.',
  'meter.self.format-undefined':
    'The meter describes its value with format {format}, which the Bluetooth standard does not define.',
  'meter.self.format-unreadable':
    'The meter describes its value with format {format}, which is not a number.',
  'meter.self.exponent-absurd':
    'The meter describes its value as a multiple of 10^{exponent}, which cannot be right.',
  'meter.self.humidity-unconfirmed':
    'The meter sends the standard value for air humidity. If it means wood moisture, set it up below.',
  'meter.self.several': 'The meter offers {values} values that could be the reading. Choose one below.',
  'meter.self.holds-nothing':
    'The meter says that it holds its value, but the value changes. Check which bits are its button.',
  'meter.self.changed': 'The meter no longer sends the value it was read by. Check what is read now.',
  'meter.self.start-refused': '{meterName} refused that command. Try another one.',
  'meter.self.not-offered': 'That value is not offered by {meterName}. Choose another one.',

  // Why bytes are no value.
  'meter.value.undescribed': 'These bytes cannot be read until the meter is set up.',
  'meter.value.format-unreadable': 'Format {format} cannot be read as a number.',
  'meter.value.bytes-missing':
    'The meter sent {sent, plural, one {# byte} other {# bytes}}; its value needs {needed}.',
  'meter.value.bytes-extra':
    'The meter sent {sent, plural, one {# byte} other {# bytes}}; its value has exactly {needed}.',
  'meter.value.too-large': 'The meter sent a number too large to be a reading.',
  'meter.value.not-valid': 'No reading: pins out.',
  'meter.value.above-scale': 'The value is above what the meter can show.',
  'meter.value.below-scale': 'The value is below what the meter can show.',
  'meter.value.not-at-resolution': 'No reading: pins out.',
  'meter.value.reserved-code': 'The meter sent a code that the standard reserves.',
  'meter.value.not-text': 'The meter sent bytes that are not text.',
  'meter.value.shows-none': 'The meter shows “{shown}”, which is not a reading.',
  'meter.value.shows-ambiguous': 'The meter shows “{shown}”, which can be read two ways.',
  'meter.value.shows-other-unit':
    'The meter shows “{shown}”, but it is set up to send {unit, select, pct {%} other {ohms}}.',
  'meter.value.frame-invalid': 'The meter sent an invalid Bluetooth frame. It was ignored.',
  'meter.value.bytes-too-many':
    'The meter sent {sent} bytes at once; Bluetooth allows {allowed}. They were ignored.',
  'meter.value.too-fast':
    'The meter sent values too fast: {missed, plural, one {# was missed} other {# were missed}}.',

  // The formats of a value. The names in brackets are the standards that define them.
  'meter.format.unsigned': '{bits} bits, unsigned',
  'meter.format.signed': '{bits} bits, signed',
  'meter.format.float': '{bits}-bit floating point (IEEE 754)',
  'meter.format.sfloat': '16-bit SFLOAT (IEEE 11073)',
  'meter.format.medfloat': '32-bit FLOAT (IEEE 11073)',
  'meter.format.text': 'Text',
  'meter.format.other': 'Format {format}',

  // The chip in the bar.
  'meter.chip.label': 'Meter:',
  'meter.chip.idle': 'No meter',
  'meter.chip.scanning': 'Looking for meters',
  'meter.chip.connecting': 'Connecting',
  'meter.chip.discovering': 'Connecting',
  'meter.chip.needs-description': 'Needs setup',
  'meter.chip.live': 'Live',
  'meter.chip.to-confirm': 'Check the meter',
  'meter.chip.simulated-live': 'Simulated meter live',
  'meter.chip.paused': 'Round paused. Nothing is saved.',
  'meter.chip.reconnecting': 'Reconnecting',
  'meter.chip.failed': 'Not connected',
  'meter.chip.unknown': 'Meter status unknown',
  'meter.chip.no-bluetooth': 'No Bluetooth',
  'meter.chip.battery': 'battery\u00a0{batteryPct}',

  // The Meter page.
  'meter.title': 'Meter',
  'meter.lead': 'Connect any Bluetooth pin meter that sends its value, or type the readings.',

  'meter.round-paused': 'The round on {stackName} is paused. Live readings are saved only in the round.',
  'meter.back-to-round': 'Back to the round',

  'meter.connect.title': 'Connection',
  'meter.connect.look': 'Look for Bluetooth meters',
  'meter.connect.looking': 'Looking …',
  'meter.connect.simulate': 'Use the simulated meter',
  'meter.connect.connect': 'Connect',
  'meter.connect.connect-to': 'Connect {meterName}',
  'meter.connect.set-up-below': 'Set it up below.',
  'meter.connect.disconnect': 'Disconnect',
  'meter.connect.stop': 'Stop',
  'meter.connect.devices': 'Bluetooth devices found',
  /** Of a meter in that list. */
  'meter.connect.used-before': 'used before',
  'meter.connect.none-found':
    'Nothing found yet. Turn the meter on and hold it close. Some wake only while a button is held.',

  'meter.signal': '{strength}, {dbm} dBm',
  'meter.signal.strong': 'strong',
  'meter.signal.good': 'good',
  'meter.signal.weak': 'weak',
  'meter.signal.very-weak': 'very weak',
  'meter.signal.unknown': 'signal strength unknown',

  'meter.live.title': 'Live',
  'meter.live.raw': 'raw, as the meter shows',
  'meter.live.spread-pct': 'Spread in the last moments: {spreadPoints}',
  'meter.live.spread-ohm': 'Spread in the last moments: {spreadOhm}',
  'meter.live.received': 'Received',
  'meter.live.decoded': 'Decoded',
  'meter.live.no-reading': 'Pins out',
  /** Packets that say something else than the value, as that a button was pressed. */
  'meter.live.other': 'Without a value',
  'meter.live.refused': 'Unreadable',
  'meter.live.last-refused': 'Last unreadable: {why}',
  'meter.live.temp': 'Wood temperature, from the meter: {woodTempC}.',
  'meter.live.setting': 'Species setting on the meter: {setting}.',
  'meter.live.setting-differs':
    'The meter is set to {setting}. You set it up at {expected}. Set it back before you save readings.',
  'meter.live.battery-at': 'Battery {batteryPct}.',

  'meter.details': 'Details',
  'meter.reading.title-new': 'Set up this meter',
  'meter.reading.title': 'How the value is read',
  'meter.reading.self-described': 'The meter describes its own value.',
  'meter.reading.by-hand': 'You set it up.',
  'meter.reading.beside': 'Also used',
  'meter.reading.hold': 'its button',
  'meter.reading.species': 'its species setting',
  'meter.reading.temperature': 'its temperature',
  'meter.reading.battery': 'its battery',
  'meter.reading.format': 'Format',
  'meter.reading.first-byte': 'First byte',
  'meter.reading.first-bit': 'First bit',
  'meter.reading.bits':
    '{bits, plural, one {# bit} other {# bits}}, {sign, select, signed {signed} other {unsigned}}',
  'meter.reading.nth': 'Number in the text',
  'meter.reading.byte-order': 'Byte order',
  'meter.reading.low-first': 'Low byte first (usual)',
  'meter.reading.high-first': 'High byte first',
  'meter.reading.power': 'Power of ten',
  'meter.reading.times': 'Multiplied by',
  'meter.reading.plus': 'Plus',
  'meter.reading.unit': 'Unit',
  'meter.reading.unit-pct': '% moisture content',
  'meter.reading.unit-ohm': 'Ohms',
  'meter.reading.range': 'Can show',
  'meter.reading.range-pct': '{rawLowest}–{rawHighestPct}',
  'meter.reading.range-ohm': '{rawLowestOhm} to {rawHighestOhm}',
  'meter.reading.set-up': 'Set it yourself',

  'meter.offered.caption': 'Values the meter offers, with their latest bytes',
  'meter.offered.characteristic': 'Characteristic',
  'meter.offered.description': 'Its own description',
  'meter.offered.sends': 'Sends by itself',
  'meter.offered.sends-yes': 'yes',
  'meter.offered.sends-no': 'no',
  'meter.offered.bytes': 'Latest bytes',
  'meter.offered.bytes-none': 'none yet',
  'meter.offered.service': 'in service',
  'meter.offered.read': '◀ the reading',

  'meter.form.title': 'Set up the meter',
  'meter.form.how':
    'Push the pins into a board. Change the fields until the preview matches the meter’s own display.',
  'meter.form.preview': 'Preview',
  'meter.form.preview-none': 'No bytes from this characteristic yet, so there is no preview.',
  'meter.form.characteristic': 'Characteristic',
  'meter.form.characteristic-choose': 'Choose one',
  'meter.form.first-byte-hint': '0 is the first.',
  'meter.form.power-hint': '−1 where 126 means 12.6.',
  'meter.form.bits-format': 'Bits',
  'meter.form.bits': 'Number of bits',
  'meter.form.times': 'Multiply by',
  'meter.form.plus': 'Then add',
  'meter.form.lowest': 'Lowest value it can show',
  'meter.form.highest': 'Highest value it can show',
  'meter.form.save': 'Save',
  'meter.form.saved': 'Saved. Pintally will read this meter the same way next time.',

  'meter.form.wrong.characteristic': 'Choose the characteristic that holds the reading.',
  'meter.form.wrong.times': 'Enter a number other than 0. 1 changes nothing.',
  'meter.form.wrong.plus': 'Enter a number. 0 changes nothing.',
  'meter.form.wrong.lowest': 'Enter the lowest value the meter can show.',
  'meter.form.wrong.highest': 'Enter the highest value the meter can show.',
  'meter.form.wrong.order': 'The highest value must be above the lowest.',

  // What a meter's values mean: asked once.
  'meter-profile.question': 'What species is your meter set to? How long are its pins?',
  'meter-profile.question-ohms': 'Does your meter show ohms, not %? How long are its pins?',
  'meter-profile.question-of': 'What species is {meterName} set to? How long are its pins?',
  'meter-profile.answer': 'Answer',
  'meter-profile.unknown': 'I don’t know',
  'meter-profile.unknown-saved': 'Saved. Readings stay less certain. You can answer later on the Meter page.',

  'meter-profile.title': 'About {meterName}',
  'meter-profile.title-new': 'Your meter',
  'meter-profile.name': 'Name',
  'meter-profile.usual-name': '{number, plural, =1 {Hand meter} other {Hand meter #}}',
  'meter-profile.scale': 'What is it set to?',
  'meter-profile.scale.usual': 'Default (Douglas-fir)',
  'meter-profile.scale.species': 'A species',
  'meter-profile.scale.ohms': 'None: it shows ohms (MΩ)',
  'meter-profile.species': 'Species',
  'meter-profile.compensates': 'Does it correct for temperature?',
  'meter-profile.compensates.yes': 'Yes',
  'meter-profile.compensates.no': 'No',
  'meter-profile.scale-temp': 'Wood temperature of its scale',
  'meter-profile.scale-temp-hint': 'See its manual. Often {usualTempC}.',
  'meter-profile.pins': 'How long are the pins?',
  'meter-profile.pins-other': 'Another length',
  'meter-profile.pin-length': 'Pin length',
  'meter-profile.pin-length-missing': 'Enter the pin length.',
  'meter-profile.insulated': 'Are the pins insulated?',
  'meter-profile.insulated.yes': 'Yes, except the tips',
  'meter-profile.insulated.no': 'No, bare metal',
  'meter-profile.more': 'Accuracy',
  'meter-profile.accuracy': 'Accuracy, ±',
  'meter-profile.accuracy-unit': 'points',
  'meter-profile.accuracy-hint': 'From its manual. Leave blank if unknown.',
  'meter-profile.accuracy-wrong': 'Enter a number from 0.4 to 8, or leave it blank.',

  // The same, as it was answered.
  'meter-profile.is-set-to': 'Set to',
  'meter-profile.is-usual': 'Default (Douglas-fir)',
  'meter-profile.shows': 'Shows',
  'meter-profile.is-ohms': 'Ohms',
  'meter-profile.is-unknown': 'Unknown (default assumed)',
  'meter-profile.temperature': 'Temperature',
  'meter-profile.compensates-is.yes': 'Corrected by the meter',
  'meter-profile.compensates-is.no': 'Not corrected by the meter',
  'meter-profile.compensates-is.unknown': 'Correction unknown',
  'meter-profile.is-made-for': 'Scale for {scaleTempC}',
  'meter-profile.pins-are': 'Pins',
  'meter-profile.pins-is': '{pinsMm}{insulated, select, yes {, insulated} no {, not insulated} other {}}',
  'meter-profile.pins-is-unknown':
    'Length unknown{insulated, select, yes {, insulated} no {, not insulated} other {}}',
  'meter-profile.accuracy-is': '±{accuracyPoints}',

  'round-meter.title': 'Meter for typed readings',
  'round-meter.from-now-on': 'From now on',

  // The meters of the yard.
  'meters.title': 'Your meters',
  'meters.none': 'No meter yet. Pintally asks at your first reading.',
  'meters.kind': '{kind, select, typed {Hand meter.} simulated {Simulated.} other {Bluetooth.}}',
  'meters.is-typing': 'In use for typed readings.',
  'meters.add': 'Add a hand meter',
  'meters.typing': 'Use for typed readings',
  'meters.typing-named': 'Use for typed readings: {meterName}',
  'meters.added': '{meterName} added, in use for typed readings.',
  'meters.added-aside': '{meterName} added. {usedName} stays in use for typed readings.',
  'meters.used-now': 'Meter for typed readings',
  'meters.used-new': 'The new meter',
  'meters.used-before': '{usedName}, as before',
  'meters.edited': '{meterName} saved.',
  'meters.delete': 'Delete',
  'meters.delete-named': 'Delete {meterName}',
  'meters.deleted': '{meterName} deleted.',
  'meters.remove': 'Remove',
  'meters.removed': '{meterName} removed. Its readings stay.',
  'meters.edit-named': 'Edit {meterName}',
  'meter-file.save': 'Save as a file',
  'meter-file.use': 'Use a meter file',
  'meter-file.use-for': 'Use a meter file for {meterName}',
  'meter-file.name': '{meterName}.meter.json',
  'meter-file.used': '{meterName} is set up as in the file.',
  'meter-file.used-but-species':
    '{meterName} is set up as in the file. The species it is set to is not in this yard. Edit {meterName} to choose one.',
  'meter-file.refused': '{fileName} was not used. {problem} Nothing was changed.',
  'meter-file.too-large': 'A meter file is smaller than 100 kB.',
  'meter-file.not-one': 'It is not a meter file of Pintally.',
  'meter-file.version': 'Its version is {version}. This Pintally reads version {readable}.',
  'meter-file.of-hand-meter': 'It is for a hand meter. It does not say how to read a Bluetooth meter.',
  'meter-file.wrong': 'The entry “{entry}” is missing or wrong.',
  'meter-file.unknown': 'The entry “{entry}” is unknown.',
  'meters.earlier':
    '{readings, plural, one {# earlier reading still uses} other {# earlier readings still use}} the old settings.',
  'meters.update-earlier': 'Use this for {readings, plural, one {it} other {them}} too',
  'meters.updating': 'Correcting readings …',
  'meters.update-stopped': 'Stopped. No readings were changed.',
  'meters.updated': '{readings, plural, one {# reading is} other {# readings are}} corrected again.',

  // A meter that is not as it was.
  'meter.same.one': 'This looks like {meterName}, with a new address.',
  'meter.same.several': 'This looks like one of your meters, with a new address.',
  'meter.same.ask': 'Is it?',
  'meter.same.ask-which': 'Which one is it?',
  'meter.same.ask-renamed':
    'This meter calls itself {ownName}. {meterName} had the same address. Is it the same meter?',
  'meter.same.ask-renamed-which':
    'This meter calls itself {ownName}. {meterName} had the same address. Which one is it?',
  'meter.same.it-is': 'It is the same',
  'meter.same.another': 'Another meter',
  'meter.same.done': '{meterName} has its new address. Its readings are saved from now on.',
  'meter.same.renamed': 'It is called {meterName} now. Its readings are saved from now on.',
  'meter.same.is-another': 'It is a separate meter now.',
  /** A device of the name of a meter that does not answer. */
  'meter.same.in-reach': '{meterName} is in reach. Is it yours, with a new address?',

  'meter.confirm.changed': 'This meter has changed, or is another one.',
  'meter.confirm.not-saved': 'Its readings are not saved until you confirm. You can type readings.',
  'meter.confirm.push-in': 'Push the pins into a board to check it.',
  'meter.confirm.ask': 'What does its display show?',
  'meter.confirm.as-before': '{shown}, as before',
  'meter.confirm.other': 'Another number',
  'meter.confirm.set-up': 'If it shows another number, set it up below.',
  'meter.confirm.done': 'Readings of this meter are saved again.',

  'meter.held-elsewhere': 'Another window is using the meter.',
  'meter.held-nowhere': 'No window is using the meter.',
  'meter.use-here': 'Use it here',
} as const;
