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
  'closing.closed': '{name} closed.',

  'closing.delete-named': 'Delete {name}?',
  'closing.delete-of': 'Delete {name}',
  'closing.delete-stack-effect':
    'For a stack added by mistake. Close a stack that has boards, rounds, or pictures on record.',
  'closing.delete-place-effect': 'For a place added by mistake. Close a place where boards or stacks were.',
  'closing.deleted': '{name} deleted.',

  'closing.merge': 'Merge',
  'closing.merge-named': 'Merge {name}',
  'closing.into': 'Merge into',
  'closing.merge-stack-effect':
    'Its boards, notes, pictures, and planned moves go to that stack. Their layers are cleared. This stack is then closed. Its rounds keep its name.',
  'closing.merge-use': 'Its boards get the use {endUseName}.',
  'closing.merge-note-too-long':
    'The two notes are too long for one. The note of {name} stays on its page, under Closed stacks.',
  'closing.merge-place-effect':
    'Boards and stacks here move there. Forecasts then treat their time here as time there. This place is then closed.',
  'closing.merging-places': 'Merging places',
  'closing.right-air': 'Which air is right?',
  'closing.air-of': 'The air of {placeName}',
  'closing.merged': '{name} merged into {intoName}.',

  'closing.reopen': 'Reopen',
  'closing.reopen-named': 'Reopen {name}',
  'closing.name': 'Name',
  'closing.name-hint': 'Change it if the name is taken now.',
  'closing.reopened': '{name} reopened.',

  'closing.closed-stacks': 'Closed stacks: {stacks}',
  'closing.closed-places': 'Closed places: {places}',
  'closing.stack-was-in': '· {placeName} · closed {closedOn}',
  'closing.closed-on': '· closed {closedOn}',
  'closing.stack-closed': 'Closed on {closedOn}.',
  'closing.merged-into': 'Merged into',
  'closing.find-archived': 'Find its boards under All boards, Left the yard.',
} as const;
