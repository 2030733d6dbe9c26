/** Settings. */
export const settings = {
  'settings.title': 'Settings',

  'settings.showing': 'Language, units, and theme',
  /** With its name in the other language, for whoever cannot read this one. */
  'settings.language': 'Language (Sprache)',
  'settings.language.system': 'As on this computer',
  'settings.language.en': 'English',
  'settings.language.de': 'Deutsch',
  'settings.units-of': 'Lengths, weights, and temperatures',
  'settings.metric': 'Metric (mm, kg, °C)',
  'settings.imperial': 'US (in, lb, °F)',
  'settings.units-of-region': 'Taken from your computer’s region until you choose.',
  'settings.units-chosen': 'Chosen by you.',
  'settings.theme': 'Theme',
  'settings.theme.system': 'Same as the computer',
  'settings.theme.light': 'Light',
  'settings.theme.dark': 'Dark',
  'settings.theme.high-contrast': 'High contrast, for sunlight',

  'settings.probing': 'Probing',
  'settings.save-when-settled': 'Save a reading as soon as it settles',
  'settings.save-when-settled-hint':
    'Otherwise, press Space or your pedal. The meter’s own button saves, too, once it is set up.',

  'settings.label-papers': 'Labels',
  'settings.edit-papers': 'Edit label papers in Labels',

  'settings.data': 'Your data',
  'settings.demo-open': 'The demo yard is open.',
  'settings.own-open': 'Your own yard is open.',
  'settings.where-saved': 'Everything is saved in one file on this computer. Nothing is sent anywhere.',
  'settings.demo-not-backed-up': 'The demo yard is not backed up. Your own yard is.',
  'settings.backed-up': 'It is backed up each day you open Pintally, and after each round.',
  'settings.file': 'File:',
  'settings.open-demo': 'Open the demo yard',
  'settings.open-own': 'Open my own yard',
  'settings.version': 'Pintally {version}',
} as const;
