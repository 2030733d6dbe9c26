import type { suspicions as english } from '../en/suspicions.ts';

export const suspicions = {
  'suspicion.reading-pct': '{rawPct}',
  'suspicion.reading-ohm': '{rawOhm}',

  'suspicion.damaged': 'Ein Fehler der Festplatte hat diesen Messwert verändert.',
  'suspicion.damaged.do':
    'Messen Sie an dieser Stelle noch einmal, oder stellen Sie eine Sicherung wieder her.',

  'suspicion.not-a-reading': '{reading} kann nicht die Feuchte dieser Holzart sein.',
  'suspicion.not-a-reading.do':
    'Der Messwert ist gespeichert, wird aber nicht verwendet. Prüfen Sie Spitzen und Messstelle, und messen Sie noch einmal.',

  'suspicion.typing-slip': 'Eingegeben wurde {rawPct}, aber {rawMeantPct} würde passen.',
  'suspicion.typing-slip.do':
    'Haben Sie {rawMeantPct} gemeint, verwenden Sie das. Sonst messen Sie an der Stelle noch einmal.',

  'suspicion.typing-slip.ohm': 'Eingegeben wurde {rawOhm}, aber {rawMeantOhm} würde passen.',
  'suspicion.typing-slip.ohm.do':
    'Haben Sie {rawMeantOhm} gemeint, verwenden Sie das. Sonst messen Sie an der Stelle noch einmal.',

  'suspicion.same-spot': 'Diese Stelle hat in dieser Messrunde schon einen Messwert.',
  'suspicion.same-spot.do':
    'Schließen Sie den falschen aus. Stimmen beide, messen Sie an einer anderen Stelle.',
  'suspicion.equal-values': 'Alle {readings} Messwerte sind {reading}.',
  'suspicion.equal-values.do':
    'Prüfen Sie, ob das Messgerät seinen Wert festhält. Messen Sie dann an einer Stelle noch einmal.',

  'suspicion.dry-too-soon':
    '{depth, select, shell {Außen} average {Im Mittel} other {Innen}} gemessen: {readPct}. Das ist so bald nach dem Einschnitt unwahrscheinlich. {depth, select, shell {Außen} average {Im Mittel} other {Innen}} erwartet: {expectedInterval}.',
  'suspicion.dry-too-soon.later':
    '{depth, select, shell {Außen} average {Im Mittel} other {Innen}} gemessen: {readPct}. Das ist trockener, als es an seinen Orten werden kann. {depth, select, shell {Außen} average {Im Mittel} other {Innen}} erwartet: {expectedInterval}.',
  'suspicion.dry-too-soon.pins.do':
    'Vielleicht haben die Spitzen nur die trockene Außenschicht gemessen. Messen Sie innen: frischer Querschnitt oder lange isolierte Spitzen. Prüfen Sie den Tag des Einschnitts und die Holzart.',
  'suspicion.dry-too-soon.shell.do':
    'Lag die Breitseite in der Sonne? Prüfen Sie den Tag des Einschnitts, die Holzart und die Einstellung des Messgeräts.',
  'suspicion.dry-too-soon.do':
    'Prüfen Sie den Tag des Einschnitts, die Holzart und die Einstellung des Messgeräts.',
  'suspicion.wet-too-long':
    '{depth, select, shell {Außen} average {Im Mittel} other {Innen}} gemessen: {readPct}. Inzwischen müssten es höchstens {mostPct} sein.',
  'suspicion.wet-too-long.do':
    'Wurde es durchnässt, oder tropfte Wasser darauf? Lassen Sie die Breitseiten trocknen, und messen Sie nach. Prüfen Sie den Tag des Einschnitts, die Holzart, die Einstellung des Messgeräts und wo das Brett gelegen hat. Kam es erst später auf Stapelleisten, geben Sie diesen Tag als Tag des Einschnitts ein.',
  'suspicion.wet-too-long.rain.do':
    'Lag es im Regen, wurde es durchnässt, oder tropfte Wasser darauf? Lassen Sie die Breitseiten trocknen, und messen Sie nach. Prüfen Sie den Tag des Einschnitts, die Holzart, die Einstellung des Messgeräts und wo das Brett gelegen hat. Kam es erst später auf Stapelleisten, geben Sie diesen Tag als Tag des Einschnitts ein.',
  'suspicion.drier-than-its-air':
    '{readPct} ist trockener, als es an seinen Orten wird: niedrigste Ausgleichsfeuchte {lowestEmcPct}.',
  'suspicion.drier-than-its-air.do':
    'Prüfen Sie die Holzart, die Einstellung des Messgeräts und wo das Brett gelegen hat. Messen Sie dann nach.',

  'suspicion.frozen':
    'Gefroren bei {woodTempC}: Über {frozenLimitPct} Holzfeuchte gefriert das Wasser im Holz.',
  'suspicion.frozen.do':
    'Lassen Sie es auftauen, und messen Sie nach. Ist die Temperatur falsch, berichtigen Sie sie.',
  'suspicion.below-freezing': 'Das Holz hat {woodTempC}. Unter dem Gefrierpunkt sind Messwerte ungenauer.',
  'suspicion.below-freezing.do': 'Sie können den Messwert verwenden. An einem milderen Tag wird es genauer.',

  'suspicion.not-settled': '{reading} wurde gespeichert, bevor der Wert stand.',
  'suspicion.not-settled.do': 'Stechen Sie die Spitzen noch einmal ein, und warten Sie, bis der Wert steht.',

  'suspicion.outside-meter-range.above':
    'Das Messgerät zeigte nur, dass es mehr als {reading} ist. Der wahre Wert ist höher.',
  'suspicion.outside-meter-range.above.do': 'Eine Darrprobe gibt die Holzfeuchte.',
  'suspicion.outside-meter-range.low':
    '{reading} liegt am unteren Ende der Skala des Messgeräts, {end}. Der wahre Wert kann niedriger sein.',
  'suspicion.outside-meter-range.high':
    '{reading} liegt am oberen Ende der Skala des Messgeräts, {end}. Der wahre Wert kann höher sein.',
  'suspicion.outside-meter-range.repeated.do':
    'Andere Messstellen stimmen zu: so trocken oder trockener. Eine Darrprobe gibt die Holzfeuchte.',
  'suspicion.outside-meter-range.do':
    'Prüfen Sie, ob beide Spitzen fest in gesundem Holz stecken. Wiederholt es sich, kann dieses Messgerät das Brett nicht messen.',

  'suspicion.outside-curve-range.wet':
    '{mcPct} liegt über der Fasersättigung. Das Holz ist nass; die genaue Holzfeuchte ist unbekannt.',
  'suspicion.outside-curve-range.wet.do':
    'Jetzt ist nichts zu tun. Für die genaue Holzfeuchte machen Sie eine Darrprobe.',
  'suspicion.outside-curve-range.dry':
    '{mcPct} liegt unter {leastLimitPct}; dort sind Messgeräte mit Messspitzen nicht verlässlich.',
  'suspicion.outside-curve-range.dry.do':
    'Nehmen Sie es als sehr trocken. Für die genaue Holzfeuchte machen Sie eine Darrprobe.',
  'suspicion.outside-curve-range.beyond':
    '{mcPct} liegt außerhalb der veröffentlichten Daten für diese Holzart.',
  'suspicion.outside-curve-range.beyond.do': 'Nehmen Sie es nur als ungefähren Wert.',

  'suspicion.temperature-unknown':
    'Holztemperatur unbekannt, daher ist der Messwert nicht dafür korrigiert. Je {perStepK} verschiebt er sich um etwa 1 Prozentpunkt.',
  'suspicion.temperature-of-air':
    'Holztemperatur unbekannt. Der Messwert ist für die Luft am Ort {placeName} korrigiert, etwa {airTempC}. Je {perStepK} verschiebt er sich um etwa 1 Prozentpunkt.',
  'suspicion.temperature-of-measured-air':
    'Holztemperatur unbekannt. Der Messwert ist für die am Ort {placeName} gemessene Luft korrigiert, {airTempC}. Je {perStepK} verschiebt er sich um etwa 1 Prozentpunkt.',
  'suspicion.temperature-unknown.do':
    'Messen Sie die Holztemperatur, und geben Sie sie für die Messrunde ein.',

  'suspicion.temperature-out-of-range':
    'Die Holztemperatur {woodTempC} liegt außerhalb des veröffentlichten Bereichs der Korrektur.',
  'suspicion.temperature-out-of-range.do':
    'Prüfen Sie die eingegebene Temperatur. Stimmt sie, messen Sie im Schatten oder an einem milderen Tag.',
  'suspicion.temperature-out-of-range.air':
    'Die Luft am Ort {placeName}, {airTempC}, liegt außerhalb des veröffentlichten Bereichs der Korrektur.',
  'suspicion.temperature-out-of-range.air.do':
    'Geben Sie die Temperatur des Holzes ein, oder berichtigen Sie das Klima des Orts.',

  'suspicion.temperature-unlikely':
    'Für das Holz haben Sie {woodTempC} eingegeben. In diesem Monat hat die Luft am Ort {placeName} meist etwa {airTempC}.',
  'suspicion.temperature-unlikely.measured':
    'Für das Holz haben Sie {woodTempC} eingegeben. Die am Ort {placeName} gemessene Luft hatte {airTempC}.',
  'suspicion.temperature-unlikely.probe':
    '{sensorName} hat im Holz {woodTempC} gemessen. Die Luft am Ort {placeName} hatte etwa {airTempC}.',
  'suspicion.temperature-unlikely.do':
    'Messen Sie sie noch einmal. Berichtigen oder bestätigen Sie sie dann.',

  'suspicion.near-end': 'Die Spitzen waren {fromEndDistanceMm} von einem Ende. Enden trocknen zuerst.',
  'suspicion.near-end.do': 'Messen Sie mindestens {clearDistanceMm} von beiden Enden.',

  'suspicion.end-grain':
    'Die Spitzen steckten im Hirnholz. Es nimmt Feuchte viel schneller auf und gibt sie viel schneller ab als die Breitseiten.',
  'suspicion.end-grain.do':
    'Messen Sie auf einer Breitseite. Oder auf einem frischen Querschnitt, weit genug vom Ende.',

  'suspicion.pins-shallow':
    'Die Spitzen waren {depthMm} tief. Innen heißt bei diesem Brett {coreDepthMm} unter der Oberfläche.',
  'suspicion.pins-shallow.do':
    'Schlagen Sie längere, isolierte Spitzen bis zur halben Dicke ein. Oder messen Sie in der Mitte eines frischen Querschnitts.',
  'suspicion.pins-shallow.surface':
    'Die Spitzen waren {depthMm} tief. Sie haben nur die Oberfläche gemessen.',
  'suspicion.pins-shallow.surface.do':
    'Stechen Sie die Spitzen tiefer ein, und messen Sie noch einmal. Oder berichtigen Sie die Tiefe.',
  'suspicion.deeper-than-board':
    'Die Spitzen waren {depthMm} tief, aber das Brett ist {boardThickness} dick.',
  'suspicion.deeper-than-board.do': 'Berichtigen Sie die Tiefe des Messwerts oder die Dicke des Bretts.',

  'suspicion.outlier-on-board':
    '{mcPct} liegt weit von den anderen Messwerten des Bretts {depth, select, shell {außen} average {im Mittel} other {innen}}, etwa {othersPct}.',
  'suspicion.outlier-on-board.low.do':
    'Steckten die Spitzen ganz im Holz, weg von Ästen und Rissen? Messen Sie {besideDistanceMm} daneben, entlang derselben Faser.',
  'suspicion.outlier-on-board.high.do':
    'Suchen Sie nach einem Ast, Harz, Rinde oder einer nassen Stelle. Messen Sie {besideDistanceMm} daneben, entlang derselben Faser.',
  'suspicion.outlier-on-board.pair':
    'Die beiden Messwerte {depth, select, shell {außen} average {im Mittel} other {innen}} sind {onePct} und {otherPct}. Messstellen eines Bretts sollten sich um höchstens {allowedPoints} unterscheiden.',
  'suspicion.outlier-on-board.pair.do':
    'Messen Sie noch 1- oder 2-mal {depth, select, shell {außen} average {das Mittel} other {innen}} an anderer Stelle des Bretts. Das zeigt, welcher Messwert danebenliegt.',

  'suspicion.shell-above-core':
    'Im Mittel ist außen {shellPct} und innen {corePct} gemessen. Ein trocknendes Brett ist innen feuchter.',
  'suspicion.shell-above-core.do':
    'Das kommt von Regen, Tau oder Nebel auf den Breitseiten. Oder innen steckten die Spitzen nicht tief genug. Lassen Sie die Breitseiten einen Tag trocknen, oder hobeln Sie eine Stelle sauber. Schlagen Sie die Spitzen bis zur halben Dicke ein, und messen Sie nach.',

  'suspicion.rained-on':
    'Außen sind {shellPct} gemessen, innen {corePct}. So feucht macht die Luft hier ein Brett außen nicht.',
  'suspicion.rained-on.do': 'Lassen Sie die Breitseiten trocknen, und messen Sie nach.',

  'suspicion.surface-wet':
    'Außen sind hier {shellPct} gemessen, innen {corePct}. Die Oberfläche scheint nass zu sein.',
  'suspicion.surface-wet.do':
    'Wischen Sie sie ab und lassen Sie sie trocknen, oder hobeln Sie die Stelle sauber. Messen Sie dann nach.',

  'suspicion.jump.expected':
    '{depth, select, shell {Außen} average {Im Mittel} other {Innen}} ging es in {days, plural, =0 {weniger als einem Tag} one {# Tag} other {# Tagen}} von {beforePct} auf {mcPct}. Am Ort {placeName} müssten es inzwischen etwa {expectedPct} sein.',
  'suspicion.jump.wetter':
    '{depth, select, shell {Außen} average {Im Mittel} other {Innen}} ging es in {days, plural, =0 {weniger als einem Tag} one {# Tag} other {# Tagen}} von {beforePct} auf {mcPct}. So viel kann die Luft hier nicht dazugeben.',
  'suspicion.jump.drier':
    '{depth, select, shell {Außen} average {Im Mittel} other {Innen}} ging es in {days, plural, =0 {weniger als einem Tag} one {# Tag} other {# Tagen}} von {beforePct} auf {mcPct}. Aus einem so dicken Brett ({boardThickness}) kann Feuchte nicht so schnell entweichen.',
  'suspicion.jump.do':
    'Prüfen Sie die Brettnummer, die Holzart und die Temperatur. Prüfen Sie, ob die Spitzen ganz im Holz stecken und die Oberfläche trocken ist. Machen Sie die Eigenprüfung des Messgeräts. Messen Sie dann nach.',

  'suspicion.apart-from-stack':
    'Dieses Brett hat {offPoints} {direction, select, higher {mehr} other {weniger}}, als nach seiner letzten Messrunde und dem übrigen Stapel zu erwarten ist.',
  'suspicion.apart-from-stack.do': 'Prüfen Sie die Brettnummer und die Holzart. Messen Sie dann nach.',
  'suspicion.apart-from-stack.swapped.do':
    'Vielleicht ist es mit {otherCode} verwechselt, das in die andere Richtung abweicht. Prüfen Sie beide Brettnummern und die Holzart.',
  'suspicion.apart-from-stack.depth':
    '{depth, select, shell {Außen} average {Im Mittel} other {Innen}} sind es {offPoints} {direction, select, higher {mehr} other {weniger}}, als nach der letzten Messrunde und dem übrigen Stapel zu erwarten ist.',
  'suspicion.apart-from-stack.wet-shell.do':
    'Die Breitseiten sind vielleicht nass. Wischen Sie sie ab und trocknen Sie sie, oder hobeln Sie eine Stelle sauber. Messen Sie dann nach.',
  'suspicion.apart-from-stack.dry-shell.do': 'Messen Sie außen noch einmal, weg von Hirnholz und Rissen.',
  'suspicion.apart-from-stack.wet-core.do':
    'Suchen Sie nach einem Ast, Harz oder einer nassen Zone. Messen Sie innen an anderer Stelle nach.',
  'suspicion.apart-from-stack.dry-core.do':
    'Vielleicht steckten die Spitzen nicht tief genug. Schlagen Sie sie bis zur halben Dicke ein, und messen Sie nach.',

  'suspicion.meter-drift':
    'Die Messwerte wanderten vom ersten bis zum letzten Brett um {driftPoints} nach {direction, select, higher {oben} other {unten}}.',
  'suspicion.meter-drift.do':
    'Prüfen Sie die Batterie, reinigen Sie die Spitzen, und machen Sie die Eigenprüfung des Messgeräts. Messen Sie das erste Brett nach. Hat es sich geändert, wiederholen Sie die Messrunde.',

  'suspicion.round-off':
    'Die ganze Messrunde liegt um etwa {offPoints} {direction, select, higher {höher} other {niedriger}}, als nach der letzten zu erwarten ist.',
  'suspicion.round-off.do':
    'Prüfen Sie die eingegebene Holztemperatur, die Holzart und das Messgerät. Berichtigen Sie die Eingabe, oder messen Sie einige Bretter nach.',

  'suspicion.species-unlike-stack':
    'Als {ownSpecies} misst dieses Brett {depth, select, average {im Mittel} other {innen}} {mcPct}. Als {otherSpecies}, wie die Bretter ringsum, wären es {otherPct}, und das würde besser passen.',
  'suspicion.species-unlike-stack.do':
    'Sehen Sie sich das Brett an. Ist es {otherSpecies}, ändern Sie seine Holzart. Dann werden alle seine Messwerte neu korrigiert. Ist es {ownSpecies}, bestätigen Sie das auf seiner Seite.',
} satisfies Record<keyof typeof english, string>;
