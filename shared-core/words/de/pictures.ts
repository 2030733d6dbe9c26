import type { pictures as english } from '../en/pictures.ts';

export const pictures = {
  'pictures.title': 'Fotos',
  'pictures.none': 'Noch keine Fotos.',
  'pictures.add': 'Fotos hinzufügen',
  'pictures.ways': 'Sie können ein Foto auch einfügen oder Dateien hierher ziehen.',
  'pictures.adding': '{count, plural, one {Foto wird hinzugefügt …} other {# Fotos werden hinzugefügt …}}',
  'pictures.added': '{count, plural, one {Foto hinzugefügt.} other {# Fotos hinzugefügt.}}',
  'pictures.stopped': 'Abgebrochen. Kein Foto wurde hinzugefügt.',
  'pictures.not-added':
    '{count, plural, one {Diese Datei wurde nicht hinzugefügt:} other {Diese # Dateien wurden nicht hinzugefügt:}}',
  'pictures.list': 'Fotos zu {recordName}',
  'pictures.name': 'Foto {number} zu {recordName}, hinzugefügt am {addedOn}',
  'pictures.position': 'Foto {number} von {count}',
  'pictures.the-round': 'der Messrunde vom {startedOn}',
  'pictures.this-round': 'dieser Messrunde',
  'pictures.previous': 'Vorheriges',
  'pictures.next': 'Nächstes',
  'pictures.edit-caption': 'Bildtext bearbeiten',
  'pictures.caption': 'Bildtext',
  'pictures.caption-hint': 'Was zu sehen ist, etwa „Bläue am Nordende“.',
  'pictures.theirs': 'Der Bildtext lautet jetzt: {caption}',
  'pictures.theirs-none': 'Der Bildtext ist jetzt leer.',
  'pictures.delete': 'Löschen',
  'pictures.deleted': 'Foto gelöscht.',
} satisfies Record<keyof typeof english, string>;
