import type { cupAdvice as english } from '../en/cup-advice.ts';

export const cupAdvice = {
  'cup.missing': 'Für eine Prognose der Schüsselung fehlt: {missing}.',
  'cup.missing.width': 'die Breite',
  'cup.missing.sawing': 'die Lage der Jahrringe',
  'cup.shrinkage-unknown':
    'Die Schwindung der Holzart {speciesName} ist unbekannt, daher auch die Schüsselung. Geben Sie bei der Holzart beide Schwindmaße ein.',

  'cup.bark':
    'Entfernen Sie die Rinde an der {face, select, upper {oberen} other {unteren}} Seite. Durch Rinde trocknet Holz kaum. Unter ihr leben Insekten.',
  'cup.bark-and-hollow':
    'Entfernen Sie die Rinde an der {face, select, upper {oberen} other {unteren}} Seite. Durch Rinde trocknet Holz kaum. Unter ihr leben Insekten. Nach der heutigen Prognose ist die andere Seite um {differencePoints} trockener und wird hohl.',
  'cup.flip':
    'Nach der heutigen Prognose ist die {drierFace, select, upper {obere} other {untere}} Seite um {differencePoints} trockener und wird hohl. Wenden Sie das Brett, damit die feuchtere Seite an die freie Luft kommt. Nehmen Sie jede Abdeckung von dieser Seite.',
  'cup.weight':
    'Lose gelagert würde es um etwa {cupMm} schüsseln. Legen Sie es weit unten in den Stapel, oder beschweren oder verspannen Sie den Stapel beim Trocknen. Sichern Sie Gewichte so, dass sie nicht abrutschen und niemanden verletzen.',
  'cup.weight-hollow':
    'Lose gelagert würde es um etwa {cupMm} schüsseln, hohl an der {hollowFace, select, upper {oberen} other {unteren}} Seite. Legen Sie es weit unten in den Stapel, oder beschweren oder verspannen Sie den Stapel beim Trocknen. Sichern Sie Gewichte so, dass sie nicht abrutschen und niemanden verletzen.',
  'cup.stickers':
    'Nehmen Sie gleich dicke Stapelleisten, alle {spacingDistanceMm} und an beiden Enden. Legen Sie sie genau übereinander.',
  'cup.end-seal':
    'Versiegeln Sie jetzt die Hirnenden. Sie trocknen um ein Vielfaches schneller als die Breitseiten und reißen zuerst.',
  'cup.uneven-green':
    'Nach der heutigen Prognose ist das Brett außen um {differencePoints} trockener als innen, wo es noch saftfrisch ist. Die Oberfläche steht unter Zug und kann reißen. Bremsen Sie die Trocknung, bis das Gefälle kleiner wird: weniger Wind und Sonne, Abdeckungen darauf.',
  'cup.uneven':
    'Nach der heutigen Prognose ist das Brett außen um {differencePoints} trockener als innen. Trennen Sie es noch nicht auf, und hobeln Sie noch nicht tief. Es kann das Sägeblatt klemmen oder sich beim Schneiden krümmen. Lassen Sie die Feuchte ausgleichen. Prüfen Sie dann mit einer Gabelprobe, ob es verschalt ist.',
} satisfies Record<keyof typeof english, string>;
