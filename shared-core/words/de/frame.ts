import type { frame as english } from '../en/frame.ts';

export const frame = {
  'frame.app-name': 'Pintally',
  'frame.window-title': '{title} · Pintally',
  'frame.nav': 'Hauptmenü',
  'frame.menu': 'Menü',
  'frame.dismiss': 'Ausblenden',
  'frame.more-notices': 'Und {more} weitere',
  'frame.undo': 'Rückgängig',
  'frame.redo': 'Erneut ausführen',
  'frame.undoing': 'Macht rückgängig …',
  'frame.undo-stopped': 'Abgebrochen. Nichts wurde rückgängig gemacht.',
  'frame.show-all': 'Alle zeigen',
  'frame.show-less': 'Weniger zeigen',
  'frame.not-responding':
    'Pintally antwortet nicht. Gespeicherte Messwerte sind sicher. Schließen Sie dieses Fenster nicht. Bleibt es so, starten Sie Pintally neu.',
  'frame.not-loaded':
    'Diese Seite konnte nicht geladen werden. Gespeicherte Messwerte sind sicher. Laden Sie Pintally neu.',
  'frame.reload': 'Neu laden',
  'frame.restarted':
    'Pintally wurde neu gestartet. Öffnen Sie die neue Adresse in diesem Browser. Dann geht es in diesem Fenster weiter.',
  'frame.foreign':
    'Unter dieser Adresse antwortet ein anderes Programm. Kein Messwert ging dorthin. Gespeicherte Messwerte sind sicher. Starten Sie Pintally neu, und schließen Sie dieses Fenster.',
  'frame.nowhere-title': 'Hier ist nichts',
  'frame.nowhere': 'Diese Adresse hat vielleicht einen Tippfehler oder gehört zu einem anderen Holzplatz.',

  'frame.other-opened-demo':
    'Jetzt ist der Beispiel-Holzplatz offen. Dieses Fenster zeigt noch, was vorher offen war.',
  'frame.other-opened-own':
    'Jetzt ist Ihr eigener Holzplatz offen. Dieses Fenster zeigt noch, was vorher offen war.',
  'frame.go-to-demo': 'Zum Beispiel-Holzplatz',
  'frame.go-to-own': 'Zu meinem Holzplatz',

  'frame.other-changing':
    'Ein anderes Fenster ändert gerade viele Bretter. Einige sind schon geändert, andere noch nicht.',

  'nav.stacks': 'Stapel',
  'nav.meter': 'Messgerät',
  'nav.labels': 'Etiketten',
  'nav.dates': 'Termine',
  'nav.places': 'Orte',
  'nav.air': 'Klima',
  'nav.species': 'Holzarten',
  'nav.settings': 'Einstellungen',
  'nav.go-to-stacks': 'Zu den Stapeln',

  'demo.invented': 'Erfundene Beispieldaten.',
  'demo.try': 'Probieren Sie alles aus. Ihr eigener Holzplatz bleibt unberührt.',
  'demo.leave': 'Zu meinem Holzplatz',
  'demo.remove': 'Beispiel-Holzplatz entfernen',
  'demo.removed': 'Beispiel-Holzplatz entfernt.',
  'demo.remove-question': 'Den Beispiel-Holzplatz entfernen?',
  'demo.remove-effect':
    'Seine Stapel, Bretter und Messwerte werden gelöscht, mit allem, was Sie daran ausprobiert haben. Ihr eigener Holzplatz öffnet sich unverändert. Später können Sie wieder einen frischen Beispiel-Holzplatz öffnen.',

  'start-page.open': 'Pintally öffnen',

  'locked.title': 'Öffnen Sie Pintally über den Startlink',
  'locked.why':
    'Diese Adresse allein öffnet Ihren Holzplatz nicht. Ein Startlink öffnet ihn, und zwar einmal. So bleiben andere Programme von Ihrem Holzplatz fern.',
  'locked.other-tab': 'Ist Pintally in einem anderen Tab dieses Browsers offen? Machen Sie dort weiter.',
  'locked.restart':
    'Wenn nicht, starten Sie Pintally neu, oder drücken Sie in seinem Terminal die Eingabetaste. Beides öffnet ein neues Fenster. Gespeicherte Messwerte sind sicher.',

  'problem-page.title.elsewhere': 'Ihr Holzplatz ist schon offen',
  'problem-page.title.newer': 'Dieser Holzplatz braucht ein neueres Pintally',
  'problem-page.title.foreign': 'Diese Datei ist kein Holzplatz',
  'problem-page.title.missing': 'Die Datei Ihres Holzplatzes fehlt',
  'problem-page.title.gone': 'Die Datei Ihres Holzplatzes ist weg',
  'problem-page.title.replaced': 'Die Datei Ihres Holzplatzes wurde ersetzt',
  'problem-page.title.cut': 'Ein Teil der Datei Ihres Holzplatzes ist verloren',
  'problem-page.title.spoiled': 'Etwas außerhalb von Pintally hat die Datei Ihres Holzplatzes verändert',
  'problem-page.title.not-rescued': 'Schließen Sie Pintally nicht',
  'problem-page.title.damaged': 'Die Datei Ihres Holzplatzes ist beschädigt',
  'problem-page.title.unreadable': 'Die Datei Ihres Holzplatzes lässt sich nicht öffnen',
  'problem-page.open-demo': 'Beispiel-Holzplatz öffnen',
  'problem-page.open-own': 'Meinen Holzplatz öffnen',
  'problem-page.open-rescued': 'Gerettete Kopie öffnen',
  'problem-page.copy-has':
    'Die Kopie hat {boards, plural, one {# Brett} other {# Bretter}} und {readings, plural, one {# Messwert} other {# Messwerte}}.',
  'problem-page.start-new': 'Diese Datei umbenennen und neu anfangen',
  'problem-page.start-new-title': 'Einen neuen, leeren Holzplatz anfangen?',
  'problem-page.start-new-effect':
    'Die beschädigte Datei wird nicht gelöscht. Sie bleibt unter anderem Namen im selben Ordner und lässt sich dort noch reparieren. An ihre Stelle tritt ein neuer, leerer Holzplatz.',
  'problem-page.start-new-missing':
    'Nichts wird gelöscht. Sicherungen und was vom früheren Holzplatz übrig ist, bleiben im Ordner. Ein neuer, leerer Holzplatz entsteht.',
  'problem-page.start-new-yes': 'Neuen Holzplatz anfangen',
} satisfies Record<keyof typeof english, string>;
