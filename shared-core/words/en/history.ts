/** What was done in the yard, and why it cannot be undone. */
export const history = {
  'act.title': 'History',
  'act.lead': 'Changes to this yard, newest first. Undo later ones before earlier ones.',
  'act.list': 'What was done',
  'act.of-board': 'History',
  'act.none': 'No changes yet.',
  'act.what': 'What was done',
  'act.when': 'When',
  'act.actions': 'Undo or redo',
  'act.is-undone': 'Undone',
  'act.older': 'Show older',
  'act.undo-this': 'Undo: {line}',
  'act.redo-this': 'Redo: {line}',
  'act.undone': 'Undone: {line}',
  'act.redone': 'Redone: {line}',
  'act.nothing-to-undo': 'Nothing left to undo here. See History.',
  'act.nothing-to-redo': 'Nothing left to redo here. See History.',
  'act.keys-too-late':
    'Another change was still being saved, so nothing was undone or redone. Press the keys again.',
  'act.undo-earlier': 'Undo this earlier change?',
  'act.undo-earlier-what': '{atText}: {line}',
  'act.record.board': 'Board {recordName}',
  'act.record.stack': 'Stack {recordName}',
  'act.record.place': 'Place {recordName}',
  'act.record.species': 'Species {recordName}',
  'act.record.use': 'Use {recordName}',
  'act.record.test-block': '{recordName}',
  'act.record.meter': 'Meter {recordName}',
  'act.record.sensor': 'Sensor {recordName}',
  'act.record.meter-check': 'A check of {recordName}',
  'act.record.project': 'Project {recordName}',
  'act.record.move': 'A move of board {recordName}',
  'act.record.round': 'A round of stack {recordName}',
  'act.record.reading': 'A reading of board {recordName}',
  'act.record.of': 'A record of {recordName}',
  'act.record.other': 'A record',
  'act.board.added': '{rows, plural, one {Board {recordName} added.} other {# boards added.}}',
  'act.board.deleted': '{rows, plural, one {Board {recordName} deleted.} other {# boards deleted.}}',
  'act.stack.added': '{rows, plural, one {Stack {recordName} added.} other {# stacks added.}}',
  'act.stack.deleted': '{rows, plural, one {Stack {recordName} deleted.} other {# stacks deleted.}}',
  'act.place.added': '{rows, plural, one {Place {recordName} added.} other {# places added.}}',
  'act.place.deleted': '{rows, plural, one {Place {recordName} deleted.} other {# places deleted.}}',
  'act.species.added': '{rows, plural, one {Species {recordName} added.} other {# species added.}}',
  'act.species.deleted': '{rows, plural, one {Species {recordName} deleted.} other {# species deleted.}}',
  'act.project.added': '{rows, plural, one {Project {recordName} added.} other {# projects added.}}',
  'act.project.deleted': '{rows, plural, one {Project {recordName} deleted.} other {# projects deleted.}}',
  'act.board.added-to':
    '{rows, plural, one {Board {recordName} added to {stackName}.} other {# boards added to {stackName}.}}',
  'act.board.put':
    '{rows, plural, one {Board {recordName} put in {stackName}.} other {# boards put in {stackName}.}}',
  'act.board.ripped':
    '{rows, plural, one {Board {parentName} ripped: {recordName}.} other {Board {parentName} ripped into # boards.}}',
  'act.board.crosscut':
    '{rows, plural, one {Board {parentName} crosscut: {recordName}.} other {Board {parentName} crosscut into # boards.}}',
  'act.board.merged': 'Board {parentName} merged into {recordName}.',
  'act.stack.merged':
    'Stack {recordName} merged into {intoName}: {rows, plural, =0 {no boards} one {# board} other {# boards}}.',
  'act.place.merged': 'Place {recordName} merged into {intoName}.',
  'act.place.merged-with-air': 'Place {recordName} merged into {intoName}, with the air of {recordName}.',
  'act.use.added': '{rows, plural, one {Use {recordName} added.} other {# uses added.}}',
  'act.meter.added': '{rows, plural, one {Meter added: {recordName}.} other {# meters added.}}',
  'act.test-block.added': '{rows, plural, one {{recordName} added.} other {# test blocks added.}}',
  'act.test-block.removed': '{recordName} removed.',
  'act.test-block.back': '{recordName} in use again.',
  'act.meter-check.added': '{rows, plural, one {{recordName} checked.} other {# meter checks saved.}}',
  'act.meter-check.right': '{recordName} checked: right.',
  'act.meter-check.off.pct': '{recordName} checked: off by {offPoints}.',
  'act.meter-check.off.ohm': '{recordName} checked: off by {offSharePct}.',
  'act.meter-check.excluded':
    '{readings, plural, =0 {Check of {recordName} excluded.} one {Check of {recordName} excluded. # reading is no longer corrected by it.} other {Check of {recordName} excluded. # readings are no longer corrected by it.}}',
  'act.meter-check.included': 'Check of {recordName} included again.',
  'act.meter-check.corrected':
    '{readings, plural, =0 {Meter {recordName} corrected by a check.} one {# reading corrected by a check of {recordName}.} other {# readings corrected by a check of {recordName}.}}',
  'act.meter.deleted': 'Meter {recordName} deleted.',
  'act.meter.file': 'Meter file used for {recordName}.',
  'act.meter.removed': '{recordName} removed.',
  'act.meter.back': '{recordName} in use again.',
  'act.meter.set-up': '{recordName} set up.',
  'act.meter.recognized-name': '{recordName} recognized under a new name.',
  'act.meter.recognized': '{recordName} recognized under a new address.',
  'act.meter.typing': 'Meter {recordName} in use for typed readings.',
  'act.sensor.added': '{rows, plural, one {Sensor {recordName} added.} other {# sensors added.}}',
  'act.sensor.removed': '{rows, plural, one {Sensor {recordName} removed.} other {# sensors removed.}}',
  'act.sensor.moved': 'Sensor {recordName} is in {placeName}.',
  'act.sensor.nowhere': 'Sensor {recordName} removed from its place.',
  'act.air.measured': 'Air in {placeName} on {measuredOn}: {airTempC}, {humidityRhPct} humidity.',
  'act.air.edited': 'Air in {placeName} for {measuredOn} is now {airTempC}, {humidityRhPct} humidity.',
  'act.air.deleted': 'Air in {placeName} for {measuredOn} deleted.',
  'act.air.excluded':
    '{rows, plural, one {Air in {placeName} for {measuredOn} excluded.} other {# days of air in {placeName} excluded, the first {measuredOn}.}}',
  'act.air.included':
    '{rows, plural, one {Air in {placeName} for {measuredOn} included.} other {# days of air in {placeName} included, the first {measuredOn}.}}',
  'act.air.measured-often':
    '{rows, plural, one {A value of the air in {placeName} saved.} other {# values of the air in {placeName} saved.}}',
  'act.meter.profile': '{rows, plural, other {Settings of meter {recordName} saved.}}',
  'act.moved':
    '{rows, plural, one {Board {recordName} moved to {placeName}.} other {# boards moved to {placeName}.}}',
  'act.move.since':
    '{rows, plural, one {Board {recordName} in {placeName} since {sinceOn}.} other {# boards in {placeName} since {sinceOn}.}}',
  'act.move.deleted':
    '{rows, plural, one {A move of board {recordName} to {placeName} deleted.} other {# moves deleted.}}',
  'act.planned-move.added':
    '{rows, plural, one {Planned a move of {recordName} to {placeName}.} other {# planned moves saved.}}',
  'act.planned-move.deleted':
    '{rows, plural, one {A planned move of {recordName} deleted.} other {# planned moves deleted.}}',
  'act.reservation.added': '{rows, plural, one {Board {recordName} reserved.} other {# boards reserved.}}',
  'act.reservation.edited':
    '{rows, plural, one {Board {recordName} reserved for another project.} other {# boards reserved for another project.}}',
  'act.reservation.deleted':
    '{rows, plural, one {Board {recordName} no longer reserved.} other {# boards no longer reserved.}}',
  'act.picture.added': '{rows, plural, one {A picture of {recordName} added.} other {# pictures added.}}',
  'act.picture.edited':
    '{rows, plural, one {A picture of {recordName} changed.} other {# pictures changed.}}',
  'act.picture.deleted':
    '{rows, plural, one {A picture of {recordName} deleted.} other {# pictures deleted.}}',
  'act.round.started': '{rows, plural, one {Round started on stack {recordName}.} other {# rounds started.}}',
  'act.round.started-on':
    '{rows, plural, one {Round of {date} started on stack {recordName}.} other {# rounds started.}}',
  'act.round.entered':
    '{rows, plural, one {Round of {date} entered for stack {recordName}.} other {# rounds entered.}}',
  'act.round.finished': 'Round of stack {recordName} finished.',
  'act.round.reopened': 'Round of stack {recordName} reopened.',
  'act.round.dated': 'Round of stack {recordName}: date changed from {beforeDate} to {afterDate}.',
  'act.reading.added': 'Reading {reading} saved on board {recordName}.',
  'act.readings.added':
    '{rows, plural, one {Reading saved on board {recordName}.} other {# readings saved.}}',
  'act.reading.excluded':
    '{rows, plural, one {A reading of board {recordName} excluded.} other {# readings excluded.}}',
  'act.weight.excluded':
    '{rows, plural, one {A weighing of {recordName} excluded.} other {# weighings excluded.}}',
  'act.reading.included':
    '{rows, plural, one {A reading of board {recordName} included.} other {# readings included.}}',
  'act.weight.included':
    '{rows, plural, one {A weighing of {recordName} included.} other {# weighings included.}}',
  'act.reading.depth':
    '{rows, plural, one {Depth changed for a reading of board {recordName}.} other {Depth changed for # readings.}}',
  'act.reading.meter':
    '{rows, plural, one {Meter changed for a reading of board {recordName}.} other {Meter changed for # readings.}}',
  'act.reading.corrected':
    '{rows, plural, one {A reading of board {recordName} edited.} other {# readings edited.}}',
  'act.reading.value':
    '{rows, plural, one {Reading of board {recordName} changed from {before} to {after}.} other {# readings changed.}}',
  'act.reading.moved':
    '{rows, plural, one {Reading {reading} moved from board {recordName} to {toName}.} other {# readings moved from board {recordName} to {toName}.}}',
  'act.readings.swapped': 'Readings of boards {recordName} and {otherName} swapped.',
  'act.reading.temperature':
    '{rows, plural, one {Wood temperature of a reading of board {recordName} changed to {valueTempC}.} other {Wood temperature of # readings changed.}}',
  'act.reading.temperature-unknown':
    '{rows, plural, one {Wood temperature of a reading of board {recordName} changed to unknown.} other {Wood temperature of # readings changed.}}',
  'act.temperature': 'Wood temperature set to {valueTempC}.',
  'act.temperature-unknown': 'Wood temperature set to unknown.',
  'act.spot-plan': 'Way to read the core chosen.',
  'act.species-confirmed':
    '{rows, plural, one {Species of board {recordName} confirmed.} other {Species of # boards confirmed.}}',
  'act.oven-check.added':
    '{rows, plural, one {Oven-dry check of {recordName} added.} other {# oven-dry checks added.}}',
  'act.oven-check.weighed':
    '{rows, plural, one {Oven-dry check of {recordName} weighed.} other {# weights of oven-dry checks saved.}}',
  'act.own-fit-on': 'Readings of {speciesName} are corrected by your oven-dry checks.',
  'act.own-fit-off': 'Readings of {speciesName} are not corrected by your oven-dry checks.',
  'act.sample.cut':
    '{rows, plural, one {Sections cut beside board {recordName}.} other {Sections cut beside # boards.}}',
  'act.sample.dried':
    '{rows, plural, one {Dry weight of a section of board {recordName} saved.} other {Dry weights of # sections saved.}}',
  'act.sample.weighed':
    '{rows, plural, one {Weight of board {recordName} saved.} other {# board weights saved.}}',
  'act.labels-printed':
    '{rows, plural, one {Label of board {recordName} printed.} other {# labels printed.}}',
  'act.settings': 'Settings changed.',
  'act.field-edited': '{field} changed from {before} to {after} on {what}.',
  'act.field-set': '{field} set to {after} on {what}.',
  'act.fields-edited': '{fields} changed on {what}.',
  'act.edited': 'Changed: {what}.',
  'act.ended': 'Left the yard: {what}.',
  'act.left':
    '{why, select, sold {Marked as sold} used {Marked as used} scrapped {Marked as scrapped} other {Deleted}}: {what}.',
  'act.closed': 'Closed: {what}.',
  'act.reopened': 'Reopened: {what}.',
  'act.back': 'Back in the yard: {what}.',
  'act.imported': 'Imported {fileName}: {parts}.',
  'act.imported-table': 'Imported a table: {parts}.',
  'act.merged': 'Merged from {fileName}: {parts}.',
  'act.merged-nothing': 'Compared with {fileName}. Nothing was changed.',
  'act.merged.edited': '{count, plural, one {# record} other {# records}} changed',
  'act.merged.deleted': '{count, plural, one {# record} other {# records}} deleted',
  'act.merged.left': '{count, plural, one {# record} other {# records}} left the lists',
  'act.other': 'Other changes.',
  'act.all': '{allSentences}',
  'act.what.board': '{rows, plural, one {board {recordName}} other {# boards}}',
  'act.what.stack': '{rows, plural, one {stack {recordName}} other {# stacks}}',
  'act.what.move': '{rows, plural, one {a move of board {recordName}} other {# moves}}',
  'act.what.place': '{rows, plural, one {place {recordName}} other {# places}}',
  'act.what.use': '{rows, plural, one {use {recordName}} other {# uses}}',
  'act.what.meter': '{rows, plural, one {meter {recordName}} other {# meters}}',
  'act.what.test-block': '{rows, plural, one {{recordName}} other {# test blocks}}',
  'act.what.sensor': '{rows, plural, one {sensor {recordName}} other {# sensors}}',
  'act.what.project': '{rows, plural, one {project {recordName}} other {# projects}}',
  'act.what.planned-move': '{rows, plural, one {the planned move of {recordName}} other {# planned moves}}',
  'act.what.round': '{rows, plural, one {a round of stack {recordName}} other {# rounds}}',
  'act.what.species': '{rows, plural, one {species {recordName}} other {# species}}',
  'act.value.mm': '{valueMm}',
  'act.value.length': '{valueLengthMm}',
  'act.value.day': '{valueOn}',
  'act.value.thickness': '{thickness}',
  'act.value.pct': '{rawPct}',
  'act.value.ohm': '{rawOhm}',
  'act.value.above': '>{reading}',
  'act.field.name': 'Name',
  'act.field.place': 'Place',
  'act.field.moved-on': 'Date',
  'act.field.use': 'Use',
  'act.field.cover': 'Cover',
  'act.field.kind': 'Kind',
  'act.field.tolerance': 'Tolerance',
  'act.field.air': 'Air',
  'act.field.needed-by': 'Needed by',
  'refusal.undone-already': 'Already undone. Nothing was changed.',
  'refusal.not-undone': 'Already redone, or never undone. Nothing was changed.',
  'refusal.undo-changed-by':
    '{record} was changed later, so nothing was {what, select, redo {redone} other {undone}}. {later, select, undone {Redo} other {Undo}} this first ({laterAt}): {laterLine}',
  'refusal.redo-repeated':
    '{record}: these readings were saved again later, so nothing was redone. Undo this first ({laterAt}): {laterLine}',
  'refusal.undo-changed':
    '{record} was changed later. Nothing was {what, select, redo {redone} other {undone}}.',
  'refusal.undo-used':
    '{record} is used by a later change, so nothing was {what, select, redo {redone} other {undone}}. Undo this first ({laterAt}): {laterLine}',
  'refusal.undo-lost':
    '{record} was deleted, so nothing was {what, select, redo {redone} other {undone}}. {later, select, undone {Redo} other {Undo}} that first ({laterAt}): {laterLine}',
  'refusal.undo-taken':
    '{record} cannot come back: its ID or name is in use now. Nothing was {what, select, redo {redone} other {undone}}.',
} as const;
