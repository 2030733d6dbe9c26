/** What can hurt a person or spoil wood, each said where it is decided. */
export const cautions = {
  'caution.checks':
    'Too wet for a heated room: it can check and honeycomb. First dry it under cover to {dryEnoughLimitPct}, and its core to {coreLimitPct}. Slow species and thick boards need this most.',
  'caution.insects': 'Air-drying does not kill insects. Look for holes and dust before it comes indoors.',
  'caution.framing':
    'Dry does not mean strong. For structural use, follow the grading rules and the local code.',
  'caution.firewood-burn': 'Burn it in a sound stove with a swept chimney.',
  'caution.firewood-move': 'Firewood carries pests. Check the local rules before you move it far.',
} as const;
