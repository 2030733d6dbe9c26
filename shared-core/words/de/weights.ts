import type { weights as english } from '../en/weights.ts';

export const weights = {
  'weights.title': 'Holzfeuchte nach Gewicht',
  'weights.weigh': 'Wiegen',
  'weights.cut': 'Abschnitte schneiden',
  'weights.cut-new': 'Neue Abschnitte schneiden',
  'weights.why': 'Sie können ein Brett ohne Messgerät nach seinem Gewicht verfolgen.',
  'weights.how-cut':
    'Schneiden Sie nahe jedem Ende einen Abschnitt. Wiegen Sie die Abschnitte und das Brett.',
  'weights.how-dry':
    'Trocknen Sie die Abschnitte im Darrofen. Daraus ergibt sich das Darrgewicht des Bretts.',
  'weights.how-follow': 'Von da an ergibt sein Gewicht die Holzfeuchte, auch über der Fasersättigung.',
  'weights.no-sections': 'Schneiden Sie zuerst Abschnitte. Ohne sie ergibt das Gewicht keine Holzfeuchte.',
  'weights.sections-drying':
    '{drying} von {sections, plural, one {# Abschnitt} other {# Abschnitten}} im Darrofen. Wiegen Sie {drying, plural, one {ihn} other {sie}} nach dem Trocknen.',
  'weights.impossible':
    'Diese Gewichte können nicht stimmen. Schließen Sie diesen Schnitt aus, und schneiden Sie neue Abschnitte.',
  'weights.weigh-now':
    'Beim Schneiden der Abschnitte hatte das Brett {mcWhenCutPct}. Wiegen Sie es, um seine jetzige Holzfeuchte zu sehen.',
  'weights.mc-now': '{mcPct} nach Gewicht. Beim Schneiden der Abschnitte waren es {mcWhenCutPct}.',
  'weights.below-oven-dry':
    'Das Brett wiegt weniger als sein geschätztes Darrgewicht, die Abschnitte waren also zu trocken. Schneiden Sie neue.',
  'weights.target': 'Zielgewicht für {useName}: {leastKg} bis {mostKg}.',

  'weights.cut-title': 'Abschnitte von {boardCode}',
  'weights.cut-where':
    'Schneiden Sie zwei Abschnitte, jeder {sectionMm} in Faserrichtung. Bleiben Sie {clearDistanceMm} von den Enden und weg von Ästen.',
  'weights.cut-middle': 'Das Stück dazwischen ist das Probebrett.',
  'weights.cut-weigh': 'Wiegen Sie die Abschnitte sofort, bevor sie trocknen. Wiegen Sie dann das Brett.',
  'weights.cut-coat': 'Versiegeln Sie die frischen Enden des Bretts.',
  'weights.cut-caution':
    'Eine Säge kann kurze Stücke wegschleudern. Spannen Sie das Brett ein, und halten Sie die Hände weg.',
  'weights.first-section': 'Erster Abschnitt, nass',
  'weights.second-section': 'Zweiter Abschnitt, nass',
  'weights.second-hint': 'Kann leer bleiben. Zwei Abschnitte zeigen, wie sicher die Schätzung ist.',
  'weights.board': 'Gewicht des Bretts',
  'weights.cut-when': 'Wann geschnitten',

  'weights.weigh-title': '{boardCode} wiegen',
  'weights.weigh-how': 'Wiegen Sie das ganze Brett, ohne Stapelleisten. Bürsten Sie Regen und Schnee ab.',
  'weights.weighed-when': 'Wann gewogen',

  'weights.dry-title': '{sectionName}, darrtrocken',
  'weights.dry-how':
    'Halten Sie den Darrofen auf {leastTempC} bis {mostTempC}. Der Abschnitt ist trocken, wenn er in 2 Stunden weniger als {lossPct} verliert (EN 13183-1).',
  'weights.dry-wet': 'Nass wog er {wetGrams}.',
  'weights.dry-caution':
    'Darrofen und Holz sind heiß. Nehmen Sie Handschuhe oder eine Zange. Lassen Sie Holz in einem heißen Darrofen nie unbeaufsichtigt. Harzreiches Holz gibt brennbare Dämpfe ab. Eine Mikrowelle kann Holz in Brand setzen.',
  'weights.dry-weight': 'Darrgewicht',

  'weights.what': 'Gewogen',
  'weights.when': 'Wann',
  'weights.sections-cut': '{boardKg}, Abschnitte geschnitten',
  'weights.mc-error': '{mcPct} ± {errorPoints}',
  'weights.section': 'Abschnitt {number}',
  'weights.section-of-cut': 'Abschnitt {number}, {cutName}',
  'weights.cut-name': 'Schnitt vom {cutOn}',
  'weights.wet': '{wetGrams} nass',
  'weights.in-oven': 'im Darrofen',
  'weights.dry': '{dryGrams} darrtrocken',
  'weights.weigh-dry': 'Trocken wiegen',
  'weights.weigh-again': 'Noch einmal wiegen',
  'weights.weigh-dry-name': 'Trocken wiegen: {sectionName}',
  'weights.weigh-again-name': 'Noch einmal wiegen: {sectionName}',

  'weights.chart': 'Holzfeuchte von {boardCode} nach Gewicht',
  'weights.chart-one': '{mcPct} am {weighedOn}.',
  'weights.chart-more': 'Von {firstPct} am {firstOn} auf {lastPct} am {lastOn}.',
  'weights.weight': 'Gewicht',
  'weights.by-weight': 'Nach Gewicht',
  'weights.by-meter': 'Nach Messgerät',
} satisfies Record<keyof typeof english, string>;
