/** What surrounds every screen: the bar, the demo's banner, notices, problems. */
export const frame = {
  'frame.app-name': 'Pintally',
  'frame.window-title': '{title} · Pintally',
  'frame.nav': 'Main',
  'frame.menu': 'Menu',
  'frame.dismiss': 'Dismiss',
  'frame.more-notices': 'And {more} more',
  'frame.undo': 'Undo',
  'frame.redo': 'Redo',
  'frame.undoing': 'Undoing …',
  'frame.undo-stopped': 'Stopped. Nothing was undone.',
  'frame.show-all': 'Show all',
  'frame.show-less': 'Show less',
  'frame.not-responding':
    'Pintally is not responding. Saved readings are safe. Do not close this window. If this stays, start Pintally again.',
  'frame.not-loaded': 'This screen could not be loaded. Saved readings are safe. Reload Pintally.',
  'frame.reload': 'Reload',
  'frame.restarted':
    'Pintally was restarted. Open its new address in this browser. This window then continues.',
  'frame.foreign':
    'Another program answers at this address. No reading was sent to it. Saved readings are safe. Restart Pintally, and close this window.',
  'frame.nowhere-title': 'Nothing here',
  'frame.nowhere': 'This address may have a typo, or belong to another yard.',

  'frame.other-opened-demo': 'The demo yard is open now. This window still shows what was open before.',
  'frame.other-opened-own': 'Your own yard is open now. This window still shows what was open before.',
  'frame.go-to-demo': 'Go to the demo yard',
  'frame.go-to-own': 'Go to my own yard',

  'frame.other-changing': 'Another window is changing many boards. Some are changed, and some are not yet.',

  'nav.stacks': 'Stacks',
  'nav.meter': 'Meter',
  'nav.labels': 'Labels',
  'nav.dates': 'Dates',
  'nav.places': 'Places',
  'nav.air': 'Air',
  'nav.species': 'Species',
  'nav.settings': 'Settings',
  'nav.go-to-stacks': 'Go to stacks',

  'demo.invented': 'Demo yard: invented data.',
  'demo.try': 'Try anything. Your own yard is untouched.',
  'demo.leave': 'Go to my own yard',
  'demo.remove': 'Remove the demo yard',
  'demo.removed': 'Demo yard removed.',
  'demo.remove-question': 'Remove the demo yard?',
  'demo.remove-effect':
    'Its stacks, boards, and readings are deleted, with everything you tried on them. Your own yard opens, unchanged. You can open a fresh demo yard later.',

  'start-page.open': 'Open Pintally',

  'locked.title': 'Use the start link to open Pintally',
  'locked.why':
    'This address alone does not open your yard. A start link opens it once. This keeps other programs out of your yard.',
  'locked.other-tab': 'Is Pintally open in another tab of this browser? Continue there.',
  'locked.restart':
    'If not, start Pintally again, or press Enter in its terminal. Either opens a new window. Saved readings are safe.',

  'problem-page.title.elsewhere': 'Your yard is already open',
  'problem-page.title.newer': 'This yard needs a newer Pintally',
  'problem-page.title.foreign': 'This file is not a yard',
  'problem-page.title.missing': 'Your yard file is missing',
  'problem-page.title.gone': 'Your yard file is gone',
  'problem-page.title.replaced': 'Your yard file was replaced',
  'problem-page.title.cut': 'Part of your yard file is lost',
  'problem-page.title.spoiled': 'Something outside Pintally changed your yard file',
  'problem-page.title.not-rescued': 'Do not close Pintally',
  'problem-page.title.damaged': 'Your yard file is damaged',
  'problem-page.title.unreadable': 'Your yard file cannot be opened',
  'problem-page.open-demo': 'Open the demo yard',
  'problem-page.open-own': 'Open my own yard',
  'problem-page.open-rescued': 'Open the rescued copy',
  'problem-page.copy-has':
    'The copy has {boards, plural, one {# board} other {# boards}} and {readings, plural, one {# reading} other {# readings}}.',
  'problem-page.start-new': 'Rename this file and start a new yard',
  'problem-page.start-new-title': 'Start a new, empty yard?',
  'problem-page.start-new-effect':
    'The damaged file is not deleted. It stays in the same folder under another name, so it can still be repaired. A new, empty yard takes its place.',
  'problem-page.start-new-missing':
    'Nothing is deleted. Backups and what is left of the earlier yard stay in the folder. A new, empty yard is made.',
  'problem-page.start-new-yes': 'Start a new yard',
} as const;
