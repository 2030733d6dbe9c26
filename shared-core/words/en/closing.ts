/** How stacks and places leave the lists, come back, and become one. */
export const closing = {
  'closing.close-stack': 'Close stack',
  'closing.merge-stack': 'Merge into another stack',
  'closing.delete-stack': 'Delete stack',
  'closing.close-place': 'Close place',
  'closing.merge-place': 'Merge into another place',
  'closing.delete-place': 'Delete place',
  'closing.more-of': 'More: {name}',

  'closing.close-named': 'Close {name}?',
  'closing.close-stack-effect':
    'It goes to Closed stacks. You can reopen it there. First put its boards in another stack, or mark them as sold, used, or scrapped.',
  'closing.close-place-effect':
    'It goes to Closed places. You can reopen it there. No board or stack may be in it now. Boards that were there keep their history.',
  'closing.closed': '{name} is closed.',

  'closing.delete-named': 'Delete {name}?',
  'closing.delete-of': 'Delete {name}',
  'closing.delete-stack-effect':
    'For a stack added by mistake. One with boards, rounds, or pictures on record cannot be deleted: close it.',
  'closing.delete-place-effect':
    'For a place added by mistake. One where boards or stacks were cannot be deleted: close it.',
  'closing.deleted': '{name} is deleted.',

  'closing.merge': 'Merge',
  'closing.merge-named': 'Merge {name} into another',
  'closing.into': 'Into',
  'closing.merge-stack-effect':
    'All its boards, notes, pictures, and planned moves go there. Layers are cleared. Its rounds keep its name, and it is closed.',
  'closing.merge-use': 'Its boards then have the use {endUseName}.',
  'closing.merge-note-too-long':
    'The two notes are too long for one. That of {name} stays on its page, under Closed stacks.',
  'closing.merge-place-effect':
    'Everything that is or was here counts as there, in forecasts as well. This place is closed.',
  'closing.merging-places': 'Merging places',
  'closing.right-air': 'Which air is right?',
  'closing.air-of': 'That of {placeName}',
  'closing.merged': '{name} is merged into {intoName}.',

  'closing.reopen': 'Reopen',
  'closing.reopen-named': 'Reopen {name}',
  'closing.name': 'Name',
  'closing.name-hint': 'Change it if another has this name now.',
  'closing.reopened': '{name} is open again.',

  'closing.closed-stacks': 'Closed stacks: {stacks}',
  'closing.closed-places': 'Closed places: {places}',
  'closing.stack-was-in': '· {placeName} · closed {closedOn}',
  'closing.closed-on': '· closed {closedOn}',
  'closing.stack-closed': 'Closed on {closedOn}.',
  'closing.merged-into': 'Merged into',
  'closing.find-archived': 'Find its boards under All boards, in the filter Archived.',
} as const;
