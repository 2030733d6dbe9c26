import type { stackPlan as english } from '../en/stack-plan.ts';

export const stackPlan = {
  'stack-plan.title': 'Wie viele messen?',
  'stack-plan.certainty': 'Wie sicher',
  'stack-plan.to-call-ready': 'Damit der Stapel als fertig gilt',
  'stack-plan.boards-of': '{boards} von {all, plural, one {# Brett} other {# Brettern}}',
  'stack-plan.if-all-ready':
    'Sind alle fertig, ist zu {certaintyPct} sicher, dass höchstens 1 von {oneIn} es nicht ist.',
  'stack-plan.to-know-average': 'Für das Mittel auf {marginPoints} genau',
  'stack-plan.boards-differ': 'Die Bretter unterscheiden sich um etwa {spreadPoints} (Standardabweichung).',
  'stack-plan.probed-so-far': 'Bisher gemessen',
  'stack-plan.next': 'Als Nächstes messen',
  'stack-plan.next.none': 'Heute muss kein Brett gemessen werden.',
  'stack-plan.next.none-until': 'Heute muss kein Brett gemessen werden. Das nächste ist am {probeOn} fällig.',

  'stack-plan.all-probed':
    '{boards, plural, one {Das Brett ist gemessen.} =2 {Beide sind gemessen.} other {Alle # sind gemessen.}} Mittel {averagePct}{averaged, plural, one {} other {, Bretter {averagesInterval}}}{unaveraged, plural, =0 {} one { (# Brett ohne verlässliches Mittel)} other { (# Bretter ohne verlässliches Mittel)}}. {ready, plural, =0 {{boards, plural, one {Es ist nicht fertig.} other {Keines ist fertig.}}} one {{boards, plural, one {Es ist fertig.} other {{ready} ist fertig.}}} other {{boards, plural, one {Es ist fertig.} other {{ready} sind fertig.}}}}',
  'stack-plan.all-probed-no-average':
    '{boards, plural, one {Das Brett ist gemessen.} =2 {Beide sind gemessen.} other {Alle # sind gemessen.}} Kein verlässliches Mittel. {ready, plural, =0 {{boards, plural, one {Es ist nicht fertig.} other {Keines ist fertig.}}} one {{boards, plural, one {Es ist fertig.} other {{ready} ist fertig.}}} other {{boards, plural, one {Es ist fertig.} other {{ready} sind fertig.}}}}',

  'stack-plan.next.nothing-known': 'Noch keine Messwerte und keine Prognose.',
  'stack-plan.next.never-probed':
    'Nie gemessen. Heute etwa {averagePct}, ± {errorPoints}. Das kann über oder unter {limitPct} sein.',
} satisfies Record<keyof typeof english, string>;
