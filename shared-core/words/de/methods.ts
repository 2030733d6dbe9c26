import type { methods as english } from '../en/methods.ts';

export const methods = {
  'methods.title': 'Methoden und Quellen',
  'methods.lead': 'Was Pintally berechnet, wie und woraus. Die Zahlen sind die, die jetzt verwendet werden.',
  'methods.find': 'Überschrift suchen',
  'methods.find-hint': 'Ein Wort aus einer Überschrift oder ihrem Text.',
  'methods.none': 'Kein Abschnitt enthält „{typedText}“.',
  'methods.contents': 'Inhalt',
  'methods.print': 'Drucken',
  'methods.temperature': '{cellTempC}',
  'methods.temperature-step': '{cellStepK}',
  'methods.length': '{cellMm}',
  'methods.distance': '{cellDistanceMm}',
  'methods.source': 'Quelle: {source}',
  'methods.from-memory': '(aus dem Gedächtnis)',
  'methods.read': 'Methoden lesen',

  'methods.emc.title': 'Ausgleichsfeuchte der Luft',
  'methods.emc.what':
    'Die Ausgleichsfeuchte ist die Holzfeuchte, auf die sich Holz einstellt, wenn es lange genug in dieser Luft bleibt.',
  'methods.emc.formula':
    'Ausgleichsfeuchte = 1800/W · [ K h/(1 − K h) + (K1 K h + 2 K1 K2 K² h²)/(1 + K1 K h + K1 K2 K² h²) ]',
  'methods.emc.w': 'W = 349 + 1,29 T + 0,0135 T²; K = 0,805 + 0,000736 T − 0,00000273 T²',
  'methods.emc.k':
    'K1 = 6,27 − 0,00938 T − 0,000303 T²; K2 = 1,91 + 0,0407 T − 0,000293 T²; T in °C, h relative Luftfeuchte als Bruchteil',
  'methods.emc.cold': 'Luft unter {coldestTempC} zählt wie Luft dieser Temperatur. Dort endet die Formel.',
  'methods.emc.dew':
    'Taupunkt und Dampfdruck: Magnus-Formel, 610,94 · exp(17,625 T/(243,04 + T)) Pa, über Wasser.',
  'methods.emc.source':
    'Wood Handbook (FPL-GTR-282, 2021), Gl. 4-5, geprüft. Magnus-Formel: Alduchov und Eskridge, J. Applied Meteorology 35, 1996 (aus dem Gedächtnis).',

  'methods.air.title': 'Klima der Orte',
  'methods.air.stations':
    'Typische Jahre von 1020 Stationen (TMY3). Die Ausgleichsfeuchte eines Monats liegt in der Mitte zwischen zweien: dem Mittel der Ausgleichsfeuchten seiner Stunden und der Ausgleichsfeuchte seiner mittleren Luft. Beide sind nach dem Sättigungsdampfdruck gewichtet. Die Monate sind geglättet: zur Hälfte der eigene, zu je einem Viertel die Nachbarn.',
  'methods.air.region':
    'Ist keine Station genannt, hat ein Ort das Mittel der Stationen seiner Gegend. Es ist so unsicher, wie sie sich unterscheiden.',
  'methods.air.hours':
    'Prognosen berücksichtigen auch, wie einzelne Tage an dieser Station um ihren Monat schwanken.',
  'methods.air.typed':
    'Monatsmittel, die Sie für Außenluft eingeben, bekommen die Ausgleichsfeuchte ihrer Stunden. Sie weicht von der der Mittel ab, wie unten angegeben. Ein Monat kann um {sdPoints} abweichen.',
  'methods.air.typed-caption': 'Ausgleichsfeuchte der Stunden, über der der Monatsmittel',
  'methods.air.rh': 'Mittlere Luftfeuchte',
  'methods.air.above': 'Prozentpunkte',
  'methods.air.rooms':
    'Die Luft von Räumen ergibt sich aus der Außenluft, wenn der Holzplatz einen Ort im Freien hat. Der Dampfdruck von draußen bleibt. Der Raum wird erwärmt, und Menschen bringen Feuchte hinein.',
  'methods.air.room-temperature':
    'Beheizt: {heatedTempC}. Über {untilTempC} draußen: {aboveStepK} wärmer als draußen. Klimatisiert: höchstens {cooledTempC} und höchstens {cooledRhPct} Luftfeuchte. Werkstatt, zeitweise beheizt: mindestens {shopTempC}.',
  'methods.air.gain':
    'Feuchteeintrag: {coldGain} Gramm Wasser je Kubikmeter Luft unter {coldTempC} draußen, {warmGain} über {warmTempC}, dazwischen linear. Eine Werkstatt hat die Hälfte.',
  'methods.air.room-sd':
    'Der Feuchteeintrag kann um {gainSd, plural, one {# Gramm} other {# Gramm}} abweichen, die Temperatur um {tempSdStepK}. Entsprechend unsicher ist die Ausgleichsfeuchte.',
  'methods.air.shed': 'Ein offener Schuppen hat die Außenluft. Sie kann um {sdPoints} abweichen.',
  'methods.air.unknown':
    'Ist die Außenluft nicht bekannt, wird für einen beheizten Raum angenommen, dass er im Lauf des Jahres zwischen {driestPct} und {dampestPct} schwankt, ± {sdPoints}.',
  'methods.air.source':
    'TMY3: Wilcox und Marion, NREL/TP-581-43156, 2008. Raumtemperatur: ASHRAE 160, aus offenem Code. Feuchteeintrag: die Hälfte der Bemessungswerte von Kalamees, Vinha und Kurnitski, J. Building Physics 29, 2006 (Zusammenfassung geprüft); die Hälfte liegt nahe am Mittel (aus dem Gedächtnis). Gleiche Form wie die Feuchteklassen der EN ISO 13788. Der Rest ist übliche Praxis, ohne Quelle.',

  'methods.correction.title': 'Vom angezeigten Wert zur Holzfeuchte',
  'methods.correction.steps':
    'Ein Wert wird in Schritten korrigiert: Skala des Messgeräts, Temperatur, Holzart, dann Ihre eigenen Darrproben. Jeder Messwert lässt sich bis zu diesen Schritten aufklappen.',
  'methods.correction.scale':
    'Ein Wert in Prozent steht für den Widerstand, der ihm auf seiner Skala entspricht. Dieser Widerstand wird auf der Kennlinie der Holzart des Bretts nachgeschlagen.',
  'methods.correction.usual':
    'Ist die Skala unbekannt, wird Küsten-Douglasie angenommen, kalibriert bei {usualTempC}.',
  'methods.correction.temperature':
    'Drei veröffentlichte Temperaturkorrekturen sind sich uneinig. Für Widerstände gilt James. Für Werte in Prozent gelten Pfaff und Garrahan. Wie weit die anderen davon entfernt liegen, als quadratisches Mittel, kommt zur Unsicherheit hinzu.',
  'methods.correction.formulas':
    'M ist der angezeigte Wert, T die Temperatur des Holzes in °C, u die Holzfeuchte. James, unsere Anpassung an seine Abbildung: u = M · exp(−0,007735 D + 0,00004858 D²) − 0,03636 D, D = T − 21,1. Pfaff und Garrahan: u = (M + 0,567 − 0,0260 T + 0,000051 T²)/(0,881 · 1,0056^T). VTT 420: u = M − 0,125 T.',
  'methods.correction.scale-temperature':
    'Jede hat die Form u = Faktor · M + Zuschlag. Auf einer Skala, die bei einer anderen Temperatur kalibriert ist: u = Faktor/Faktor₀ · (M − Zuschlag₀) + Zuschlag, die mit ₀ bei der Temperatur der Skala.',
  'methods.correction.temperature-caption':
    'Prozentpunkte, die zu einer Anzeige von {shownPct} auf einer bei {commonTempC} kalibrierten Skala hinzukommen',
  'methods.correction.wood': 'Holz',
  'methods.correction.james': 'James',
  'methods.correction.pfaff': 'Pfaff und Garrahan',
  'methods.correction.vtt': 'VTT 420',
  'methods.correction.range':
    'Korrekturen sind für {leastTempC} bis {mostTempC} gedacht. Unter {lowestTempC} und über {highestTempC} wird nicht korrigiert.',
  'methods.correction.frozen':
    'Gebundenes Wasser gefriert nicht. Unter dem Gefrierpunkt werden Messwerte bis {frozenPct} verwendet. Die Unsicherheit wächst je {coldStepK} um {coldPoints}, höchstens um {mostPoints}. Macht eine veröffentlichte Korrektur ein Brett fertig und eine andere nicht, lautet das Urteil „Nachmessen“.',
  'methods.correction.uncertainty':
    'Die Teile der Unsicherheit addieren sich als Quadrate: Messgerät, Holzart ohne Kennlinie, Skala, Temperatur, Kälte und ein Wert außerhalb seiner Kennlinie.',
  'methods.correction.wet':
    'Über der Fasersättigung, {saturationPct}, zeigt ein Messgerät nur, dass Holz nass ist. Unter {leastPct} zeigt es wenig.',
  'methods.correction.uncertainty-caption':
    'Standardunsicherheit eines Messwerts von {shownPct} bei {commonTempC}',
  'methods.correction.case': 'Fall',
  'methods.correction.points': 'Prozentpunkte',
  'methods.correction.of-air':
    'Ist die Holztemperatur unbekannt, wird die der üblichen Luft dort in jenem Monat angenommen. Zwei Standardabweichungen: {outdoorsStepK} im Freien, {roomStepK} in einem beheizten Raum.',
  'methods.correction.with-curve': 'Holzart mit Kennlinie (Amerikanischer Nussbaum)',
  'methods.correction.without-curve': 'Holzart ohne Kennlinie (Amerikanischer Kirschbaum)',
  'methods.correction.no-temperature': 'Holztemperatur unbekannt (Amerikanischer Nussbaum)',
  'methods.correction.checks':
    'Ihre Darrproben einer Holzart ergeben eine Gerade nach der Methode der kleinsten Quadrate: Messwert = a · u + b. Die Steigung a ist 1, außer wenn die Darrproben um {spreadPoints} streuen und eine Steigung ausgelassene Darrproben besser vorhersagt. Ab {leastChecks} Darrproben ersetzt die Gerade die veröffentlichte Korrektur, wenn sie besser vorhersagt.',
  'methods.correction.learned':
    'Getrocknete Stücke und gewogene Probebretter verschieben die Messwerte ihres Messgeräts und ihrer Holzart. Das Modell ist hierarchisch und normalverteilt. Vorher bekannte Standardabweichungen: {meterPoints} durch das Messgerät, {speciesPoints} durch die Holzart, {bothPoints} durch beide, {boardPoints} von Brett zu Brett. Ein gemeinsamer Faktor dazu wird ebenfalls gelernt; sein Vorwissen wiegt so viel wie {priorBoards} Bretter.',
  'methods.correction.source':
    'W. L. James, FPL-GTR-6, 1988, Abbildung 5, wie in offenem Code digitalisiert. Pfaff und Garrahan, Forest Products Journal 36(3), 1986, aus offenem Code. Forsén und Tarvainen, VTT Publications 420, 2000, Zusammenfassung. Wood Handbook, Kapitel 13. Gebundenes Wasser: FPL-GTR-6. Ausgelassene Darrproben: Stone, J. Royal Statistical Society B 36, 1974; Hierarchie: Gelman und andere, Bayesian Data Analysis (beide aus dem Gedächtnis). Handmessgeräte: die Mitte von ±1 bis ±3 Prozentpunkten bei zwei Sigma. Andere Teile der Unsicherheit: unser Ermessen.',

  'methods.curves.title': 'Kennlinien der Holzarten',
  'methods.curves.what':
    'Jede Kennlinie gibt den Widerstand in Faserrichtung über der Holzfeuchte an. Zwischen den Punkten: ein monotones Polynom dritten Grades im Logarithmus des Widerstands. Eine Kennlinie endet, wo sie je Prozentpunkt um weniger als {fallSharePct} fällt. Danach geht sie mit ihrer letzten Steigung weiter, bei größerer Unsicherheit.',
  'methods.curves.none':
    'Eine Holzart ohne Kennlinie bekommt nur die Temperaturkorrektur und eine größere Unsicherheit.',
  'methods.curves.caption': 'Kennlinien und ihre Quellen',
  'methods.curves.curve': 'Kennlinie',
  'methods.curves.range': 'Bereich',
  'methods.curves.between': '{curveRange}',
  'methods.curves.at': 'Holz bei',
  'methods.curves.source-head': 'Quelle',
  'methods.curves.source':
    'Interpolation: Fritsch und Butland, SIAM J. Sci. Stat. Comput. 5, 1984 (aus dem Gedächtnis).',

  'methods.depth.title': 'Tiefe und Feuchteprofil eines Bretts',
  'methods.depth.parabola':
    'Quer durch ein trocknendes Brett verläuft die Feuchte annähernd als Parabel. Ihr Mittel liegt auf zwei Dritteln des Wegs von außen nach innen. Spitzen in einer Tiefe von 21\u00a0% der Dicke treffen dieses Mittel.',
  'methods.depth.pins':
    'Blanke Spitzen messen die feuchteste Schicht, die sie berühren. Spitzen unbekannter Länge werden als {pinMm} lang angenommen. In Brettern bis {thinMm} gibt eine Tiefe das Mittel.',
  'methods.depth.driven':
    'Für das Mittel werden Spitzen ganz eingestochen, wenn das {fromSharePct} bis {toSharePct} der Dicke sind, sonst bis {atSharePct}. Spitzen, die länger als {middleSharePct} der Dicke sind, messen außen und innen.',
  'methods.depth.profile':
    'Ein Messwert in der Tiefe z ist Mittel + g · (1/(n + 1) − |1 − 2 z/Dicke|^n); g ist innen minus Oberfläche. n ist jedes von {exponents}, gewichtet danach, wie gut es die Messwerte erklärt. Ebenso jede Tiefe, die Spitzen unbekannter Länge erreicht haben können.',
  'methods.depth.interval':
    'Was Messwerte gemeinsam haben, wie der Fehler des Messgeräts, bleibt, so viele es auch sind. Ihre Streuung nimmt mit der Anzahl ab. Die Bereiche folgen der Student-t-Verteilung mit Freiheitsgraden nach Welch–Satterthwaite.',
  'methods.depth.ends':
    'Messstellen liegen {clearanceDistanceMm} von den Enden, wenn das Brett lang genug ist.',
  'methods.depth.scatter':
    'Messwerte derselben Tiefe unterscheiden sich in trockenem Holz um {dryPoints}, darüber im Verhältnis. Das ist vorher so gut bekannt, wie es {degrees} überzählige Messwerte verraten würden.',
  'methods.depth.source':
    'Parabel: Rechnung. Steilheit des Profils: Trocknungsmodell. Tiefe der Spitzen: EN 13183-2 und Dry Kiln Operator’s Manual (aus dem Gedächtnis). Bereiche: GUM, JCGM 100:2008, 5.1 und G.4. Profil: bayessches lineares Modell, wie in Gelman und andere (aus dem Gedächtnis). Streuung: übliche Praxis, ohne Quelle.',

  'methods.drying.title': 'Trocknungsmodell und Prognose',
  'methods.drying.law':
    'Feuchte wandert durch Diffusion durch die Dicke und geht an jeder Breitseite in die Luft. Die Diffusion nimmt mit Holzfeuchte und Temperatur zu und mit der Dichte ab. Das Rechenverfahren stimmt mit der Reihe von Crank überein.',
  'methods.drying.diffusivity-formula':
    'Diffusionskoeffizient quer zur Faser: D = Db · Dv/((1 − p)(Db + Dv (1 − √p))), p der Anteil der Poren. Gebundenes Wasser: Db = 0,000007 · exp(−(9200 − 70 M)/(1,9872 T)) m²/s, T 288,15\u00a0K. Ab {saturationPct} bleibt D gleich. Bei einer anderen Temperatur ist D das exp(5280/288,15 − 5280/T)-Fache, T in Kelvin: Es steigt etwa wie die Verdunstung.',
  'methods.drying.vapor-formula':
    'Dampf in den Poren: Dv = 0,018 · 0,000022 (T/273)^1,75 · P · dh/dM/(8,314 T · Dichte der Zellwand), P Sättigungsdampfdruck. Luftfeuchte über Holz: h = exp(−(K2 · K1^M + K3)).',
  'methods.drying.bradley':
    'K1 = 0,839 + 0,0000202 F − 0,00000156 F²; K2 = 3,56 + 0,00392 F − 0,0000445 F²; K3 = 0,0219 + 0,0000164 F; F in °F, mindestens 32 (Bradley).',
  'methods.drying.exponent-formula':
    'Wie steil D mit der Feuchte steigt, ist ein unbekannter Exponent e: D = D₀ · (D/D₀)^e, D₀ bei {anchorPct}.',
  'methods.drying.face-formula':
    'Eine Breitseite verliert, in SI-Einheiten, 0,005 · Dampfdichte gesättigter Luft · (h der Breitseite − h der Luft), geteilt durch die Raumdichte des Holzes und mal ihre Faktoren.',
  'methods.drying.unknowns':
    'Fünf Größen sind von einem Brett nicht bekannt: wie schnell es innen trocknet, wie frei seine Breitseiten trocknen, seine Anfangsfeuchte, wie weit seine Luft von der des Orts abweicht und wie steil die Diffusion ansteigt.',
  'methods.drying.prior-caption': 'Vor jedem Messwert: ein {boardMm} dickes Brett Amerikanische Roteiche',
  'methods.drying.unknown': 'Unbekannte',
  'methods.drying.middle': 'Mitte',
  'methods.drying.low': '1 von 10 darunter',
  'methods.drying.high': '1 von 10 darüber',
  'methods.drying.diffusivity': 'Diffusion, Vielfaches des veröffentlichten Gesetzes',
  'methods.drying.surface': 'Oberfläche, Vielfaches einer offenen Breitseite',
  'methods.drying.start': 'Anfangsfeuchte, frisch, %',
  'methods.drying.emc': 'Ausgleichsfeuchte, Prozentpunkte neben den Monaten des Orts',
  'methods.drying.exponent': 'Anteil am veröffentlichten Anstieg mit der Feuchte',
  'methods.drying.fit':
    'Messwerte engen sie nach der Regel von Bayes ein. Bretter eines Stapels und eines Stamms geben einander Auskunft. Sie unterscheiden sich trotzdem um {spreads} in den fünf Unbekannten. Für das Modell selbst wird ein Fehler von ± {modelPoints} angenommen. Für Termine ist er kleiner, wo Messrunden dazu passen.',
  'methods.drying.places':
    'Messwerte zeigen auch, wie weit die Ausgleichsfeuchte eines Orts von der seiner Monate abweicht und wie frei Bretter in seiner bewegten Luft trocknen. Orte einer Art haben beides zum Teil gemeinsam.',
  'methods.drying.faces-caption': 'Wie frei eine Breitseite trocknet, gegenüber einer offenen',
  'methods.drying.face': 'Breitseite',
  'methods.drying.share': 'Anteil',
  'methods.drying.face-open': 'Offen, auf Stapelleisten',
  'methods.drying.face-sun': 'In der Sonne',
  'methods.drying.face-bottom': 'Unten im Stapel',
  'methods.drying.face-bark': 'Unter Rinde',
  'methods.drying.face-sealed': 'Versiegelt',
  'methods.drying.classes':
    'Holzarten trocknen nach ihrer Klasse, die sich aus dem botanischen Namen ergibt. Ohne bekannte Klasse sind die Termine ungenauer. Gegenüber veröffentlichten Tagen kommen Eichen des Tieflands und Sumpfzypressen, die im ungünstigsten Monat gestapelt wurden, ein Viertel zu schnell heraus.',
  'methods.drying.thickness':
    'Die doppelte Dicke braucht {timesAsLong}-mal so lange. Nach dem Gesetz allein wäre es viermal; Kanten und Risse helfen.',
  'methods.drying.ahead':
    'Das künftige Tempo ist unsicher, sein Logarithmus um {paceSd}. Ebenso die Jahreszeiten, um {seasonSharePct} der Ausgleichsfeuchte. Einzelne Tage zählen umso weniger, je träger das Brett folgt: innerhalb von Dicke²/(π² D). Vor einem Messwert in einem Raum oder einem Trockner ist auch die Wirkung seiner Luft unsicher.',
  'methods.drying.runs':
    'Das Modell rechnet {runs} Kombinationen von alledem durch, jede gewichtet danach, wie gut sie die Messwerte erklärt. Termine und Bänder sind die Werte bei 10\u00a0%, 50\u00a0% und 90\u00a0% dieser Läufe.',
  'methods.drying.classes-caption': 'Nach Klasse, vor jedem Messwert',
  'methods.drying.class': 'Klasse',
  'methods.drying.class-refractory': 'Schwer trocknend: Lebenseiche, Tanoak, Robinie',
  'methods.drying.class-lowland-oak': 'Eichen des Tieflands',
  'methods.drying.class-upland-oak': 'Eichen des Hochlands',
  'methods.drying.class-ring-porous': 'Ringporige: Esche, Ulme, Hickory',
  'methods.drying.class-maple': 'Ahorne',
  'methods.drying.class-dense-hardwood': 'Dichte Laubhölzer: Buche, Birke, Kirschbaum, Nussbaum',
  'methods.drying.class-light-hardwood': 'Leichte Laubhölzer: Erle, Linde, Pappel',
  'methods.drying.class-gum': 'Amberbaum, Tupelo, Immergrüne Magnolie',
  'methods.drying.class-pine': 'Kiefern',
  'methods.drying.class-softwood': 'Andere Nadelhölzer',
  'methods.drying.class-wetwood': 'Nadelhölzer mit Nasskern: Hemlock, Tanne',
  'methods.drying.class-baldcypress': 'Sumpfzypresse',
  'methods.drying.air-caption': 'Wie sich die Luft bewegt, gegenüber Wind im Freien',
  'methods.drying.air': 'Luft',
  'methods.drying.pace': 'Tempo',
  'methods.drying.pace-sd': 'Streuung seines Logarithmus, vor einem Messwert',
  'methods.drying.likely': '„Wahrscheinlich“ heißt: in 8 von 10 Fällen.',
  'methods.drying.green':
    'Für frisches Holz werden {greenSharePct} dessen angenommen, was es höchstens aufnehmen kann: 100 (1,54 − G)/(1,54 G)\u00a0%.',
  'methods.drying.source':
    'Crank, The Mathematics of Diffusion, 1975. Siau, Transport Processes in Wood, 1984, und Simpson, Wood and Fiber 5, 1973, aus offenem Code. Temperatur: Simpsons Simulationen für Roteiche (aus dem Gedächtnis), Skaar 1958 (Zusammenfassung). Größte Wassermenge: Wood Handbook, Gl. 4-3. Tempo: veröffentlichte Trocknungstage (Rietz und Page, dazu 18 Holzarten; aus dem Gedächtnis), Peck 1957, Miceli 1982. Künftiges Tempo: Kennedy und O’Hagan, Bayesian calibration of computer models, 2001; Gewichte: Gelman und andere, und Ionides 2008 (alle aus dem Gedächtnis). Dicke, Luftbewegung, Streuungen: übliche Praxis, ohne Quelle.',

  'methods.calls.title': 'Urteile',
  'methods.calls.ready':
    'Fertig: Das Mittel liegt im Ziel, und die Wahrscheinlichkeit, dass es feuchter ist als Ziel und Toleranz, liegt unter {harmChancePct}. Ebenso die Wahrscheinlichkeit eines Feuchtegefälles, das {unevenPoints} über seiner Grenze liegt. Sie muss unter {unevenChancePct} liegen, wo innen nicht gemessen wurde oder nur der Plan eine Tiefe angibt.',
  'methods.calls.profile':
    'Mittel und innen: kleinste Quadrate über drei Formen des Profils. Vor jedem Messwert ist innen minus Oberfläche das {steepness} ± {steepnessSd}-Fache des Abstands von der Ausgleichsfeuchte, dazu {aheadPoints}. In den zwei Monaten nach einer Umlagerung in trockenere Luft sind es {movedPoints} mehr. Das Wetter der Wochen und der Fehler des Messgeräts verbreitern das. Wurde nur außen gemessen und liegt der Wert unter der Ausgleichsfeuchte, wird kein Gefälle erwartet: Solches Holz kam aus trockenerer Luft.',
  'methods.calls.core-open':
    'Wurde nur außen gemessen, wird das Mittel daraus geschätzt. Es wird gezeigt, wenn es wahrscheinlich auf {widestPoints} genau ist und es innen unter {wettestPct} liegt. Ohne Messung innen brauchen „Weiter trocknen“, „Hereinholen“ und „Zu trocken“ eine Wahrscheinlichkeit von {sureChancePct} und außen dieselbe Seite. Sonst lautet das Urteil „Nachmessen“: Messen Sie innen. (Übliche Praxis, ohne Quelle.)',
  'methods.calls.history':
    'Reichen keine Spitzen ins Innere eines dicken Bretts, gilt seine Vorgeschichte: außen und innen nach der Prognose, die vor der Messrunde gemacht wurde. Kein Messwert der Runde steckt darin. Brennholz hat keine solche Vorgeschichte, weil es auch von den Enden her trocknet: Innen wird es auf einer frischen Spaltfläche gemessen.',
  'methods.calls.history-sd':
    'Innen ist es in Wirklichkeit feuchter als vorhergesagt, daher kommen {behindPoints} zum Gefälle hinzu. Seine Unsicherheit wächst um {shellPoints} für das Wetter außen und um {gradientSharePct} des Gefälles. Über {mostPoints} wird es nicht verwendet.',
  'methods.calls.depth':
    'Gibt nur der Plan eine Tiefe an, können die Spitzen so kurz wie {shortestMm} sein, oder länger und an jeder Messstelle ganz eingestochen. Ein Brett über {thinMm} ist nie fertig, solange keine Spitzen innen gemessen haben.',
  'methods.calls.spots':
    'Es gibt kein Urteil, bevor jede Messstelle des Plans gemessen ist. Zwei Messwerte an einer Stelle zählen als einer. Sind einige fraglich, genügen {enough} andere je geplanter Tiefe. Zu feucht wird früher erkannt, ab einer Wahrscheinlichkeit von {surelyChancePct}.',
  'methods.calls.later-part':
    'Eine spätere Messrunde an einigen Messstellen ersetzt nicht das Urteil der letzten vollständigen. Passen beide nicht zusammen, ist nachzumessen: wenn ihr Bereich zu {intervalChancePct} außerhalb dessen der vollen Runde liegt, verschoben um das, was das Trocknungsmodell in {modelSds} Standardabweichungen zulässt.',
  'methods.calls.more':
    'Weitere Messwerte, bis zu {mostExtra} je Tiefe, werden verlangt, wenn sie das Brett mit einer Wahrscheinlichkeit von {worthChancePct} oder mehr fertig machen. Sonst gilt die wahrscheinlichere Seite, mit ihrer Wahrscheinlichkeit, wenn diese unter {sureChancePct} liegt.',
  'methods.calls.unused':
    'Fragliche Messwerte werden nicht verwendet. Würden sie ein gutes Urteil umstoßen, ist nachzumessen.',
  'methods.calls.by-forecast':
    'Eine Prognose, die einem Urteil widerspricht, verlangt eine Messung, sobald das Urteil {youngDays} Tage alt ist. Ein anderer Ort wird genannt, wenn das Brett dort {gainDays} Tage früher fertig ist.',
  'methods.calls.old':
    'Sind Messwerte {oldDays} Tage alt oder älter, gibt die Prognose die heutige Holzfeuchte an. Ist das Urteil weniger als {sureChancePct} sicher, lautet es „Nachmessen“.',
  'methods.calls.source':
    'Nutzen weiterer Messwerte: Raiffa und Schlaifer, Applied Statistical Decision Theory, 1961 (aus dem Gedächtnis). Grenzen: übliche Praxis, ohne Quelle.',
  'methods.calls.others':
    'Hereinholen: zu feucht, und nach der Prognose oder seiner niedrigsten Ausgleichsfeuchte trocknet dieser Ort es kaum bis zum Ziel. Weiter trocknen: zu feucht. Zu trocken: unter einer unteren Grenze, auf die es ankommt. Nachmessen: Eine Messung kann das Urteil ändern.',
  'methods.calls.half-point':
    'Auf {nearPoints} kommt Holz seiner Ausgleichsfeuchte erst nach sehr langer Zeit nahe. Bevor es nach drinnen kommt, sollte Schnittholz höchstens {indoorsLimitPct} haben, innen {coreLimitPct} (Torgeson, FPL Report 1684, 1956).',
  'methods.calls.caption': 'Ziele, Toleranzen und Grenzen der mitgelieferten Verwendungen',
  'methods.calls.use': 'Verwendung',
  'methods.calls.target': 'Ziel',
  'methods.calls.target-of': '{targetRange}',
  'methods.calls.tolerance': 'Toleranz',
  'methods.calls.shell-core': 'Feuchtegefälle, höchstens',
  'methods.calls.source-head': 'Quelle',
  'methods.calls.any': 'beliebig',

  'methods.questionable.title': 'Fragliche Messwerte',
  'methods.questionable.what':
    'Ein Messwert wird markiert, wenn er zu seinem Brett, seinem Stapel, seiner letzten Messrunde oder zu dem, was Holz kann, nicht passt. Die Markierung sagt, warum, und was zu tun ist.',
  'methods.questionable.between':
    'Zwischen Messrunden behält ein Brett {paceSharePct} seines Unterschieds im Tempo. Die Luft zwischen den Runden kann um {betweenPoints} anders sein.',
  'methods.questionable.first-round':
    'Bis ein Brett ein Urteil hat, werden seine Messwerte mit dem verglichen, was das Trocknen seit dem Einschnitt zulässt: frisches Holz, jedes Tempo seiner Klasse. Die Unsicherheit der Luft an seinen Orten, und wo es vorher war, ist darin enthalten. Über {doubtSds} Standardabweichungen, trockener oder feuchter, oder unter der niedrigsten Ausgleichsfeuchte seiner Orte sind Messwerte fraglich. Mehr als drei Jahre nach dem Einschnitt wird nur auf „zu feucht“ geprüft. Bretter aus einer Trockenkammer werden nicht geprüft.',
  'methods.questionable.board':
    'Einer von drei Messwerten einer Tiefe fällt auf, wenn er über {outlierScore} robuste Standardabweichungen abweicht, einer von zweien über {differenceScore}. Ebenso, wenn es außen um so viel feuchter ist als innen in einem trocknenden Brett.',
  'methods.questionable.jump':
    'Eine Änderung seit der letzten Messrunde fällt auf, wenn sie um mehr als {changeScore} Standardabweichungen von dem abweicht, was das Trocknungsmodell erwartet. Nach {longestDays} Tagen oder nach einer Umlagerung ist die Grenze das Äußerste, was Diffusion vermag.',
  'methods.questionable.round':
    'Messrunden mit {boards} oder mehr Brettern werden verglichen. Ein Brett weicht von seinem Stapel ab, wenn es mehr als {boardScore} Standardabweichungen sind; eine Messrunde liegt daneben, wenn es mehr als {roundScore} sind; Wandern zählt ab {driftPoints}.',
  'methods.questionable.species':
    'Eine Holzart ist fraglich, wenn {mates} Bretter daneben von einer anderen sind und die Messwerte, als diese korrigiert, um {shiftPoints} oder mehr besser passen. Zwei Holzarten dürfen sich {spread}-mal so sehr unterscheiden wie eine.',
  'methods.questionable.slip':
    'Ein eingegebener Wert unter {leastLimitPct} oder über {mostLimitPct} ist ein Tippfehler, wenn das 10- oder 100-Fache oder ein Zehntel oder Hundertstel davon zu den anderen Messwerten, der letzten Messrunde, dem Trocknen seit dem Einschnitt oder der Luft seiner Orte passt.',
  'methods.questionable.ohm-slip':
    'Ein eingegebener Widerstand ist ein Tippfehler, wenn seine Holzfeuchte um mehr als {differenceScore} Standardabweichungen von anderen ihrer Tiefe abweicht und das 10-, 100-, 1000- oder Millionenfache oder der entsprechende Bruchteil zu ihnen passt.',
  'methods.questionable.rest':
    'Ein Wert vom Messgerät wird gespeichert, sobald er sich {windowSeconds} Sekunden lang um weniger als {restPoints} je Sekunde ändert.',
  'methods.questionable.source':
    'Erste Messrunde: Box, J. Royal Statistical Society A 143, 1980. Auffällige Messwerte: Iglewicz und Hoaglin, How to Detect and Handle Outliers, 1993. Wandern: Theil 1950, Sen 1968. Grenze der Diffusion: Crank, The Mathematics of Diffusion, 1975 (alle aus dem Gedächtnis). Der Rest ist übliche Praxis, ohne Quelle; die Regeln wurden an simulierten Messrunden erprobt.',

  'methods.shrinkage.title': 'Schwindung, Maße und Gewicht',
  'methods.shrinkage.formula':
    'Änderung = D (M2 − M1)/(3000/S − 30 + M1): D Maß bei M1, S Schwindung von frisch bis darrtrocken in\u00a0%. Zwischen 6\u00a0% und 14\u00a0%: D · C · (M2 − M1).',
  'methods.shrinkage.coefficients':
    'Die Beiwerte C des Handbuchs wurden für Laubhölzer geprüft, für fünf Nadelhölzer in offenem Code. Für andere Nadelhölzer wird die Änderung aus der Schwindung berechnet.',
  'methods.shrinkage.rings':
    'Jahrringe: liegend {flatDegrees}°, schräg {riftDegrees}°, stehend {quarterDegrees}°. Für die Schüsselung wird ein Jahrringradius von {radiusMm} angenommen, wenn keiner angegeben ist.',
  'methods.shrinkage.cup':
    'Schüsselung kommt von den Jahrringen, die in ihrer Richtung mehr schwinden als quer dazu, und von ungleichen Breitseiten: Breite²/8 mal die Krümmung einer freien Platte.',
  'methods.shrinkage.weight':
    'Dichte = 1000 G (1 + u/100)/(1 − V/100), kg/m³. V ist die Abnahme des Volumens seit dem frischen Zustand, G die Raumdichte. Von frisch bis darrtrocken ist V 26,5 G, wenn die Holzart keine Zahl hat.',
  'methods.shrinkage.sample-board':
    'Probebrett: Darrgewicht = 100 · Gewicht/(100 + u), u das Mittel seiner Abschnitte. Von da an ergibt sein Gewicht die Holzfeuchte.',
  'methods.shrinkage.board-feet':
    'Board Feet: Breite in Zoll mal ganze Fuß, durch 12, auf den ganzen Quadratfuß; dann mal Dicke in Vierteln.',
  'methods.shrinkage.oven':
    'Darrprobe: u = (Gewicht − Darrgewicht)/Darrgewicht. Trocken: ASTM D4442 oder EN 13183-1, keine Änderung in {astmHours}\u00a0h oder {enHours}\u00a0h.',
  'methods.shrinkage.source':
    'Wood Handbook (FPL-GTR-190), Kapitel 13 und Gl. 4-9, geprüft; Dichte, Kapitel 4 (aus dem Gedächtnis). ASTM D4442 und EN 13183-1; freie Platte: Timoshenko und Goodier, Theory of Elasticity; Probebretter: Dry Kiln Operator’s Manual; Board Feet: NHLA-Regeln (alle aus dem Gedächtnis).',

  'methods.sample.title': 'Wie viele Bretter zu messen sind',
  'methods.sample.none-wet':
    'Wenn alle gemessenen Bretter fertig sind: die hypergeometrische Wahrscheinlichkeit, dass 1 von {oneIn} im Stapel es nicht ist.',
  'methods.sample.mean':
    'Für das Mittel des Stapels: n = (t s/e)², bei einem kleinen Stapel weniger. t ist nach Student, e die Genauigkeit, s die Streuung der Bretter: {spreadPoints}, bis sie gemessen sind.',
  'methods.sample.next':
    'Als Nächstes zu messen: das Brett mit dem größten erwarteten Verlust durch ein falsches Urteil, s · L(Abstand zur Grenze/s). L ist die Verlustfunktion der Standardnormalverteilung.',
  'methods.sample.caption': 'Zu messende Bretter bei {certaintyPct} Sicherheit',
  'methods.sample.stack': 'Bretter im Stapel',
  'methods.sample.for-none-wet': 'Höchstens 1 von {oneIn} nicht fertig',
  'methods.sample.for-mean': 'Mittel auf {marginPoints} genau',
  'methods.sample.source':
    'Cochran, Sampling Techniques, 3. Auflage, 1977, Abschnitte 4.1 bis 4.6. Stein, Annals of Mathematical Statistics 16, 1945. Raiffa und Schlaifer, Applied Statistical Decision Theory, 1961 (alle aus dem Gedächtnis).',

  'methods.trials.title': 'Wie oft es stimmt',
  'methods.trials.how':
    'Programme beim Quelltext ziehen Bretter, Wetter und Messgeräte zufällig, messen sie, wie es ein Mensch täte, und zählen. Von mehreren Fällen steht hier der schwerste.',
  'methods.trials.limits':
    'Gezogene Bretter sind nicht besser als das, was man über Holz weiß. Nur die datierten Aufzeichnungen stammen von echten Brettern.',
  'methods.trials.caption': 'Ergebnisse der Versuche',
  'methods.trials.what': 'Was gezählt wurde',
  'methods.trials.found': 'Ergebnis',
  'methods.trials.goal': 'Ziel',
  'methods.trials.program': 'Programm',
  'methods.trials.at-least': 'Mindestens {least}',
  'methods.trials.at-most': 'Höchstens {most}',
  'methods.trials.between': '{least} bis {most}',
  'methods.trials.wrong-ready':
    'Von 100 Brettern mit „Fertig“: für ihre Verwendung zu feucht oder zu ungleichmäßig',
  'methods.trials.fine-ready': 'Von 100 Brettern, die gut und nahe der Grenze sind: mit „Fertig“',
  'methods.trials.fine-ready-unknown':
    'Von 100 solchen Brettern: mit „Fertig“, wenn niemand weiß, wie tief die Spitzen reichen',
  'methods.trials.interval': 'Von 100 Mittelwerten: in dem Bereich, der 90 davon umfasst',
  'methods.trials.records':
    'Von 100 datierten Aufzeichnungen von Brettern: zwischen dem 10-%- und dem 90-%-Punkt der Prognose',
  'methods.trials.faults': 'Von 100 groben Fehlern bei Messwerten: markiert',
  'methods.trials.alarms': 'Von 100 guten Messwerten: markiert',
  'methods.trials.settled': 'Von 1.000 beruhigten Werten: zu früh gespeichert',

  'methods.cautions.title': 'Warnungen',
  'methods.cautions.pins': 'Vorsicht, die Spitzen sind nadelspitz. Stechen Sie von der anderen Hand weg.',
  'methods.cautions.oven':
    'Ein heißer Darrofen, eine Mikrowelle und harzreiches Holz können einen Brand auslösen. Lassen Sie sie nie allein.',
  'methods.cautions.structure':
    'Die Holzfeuchte sagt nichts über die Festigkeit. Lassen Sie tragendes Holz von einer befähigten Person sortieren.',
  'methods.cautions.insects': 'Luftgetrocknetes Holz ist nicht hitzebehandelt. Insekten können darin leben.',

  'methods.species.title': 'Quellen der Holzarten',
  'methods.species.what':
    'Eine Zahl mit dem Vermerk „from memory“ (aus dem Gedächtnis) wurde nicht mit ihrer Quelle verglichen. Zahlen von Gruppen sind Mittel ihrer Holzarten; ihr Name hat den Zusatz „allgemein“.',
  'methods.species.caption': 'Holzarten und ihre Quellen',
  'methods.species.species': 'Holzart',
  'methods.species.source-head': 'Quellen',

  'methods.memory.title': 'Aus dem Gedächtnis',
  'methods.memory.what':
    'Diese Zahlen wurden nicht mit ihrer Quelle verglichen. Sie können abweichen. Ihre eigenen ersetzen sie.',
  'methods.memory.caption': 'Zahlen aus dem Gedächtnis',
  'methods.memory.figure': 'Zahl',
  'methods.memory.of': 'Von',
  'methods.memory.curves': 'Kennlinien',
  'methods.memory.uses': 'Ziele der Verwendungen',

  'methods.numbers.title': 'Verwendete Zahlen',
  'methods.numbers.what': 'Vorwissen und Grenzen, wie sie im Programm stehen.',
  'methods.numbers.caption': 'Vorwissen und Grenzen',
  'methods.numbers.number': 'Was',
  'methods.numbers.value': 'Wert',
  'methods.numbers.fiber-saturation': 'Fasersättigung, %',
  'methods.numbers.frozen': 'Nass genug zum Gefrieren, ab %',
  'methods.numbers.most-off': 'Größte Abweichung, die eine Prüfung korrigiert, Prozentpunkte',
  'methods.numbers.most-off-ohms': 'Größte Abweichung in Ohm, die eine Prüfung korrigiert, Zehnerpotenzen',
  'methods.numbers.least-meter': 'Niedrigste Holzfeuchte, die Messspitzen messen können, %',
  'methods.numbers.neutral-temp': 'Temperatur der Grundeinstellung der Skala',
  'methods.numbers.range-least': 'Korrekturen gedacht für Holz von mindestens',
  'methods.numbers.range-most': 'Korrekturen gedacht für Holz von höchstens',
  'methods.numbers.limit-least': 'Keine Korrektur unter',
  'methods.numbers.limit-most': 'Keine Korrektur über',
  'methods.numbers.least-for-a-line': 'Kleinste Zahl von Darrproben für eine Gerade',
  'methods.numbers.scatter-degrees': 'Gewicht der vorher bekannten Streuung, Messwerte',
  'methods.numbers.scale-unknown': 'Skala unbekannt, Anteil der Holzfeuchte',
  'methods.numbers.compensation-unknown':
    'Unbekannt, ob das Messgerät die Temperatur korrigiert, Anteil der Korrektur',
  'methods.numbers.unknown-temp': 'Holztemperatur unbekannt, Spanne',
  'methods.numbers.outside': 'Außerhalb einer Kennlinie, Anteil der Prozentpunkte außerhalb',
  'methods.numbers.wet-limit': 'Ein Messgerät ist weniger sicher ab, %',
  'methods.numbers.wet-adds': 'Um so viele Prozentpunkte je Prozentpunkt darüber',
  'methods.numbers.free-adds': 'Und je Prozentpunkt über der Fasersättigung',
  'methods.numbers.dry-adds': 'Und je Prozentpunkt unter der niedrigsten messbaren Holzfeuchte',
  'methods.numbers.middle-counts': 'Spitzen messen innen ab diesem Anteil der Dicke',
  'methods.numbers.unknown-air': 'Brett über der Ausgleichsfeuchte unbekannter Luft, Prozentpunkte',
  'methods.numbers.unknown-air-sd':
    'Brett über der Ausgleichsfeuchte unbekannter Luft, Streuung, Prozentpunkte',
  'methods.numbers.always-fully-in':
    'Wahrscheinlichkeit, dass Spitzen unbekannter Länge an jeder Messstelle ganz eingestochen waren',
  'methods.numbers.usual-drying-temp': 'Temperatur, bei der die Diffusion berechnet wird',
  'methods.numbers.coldest': 'Kälteste Luft der Formel für die Ausgleichsfeuchte',
  'methods.numbers.dampest': 'Höchste Luftfeuchte der Formel für die Ausgleichsfeuchte',
  'methods.numbers.above-means-sd': 'Streuung eines eingegebenen Monats, Prozentpunkte',
  'methods.numbers.model-error': 'Fehler des Trocknungsmodells, Prozentpunkte',
  'methods.numbers.model-error-degrees': 'Fehler des Trocknungsmodells, bekannt wie aus so vielen Messwerten',
  'methods.numbers.diffusivity-median': 'Diffusionsfaktor ohne bekannte Klasse, Mitte',
  'methods.numbers.average-gravity': 'Raumdichte, wenn sie nicht bekannt ist',
  'methods.numbers.humidity-sd': 'Luftfeuchte eines Orts um seine Monate, Streuung, % relative Luftfeuchte',
  'methods.numbers.day-swings':
    'Streuung der täglichen Ausgleichsfeuchte im Freien um ihren Monat, Prozentpunkte',
  'methods.numbers.wood-emc-sd': 'Ausgleichsfeuchte einer Holzart um die Formel, Streuung, Prozentpunkte',
  'methods.numbers.kind-share':
    'Anteil der Varianz der Ausgleichsfeuchte, den Orte einer Art gemeinsam haben',
  'methods.numbers.air-between-boards-sd':
    'Ausgleichsfeuchte zwischen Brettern eines Orts, Streuung, Prozentpunkte',
  'methods.numbers.shared-air-sd':
    'Fehler der Ausgleichsfeuchte, den alle Messwerte gemeinsam haben, Streuung, Prozentpunkte',
  'methods.numbers.surface-kind-share':
    'Anteil der Varianz der Oberfläche, den Orte einer Art gemeinsam haben',
  'methods.numbers.surface-between-boards-sd':
    'Oberflächenfaktor zwischen Brettern eines Orts, Streuung des Logarithmus',
  'methods.numbers.shared-surface-sd':
    'Fehler des Oberflächenfaktors, den alle Messwerte gemeinsam haben, des Logarithmus',
  'methods.numbers.diffusivity-sd': 'Diffusionsfaktor, Streuung des Logarithmus',
  'methods.numbers.surface-median': 'Oberflächenfaktor, Mitte',
  'methods.numbers.surface-sd': 'Oberflächenfaktor, Streuung des Logarithmus',
  'methods.numbers.exponent-mean': 'Exponent des Anstiegs, Mitte',
  'methods.numbers.exponent-sd': 'Exponent des Anstiegs, Streuung',
  'methods.numbers.green': 'Anfangsfeuchte, Anteil des Höchstmöglichen',
  'methods.numbers.green-sd': 'Dasselbe, Streuung des Logarithmus',
  'methods.numbers.ahead': 'Künftiges Tempo, Streuung des Logarithmus',
  'methods.numbers.thickness': 'Zunahme des Diffusionsfaktors mit der Dicke, Exponent',
  'methods.numbers.anchor': 'Holzfeuchte, bei der alle Exponenten übereinstimmen, %',
  'methods.numbers.old-after': 'Ein Messwert ist alt nach, Tage',
  'methods.numbers.longest-history': 'Längste Vorgeschichte, Tage',
  'methods.numbers.ring-radius': 'Angenommener Jahrringradius',
  'methods.numbers.never-quite': 'Nie ganz an der Ausgleichsfeuchte, Prozentpunkte',
  'methods.numbers.dry-enough': 'Trocken genug für drinnen, %',
  'methods.numbers.dry-enough-core': 'Innen trocken genug für drinnen, %',
  'methods.numbers.end-clearance': 'Abstand der Messstellen von den Enden',
  'methods.numbers.one-in': 'Bretter, die nicht fertig sind, höchstens 1 von',
  'methods.numbers.own-pace': 'Anteil seines Unterschieds im Tempo, den ein Brett behält',
  'methods.numbers.between-rounds': 'Luft zwischen Messrunden, Prozentpunkte',
  'methods.numbers.doubt-sds':
    'Erste Messrunde fraglich ab, Standardabweichungen von dem, was das Trocknen zulässt',
  'methods.numbers.harm':
    'Wahrscheinlichkeit, für die Verwendung zu feucht zu sein, unter der ein Brett fertig ist',
  'methods.numbers.uneven-harm': 'Dasselbe für ein Feuchtegefälle, das nicht gemessen wurde',
  'methods.numbers.uneven-by': 'Feuchtegefälle schadet ab so viel über seiner Grenze, Prozentpunkte',
  'methods.numbers.worth-moving':
    'Ein trockenerer Ort wird genannt, wenn er das Brett um so viel trockener macht, Prozentpunkte',
  'methods.numbers.worth-probing': 'Messwerte werden verlangt, wenn sie das Urteil so oft ändern',
  'methods.numbers.thin': 'Dicke, bis zu der eine Tiefe das Mittel gibt',
  'methods.numbers.assumed-pin': 'Länge der Spitzen, wenn unbekannt',
  'methods.numbers.average-least': 'Spitzen messen das Mittel ab diesem Anteil der Dicke',
  'methods.numbers.widest-estimate':
    'Breitester wahrscheinlicher Bereich eines geschätzten Mittels, das gezeigt wird, Prozentpunkte',
  'methods.numbers.wettest-estimate': 'Höchste Holzfeuchte innen, mit der es gezeigt wird, %',
  'methods.numbers.average-most': 'Spitzen messen das Mittel bis zu diesem Anteil der Dicke',
  'methods.numbers.core-behind': 'Zuschlag zum vorhergesagten Feuchtegefälle, Prozentpunkte',
  'methods.numbers.shell-sd': 'Außen gegenüber der Prognose, Streuung durch das Wetter, Prozentpunkte',
  'methods.numbers.gradient-share': 'Fehler eines vorhergesagten Feuchtegefälles, als Teil davon',
  'methods.numbers.most-history-sd':
    'Größte Unsicherheit, mit der die Vorgeschichte für innen verwendet wird, Prozentpunkte',
  'methods.numbers.steepness': 'Innen minus Oberfläche, mal Mittel über der Ausgleichsfeuchte',
  'methods.numbers.steepness-sd': 'Innen minus Oberfläche, Streuung',
  'methods.numbers.shell-ahead': 'Innen minus Oberfläche, Prozentpunkte dazu',
  'methods.numbers.shell-ahead-moved': 'Prozentpunkte dazu nach einer Umlagerung in trockenere Luft',
  'methods.numbers.shell-ahead-unknown': 'Prozentpunkte dazu, wenn eine Umlagerung nicht bekannt ist',
  'methods.numbers.shell-ahead-sd': 'Streuung dieser Prozentpunkte',
  'methods.numbers.new-here': 'So lange zählt eine Umlagerung, Tage',
  'methods.numbers.entered-at-once':
    'Innerhalb so vieler Tage nach dem Einschnitt eingegeben, war es von Anfang an dort',
  'methods.numbers.known-air-sd':
    'Ausgleichsfeuchte eines Orts, wie sie bekannt ist, Streuung, Prozentpunkte',
  'methods.numbers.spell-outdoors':
    'Ausgleichsfeuchte einiger Wochen gegenüber ihrem Monat, im Freien, Streuung, Prozentpunkte',
  'methods.numbers.spell-shed': 'Dasselbe in einem offenen Schuppen',
  'methods.numbers.spell-shop': 'Dasselbe in einer Werkstatt',
  'methods.numbers.spell-room': 'Dasselbe in einem beheizten Raum',
  'methods.numbers.meter-sd': 'Handmessgerät, von Brett zu Brett, Prozentpunkte',
  'methods.numbers.species-spread': 'Streuung zwischen Holzarten ohne Kennlinie, Anteil der Holzfeuchte',
  'methods.numbers.bias-meter': 'Systematischer Fehler eines Messgeräts, vorherige Streuung, Prozentpunkte',
  'methods.numbers.bias-species':
    'Systematischer Fehler der Korrektur einer Holzart, vorherige Streuung, Prozentpunkte',
  'methods.numbers.bias-both':
    'Systematischer Fehler eines Messgeräts bei einer Holzart, vorherige Streuung, Prozentpunkte',
  'methods.numbers.bias-board': 'Von Brett zu Brett, vorherige Streuung, Prozentpunkte',
  'methods.numbers.shortest-pins': 'Kürzeste Spitzen, wenn nur der Plan eine Tiefe angibt',
} satisfies Record<keyof typeof english, string>;
