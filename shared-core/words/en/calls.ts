/** The call on a board and its reasons; the calls of a round together. */
export const calls = {
  'call.ready': 'Ready',
  'call.bring-in': 'Bring in',
  'call.keep-drying': 'Keep drying',
  'call.too-dry': 'Too dry',
  'call.probe-again': 'Probe again',

  /** The letter of each, which differ, for a label too small for its name. */
  'call.letter-ready': 'R',
  'call.letter-bring-in': 'B',
  'call.letter-keep-drying': 'K',
  'call.letter-too-dry': 'T',
  'call.letter-probe-again': 'P',

  'call.within-target': '{averagePct} is within the target, {targetRange}. Likely {likelyInterval}.',
  'call.below-target-serves':
    '{averagePct}: drier than the target, {targetRange}, which is fine. Likely {likelyInterval}.',
  'call.will-shrink': 'Dried to {dryPct}, it shrinks about {shrinkMm} across its width.',
  'call.will-shrink-share': 'Dried to {dryPct}, it shrinks about {shrinkPct} of its width.',
  'call.core-not-judged': 'Core not read.',
  'call.shell-not-judged': 'Shell not read.',
  'call.difference-by-history':
    'Core not read. Forecast difference: likely {likelyPointsInterval}. {allowedPoints} allowed.',
  'call.difference-allowed': 'Shell–core difference {differencePoints}; {allowedPoints} allowed.',
  'call.difference-just-over':
    'Shell–core difference {differencePoints}; {allowedPoints} allowed. Chance that it is too large for this use: {unevenChancePct}.',

  'call.too-wet': 'Too wet: {averagePct}. Target {targetRange}.',
  'call.probably-too-wet': 'Probably too wet: {averagePct}. Target {targetRange}.',
  'call.above-scale': 'Too wet: over {averagePct}. Target {targetRange}.',
  'call.shell-too-wet': 'Too wet: shell {shellPct}. Target {targetRange}.',
  'call.read-too-wet': 'Too wet: {mcPct}, depth unknown. Target {targetRange}.',
  'call.forecast-too-wet':
    'Too wet by its forecast for today: {averagePct}, likely {likelyInterval}. Target {targetRange}.',
  'call.forecast-today': 'Forecast for today: {averagePct}, likely {likelyInterval}. Target {targetRange}.',
  'call.read-long-ago': 'Last probed {probedOn}, too long ago for a call.',
  'call.last-read': 'Last probed {probedOn}.',
  'call.may-be-too-wet': 'Average {averagePct}. Chance that it is above {workableLimitPct}: {harmChancePct}.',
  'call.chance-too-wet': 'Chance that it is above the target: {sideChancePct}.',
  'call.chance-too-dry': 'Chance that it is below the target: {sideChancePct}.',
  'call.air-unknown': 'How dry wood gets in {placeName} is unknown. Enter its air.',
  'call.place-dries-to': '{placeName} may dry it to the target: lowest EMC {emcPct}, in {airMonth}.',
  'call.place-dries-to-all-year': '{placeName} may dry it to the target: EMC {emcPct} all year.',
  'call.place-too-damp':
    '{placeName} is unlikely to dry it to the target: lowest EMC {emcPct}, in {airMonth}.',
  'call.place-too-damp-all-year': '{placeName} is unlikely to dry it to the target: EMC {emcPct} all year.',
  'call.place-too-slow': 'In {placeName} it is unlikely to reach {targetRange} within two years.',
  'call.dry-enough-to-bring-in':
    'Dry enough to bring in: average at most {dryEnoughLimitPct}, core at most {coreLimitPct}.',
  'call.too-wet-to-bring-in':
    'Too wet to bring in: let it dry to {dryEnoughLimitPct} first, and its core to {coreLimitPct}.',
  'call.core-unread-to-bring-in':
    'Probe its core before you bring it in: it may be wetter than {coreLimitPct}.',
  'call.last-gain': 'After {gainsUntilOn} it dries less than {gainPoints} more in {placeName}.',
  'call.emc-by-readings': 'The lowest EMC of {placeName} is adjusted by what was measured there.',
  'call.rough-air': 'The air in {placeName} is only roughly known.',
  'call.likely': 'Likely {likelyInterval}.',

  'call.core-wetter':
    'The core is {differencePoints} wetter than the shell; {allowedPoints} allowed. Let it equalize in {placeName} before machining.',
  'call.shell-wetter':
    'The shell is {differencePoints} wetter than the core; {allowedPoints} allowed. Let it equalize in {placeName} before machining.',

  'call.cold':
    'Below freezing, published corrections differ by {differencePoints}, and the call depends on which one is used. Probe it on a milder day.',
  'call.rained-on':
    'Shell {differencePoints} wetter than the core: rain? Let the faces dry, then probe again.',

  'call.gradient-of-drying':
    'The core is {differencePoints} wetter than the shell. That is normal while a board dries.',

  'call.average-in-target': 'The average, {averagePct}, is within the target, {targetRange}.',
  'call.may-be-uneven':
    'Chance that shell and core differ too much for this use: {unevenChancePct}. {allowedPoints} allowed.',
  'call.core-not-reached': 'Core not read. Read it in a fresh crosscut, or with long insulated pins.',
  'call.core-not-split': 'Core not read. Split it and read the fresh face.',
  'call.core-depth-unknown':
    'How deep the pins went is not known. Enter their length on the Meter page, or the depth of each reading.',

  'call.shell-below-target': 'Too dry: shell {shellPct}. Target {targetRange}.',
  'call.read-below-target': 'Too dry: {mcPct}, depth unknown. Target {targetRange}.',
  'call.below-target': 'Too dry: {averagePct}. Target {targetRange}.',

  'call.too-close':
    'Too close to call: {averagePct}. Target {targetRange}. Take {each} more {each, plural, one {reading} other {readings}} of each depth, at new spots.',
  'call.more-will-not-help': 'More readings now won’t help. An oven-dry check will.',

  'call.too-few': 'Need {missing}, at {spots, plural, one {another spot} other {# different spots}}.',
  'call.more-average': '{count, plural, one {# more reading} other {# more readings}}',
  'call.more-shell': '{count, plural, one {# more shell reading} other {# more shell readings}}',
  'call.more-core': '{count, plural, one {# more core reading} other {# more core readings}}',

  'call.would-change':
    '{questionable, plural, one {# questionable reading} other {# questionable readings}} would change this call.',
  'call.would-be':
    'Without {questionable, plural, one {it} other {them}}: {callName}, {firmPct}. With {questionable, plural, one {it} other {them}}: {allPct}.',
  'call.questionable-unused':
    '{questionable, plural, one {# questionable reading} other {# questionable readings}}, not used for the call. {why}',
  'call.all-questionable': 'All readings are questionable, so {averagePct} is not reliable.',
  'call.shell-questionable': 'All readings are questionable, so shell {shellPct} is not reliable.',
  'call.none-usable': 'No usable reading. {why}',
  'call.none-left': 'All readings are excluded.',
  'call.no-readings': 'No readings yet.',
  'call.half-read': '{read} of {planned} spots read, so no call.',
  'call.one-reading': 'One reading is too few for Ready. Take another, at a new spot.',
  'call.half-read-since': '{read} of {planned} spots read. The call of {probedOn} still holds.',
  'call.contradicts-full':
    '{read} of {planned} spots read, and they don’t match the round of {probedOn}. Read all {planned}.',

  'round-summary.no-boards': 'No boards in this stack.',
  'round-summary.none-probed':
    '{boards, plural, one {The board is not probed yet.} other {None of # boards are probed yet.}}',
  'round-summary.calls': '{counts}.',
  'round-summary.ready': '{ready} of {boards} ready',
  'round-summary.bring-in': '{boards} to bring in',
  'round-summary.keep-drying': '{boards} to keep drying',
  'round-summary.too-dry': '{boards} too dry',
  'round-summary.probe-again': '{boards} to probe again',
  'round-summary.half-probed': '{boards} partly probed',
  'round-summary.being-judged': '{boards} being judged',
  'round-summary.not-probed': '{boards} not probed',
} as const;
