import type { movement as english } from '../en/movement.ts';

export const movement = {
  'movement.title': 'Maße, Volumen und Gewicht',
  'movement.unknown-mc': 'Noch keine verlässliche Holzfeuchte. Messen Sie zuerst.',
  'movement.from-read': 'Von {fromPct} am {readOn} auf {targetPct}, das Ziel für {useName}:',
  'movement.from-estimate':
    'Von etwa {fromPct}, nach dem Messwert außen am {readOn}, auf {targetPct}, das Ziel für {useName}:',
  'movement.from-forecast':
    'Von etwa {fromPct}, der Prognose für heute, auf {targetPct}, das Ziel für {useName}:',
  'movement.table': 'Änderung der Maße',
  'movement.table-source':
    'Wood Handbook, Kapitel 13. Einzelne Bretter können ein Drittel mehr oder weniger arbeiten.',
  'movement.side': 'Maß',
  'movement.side.width': 'Breite',
  'movement.side.thickness': 'Dicke',
  'movement.now': 'Jetzt',
  'movement.when-probed': 'Beim Messen',
  'movement.by-shrinkage': 'Aus der Gesamtschwindung',
  'movement.by-coefficient': 'Aus dem Schwindmaß je Prozentpunkt',
  'movement.change': '{sizeChangeMm} ({changePct})',

  'movement.width-missing': 'Breite unbekannt: Nur die Dicke ist angegeben.',
  'movement.sawing-missing':
    'Lage der Jahrringe unbekannt: Liegende und stehende Jahrringe sind die beiden Grenzfälle.',
  'movement.shrinkage-missing': 'Die Schwindung ist für {speciesName} nicht vollständig bekannt.',
  'movement.coefficients-missing': 'Pintally hat für {speciesName} kein Schwindmaß je Prozentpunkt.',
  'movement.by-shrinkage-alone':
    'Für {speciesName} wird die Änderung nur aus der Gesamtschwindung berechnet.',
  'movement.coefficients-outside': 'Schwindmaße je Prozentpunkt gelten nur für {validRange}.',
  'movement.size-missing':
    '{missing, select, width {Breite} length {Länge} other {Breite und Länge}} unbekannt, daher auch Volumen und Gewicht.',
  'movement.gravity-missing': 'Die Raumdichte ist für {speciesName} unbekannt, daher auch das Gewicht.',
  'movement.species-data': 'Daten zu {speciesName}',

  'movement.board-feet': 'Aufmaß in Board Feet',
  'movement.cubic-meters': 'Aufmaß in Kubikmetern',
  'movement.exact': 'genau: {volume}',
  'movement.weight-now': 'Gewicht jetzt',
  'movement.weight-when-probed': 'Gewicht bei der letzten Messung',
  'movement.weight-at-target': 'Gewicht am Ziel',
  'movement.at-mc': 'bei {mcPct}',
  'movement.at-about-mc': 'bei etwa {mcPct}',

  'cup.title': 'Schüsselung',
  'cup.now': 'Jetzt',
  'cup.at-target': 'Bei {targetPct}',
  'cup.up-to': 'höchstens {cupMm} auf {widthMm} Breite',
  'cup.hollow-up': '{cupMm} auf {widthMm} Breite, obere Breitseite hohl',
  'cup.hollow-down': '{cupMm} auf {widthMm} Breite, untere Breitseite hohl',
  'cup.cause-rings': 'Durch die Jahrringe',
  'cup.causes-together': '{ringsMm} durch die Jahrringe, {facesMm} durch ungleiches Trocknen',
  'cup.causes-against': '{ringsMm} durch die Jahrringe, {facesMm} in Gegenrichtung durch ungleiches Trocknen',
  'cup.free': 'Wenn nichts das Brett flach hält.',
  'cup.why':
    'Durch die Jahrringe wird die Rindenseite hohl. Durch ungleiches Trocknen wird die trockenere Breitseite hohl.',
  'cup.exaggerated': 'Schüsselung in der Zeichnung übertrieben.',
  'cup.assumptions': 'Annahmen',
  'cup.bark-side-unknown': 'Rindenseite unbekannt: Gezeigt ist der ungünstigere Fall.',
  'cup.pith-unknown': 'Abstand vom Mark unbekannt: {radiusMm} angenommen.',
  'cup.pith-nearer': 'Näher am Mark schüsselt es stärker.',
  'cup.see-end': 'Sehen Sie sich das Hirnholz an, und tragen Sie es unter „Bearbeiten“ ein.',
  'cup.nothing-to-do': 'Gutes Stapeln mit Leisten genügt.',
  'cup.advice': 'Was zu tun ist',
  'cup.about.bark': 'Rinde',
  'cup.about.flip': 'Umdrehen',
  'cup.about.weight': 'Flach halten',
  'cup.about.stickers': 'Stapelleisten',
  'cup.about.end-seal': 'Enden',
  'cup.about.uneven': 'Ungleiche Feuchte',
} satisfies Record<keyof typeof english, string>;
