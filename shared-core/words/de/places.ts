import type { places as english } from '../en/places.ts';

export const places = {
  'places.title': 'Orte',
  'places.lead': 'Das Klima eines Orts bestimmt, wie trocken Holz dort wird.',
  'places.add': 'Ort hinzufügen',
  'places.none': 'Noch keine Orte. Ein Stapel braucht einen: den Schuppen, den Hof, die Werkstatt.',
  'places.edit': '{placeName} bearbeiten',

  'places.kind.outdoors': 'Im Freien',
  'places.kind.open-shed': 'Offener Schuppen',
  'places.kind.shop': 'Werkstatt, zeitweise beheizt',
  'places.kind.heated-room': 'Beheizter Raum',

  'places.kind-and-air': '{kind} · {airSource}',
  'places.emc-in-month': 'Ausgleichsfeuchte im {monthName}',
  'places.emc-all-year': 'Ausgleichsfeuchte im ganzen Jahr',
  'places.lowest': 'Niedrigste Ausgleichsfeuchte',
  'places.in-month': 'im {monthName}',
  'places.other-air':
    'Niedrigste Ausgleichsfeuchte bei üblichem Klima: {typicalPct}. Nach Messwerten {boards, plural, =0 {an anderen Orten dieser Art} one {von # Brett} other {von # Brettern}} liegt sie {offPoints} {direction, select, damper {höher} other {niedriger}}.',
  'places.other-air-measured':
    'Niedrigste Ausgleichsfeuchte bei üblichem Klima: {typicalPct}. {from, select, measured {Nach gemessenem Klima} others {Nach gemessenem Klima und Messwerten an anderen Orten dieser Art} other {{boards, plural, one {Nach Messwerten von # Brett und gemessenem Klima} other {Nach Messwerten von # Brettern und gemessenem Klima}}}} liegt sie {offPoints} {direction, select, damper {höher} other {niedriger}}.',
  'places.by-measured': 'Ausgleichsfeuchte aus gemessenem Klima',
  'places.by-both': 'Ausgleichsfeuchte aus Messwerten und gemessenem Klima',
  'places.measured': 'Hier gemessene Ausgleichsfeuchte',
  'places.measured-unused': 'Nicht verwendet',
  'places.measured-chart': 'Ausgleichsfeuchte am Ort {placeName}, gemessen Tag für Tag',
  'places.measured-summary':
    '{days, plural, one {# Tag} other {# Tage}} gemessen. Der neueste Wert: {emcPct}.',
  'places.newest-air':
    'Gemessen am {measuredAt}: {airTempC}, {humidityRhPct} Luftfeuchte. Ausgleichsfeuchte dieser Luft: {emcPct}.',
  'places.newest-typed':
    'Gemessen am {measuredOn}: {airTempC}, {humidityRhPct} Luftfeuchte. Ausgleichsfeuchte dieser Luft: {emcPct}.',
  'places.measured-since':
    '{days, plural, one {# Tag gemessen, am {sinceOn}.} other {# Tage gemessen seit {sinceOn}.}}',
  'places.silent':
    'Seit {days, plural, one {# Tag} other {# Tagen}} kein Wert. Prüfen Sie die Batterie des Sensors und seinen Abstand.',
  'places.no-value-yet':
    'Noch kein Wert. Sensoren werden einmal in der Stunde gelesen, solange Pintally offen ist.',
  'places.sensors-at': 'Sensoren am Ort {placeName}',
  'places.type-air': 'Gemessenes Klima eingeben',
  'places.type-air-at': 'Gemessenes Klima am Ort {placeName} eingeben',
  'places.type-air-title': 'Klima am Ort {placeName}',
  'places.type-air-how':
    'Lesen Sie ein Hygrometer ab, das dort seit ein paar Stunden hängt. Der Wert gilt für den ganzen Tag, anstelle dessen, was Sensoren messen.',
  'places.measured-on': 'Gemessen am',
  'places.air-typed': 'Klima am Ort {placeName} gespeichert.',
  'places.unused.stuck':
    '{days, plural, one {# Tag} other {# Tage}} nicht verwendet: Alle Werte waren gleich. Prüfen Sie den Sensor.',
  'places.unused.saturated':
    '{days, plural, one {# Tag} other {# Tage}} nicht verwendet: tagelang 0 oder 100\u00a0% Luftfeuchte. Vielleicht ist der Sensor nass oder defekt.',
  'places.unused.jump':
    '{days, plural, one {# Tag} other {# Tage}} nicht verwendet: Die Temperatur sprang. Wurde der Sensor bewegt?',
  'places.unused.unlike':
    '{days, plural, one {# Tag} other {# Tage}} nicht verwendet: anders als das übliche Klima hier. War der Sensor woanders?',
  'places.unused.unlike-typed':
    '{days, plural, one {# Tag} other {# Tage}} nicht verwendet: anders als das übliche Klima hier. Prüfen Sie die Eingabe.',
  'places.unused.later':
    '{days, plural, one {# Tag} other {# Tage}} nicht verwendet: Das Datum liegt in der Zukunft. Ging die Uhr des Computers vor?',
  'places.unused.part-of-day':
    '{days, plural, one {# Tag} other {# Tage}} nicht verwendet: Nur ein Teil des Tages wurde gemessen. Nachts ist es feuchter.',
  'places.unused.excluded': '{days, plural, one {# Tag} other {# Tage}} ausgeschlossen.',
  'places.days': '{days, plural, one {Der gemessene Tag} other {Alle # gemessenen Tage}}',
  'places.days-at': 'Gemessene Tage am Ort {placeName}',
  'places.day-runs': 'Der {measuredOn} dauert hier von {fromAt} bis {toAt}, so wie Sensoren Tage zählen.',
  'places.earlier-days': 'Frühere Tage zeigen',
  'places.day': '{measuredOn}: {airTempC}, {humidityRhPct} Luftfeuchte. Ausgleichsfeuchte {emcPct}.',
  'places.day-typed': 'Für den ganzen Tag eingegeben.',
  'places.day-typed-instead': 'Für den ganzen Tag eingegeben, anstelle des Sensors.',
  'places.day-outdated':
    '{airTempC}, {humidityRhPct} Luftfeuchte: früher für diesen Tag eingegeben, nicht verwendet.',
  'places.day-unused.stuck': 'Nicht verwendet: Alle Werte waren gleich. Prüfen Sie den Sensor.',
  'places.day-unused.saturated':
    'Nicht verwendet: tagelang 0 oder 100\u00a0% Luftfeuchte. Vielleicht ist der Sensor nass oder defekt.',
  'places.day-unused.jump': 'Nicht verwendet: Die Temperatur sprang. Wurde der Sensor bewegt?',
  'places.day-unused.unlike': 'Nicht verwendet: anders als das übliche Klima hier.',
  'places.day-unused.part-of-day': 'Nicht verwendet: Nur ein Teil des Tages wurde gemessen.',
  'places.day-unused.later':
    'Nicht verwendet: Das Datum liegt in der Zukunft. Ging die Uhr des Computers vor?',
  'places.day-unused.excluded': 'Ausgeschlossen.',
  'places.typed-value': '{humidityRhPct} am {measuredOn}',
  'places.exclude': 'Ausschließen',
  'places.exclude-day': '{measuredOn} ausschließen',
  'places.exclude-days': 'Tage am Ort {placeName} ausschließen',
  'places.exclude-effect':
    'Wenn ein Sensor woanders war oder falsch gemessen hat. Nichts wird gelöscht. Für diese Tage gilt das übliche Klima.',
  'places.excluded':
    'Klima von {days, plural, one {# Tag} other {# Tagen}} am Ort {placeName} ausgeschlossen.',
  'places.include': 'Einbeziehen',
  'places.include-day': '{measuredOn} einbeziehen',
  'places.include-days': 'Tage am Ort {placeName} einbeziehen',
  'places.include-effect': 'Was Sensoren an diesen Tagen gemessen haben, wird wieder verwendet.',
  'places.included':
    'Klima von {days, plural, one {# Tag} other {# Tagen}} am Ort {placeName} wieder einbezogen.',
  'places.first-day': 'Erster Tag',
  'places.last-day': 'Letzter Tag',
  'places.replace-air': 'Ersetzen',
  'places.delete-air': 'Klima vom {measuredOn} löschen',
  'places.delete-air-effect':
    'Dann gilt wieder, was Sensoren an diesem Tag gemessen haben, sonst das übliche Klima.',
  'places.air-deleted': 'Klima vom {measuredOn} gelöscht.',
  'places.stacks-at': 'Stapel am Ort {placeName}',
  'places.boards': '({boards, plural, one {# Brett} other {# Bretter}})',
  'places.no-boards': 'Keine Bretter hier.',

  'places.movement': 'Luftbewegung',
  'places.movement.still-room': 'Still',
  'places.movement.open-shed': 'Geschützt',
  'places.movement.wind': 'Windig',
  'places.movement.fan': 'Ventilator',
  'places.movement.dehumidified': 'Luftentfeuchter',
  'places.movement.solar-kiln': 'Solartrockner',
  'places.movement-here': 'Luftbewegung: {movement}',
  'places.movement-caution.fan': 'Nasse Eiche kann vor einem Ventilator zu schnell trocknen und reißen.',
  'places.movement-caution.dehumidified':
    'Nasse Eiche kann hier zu schnell trocknen und reißen. Fangen Sie mild an. Geben Sie das Klima ein, das der Entfeuchter hält.',
  'places.movement-caution.solar-kiln':
    'Nasse Eiche kann hier zu schnell trocknen und reißen. Lassen Sie die Lüftungsklappen anfangs offen. Geben Sie das Klima im Trockner ein.',

  'places.year': 'Ausgleichsfeuchte am Ort {placeName} nach Monaten',
  'places.year-unnamed': 'Ausgleichsfeuchte nach Monaten',
  'places.lowest-emc': 'Niedrigste Ausgleichsfeuchte hier, im {monthName}: {emcPct}.',
  'places.steady-emc': 'Ausgleichsfeuchte hier im ganzen Jahr: {emcPct}.',
  'places.month': 'Monat',
  'places.emc': 'Ausgleichsfeuchte',
  'places.typical-air': 'Ausgleichsfeuchte des üblichen Klimas',
  'places.by-readings': 'Ausgleichsfeuchte aus Messwerten',
  'places.now': 'jetzt',
  'places.lowest-mark': 'niedrigste: {emcPct}',

  'places.name': 'Name',
  'places.kind': 'Art',
  'places.way.open-shed': 'Außenluft dieses Holzplatzes',
  'places.way.part-heated': 'Zeitweise beheizt',
  'places.way.heated': 'Im Winter beheizt',
  'places.way.conditioned': 'Beheizt und klimatisiert',
  'places.way.steady': 'Das ganze Jahr gleich',
  'places.way.own': 'Eigene Monatsmittel',
  'places.way.station': 'Außenluft einer Wetterstation',
  'places.way.file': 'Außenluft aus einer EPW-Datei',
  'places.room-hint':
    'Eine Annahme: Ausgleichsfeuchte von {driestPct} im Winter bis {dampestPct} im Sommer. Ersetzen Sie sie, sobald Sie Ihre eigene kennen.',
  'places.from-outdoors-hint':
    'Aus dem Klima am Ort {outdoorsName}: Ausgleichsfeuchte {emcInterval}. Nur ungefähr, ebenso die Termine.',
  'places.edit-months': 'Monate bearbeiten',
  'places.renew-air': 'Außenluft vom Ort {outdoorsName} verwenden',
  'places.steady-hint': 'Von einem Luftentfeuchter oder einer Klimaanlage gleich gehalten.',
  'places.temperature': 'Temperatur',
  'places.humidity': 'Relative Luftfeuchte',
  'places.months': 'Mittleres Klima nach Monaten',
  'places.months-hint':
    'Temperatur in {unitName}, relative Luftfeuchte in\u00a0%. Zwölf Zeilen aus einer Tabelle können Sie in jedes Feld einfügen.',
  'places.temperature-in': '{monthName}, Temperatur',
  'places.humidity-in': '{monthName}, relative Luftfeuchte',

  'places.air': 'Klima',
  'places.air-of': 'Klima von {siteName}, typisches Jahr',
  'places.air-of-region':
    '{stations, plural, one {Mittel von # Wetterstation der Gegend: ungefähr} other {Mittel von # Wetterstationen der Gegend: ungefähr}}',
  'places.air-of-no-region': 'Durchschnittliches Klima: ungefähr',
  'places.air-of-room':
    'Angenommen: {room, select, heated {im Winter beheizt} conditioned {beheizt und klimatisiert} other {zeitweise beheizt}}',
  'places.air-made-of-outdoors':
    'Aus der Außenluft vom Ort {outdoorsName}, {room, select, heated {im Winter beheizt} conditioned {beheizt und klimatisiert} other {zeitweise beheizt}}',
  'places.air-of-outdoors': 'Außenluft vom Ort {outdoorsName}',
  'places.own-figures': 'Eigene Zahlen',
} satisfies Record<keyof typeof english, string>;
