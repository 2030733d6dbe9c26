/** What to do with a stack: its call, how many boards to probe, and which. */
export const stackPlan = {
  'stack-plan.title': 'What to do',
  'stack-plan.certainty': 'How sure to be',
  'stack-plan.to-call-ready': 'To call the stack ready',
  'stack-plan.boards-of': '{boards} of {all, plural, one {# board} other {# boards}}',
  'stack-plan.if-all-ready':
    'If all are ready, you can be {certaintyPct} sure that at most 1 in {oneIn} is not.',
  'stack-plan.to-know-average': 'To know the average within {marginPoints}',
  'stack-plan.boards-differ': 'The boards differ by about {spreadPoints} (standard deviation).',
  'stack-plan.probed-so-far': 'Probed so far',
  'stack-plan.next': 'Probe next',
  'stack-plan.next.none': 'No board needs probing today. More readings would hardly change a call.',

  'stack-plan.probe-so-many':
    'Probe {boards}. If all are ready, you can be {certaintyPct} sure that at most 1 in {oneIn} is not.',
  'stack-plan.may-not-be-ready':
    'By the forecast, {boards, plural, one {# board} other {# boards}} called ready may not be ready now. Probe {boards, plural, one {it} other {them}}.',
  'stack-plan.all-ready':
    '{probed, plural, one {The probed board is} other {All # probed boards are}} ready. You can be {certaintyPct} sure that at most 1 in {oneIn} is not.',
  'stack-plan.ready-so-far':
    '{probed, plural, one {The probed board is} other {All # probed boards are}} ready. Probe {more} more to be {certaintyPct} sure that at most 1 in {oneIn} is not.',
  'stack-plan.should-be-ready':
    'By the forecast, {boards, plural, one {# board} other {# boards}} not ready last time should be ready now. Probe {boards, plural, one {it} other {them}}.',

  'stack-plan.all.keep-drying': '{boards, plural, one {The probed board needs} other {All # need}} drying.',
  'stack-plan.all.bring-in': 'Bring in {boards, plural, one {the probed board} other {all #}}.',
  'stack-plan.all.probe-again': 'Probe {boards, plural, one {the board} other {all #}} again.',
  'stack-plan.some.keep-drying':
    '{boards, plural, one {# of {probed} needs drying.} other {# of {probed} need drying.}}',
  'stack-plan.some.bring-in': 'Bring in {boards} of {probed}.',
  'stack-plan.some.probe-again': 'Probe {boards} of {probed} again.',
  'stack-plan.average': 'Average of those not ready: {averagePct} today. Target {targetRange}.',
  'stack-plan.target': 'Target {targetRange}.',
  'stack-plan.ready-to-use': '{boards} ready to use.',
  'stack-plan.not-probed': '{boards} not probed yet.',

  'stack-plan.next.nothing-known': 'No readings and no forecast yet.',
  'stack-plan.next.near-limit':
    'About {averagePct} today, give or take {errorPoints}. It could be on either side of {limitPct}.',
  'stack-plan.next.never-probed':
    'Never probed. About {averagePct} today, give or take {errorPoints}. It could be on either side of {limitPct}.',
} as const;
