import type { notes as english } from '../en/notes.ts';

export const notes = {
  'note.title': 'Notiz',
  'note.of-board': 'Notiz zum Brett {boardCode}',
  'note.of-stack': 'Notiz zum Stapel {stackName}',
  'note.of-round': 'Notiz zu dieser Messrunde',
  'note.of-reading': 'Notiz zum Messwert: {recordName}',
  'note.none': 'Noch keine Notiz.',
  'note.write': 'Notiz schreiben',
  'note.edit': 'Notiz bearbeiten',
  'note.open': 'Notiz',
  'note.field': 'Notiz',
  'note.keys': 'Eingabetaste speichert. Umschalt+Eingabe beginnt eine neue Zeile.',
  'note.on': 'Zu',
  'note.on-board': 'Dieses Brett, {boardCode}',
  'note.on-reading': 'Letzter Messwert, {shownValue}',
  'note.on-reading-of': 'Letzter Messwert, {shownValue} auf {boardCode}',
  'note.on-round': 'Messrunde',
  'note.theirs': 'Die Notiz lautet jetzt: {note}',
  'note.theirs-none': 'Die Notiz ist jetzt leer.',
} satisfies Record<keyof typeof english, string>;
