import type { sensors as english } from '../en/sensors.ts';

export const sensors = {
  'sensors.kind.air': 'Hygrometer',
  'sensors.kind.probe': 'Einstechthermometer',
  'sensors.add': 'Sensor hinzufügen',
  'sensors.add-at': 'Sensor am Ort {placeName} hinzufügen',
  'sensors.added': '{name} hinzugefügt.',
  'sensors.sensor': 'Sensor',
  'sensors.choose': 'Sensor wählen',
  'sensors.choose-first': 'Kein Sensor ist gewählt. Nichts wurde gespeichert. Wählen Sie einen.',
  'sensors.unnamed': 'Sensor ohne Namen {deviceId}',
  'sensors.simulated-air': 'Simuliertes Hygrometer',
  'sensors.simulated-probe': 'Simuliertes Einstechthermometer',
  'sensors.searching':
    'Sucht Sensoren: {sensors, plural, =0 {noch keiner} one {# in Reichweite} other {# in Reichweite}}.',
  'sensors.searched':
    '{sensors, plural, =0 {Kein Sensor in Reichweite.} one {# Sensor in Reichweite.} other {# Sensoren in Reichweite.}}',
  'sensors.busy.meter':
    'Ein Messgerät belegt Bluetooth. Drücken Sie auf der Seite „Messgerät“ auf „Trennen“, um Sensoren zu suchen.',
  'sensors.busy.meter-search':
    'Pintally sucht Messgeräte. Drücken Sie auf der Seite „Messgerät“ auf „Anhalten“, um Sensoren zu suchen.',
  'sensors.what': 'Was er misst',
  'sensors.what.air': 'Das Klima hier',
  'sensors.what.probe': 'Das Holz, eingestochen',
  'sensors.reading': 'Liest {name} …',
  'sensors.read': 'Jetzt lesen',
  'sensors.read-air': '{name} zeigt {airTempC}, {humidityRhPct} Luftfeuchte.',
  'sensors.read-temp': '{name} zeigt {woodTempC}.',
  'sensors.read-named': '{name} lesen',
  'sensors.elsewhere': 'Sensoren ohne Ort',
  'sensors.name': 'Name',
  'sensors.place': 'Ort',
  'sensors.no-place': 'Kein Ort',
  'sensors.since': 'Seit',
  'sensors.move': 'Umhängen',
  'sensors.move-named': '{name} umhängen',
  'sensors.move-effect': 'Ab diesem Tag zählen seine Werte für den neuen Ort.',
  'sensors.moved': '{name} umgehängt.',
  'sensors.rename': 'Umbenennen',
  'sensors.rename-named': '{name} umbenennen',
  'sensors.remove': 'Entfernen',
  'sensors.remove-named': '{name} entfernen',
  'sensors.remove-effect':
    'Pintally liest den Sensor nicht mehr. Was er gemessen hat, bleibt bei seinen Orten.',
  'sensors.removed': '{name} entfernt.',
} satisfies Record<keyof typeof english, string>;
