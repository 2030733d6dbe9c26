import type { calls as english } from '../en/calls.ts';

export const calls = {
  'call.ready': 'Fertig',
  'call.bring-in': 'Hereinholen',
  'call.keep-drying': 'Weiter trocknen',
  'call.too-dry': 'Zu trocken',
  'call.probe-again': 'Nachmessen',

  'call.letter-ready': 'F',
  'call.letter-bring-in': 'H',
  'call.letter-keep-drying': 'W',
  'call.letter-too-dry': 'Z',
  'call.letter-probe-again': 'N',

  'call.within-target': '{averagePct} liegt im Zielbereich {targetRange}. Wahrscheinlich {likelyInterval}.',
  'call.below-target-serves':
    '{averagePct}: trockener als das Ziel {targetRange}, und das ist in Ordnung. Wahrscheinlich {likelyInterval}.',
  'call.will-shrink': 'Bis es {dryPct} hat, schwindet es in der Breite um etwa {shrinkMm}.',
  'call.will-shrink-share': 'Bis es {dryPct} hat, schwindet es in der Breite um etwa {shrinkPct}.',
  'call.core-not-judged': 'Innen nicht gemessen.',
  'call.shell-not-judged': 'Außen nicht gemessen.',
  'call.difference-by-history':
    'Innen nicht gemessen. Feuchtegefälle nach der Prognose: wahrscheinlich {likelyPointsInterval}. Erlaubt sind {allowedPoints}.',
  'call.difference-allowed': 'Feuchtegefälle {differencePoints}; erlaubt sind {allowedPoints}.',
  'call.difference-just-over':
    'Feuchtegefälle {differencePoints}; erlaubt sind {allowedPoints}. Wahrscheinlichkeit, dass es für diese Verwendung zu groß ist: {unevenChancePct}.',

  'call.too-wet': 'Zu feucht: {averagePct}. Ziel {targetRange}.',
  'call.probably-too-wet': 'Vermutlich zu feucht: {averagePct}. Ziel {targetRange}.',
  'call.above-scale': 'Zu feucht: über {averagePct}. Ziel {targetRange}.',
  'call.shell-too-wet': 'Zu feucht: außen {shellPct}. Ziel {targetRange}.',
  'call.read-too-wet': 'Zu feucht: {mcPct}, Tiefe unbekannt. Ziel {targetRange}.',
  'call.forecast-too-wet':
    'Nach der Prognose für heute zu feucht: {averagePct}, wahrscheinlich {likelyInterval}. Ziel {targetRange}.',
  'call.forecast-today':
    'Prognose für heute: {averagePct}, wahrscheinlich {likelyInterval}. Ziel {targetRange}.',
  'call.read-long-ago': 'Zuletzt gemessen am {probedOn}: zu lange her für ein Urteil.',
  'call.last-read': 'Zuletzt gemessen am {probedOn}.',
  'call.may-be-too-wet':
    'Mittelwert {averagePct}. Wahrscheinlichkeit, dass es über {workableLimitPct} hat: {harmChancePct}.',
  'call.chance-too-wet': 'Wahrscheinlichkeit, dass es über dem Ziel liegt: {sideChancePct}.',
  'call.chance-too-dry': 'Wahrscheinlichkeit, dass es unter dem Ziel liegt: {sideChancePct}.',
  'call.air-unknown':
    'Wie trocken Holz am Ort {placeName} wird, ist unbekannt. Geben Sie das Klima dort ein.',
  'call.place-dries-to':
    'Am Ort {placeName} kann es das Ziel erreichen: niedrigste Ausgleichsfeuchte {emcPct}, im {airMonth}.',
  'call.place-dries-to-all-year':
    'Am Ort {placeName} kann es das Ziel erreichen: Ausgleichsfeuchte das ganze Jahr {emcPct}.',
  'call.place-too-damp':
    'Am Ort {placeName} erreicht es das Ziel kaum: niedrigste Ausgleichsfeuchte {emcPct}, im {airMonth}.',
  'call.place-too-damp-all-year':
    'Am Ort {placeName} erreicht es das Ziel kaum: Ausgleichsfeuchte das ganze Jahr {emcPct}.',
  'call.place-too-slow': 'Am Ort {placeName} erreicht es {targetRange} kaum innerhalb von zwei Jahren.',
  'call.dry-enough-to-bring-in':
    'Trocken genug zum Hereinholen: im Mittel höchstens {dryEnoughLimitPct}, innen höchstens {coreLimitPct}.',
  'call.too-wet-to-bring-in':
    'Zu feucht zum Hereinholen: Lassen Sie es zuerst auf {dryEnoughLimitPct} trocknen, innen auf {coreLimitPct}.',
  'call.core-unread-to-bring-in':
    'Messen Sie es innen, bevor Sie es hereinholen: Dort kann es feuchter als {coreLimitPct} sein.',
  'call.last-gain':
    'Nach dem {gainsUntilOn} trocknet es am Ort {placeName} um weniger als {gainPoints} weiter.',
  'call.emc-by-readings':
    'Die niedrigste Ausgleichsfeuchte am Ort {placeName} ist an das angepasst, was dort gemessen wurde.',
  'call.rough-air': 'Das Klima am Ort {placeName} ist nur grob bekannt.',
  'call.likely': 'Wahrscheinlich {likelyInterval}.',

  'call.core-wetter':
    'Innen ist es um {differencePoints} feuchter als außen; erlaubt sind {allowedPoints}. Lassen Sie die Feuchte am Ort {placeName} ausgleichen, bevor Sie das Brett bearbeiten.',
  'call.shell-wetter':
    'Außen ist es um {differencePoints} feuchter als innen; erlaubt sind {allowedPoints}. Lassen Sie die Feuchte am Ort {placeName} ausgleichen, bevor Sie das Brett bearbeiten.',

  'call.cold':
    'Unter dem Gefrierpunkt weichen die veröffentlichten Korrekturen um {differencePoints} voneinander ab, und davon hängt das Urteil ab. Messen Sie an einem milderen Tag.',
  'call.rained-on':
    'Außen um {differencePoints} feuchter als innen: Regen? Lassen Sie die Oberfläche trocknen, und messen Sie dann nach.',

  'call.gradient-of-drying':
    'Innen ist es um {differencePoints} feuchter als außen. Das ist beim Trocknen normal.',

  'call.average-in-target': 'Der Mittelwert {averagePct} liegt im Zielbereich {targetRange}.',
  'call.may-be-uneven':
    'Wahrscheinlichkeit, dass sich außen und innen für diese Verwendung zu sehr unterscheiden: {unevenChancePct}. Erlaubt sind {allowedPoints}.',
  'call.core-not-reached':
    'Innen nicht gemessen. Messen Sie an einem frischen Querschnitt oder mit langen isolierten Spitzen.',
  'call.core-not-split': 'Innen nicht gemessen. Spalten Sie es, und messen Sie an der frischen Fläche.',
  'call.core-depth-unknown':
    'Wie tief die Spitzen saßen, ist unbekannt. Geben Sie auf der Seite „Messgerät“ ihre Länge ein oder bei jedem Messwert die Tiefe.',

  'call.shell-below-target': 'Zu trocken: außen {shellPct}. Ziel {targetRange}.',
  'call.read-below-target': 'Zu trocken: {mcPct}, Tiefe unbekannt. Ziel {targetRange}.',
  'call.below-target': 'Zu trocken: {averagePct}. Ziel {targetRange}.',

  'call.too-close':
    'Zu knapp für ein Urteil: {averagePct}. Ziel {targetRange}. Nehmen Sie in jeder Tiefe noch {each, plural, one {# Messwert an einer neuen Stelle} other {# Messwerte an neuen Stellen}}.',
  'call.more-will-not-help': 'Weitere Messwerte helfen jetzt nicht. Eine Darrprobe hilft.',

  'call.too-few':
    'Noch nötig: {missing}, an {spots, plural, one {einer anderen Stelle} other {# verschiedenen Stellen}}.',
  'call.more-average': '{count, plural, one {# Messwert} other {# Messwerte}}',
  'call.more-shell': '{count, plural, one {# Messwert außen} other {# Messwerte außen}}',
  'call.more-core': '{count, plural, one {# Messwert innen} other {# Messwerte innen}}',

  'call.would-change':
    '{questionable, plural, one {# fraglicher Messwert würde} other {# fragliche Messwerte würden}} dieses Urteil ändern.',
  'call.would-be':
    'Ohne {questionable, plural, one {ihn} other {sie}}: {callName}, {firmPct}. Mit {questionable, plural, one {ihm} other {ihnen}}: {allPct}.',
  'call.questionable-unused':
    '{questionable, plural, one {# fraglicher Messwert, für das Urteil nicht verwendet.} other {# fragliche Messwerte, für das Urteil nicht verwendet.}} {why}',
  'call.all-questionable': 'Alle Messwerte sind fraglich. {averagePct} ist deshalb nicht verlässlich.',
  'call.shell-questionable': 'Alle Messwerte sind fraglich. Außen {shellPct} ist deshalb nicht verlässlich.',
  'call.none-usable': 'Kein brauchbarer Messwert. {why}',
  'call.none-left': 'Alle Messwerte sind ausgeschlossen.',
  'call.no-readings': 'Noch keine Messwerte.',
  'call.half-read': '{read} von {planned} Messstellen gemessen, daher kein Urteil.',
  'call.one-reading': 'Ein Messwert reicht nicht für „Fertig“. Nehmen Sie noch einen an einer neuen Stelle.',
  'call.half-read-since': '{read} von {planned} Messstellen gemessen. Noch gilt das Urteil vom {probedOn}.',
  'call.contradicts-full':
    '{read} von {planned} Messstellen gemessen, und sie passen nicht zur Messrunde vom {probedOn}. Messen Sie alle {planned}.',

  'round-summary.no-boards': 'Keine Bretter in diesem Stapel.',
  'round-summary.none-probed':
    '{boards, plural, one {Das Brett ist noch nicht gemessen.} other {Von # Brettern ist noch keines gemessen.}}',
  'round-summary.calls': '{counts}.',
  'round-summary.ready': '{ready} von {boards} fertig',
  'round-summary.bring-in': '{boards} hereinzuholen',
  'round-summary.keep-drying': '{boards} weiter zu trocknen',
  'round-summary.too-dry': '{boards} zu trocken',
  'round-summary.probe-again': '{boards} nachzumessen',
  'round-summary.half-probed': '{boards} teilweise gemessen',
  'round-summary.being-judged': '{boards} in Berechnung',
  'round-summary.not-probed': '{boards} nicht gemessen',
} satisfies Record<keyof typeof english, string>;
