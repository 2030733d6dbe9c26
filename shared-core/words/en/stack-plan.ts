/** How many boards of a stack to probe, and which. */
export const stackPlan = {
  'stack-plan.title': 'How many to probe?',
  'stack-plan.certainty': 'How sure to be',
  'stack-plan.to-call-ready': 'To call the stack ready',
  'stack-plan.boards-of': '{boards} of {all, plural, one {# board} other {# boards}}',
  'stack-plan.if-all-ready':
    'If all are ready, you can be {certaintyPct} sure that at most 1 in {oneIn} is not.',
  'stack-plan.to-know-average': 'To know the average within {marginPoints}',
  'stack-plan.boards-differ': 'The boards differ by about {spreadPoints} (standard deviation).',
  'stack-plan.probed-so-far': 'Probed so far',
  'stack-plan.next': 'Probe next',
  'stack-plan.next.none': 'No board needs probing today.',
  'stack-plan.next.none-until': 'No board needs probing today. The next is due on {probeOn}.',

  'stack-plan.all-probed':
    '{boards, plural, one {The board is probed.} =2 {Both are probed.} other {All # are probed.}} Average {averagePct}{averaged, plural, one {} other {, boards {averagesInterval}}}{unaveraged, plural, =0 {} one { (# board has no reliable average)} other { (# boards have no reliable average)}}. {ready, plural, =0 {{boards, plural, one {It is not ready.} other {None is ready.}}} other {{boards, plural, one {It is ready.} other {{ready} ready.}}}}',
  'stack-plan.all-probed-no-average':
    '{boards, plural, one {The board is probed.} =2 {Both are probed.} other {All # are probed.}} No reliable average. {ready, plural, =0 {{boards, plural, one {It is not ready.} other {None is ready.}}} other {{boards, plural, one {It is ready.} other {{ready} ready.}}}}',

  'stack-plan.next.nothing-known': 'No readings and no forecast yet.',
  'stack-plan.next.never-probed':
    'Never probed. About {averagePct} today, give or take {errorPoints}. It could be on either side of {limitPct}.',
} as const;
