import type { closing as english } from '../en/closing.ts';

export const closing = {
  'closing.close-stack': 'Stapel abschließen',
  'closing.merge-stack': 'Mit anderem Stapel zusammenführen',
  'closing.delete-stack': 'Stapel löschen',
  'closing.close-place': 'Ort abschließen',
  'closing.merge-place': 'Mit anderem Ort zusammenführen',
  'closing.delete-place': 'Ort löschen',
  'closing.more-of': 'Mehr: {name}',

  'closing.close-named': '{name} abschließen?',
  'closing.close-stack-effect':
    'Er kommt zu den abgeschlossenen Stapeln. Dort können Sie ihn wieder öffnen. Legen Sie vorher seine Bretter in einen anderen Stapel, oder vermerken Sie sie als verkauft, verwendet oder ausgesondert.',
  'closing.close-place-effect':
    'Er kommt zu den abgeschlossenen Orten. Dort können Sie ihn wieder öffnen. Kein Brett und kein Stapel darf jetzt dort sein. Bretter, die dort waren, behalten ihren Verlauf.',
  'closing.closed': '{name} abgeschlossen.',

  'closing.delete-named': '{name} löschen?',
  'closing.delete-of': '{name} löschen',
  'closing.delete-stack-effect':
    'Für einen Stapel, der aus Versehen angelegt wurde. Hatte ein Stapel schon Bretter, Messrunden oder Fotos, schließen Sie ihn ab.',
  'closing.delete-place-effect':
    'Für einen Ort, der aus Versehen angelegt wurde. Waren dort schon Bretter oder Stapel, schließen Sie ihn ab.',
  'closing.deleted': '{name} gelöscht.',

  'closing.merge': 'Zusammenführen',
  'closing.merge-named': '{name} zusammenführen',
  'closing.into': 'Zusammenführen mit',
  'closing.merge-stack-effect':
    'Seine Bretter, Notizen, Fotos und geplanten Umlagerungen kommen zu jenem Stapel. Ihre Lagen werden gelöscht. Dieser Stapel wird dann abgeschlossen. Seine Messrunden behalten seinen Namen.',
  'closing.merge-use': 'Seine Bretter bekommen die Verwendung {endUseName}.',
  'closing.merge-note-too-long':
    'Die beiden Notizen sind zusammen zu lang. Die Notiz von {name} bleibt auf seiner Seite, unter „Abgeschlossene Stapel“.',
  'closing.merge-place-effect':
    'Bretter und Stapel von hier kommen dorthin. Ihre Zeit hier zählt dann als Zeit dort, auch in Prognosen. Dieser Ort wird dann abgeschlossen.',
  'closing.merging-places': 'Führt Orte zusammen',
  'closing.right-air': 'Welches Klima stimmt?',
  'closing.air-of': 'Das Klima von {placeName}',
  'closing.merged': '{name} mit {intoName} zusammengeführt.',

  'closing.reopen': 'Wieder öffnen',
  'closing.reopen-named': '{name} wieder öffnen',
  'closing.name': 'Name',
  'closing.name-hint': 'Ändern Sie ihn, falls er inzwischen vergeben ist.',
  'closing.reopened': '{name} wieder geöffnet.',

  'closing.closed-stacks': 'Abgeschlossene Stapel: {stacks}',
  'closing.closed-places': 'Abgeschlossene Orte: {places}',
  'closing.stack-was-in': '· {placeName} · abgeschlossen am {closedOn}',
  'closing.closed-on': '· abgeschlossen am {closedOn}',
  'closing.stack-closed': 'Abgeschlossen am {closedOn}.',
  'closing.merged-into': 'Zusammengeführt mit',
  'closing.find-archived': 'Seine Bretter finden Sie unter „Alle Bretter“, Filter „Abgegangen“.',
} satisfies Record<keyof typeof english, string>;
