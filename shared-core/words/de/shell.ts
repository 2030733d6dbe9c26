import type { shell as english } from '../en/shell.ts';

export const shell = {
  'shell.menu.edit': 'Bearbeiten',
  'shell.menu.undo': 'Rückgängig machen',
  'shell.menu.redo': 'Erneut ausführen',
  'shell.menu.cut': 'Ausschneiden',
  'shell.menu.copy': 'Kopieren',
  'shell.menu.paste': 'Einfügen',
  'shell.menu.select-all': 'Alles auswählen',
  'shell.menu.view': 'Ansicht',
  'shell.menu.reload': 'Neu laden',
  'shell.menu.zoom-in': 'Vergrößern',
  'shell.menu.zoom-out': 'Verkleinern',
  'shell.menu.zoom-usual': 'Originalgröße',
  'shell.menu.full-screen': 'Vollbild',
  'shell.menu.window': 'Fenster',
  'shell.menu.minimize': 'Minimieren',
  'shell.menu.close': 'Fenster schließen',
  'shell.menu.quit': 'Beenden',
  'shell.menu.help': 'Hilfe',
  'shell.menu.guide': 'Anleitung',

  'shell.opened-again':
    'Das Fenster ist abgestürzt und wurde wieder geöffnet. Nichts Gespeichertes ging verloren.',
  'shell.keeps-stopping': 'Das Fenster stürzt immer wieder ab.',
  'shell.keeps-stopping-detail':
    'Nichts Gespeichertes ging verloren. Versuchen Sie es erneut, oder beenden Sie Pintally und starten Sie den Computer neu. Einzelheiten stehen im Fehlerbericht.',
  'shell.not-started':
    'Pintally ließ sich nicht starten. Nichts Gespeichertes ging verloren. Einzelheiten stehen im Fehlerbericht: {file}',

  'shell.synopsis': 'Sagt Brett für Brett, ob luftgetrocknetes Holz trocken genug ist',
  'shell.why-bluetooth': 'Pintally liest Ihr Feuchtemessgerät und Hygrometer über Bluetooth.',
  'shell.why-camera': 'Pintally nutzt die Kamera nur, während Sie ein Etikett scannen.',
} satisfies Record<keyof typeof english, string>;
