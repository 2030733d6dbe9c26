/** How boards leave the yard and come back. */
export const life = {
  'life.more': 'More',
  'life.put-in-stack': 'Put in another stack',
  'life.sold': 'Mark as sold',
  'life.used': 'Mark as used',
  'life.scrapped': 'Mark as scrapped',
  'life.delete': 'Delete',
  'life.bring-back': 'Bring back',

  'life.mark-board': 'Mark {boardCode} as {why, select, sold {sold} used {used} other {scrapped}}',
  'life.mark-boards':
    'Mark {boards, plural, one {# board} other {# boards}} as {why, select, sold {sold} used {used} other {scrapped}}',
  'life.mark-amount':
    '{leftBoardFeet}{missing, plural, =0 {} one {, without # board that has no width or length} other {, without # boards that have no width or length}}.',
  'life.mark-effect':
    '{boards, plural, one {It leaves} other {They leave}} lists, rounds, and labels. Find {boards, plural, one {it} other {them}} under All boards, Left the yard. Readings stay on record.',
  'life.note': '{why, select, sold {Sold to} used {Used for} other {Why}}',
  'life.insert-move': 'Insert',
  'life.was-log': 'Yes, it was a log then',
  'life.change-order': 'Change order',
  'life.day-order': 'On that day',
  'life.day-order.moved-first': 'Moved, then probed',
  'life.day-order.probed-first': 'Probed, then moved',
  'life.move-time': 'Time, if known',
  'life.edit-move': 'Edit the move to {placeName} on {movedOn}',
  'life.delete-move': 'Delete the move to {placeName} on {movedOn}',
  'life.move-of': 'Move of {boardCode}',
  'life.moves-together': 'Change it for all {boards} boards moved with it',
  'life.deletes-together': 'Delete it for all {boards} boards moved with it',
  'life.delete-move-of': 'Delete this move of {boardCode}?',
  'life.delete-move-effect':
    '{boardCode} is then in {beforeName} for all that time. Its forecast and call follow.',
  'life.changing-moves': 'Changing moves',
  'life.move-changed': 'Move of {boardCode} changed.',
  'life.move-deleted': 'Move of {boardCode} deleted.',
  'life.note-hint':
    '{why, select, sold {Optional. Only the name. Boards are found by it.} other {Optional.}}',
  'life.day': 'Day',
  'life.archive-button': 'Mark as {why, select, sold {sold} used {used} other {scrapped}}',
  'life.archiving-boards': 'Marking boards',
  'life.board-archived': '{boardCode} marked as {why, select, sold {sold} used {used} other {scrapped}}.',
  'life.boards-archived':
    '{boards, plural, one {# board} other {# boards}} marked as {why, select, sold {sold} used {used} other {scrapped}}.',

  'life.archive-anyway': 'Mark anyway',
  'life.released': 'Its reservation ended.',
  'life.released-of':
    'No longer reserved: {boardCodes}{more, plural, =0 {} one { and # more board} other { and # more boards}}.',

  'life.delete-board': 'Delete {boardCode}?',
  'life.not-deleted': '{boardCode} cannot be deleted',
  'life.not-deleted-why': 'It has readings, and these stay on record.',
  'life.not-deleted-instead':
    'Entered twice? Merge it. Gone? Mark it as sold, used, or scrapped. Readings by mistake? Undo them in the history.',
  'life.open-history': 'History',
  'life.delete-boards': 'Delete {boards, plural, one {# board} other {# boards}}?',
  'life.delete-effect':
    'For boards entered by mistake. A board with readings cannot be deleted: mark it as sold, used, or scrapped.',
  'life.deleting-boards': 'Deleting boards',
  'life.board-deleted': '{boardCode} deleted.',
  'life.boards-deleted': '{boards, plural, one {# board} other {# boards}} deleted.',

  'life.cut': 'Rip or crosscut',
  'life.cut-board': 'Cut {boardCode} into pieces',
  'life.cut-effect':
    'Each piece is a new board. It keeps the species, thickness, place, moves, and readings up to the cut.',
  'life.cut-how': 'Cut',
  'life.cut-ripped': 'Ripped, along the grain',
  'life.cut-crosscut': 'Crosscut, across the grain',
  'life.pieces': 'Pieces',
  'life.piece-id': 'ID of piece {rawNumber}',
  'life.piece-width': 'Width of piece {rawNumber}',
  'life.piece-length': 'Length of piece {rawNumber}',
  'life.piece-optional': 'Optional.',
  'life.fresh-ends': 'Fresh ends dry faster and may check. Coat them.',
  'life.cut-button': 'Save the cut',
  'life.cut-anyway': 'Save anyway',
  'life.cut-done':
    '{boardCode} {how, select, ripped {ripped} other {crosscut}} into {pieces, plural, one {# board} other {# boards}}.',
  'life.pieces-reserved': 'Still reserved for {projectName}.',
  'life.merge': 'Merge with another board',
  'life.merge-board': 'Merge {boardCode} with another board',
  'life.merge-effect':
    'For a board entered twice. You choose the ID that stays. The label with the other ID then opens this board.',
  'life.merge-search': 'Find the other board by its ID',
  'life.merge-other': 'Which board is the same?',
  'life.merge-none': 'No other board has an ID like that.',
  'life.merge-not-chosen': 'Choose the board that is the same.',
  'life.merge-not-compared': 'Nothing was merged. Wait until both boards are compared.',
  'life.merge-readings':
    '{boardCode} has {readings, plural, =0 {no readings} one {# reading} other {# readings}}.',
  'life.merge-all-stay': 'All readings and pictures stay.',
  'life.merge-species-differs':
    'The species differ. Is it the same board? All readings are corrected for the species you choose.',
  'life.merge-thickness-differs': 'The thicknesses differ. Is it the same board?',
  'life.merge-stays': 'Which ID stays?',
  'life.merge-target': 'for {endUseName}',
  'life.merge-moves': 'Moves',
  'life.merge-moves-of-both': 'Of both, by date',
  'life.merge-both-notes': 'Both',
  'life.merge-reserved': 'Reserved for',
  'life.merge-button': 'Merge',
  'life.merge-done': '{boardCode} merged into {intoCode}.',
  'life.not-given': 'not given',
  'life.stay': '{placeName} since {sinceOn}',
  'life.origin':
    '{how, select, ripped {Ripped from} crosscut {Crosscut from} merged {Merged with} other {Came from}}',
  'life.origin-day': 'on {cutOn}',
  'life.became': 'Now:',
  'spot.on-board': 'on {boardCode}',

  'life.bring-back-board': 'Bring {boardCode} back',
  'life.bring-back-effect': 'It returns to {stackName}, with all its readings.',
  'life.bringing-back': 'Bringing boards back',
  'life.bringing-back-stopped': 'Stopped. No board was brought back.',
  'life.board-back': '{boardCode} brought back to {stackName}.',
  'life.boards-back': '{boards, plural, one {# board} other {# boards}} brought back.',

  // Why and when a board left, on its page and in the list of these.
  'archived.sold': 'Sold',
  'archived.used': 'Used',
  'archived.scrapped': 'Scrapped',
  'archived.ripped': 'Ripped',
  'archived.crosscut': 'Crosscut',
  'archived.merged': 'Merged',
  'archived.merged-into': 'Merged into {intoCode}',
  'archived.deleted': 'Deleted',
  'archived.undone': 'Undone',
  'archived.unknown': 'Left the yard',
  'archived.on': '{why} on {leftOn}.',
  'archived.effect': 'It is not in lists, rounds, or totals. You cannot move or reserve it.',
  'left.became': 'Why they left',
  'left.all': 'All',
  'left.sold': 'Sold',
  'left.used': 'Used',
  'left.scrapped': 'Scrapped',
  'left.cut': 'Cut',
  'left.year': 'Year',
  'left.all-years': 'All years',
  'left.sold-to': 'Sold to',
  'left.all-buyers': 'All buyers',
  'left.no-buyer': 'No name',
  'filter.archived': 'Left the yard',
  'stacks.column-archived': 'Left the yard',
  'forecast.archived': 'No forecast: it left the yard.',

  'refusal.board-in-round': '{boardCode} is in a round. Nothing was changed. Finish that round first.',
  'refusal.cut-to-come': 'That day is in the future. Nothing was changed. Give the day it was cut.',
  'refusal.cut-before-sawn':
    '{boardCode} was sawn on {sawnOn}, after that day. Nothing was changed. Give a later day, or correct that one.',
  'refusal.cut-before-read':
    '{boardCode} was probed on {readOn}, after that day. Nothing was changed. Give that day or a later one.',
  'refusal.pieces-wider':
    'The pieces are {piecesMm} wide together, and {boardCode} is {boardMm}. Nothing was changed. Save anyway?',
  'refusal.pieces-longer':
    'The pieces are {piecesLengthMm} long together, and {boardCode} is {boardLengthMm}. Nothing was changed. Save anyway?',
  'refusal.board-became':
    '{boardCode} was cut into {ofCode}. Nothing was brought back. Undo the cut in History, or delete the pieces.',
  'refusal.board-merged':
    '{boardCode} was merged into {ofCode}. Nothing was brought back. Undo the merge in History.',
  'refusal.merged-with-piece':
    '{pieceCode} was cut from {boardCode}, so they are two boards. Nothing was merged. Choose another board.',
  'refusal.merged-already':
    '{boardCode} was already merged into {intoCode}, so they are one board. Nothing was changed.',
  'refusal.merged-note-too-long': 'Both notes together are too long. Nothing was merged. Choose one of them.',
  'refusal.move-before-other':
    'That is before the move of {boardCode} to {placeName} on {movedOn}. Insert it there?',
  'refusal.move-after-other':
    'That is after the move of {boardCode} to {placeName} on {movedOn}. Change the order?',
  'refusal.moved-or-probed-first': '{boardCode} was also probed on {movedOn}. Which came first?',
  'refusal.no-room-for-move':
    'Other moves and readings of {boardCode} on that day leave no room for this. Nothing was changed. Give the time of the move.',
  'refusal.first-move':
    'This is the first place of {boardCode}. Nothing was deleted. Edit it instead: every board needs a first place.',
  'refusal.stack-closed': '{stackName} is closed. Nothing was saved. Reopen it first.',
  'refusal.place-closed': '{placeName} is closed. Nothing was saved. Reopen it first.',
  'refusal.stack-has-boards':
    '{boards, plural, one {# board is} other {# boards are}} in {stackName}. Nothing was closed. Put them in another stack, or mark them as sold, used, or scrapped.',
  'refusal.stack-round-open':
    'A round of {stackName} is not finished. Nothing was changed. Finish the round first.',
  'refusal.stack-has-records':
    '{stackName} has boards, rounds, or pictures on record. Nothing was deleted. Close it instead.',
  'refusal.place-in-use':
    '{placeName} is in use by {stackNames}. Nothing was closed. Move them first, or merge the place.',
  'refusal.place-planned':
    'A move of {name} to {placeName} is planned. Nothing was closed. Change that on the Dates page first.',
  'refusal.place-has-records':
    'Boards or stacks were in {placeName}, or moves are planned there. Nothing was deleted. Close it instead.',
  'refusal.left-to-come': 'That day is in the future. Nothing was changed. Give today or an earlier day.',
  'refusal.left-before-read':
    '{boardCode} was probed on {readOn}, after that day. Nothing was changed. Is that day right?',
  'refusal.left-before-sawn':
    '{boardCode} was sawn on {sawnOn}, after that day. Nothing was changed. Give a later day, or correct the sawing date.',
  'refusal.left-before-move':
    '{boardCode} was moved to {placeName} on {movedOn}, after that day. Nothing was changed. Is that day right?',
  'refusal.left-reserved':
    '{boards, plural, one {{boardCode} is reserved for {projectName}.} other {# of these boards are reserved. One is {boardCode}, for {projectName}.}} Nothing was changed. Mark {boards, plural, one {it} other {them}} as {why, select, sold {sold} other {scrapped}} anyway?',
  'refusal.board-archived':
    '{boardCode} left the yard already. Nothing was changed. Deselect it, or bring it back first.',
  'refusal.board-has-readings':
    '{boardCode} has readings or weights. Nothing was deleted. Mark it as sold, used, or scrapped.',
  'refusal.board-code-taken-since':
    'Another board is called {boardCode} now. Nothing was brought back. Open the board and give it another ID.',
} as const;
