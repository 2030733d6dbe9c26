import type { forecastReasons as english } from '../en/forecast-reasons.ts';

export const forecastReasons = {
  'forecast.none-to-begin-with':
    'Noch keine Prognose: nie gemessen, und der Tag des Einschnitts fehlt. Messen Sie einmal, oder geben Sie den Tag des Einschnitts ein.',
  'forecast.none.starts-later':
    'Keine Prognose: Dieses Brett beginnt in der Zukunft. Prüfen Sie den Tag des Einschnitts und die Uhr.',
  'forecast.none.reading-to-come':
    'Keine Prognose: Ein Messwert liegt in der Zukunft. Prüfen Sie sein Datum und die Uhr.',
  'forecast.none.reading-before-start':
    'Keine Prognose: Ein Messwert ist älter als der Einschnitt. Berichtigen Sie den Tag des Einschnitts, oder schließen Sie den Messwert aus.',
  'forecast.none.no-first-place':
    'Keine Prognose: Der erste Ort fehlt. Geben Sie den Ort ein und den Tag, an dem es dorthin kam.',
  'forecast.none.moves-out-of-order':
    'Keine Prognose: Die Umlagerungen dieses Bretts sind nicht in der richtigen Reihenfolge. Prüfen Sie die Daten.',
  'forecast.none.too-long':
    'Keine Prognose: Der Verlauf dieses Bretts ist über 100 Jahre lang. Prüfen Sie den Tag des Einschnitts.',
  'forecast.none.no-fit':
    'Keine Prognose: Die Messwerte passen zu keinem Verlauf der Trocknung. Prüfen Sie die Maße, die Holzart und die Messwerte.',

  'forecast.probe.first':
    'Noch nicht gemessen. Bis dahin zeigt die Prognose, wie solche Bretter im Mittel trocknen.',
  'forecast.probe.known-ready': 'Nach den Messwerten fertig. Weitere ändern daran kaum etwas.',
  'forecast.probe.check-ready': 'Es müsste inzwischen fertig sein. Messwerte geben Gewissheit.',
  'forecast.probe.undecided': 'Es ist nahe am Ziel. Messwerte eine Woche nach den letzten sagen mehr.',
  'forecast.probe.decides': 'Vielleicht ist es fertig, vielleicht nicht. Messwerte von heute zeigen es.',
  'forecast.probe.never': 'Hier erreicht es sein Ziel kaum. Lagern Sie es in trockenere Luft um.',
  'forecast.probe.after-moving':
    'Hier kommt es bis zum {untilOn} kaum in die Nähe seines Ziels. Messen Sie es, wenn es umgelagert ist.',
  'forecast.probe.learns-rate':
    'Wie schnell dieses Brett trocknet, ist noch nicht klar. Messwerte einen Monat nach den letzten helfen am meisten.',
  'forecast.probe.tries-air':
    'Wie schnell es in dieser Luft trocknet, ist noch nicht klar. Ein Messwert hier macht die Termine am sichersten.',
  'forecast.probe.not-sooner': 'Früher wird es kaum fertig.',

  'forecast.assumed.from-first-round': 'Sein Verlauf beginnt mit der ersten Messrunde.',
  'forecast.assumed.from-first-round-moved':
    'Wo es vor dem {enteredOn} war, ist nicht angegeben. Sein Verlauf beginnt deshalb mit der ersten Messrunde.',
  'forecast.assumed.there-since-sawn':
    'Wo es vor dem {enteredOn} war, ist nicht angegeben. Angenommen: seit dem Einschnitt am Ort {placeName}.',
  'forecast.assumed.readings-questionable':
    'Alle Messwerte sind fraglich. Die Prognose verwendet sie und kann deshalb weit danebenliegen.',
  'forecast.assumed.readings-unused': 'Alle Messwerte vom {readOn} sind fraglich und wurden nicht verwendet.',
  'forecast.assumed.average-density':
    'Die Raumdichte der Holzart {speciesName} ist unbekannt. Angenommen ist eine mittlere, deshalb sind die Termine weniger sicher.',
  'forecast.assumed.regional-air':
    'Das Klima am Ort {placeName} ist ein grober Mittelwert der Region. Deshalb sind auch die Termine grob.',
  'forecast.air.measured':
    'Klima am Ort {placeName}: gemessen seit {sinceOn}, an {days, plural, one {# Tag} other {# Tagen}}. {otherAir}',
  'forecast.air.station':
    'An allen anderen Tagen: das Klima der Station {stationName}{adjusted, select, yes {, angepasst an das Gemessene} other {}}.',
  'forecast.air.file':
    'An allen anderen Tagen: die Wetterdatei für {siteName}{adjusted, select, yes {, angepasst an das Gemessene} other {}}.',
  'forecast.air.region':
    'An allen anderen Tagen: das mittlere Klima der Region{adjusted, select, yes {, angepasst an das Gemessene} other {}}.',
  'forecast.air.room':
    'An allen anderen Tagen: das übliche Klima eines solchen Raums{adjusted, select, yes {, angepasst an das Gemessene} other {}}.',
  'forecast.air.months':
    'An allen anderen Tagen: die Monatswerte, die Sie eingegeben haben{adjusted, select, yes {, angepasst an das Gemessene} other {}}.',
  'forecast.assumed.room-air':
    'Das Klima am Ort {placeName} ist angenommen. Deshalb sind auch die Termine grob.',
  'forecast.assumed.check-air':
    'Die Messwerte weichen stark von dem ab, was als Klima am Ort {placeName} eingegeben ist. Prüfen Sie es und den Luftzug durch den Stapel.',
  'forecast.assumed.air-in-doubt':
    'Die Ausgleichsfeuchte am Ort {placeName} bleibt vielleicht bei {emcPct}, über dem Ziel. Deshalb gibt es keinen spätesten Termin. Messen Sie das Klima dort mit einem Hygrometer.',
  'forecast.assumed.sun':
    'Oberste Lage, ohne Abdeckung am Ort {placeNames}: Angenommen ist, dass die obere Seite in der Sonne mit {rateSharePct} der üblichen Geschwindigkeit trocknet. Regen bleibt unberücksichtigt.',
  'forecast.assumed.lowest':
    'Lage 1, über dem Boden am Ort {placeNames}: Angenommen ist, dass die untere Seite mit {rateSharePct} der üblichen Geschwindigkeit trocknet.',
  'forecast.assumed.bark-on':
    'Rinde an der {face, select, upper {oberen} other {unteren}} Seite: Angenommen ist, dass diese Seite mit {rateSharePct} der üblichen Geschwindigkeit trocknet und dass von der anderen Seite gemessen wird.',
  'forecast.assumed.bark-until':
    'Rinde an der {face, select, upper {oberen} other {unteren}} Seite bis {barkOffOn}. Angenommen ist, dass diese Seite bis dahin mit {rateSharePct} der üblichen Geschwindigkeit trocknete und dass von der anderen Seite gemessen wurde.',
} satisfies Record<keyof typeof english, string>;
