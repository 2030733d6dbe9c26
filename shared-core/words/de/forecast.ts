import type { forecast as english } from '../en/forecast.ts';

export const forecast = {
  'forecast.chart': 'Holzfeuchte von {boardCode}, bisher und Prognose am Ort {placeName}',
  'forecast.if-moved-to': 'Prognose bei Umlagerung nach',
  'forecast.stays': 'Bleibt',
  'forecast.today': 'Heute',
  'forecast.lowest-emc': 'Niedrigste Ausgleichsfeuchte {emcPct}',

  'forecast.average-now': 'Prognose für heute: {averagePct}, wahrscheinlich {likelyInterval}.',
  'forecast.average-now-rough': 'Prognose für heute: {averagePct}, fraglich.',
  'forecast.target': 'Ziel {targetRange}.',
  'forecast.ready-in-place': 'Fertig am Ort {placeName}: {readyText}.',

  'forecast.driest-month': 'Niedrigste Ausgleichsfeuchte',

  'forecast.places': 'Bei Umlagerung heute',
  'forecast.move-there': 'Nach {placeName} umlagern',
  'forecast.places-caption':
    'Termine für {targetRange} im Mittel und höchstens {allowedPoints} Feuchtegefälle.',
  'forecast.places-caption-any': 'Termine für {targetRange} im Mittel.',
  'forecast.place': 'Ort',
  'forecast.here-now': 'jetzt hier',
  'forecast.ready': 'Fertig',
  'forecast.likely': 'Wahrscheinlich {readyWhen}',
  'forecast.about': 'Etwa {readyWhen}',
  'forecast.timeline-until': 'Heute → {lastOn}',
  'forecast.all-year': 'das ganze Jahr',
  'forecast.lowest-emc-head': 'Niedrigste Ausgleichsfeuchte',
  'forecast.now': 'Jetzt',
  'forecast.any-day': 'Jeden Tag möglich',
  'forecast.unlikely':
    'Kaum innerhalb von zwei Jahren; am nächsten im Zeitraum {bestMonthsRange}, am trockensten etwa {driestPct} Holzfeuchte',
  'forecast.not-within': 'Kaum innerhalb von zwei Jahren',
  'forecast.driest': 'Kaum innerhalb von zwei Jahren; trocknet bis etwa {driestPct} Holzfeuchte',
  'forecast.leaves': 'Zu feucht: steigt etwa am {leavesOn} über das Ziel',
  'forecast.passes': 'Im Ziel etwa vom {entersOn} bis zum {leavesOn}, danach zu feucht',
  'forecast.air-too-damp': 'Kaum: Die Luft ist zu feucht (niedrigste Ausgleichsfeuchte {emcPct})',

  'forecast.based-on': 'Grundlage',
  'forecast.based-on-readings':
    '{readings, plural, =0 {Keine Messwerte dieses Bretts} one {# Messwert dieses Bretts} other {# Messwerte dieses Bretts}}.',
  'forecast.based-on-others':
    '{readings, plural, =0 {Keine Messwerte dieses Bretts} one {# Messwert dieses Bretts} other {# Messwerte dieses Bretts}} und {others, plural, one {# anderes Brett} other {# andere Bretter}} aus Stapel und Stamm.',

  'profile.title': 'Feuchteprofil',
  'profile.chart': 'Holzfeuchte durch die Dicke von {boardCode} heute',
  'profile.depth': 'Unter der oberen Seite',
  'profile.mc': 'Holzfeuchte',
  'profile.now': 'Nach der heutigen Prognose: außen etwa {shellPct}, innen etwa {corePct}.',
  'profile.shell-now': 'Nach der heutigen Prognose: außen etwa {shellPct}.',
  'profile.core-now': 'Nach der heutigen Prognose: innen etwa {corePct}.',
  'profile.shell-read': 'Heute außen gemessen: {shellPct}.',
  'profile.core-read': 'Heute innen gemessen: {corePct}.',
  'profile.emc': 'Ausgleichsfeuchte diesen Monat {emcPct}',
  'profile.emc-here': 'Ausgleichsfeuchte hier diesen Monat: {emcPct}.',
  'profile.read-on': 'Die Messwerte sind vom {readOn}.',
  'profile.legend-likely': 'Prognose des Profils',
  'profile.legend-shell': 'Messwert außen',
  'profile.legend-core': 'Messwert innen',
} satisfies Record<keyof typeof english, string>;
