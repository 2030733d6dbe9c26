/** What to do with a stack, and what about it is due. */
export const stackCall = {
  'stack-call.not-probed-yet': 'Not probed yet.',
  'stack-call.probe-all': 'Probe {boards, plural, one {the board} =2 {both boards} other {all # boards}}.',
  'stack-call.probe-so-many':
    'Probe {boards}. If all are ready, you can be {certaintyPct} sure that at most 1 in {oneIn} is not.',
  'stack-call.all-ready':
    '{probed, plural, one {The probed board is} =2 {Both probed boards are} other {All # probed boards are}} ready.',
  'stack-call.every-board-ready':
    '{boards, plural, one {The board is} =2 {Both boards are} other {All # boards are}} ready.',
  'stack-call.sure': 'You can be {certaintyPct} sure that at most 1 in {oneIn} is not.',
  'stack-call.ready-so-far':
    '{probed, plural, one {The probed board is} =2 {Both probed boards are} other {All # probed boards are}} ready. If {more} more {more, plural, one {is} other {are}}, you can be {certaintyPct} sure that at most 1 in {oneIn} is not.',
  'stack-call.probe-more': 'Probe {more} more.',

  'stack-call.all.keep-drying':
    '{boards, plural, one {The probed board needs drying.} =2 {Both need drying.} other {All # need drying.}}',
  'stack-call.all.bring-in': 'Bring in {boards, plural, one {the probed board} =2 {both} other {all #}}.',
  'stack-call.all.add-place':
    'No place is dry enough for {boards, plural, one {the probed board} =2 {both} other {all #}} yet.',
  'stack-call.all.too-dry':
    '{boards, plural, one {The probed board is} =2 {Both are} other {All # are}} too dry. Let {boards, plural, one {it} other {them}} take up moisture.',
  'stack-call.all.probe-again': 'Probe {boards, plural, one {the board} =2 {both} other {all #}} again.',
  'stack-call.some.keep-drying':
    '{boards, plural, one {# of {probed} probed boards needs drying.} other {# of {probed} probed boards need drying.}}',
  'stack-call.some.bring-in': 'Bring in {boards} of {probed} probed boards.',
  'stack-call.some.add-place': 'No place is dry enough for {boards} of {probed} probed boards yet.',
  'stack-call.some.too-dry':
    '{boards} of {probed} probed boards {boards, plural, one {is} other {are}} too dry.',
  'stack-call.some.probe-again': 'Probe {boards} of {probed} boards again.',
  'stack-call.average':
    '{averaged, plural, one {{boardCode}: average {averagePct}.} other {Average of # boards: {averagePct}.}} Target {targetRange}.',
  'stack-call.average-read': 'Probed {probedRange}.',
  'stack-call.also.ready': '{boards} ready to use.',
  'stack-call.also.keep-drying': '{boards, plural, one {# needs} other {# need}} drying.',
  'stack-call.also.bring-in': '{boards} to bring in.',
  'stack-call.also.add-place': 'No place is dry enough for {boards} yet.',
  'stack-call.also.too-dry': '{boards} too dry.',
  'stack-call.also.probe-again': '{boards} to probe again.',
  'stack-call.half-probed': '{boards} partly probed.',
  'stack-call.not-probed': '{boards} not probed yet.',

  'stack-call.open-round':
    'Round open: {readings, plural, one {# reading} other {# readings}}, {boardsDone} of {boards, plural, one {# board} other {# boards}} done.',
  'stack-call.finish-probing':
    '{boards, plural, one {# board is only partly probed. Read all its spots in a new round.} other {# boards are only partly probed. Read all their spots in a new round.}}',
  'stack-call.probe-day':
    '{when, select, today {Probe today.} other {Probing has been overdue since {dueOn}.}}',
  'stack-call.probe-old':
    '{when, select, today {Probe today.} other {Probing has been overdue since {dueOn}.}} {which, select, one {{boardCode} was last probed {probedOn}.} some {Some of its boards were last probed {probedOn}.} other {Last probed {probedOn}.}}',
  'stack-call.overdue-then': '{whySentences}',
  'stack-call.and-elsewhere': '{whySentences}',
  'stack-call.probe-elsewhere': '{boards, plural, one {# board} other {# boards}} to probe in {placeName}.',
  'stack-call.should-be-ready': '{boards, plural, one {# board} other {# boards}} should be ready now.',
  'stack-call.may-not-be-ready':
    '{boards, plural, one {# board} other {# boards}} called ready may no longer be ready.',
  'stack-call.to-move':
    '{boards, plural, one {# board is} other {# boards are}} unlikely to reach the target where {boards, plural, one {it is} other {they are}}.{later, plural, =0 {} other { Move {now} to drier air now. Move the other {later, plural, one {one} other {#}} at {dryEnoughLimitPct}, core {coreLimitPct}.}}',
  'stack-call.move-back':
    '{boards, plural, one {# board is} other {# boards are}} too wet for heated rooms. Move {boards, plural, one {it} other {them}} back under cover.',
  'stack-call.add-place':
    '{boards, plural, one {# board is} other {# boards are}} unlikely to reach the target in any of your places. Add a drier one, or change the use.',
  'stack-call.to-move-later':
    '{boards, plural, one {{boardCode} is} other {# boards are}} unlikely to reach the target where {boards, plural, one {it is} other {they are}}. Let {boards, plural, one {it} other {them}} dry to {dryEnoughLimitPct}, core to {coreLimitPct}. Then move {boards, plural, one {it} other {them}} to drier air.',
  'stack-call.learns-rate':
    'Probe {boards, plural, one {# board} other {# boards}} again to learn how fast {boards, plural, one {it dries} other {they dry}}.',
  'stack-call.some-to-probe': '{boards} to probe again. {boardCode}: {why}',
  'stack-call.frozen': 'Frozen. Let it thaw.',
  'stack-call.could-change':
    'A reading now could change the call on {boards, plural, one {# board} other {# boards}}.',
} as const;
