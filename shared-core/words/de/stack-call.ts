import type { stackCall as english } from '../en/stack-call.ts';

export const stackCall = {
  'stack-call.not-probed-yet': 'Noch nicht gemessen.',
  'stack-call.probe-all':
    'Messen Sie {boards, plural, one {das Brett} =2 {beide Bretter} other {alle # Bretter}}.',
  'stack-call.probe-so-many':
    'Messen Sie {boards}. Sind alle fertig, ist zu {certaintyPct} sicher, dass höchstens 1 von {oneIn} es nicht ist.',
  'stack-call.all-ready':
    '{probed, plural, one {Das gemessene Brett ist} =2 {Beide gemessenen Bretter sind} other {Alle # gemessenen Bretter sind}} fertig.',
  'stack-call.every-board-ready':
    '{boards, plural, one {Das Brett ist} =2 {Beide Bretter sind} other {Alle # Bretter sind}} fertig.',
  'stack-call.sure': 'Zu {certaintyPct} ist sicher, dass höchstens 1 von {oneIn} es nicht ist.',
  'stack-call.ready-so-far':
    '{probed, plural, one {Das gemessene Brett ist} =2 {Beide gemessenen Bretter sind} other {Alle # gemessenen Bretter sind}} fertig. {more, plural, one {Ist {more} weiteres fertig} other {Sind {more} weitere fertig}}, ist zu {certaintyPct} sicher, dass höchstens 1 von {oneIn} es nicht ist.',
  'stack-call.probe-more': 'Messen Sie noch {more}.',

  'stack-call.all.keep-drying':
    '{boards, plural, one {Das gemessene Brett muss weiter trocknen.} =2 {Beide müssen weiter trocknen.} other {Alle # müssen weiter trocknen.}}',
  'stack-call.all.bring-in':
    'Holen Sie {boards, plural, one {das gemessene Brett} =2 {beide} other {alle #}} herein.',
  'stack-call.all.add-place':
    'Für {boards, plural, one {das gemessene Brett} =2 {beide} other {alle #}} ist noch kein Ort trocken genug.',
  'stack-call.all.too-dry':
    '{boards, plural, one {Das gemessene Brett ist} =2 {Beide sind} other {Alle # sind}} zu trocken. Lassen Sie {boards, plural, one {es} other {sie}} Feuchte aufnehmen.',
  'stack-call.all.probe-again':
    'Messen Sie {boards, plural, one {das Brett} =2 {beide} other {alle #}} nach.',
  'stack-call.some.keep-drying':
    '{boards, plural, one {# von {probed} gemessenen Brettern muss weiter trocknen.} other {# von {probed} gemessenen Brettern müssen weiter trocknen.}}',
  'stack-call.some.bring-in': 'Holen Sie {boards} von {probed} gemessenen Brettern herein.',
  'stack-call.some.add-place':
    'Für {boards} von {probed} gemessenen Brettern ist noch kein Ort trocken genug.',
  'stack-call.some.too-dry':
    '{boards} von {probed} gemessenen Brettern {boards, plural, one {ist} other {sind}} zu trocken.',
  'stack-call.some.probe-again': 'Messen Sie {boards} von {probed} Brettern nach.',
  'stack-call.average':
    '{averaged, plural, one {{boardCode}: Mittel {averagePct}.} other {Mittel von # Brettern: {averagePct}.}} Ziel {targetRange}.',
  'stack-call.average-read': 'Gemessen {probedRange}.',
  'stack-call.also.ready': '{boards} fertig.',
  'stack-call.also.keep-drying': '{boards, plural, one {# muss} other {# müssen}} weiter trocknen.',
  'stack-call.also.bring-in': '{boards} hereinzuholen.',
  'stack-call.also.add-place': 'Für {boards} ist noch kein Ort trocken genug.',
  'stack-call.also.too-dry': '{boards} zu trocken.',
  'stack-call.also.probe-again': '{boards} nachzumessen.',
  'stack-call.half-probed': '{boards} teilweise gemessen.',
  'stack-call.not-probed': '{boards} noch nicht gemessen.',

  'stack-call.open-round':
    'Messrunde offen: {readings, plural, one {# Messwert} other {# Messwerte}}, {boardsDone} von {boards, plural, one {# Brett} other {# Brettern}} erledigt.',
  'stack-call.finish-probing':
    '{boards, plural, one {# Brett ist nur teilweise gemessen. Messen Sie alle seine Messstellen in einer neuen Messrunde.} other {# Bretter sind nur teilweise gemessen. Messen Sie alle ihre Messstellen in einer neuen Messrunde.}}',
  'stack-call.probe-day':
    '{when, select, today {Messen Sie heute.} other {Die Messung ist seit {dueOn} überfällig.}}',
  'stack-call.probe-old':
    '{when, select, today {Messen Sie heute.} other {Die Messung ist seit {dueOn} überfällig.}} {which, select, one {{boardCode} wurde zuletzt am {probedOn} gemessen.} some {Einige Bretter wurden zuletzt am {probedOn} gemessen.} other {Zuletzt gemessen am {probedOn}.}}',
  'stack-call.overdue-then': '{whySentences}',
  'stack-call.and-elsewhere': '{whySentences}',
  'stack-call.probe-elsewhere':
    '{boards, plural, one {# Brett ist} other {# Bretter sind}} am Ort {placeName} zu messen.',
  'stack-call.should-be-ready':
    '{boards, plural, one {# Brett müsste} other {# Bretter müssten}} jetzt fertig sein.',
  'stack-call.may-not-be-ready':
    '{boards, plural, one {# Brett, das als fertig gilt, ist} other {# Bretter, die als fertig gelten, sind}} es vielleicht nicht mehr.',
  'stack-call.to-move':
    '{boards, plural, one {# Brett erreicht} other {# Bretter erreichen}} das Ziel an {boards, plural, one {seinem} other {ihrem}} Ort kaum.{later, plural, =0 {} one { Lagern Sie {now} jetzt in trockenere Luft um. Lagern Sie das andere bei {dryEnoughLimitPct} um, innen {coreLimitPct}.} other { Lagern Sie {now} jetzt in trockenere Luft um. Lagern Sie die anderen # bei {dryEnoughLimitPct} um, innen {coreLimitPct}.}}',
  'stack-call.move-back':
    '{boards, plural, one {# Brett ist} other {# Bretter sind}} für beheizte Räume zu feucht. Lagern Sie {boards, plural, one {es} other {sie}} zurück unter Dach.',
  'stack-call.add-place':
    '{boards, plural, one {# Brett erreicht} other {# Bretter erreichen}} das Ziel an keinem Ihrer Orte. Fügen Sie einen trockeneren hinzu, oder ändern Sie die Verwendung.',
  'stack-call.to-move-later':
    '{boards, plural, one {{boardCode} erreicht} other {# Bretter erreichen}} das Ziel an {boards, plural, one {seinem} other {ihrem}} Ort kaum. Lassen Sie {boards, plural, one {es} other {sie}} auf {dryEnoughLimitPct} trocknen, innen auf {coreLimitPct}. Lagern Sie {boards, plural, one {es} other {sie}} dann in trockenere Luft um.',
  'stack-call.learns-rate':
    'Messen Sie {boards, plural, one {# Brett} other {# Bretter}} nach, um zu erfahren, wie schnell {boards, plural, one {es trocknet} other {sie trocknen}}.',
  'stack-call.some-to-probe': '{boards} nachzumessen. {boardCode}: {why}',
  'stack-call.frozen': 'Gefroren. Lassen Sie es auftauen.',
  'stack-call.could-change':
    'Eine Messung könnte jetzt das Urteil über {boards, plural, one {# Brett} other {# Bretter}} ändern.',
} satisfies Record<keyof typeof english, string>;
