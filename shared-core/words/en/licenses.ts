/** The licenses page: the packages of others in Pintally. */
export const licenses = {
  'licenses.title': 'Licenses',
  'licenses.lead': 'The open-source packages in Pintally, each with its license.',
  'licenses.electron':
    'If you installed Pintally, it also contains Electron. Its licenses are in the program folder: LICENSE.electron.txt and LICENSES.chromium.html.',
  'licenses.find': 'Find a package',
  'licenses.find-hint': 'Part of its name or license.',
  'licenses.found': '{found, plural, =0 {No package has “{typedText}”.} one {# package} other {# packages}}',
  'licenses.by-text': 'License in its own words',
  'licenses.standard-text': 'The package came without the text of its license. This is the standard text.',
  'licenses.text': 'License text',
} as const;
