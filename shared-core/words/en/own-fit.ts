/** What a person's oven-dry checks say: how far each piece is, and whether they are worth using. */
export const ownFit = {
  'oven-check.impossible': 'The weights of this piece cannot be right. Exclude the check.',
  'oven-check.not-weighed':
    'Not weighed since it went into the oven. Weigh it when it looks dry, and again {hours} h later.',
  'oven-check.weigh-again':
    'At least {ovenDryPct} so far. Weigh it again {hours} h after the last time, to see whether it still loses weight.',
  'oven-check.not-dry':
    'Not dry yet: {ovenDryPct} so far. Its weight still changes by {changeGrams} in {hours} h; {allowedGrams} allowed ({ruleName}). Leave it in and weigh it again.',
  'oven-check.dry':
    'Dry: its MC was {ovenDryPct}. Its weight changed by {changeGrams} in {hours} h; {allowedGrams} allowed ({ruleName}).',

  'own-fit.too-few-dry':
    '{dry, plural, one {# piece is} other {# pieces are}} dry. A line needs at least {least}.',
  'own-fit.too-few-dry-yet':
    '{dry, plural, one {# piece is} other {# pieces are}} dry, {drying} still drying. A line needs at least {least}.',
  'own-fit.impossible':
    'A piece is at {mcPct}, which no meter can read. Check its weights and readings, or exclude it.',
  'own-fit.too-few':
    '{pieces, plural, one {# piece tells} other {# pieces tell}} too little about the next one. Check at least {least}.',
  'own-fit.nothing-published':
    'Nothing is published to compare with. A new piece is off by about {errorPoints}.',
  'own-fit.better':
    'With your checks a new piece is off by about {errorPoints}, without them by {publishedPoints}.',
  'own-fit.no-better':
    'Your checks do not beat the published correction: a new piece is off by about {errorPoints}, without them by {publishedPoints}.',
} as const;
