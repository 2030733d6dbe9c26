import type { licenses as english } from '../en/licenses.ts';

export const licenses = {
  'licenses.title': 'Lizenzen',
  'licenses.lead': 'Die Open-Source-Pakete in Pintally, jedes mit seiner Lizenz.',
  'licenses.electron':
    'Wenn Sie Pintally installiert haben, enthält es auch Electron. Dessen Lizenzen sind im Programmordner: LICENSE.electron.txt und LICENSES.chromium.html.',
  'licenses.find': 'Paket suchen',
  'licenses.find-hint': 'Teil des Namens oder der Lizenz.',
  'licenses.found': '{found, plural, =0 {Kein Paket enthält „{typedText}“.} one {# Paket} other {# Pakete}}',
  'licenses.by-text': 'Lizenz mit eigenem Wortlaut',
  'licenses.standard-text': 'Das Paket kam ohne Lizenztext. Dies ist der Standardtext.',
  'licenses.text': 'Lizenztext',
} satisfies Record<keyof typeof english, string>;
