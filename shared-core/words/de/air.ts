import type { air as english } from '../en/air.ts';

export const air = {
  'air.lead': 'Die Ausgleichsfeuchte jeder Luft und die Luftfeuchte für jedes Ziel.',
  'air.places': 'Ausgleichsfeuchte Ihrer Orte',

  'air.of-this-air': 'Ausgleichsfeuchte dieser Luft',
  'air.temperature': 'Lufttemperatur',
  'air.humidity': 'Relative Luftfeuchte',
  'air.emc': 'Ausgleichsfeuchte',
  'air.dew-point': 'Taupunkt',
  'air.emc-note':
    'Dünnes Holz erreicht sie in Tagen, ein dickes Brett in Monaten. Holz, das kälter ist als der Taupunkt, wird an der Oberfläche nass. Außen misst man es dann zu feucht.',

  'air.for-target': 'Luftfeuchte für ein Ziel',
  'air.target': 'Angestrebte Holzfeuchte',
  'air.target-outside': 'Höchstens {wettestPct}. Feuchter wird Holz in Luft dieser Temperatur nicht.',
  'air.humidity-to-hold': 'Zu haltende Luftfeuchte',
  'air.humidity-note':
    'In trockenerer Luft trocknet das Holz unter sein Ziel. In feuchterer Luft erreicht es das Ziel nie.',

  'air.at-this-temperature': 'Ausgleichsfeuchte bei dieser Temperatur',
  'air.emc-at': 'Ausgleichsfeuchte bei {airTempC}',
  'air.emc-summary':
    'Ausgleichsfeuchte bei {airTempC}: {dryPct} bei {dryRhPct} Luftfeuchte, {dampPct} bei {dampRhPct}.',

  'air.room': 'Ziel für Ihren Raum',
  'air.room-lead':
    'Für den Raum, in den das fertige Stück kommt. Geben Sie die Luftfeuchte zur trockensten und zur feuchtesten Zeit des Jahres ein. Holz, das in diesem Bereich bearbeitet wird, arbeitet am wenigsten.',
  'air.room-temperature': 'Raumtemperatur',
  'air.lowest-humidity': 'Niedrigste Luftfeuchte',
  'air.highest-humidity': 'Höchste Luftfeuchte',
  'air.room-target': 'Ziel für diesen Raum',
  'air.save-as-use': 'Als Verwendung speichern',
  'air.room-source': 'Ein Raum mit {roomTempC} und {driestRhPct} bis {dampestRhPct} Luftfeuchte.',

  'air.humidity-turned': 'Die höchste Luftfeuchte liegt unter der niedrigsten. Vertauschen Sie die beiden.',
} satisfies Record<keyof typeof english, string>;
