import type { ownFit as english } from '../en/own-fit.ts';

export const ownFit = {
  'oven-check.impossible':
    'Die Gewichte dieses Stücks können nicht stimmen. Schließen Sie die Darrprobe aus.',
  'oven-check.not-weighed':
    'Seit es im Darrofen ist, nicht gewogen. Wiegen Sie es, wenn es trocken scheint, und {hours}\u00a0h später noch einmal.',
  'oven-check.weigh-again':
    'Bisher mindestens {ovenDryPct}. Wiegen Sie es {hours}\u00a0h nach dem letzten Mal noch einmal, um zu sehen, ob es noch leichter wird.',
  'oven-check.not-dry':
    'Noch nicht trocken: bisher {ovenDryPct}. Das Gewicht ändert sich noch um {changeGrams} in {hours}\u00a0h; erlaubt sind {allowedGrams} ({ruleName}). Lassen Sie es im Darrofen und wiegen Sie es noch einmal.',
  'oven-check.dry':
    'Trocken: Die Holzfeuchte war {ovenDryPct}. Das Gewicht änderte sich um {changeGrams} in {hours}\u00a0h; erlaubt sind {allowedGrams} ({ruleName}).',

  'own-fit.too-few-dry':
    '{dry, plural, one {# Stück ist} other {# Stücke sind}} trocken. Eine Gerade braucht mindestens {least}.',
  'own-fit.too-few-dry-yet':
    '{dry, plural, one {# Stück ist} other {# Stücke sind}} trocken, {drying} noch im Darrofen. Eine Gerade braucht mindestens {least}.',
  'own-fit.impossible':
    'Ein Stück hat {mcPct}; das kann kein Messgerät messen. Prüfen Sie Gewichte und Messwerte, oder schließen Sie es aus.',
  'own-fit.too-few':
    '{pieces, plural, one {# Stück sagt} other {# Stücke sagen}} zu wenig über das nächste. Prüfen Sie mindestens {least}.',
  'own-fit.nothing-published':
    'Zum Vergleich ist nichts veröffentlicht. Ein neues Stück weicht etwa um {errorPoints} ab.',
  'own-fit.better':
    'Mit Ihren Darrproben weicht ein neues Stück etwa um {errorPoints} ab, ohne sie um {publishedPoints}.',
  'own-fit.no-better':
    'Ihre Darrproben sind nicht besser als die veröffentlichte Korrektur: Ein neues Stück weicht etwa um {errorPoints} ab, ohne sie um {publishedPoints}.',
} satisfies Record<keyof typeof english, string>;
