/** What was wrong, what was saved, what to do. */
export const refusals = {
  'refusal.no-yard': 'No yard is open. Open one first.',
  'refusal.other-yard':
    '{kind, select, demo {The demo yard} other {Another yard}} is open now. Nothing was changed.',
  'refusal.act-reused':
    'This was already saved with other values. Nothing was changed. Check what is on screen and try again.',
  'refusal.not-found':
    '{what, select, board {That board is not in this yard.} stack {That stack is not in this yard.} place {That place is not in this yard.} round {That round is not in this yard.} reading {That reading is not in this yard.} species {That species is not in this yard.} paper {That label paper is not in this yard.} other {That record is not in this yard.}} Nothing was changed. Go back and choose again.',
  'refusal.boards-edited-meanwhile':
    '{boards, plural, one {# board was} other {# boards were}} edited meanwhile: {someCodes}. Nothing was saved. Choose what to do.',
  'refusal.reading-damaged': 'A disk error damaged this reading. Nothing was moved. Probe the spot again.',
  'refusal.reading-there-already':
    'This reading is already on {boardCode}. Nothing was moved. Choose another board.',
  'refusal.reading-before-sawn':
    '{boardCode} was sawn on {sawnOn}, after this reading. Nothing was moved. Choose another board, or correct the sawing date.',
  'refusal.reading-after-left':
    '{boardCode} left the yard on {leftOn}, before this reading. Nothing was moved. Choose another board.',
  'refusal.reading-before-cut':
    '{boardCode} was cut from {otherCode} on {cutOn}, after this reading. Nothing was moved. Choose {otherCode}. Its earlier readings are also those of {boardCode}.',
  'refusal.reading-before-place':
    '{boardCode} has been in {placeName} since {movedOn}, after this reading. Nothing was moved. Was it in {placeName} before that day?',
  'refusal.reading-moved': 'This reading is on {boardCode} now. Nothing was changed. Edit it there.',
  'refusal.correction-slip':
    '{rawPct} was typed, but {rawMeantPct} would fit. Nothing was changed. Which did the meter show?',
  'refusal.correction-slip.ohm':
    '{rawOhm} was typed, but {rawMeantOhm} would fit. Nothing was changed. Which did the meter show?',
  'refusal.correction-unused':
    '{why} It would not be used. Nothing was changed. Is it what the meter showed?',
  'refusal.meter-sent-it': 'The meter sent this value, so it cannot be edited. Exclude it if it is wrong.',
  'refusal.deeper-than-board':
    'The board is only {boardThickness} thick: pins that deep reach its other face. Nothing was changed.',
  'refusal.nothing-saved': '{why} Nothing was saved.',
  'refusal.nothing-changed': '{why} Nothing was changed.',
  'refusal.request-unknown':
    'This window is of another version of Pintally. Nothing was done. Restart Pintally.',
  'refusal.foreign-page':
    'This page cannot use Pintally. Nothing was changed. Use the window that Pintally opened.',
  'refusal.yard-left':
    'You opened {kind, select, demo {the demo yard} other {another yard}} before this was done. Nothing was changed.',
  'refusal.stopped': 'Stopped. Nothing was changed.',
  'refusal.taken-back-later':
    'The disk is full or failing. Some boards are changed now. Make room. Pintally then undoes those changes.',
  'refusal.partly-changed': 'Some boards still have changes from an edit that was stopped.',
  'refusal.closing': 'Pintally is closing. Nothing was changed. Open it again, then try again.',
  'refusal.machine-stopped':
    'Pintally stopped before it confirmed this. Saved readings are safe. Check your last change after reconnecting.',
  'refusal.machine-away':
    'Pintally is not responding. Nothing was done. Try again when the notice at the top is gone.',

  // Printing without a dialog.
  'refusal.no-print-queue': 'No print queue found. Nothing was printed. Use the print dialog.',
  'refusal.print-queue-silent':
    'The print queue does not answer. Look at the printer before you print again.',
  'refusal.printer-locked': 'The print queue asks for a password. Nothing was printed. Use the print dialog.',
  'refusal.printer-gone': '{printerName} was not found. Nothing was printed. Choose another printer.',
  'refusal.printer-stopped':
    '{printerName} is stopped{says, select, nothing {} other {: {reason}}}. Nothing was printed. Start it in the settings of this computer.',
  'refusal.printer-without-paper':
    '{printerName} takes no paper of {widthMm} × {heightMm}. Nothing was printed. Add that size in its settings, or use the print dialog.',
  'refusal.print-failed':
    '{printerName} did not print{says, select, nothing {} other {: {reason}}}. Check the printer, then print again.',
  'refusal.print-canceled': 'The print on {printerName} was canceled. Check what came out.',

  // What is wrong around us; each says what was not done, and what to do once it is right again.
  'refusal.file-in-use': 'Another program is using the yard file. {undone} Close that program. {again}',
  'refusal.disk-failed': 'The disk is full or failing. {undone} Make room. {again}',
  'refusal.yard-read-only':
    'Pintally may not write to the yard file or its folder. {undone} Allow writing there, and restart Pintally. {again}',
  'refusal.unexpected':
    'Something went wrong. {undone} Restart Pintally. {again} Settings has the error report.',
  'refusal.undone': 'Nothing was saved. Earlier readings are safe.',
  'refusal.try-again': 'Then try again.',
  'refusal.value-not-saved': 'The settled reading was not saved. Earlier readings are safe.',
  'refusal.press-space': 'Then press Space with the pins still in.',
  'refusal.saved-not-updated': 'What was saved is safe, but calls are not up to date.',
  'refusal.open-again': 'Then open this page again.',
  'refusal.meter-waits': 'The meter’s values cannot be saved yet. Earlier readings are safe.',
  'refusal.goes-on': 'Pintally then continues on its own.',
  'refusal.saved-or-not': 'It may have been saved.',
  'refusal.not-twice': 'Then try again. It will not be saved twice.',
  'refusal.window-failed': 'Something went wrong. Saved readings are safe. Try again, or restart Pintally.',

  // The yard file.
  'refusal.yard-newer':
    'A newer Pintally wrote the yard file {file}. It was not changed. Install the newer version to open it.',
  'refusal.yard-foreign':
    'The file {file} was not made by Pintally. It was not changed. Move it to another folder, then try again.',
  'refusal.yard-missing':
    'Only the last changes of the yard file {file} are still in its folder. Nothing was changed. Put the yard file back, restore a backup, or start a new yard.',
  'refusal.yard-vanished':
    'The yard file {file} is missing or empty. Changes were saved in it before. Nothing was changed now. Put the file back and try again, restore a backup, or start a new yard.',
  'refusal.yard-moved':
    '{what, select, changes {The last changes of {file} were} other {The yard file {file} was}} {how, select, deleted {deleted or moved} replaced {replaced} cut {cut short} other {overwritten}} while it was open. {unsaved, select, yes {Everything saved is in this copy: {rescuedFile}. This change was not saved.} other {Everything saved is in this copy: {rescuedFile}.}} {state, select, replaced {Open the copy. “Try again” opens the file that is there now.} spoiled {Open the copy.} other {Open the copy, or put the file back and try again.}}',
  'refusal.yard-gone':
    'Everything saved in {file} is in this copy: {rescuedFile}. Open the copy, or put the file back and try again.',
  'refusal.yard-not-rescued':
    '{what, select, changes {The last changes of {file} were} other {The yard file {file} was}} {how, select, deleted {deleted or moved} replaced {replaced} cut {cut short} other {overwritten}} while it was open. Everything saved is still in Pintally, but could not be copied to that folder. Do not close Pintally. Check the folder and the disk, then try again.',
  'refusal.yard-partly-rescued':
    '{what, select, changes {The last changes of {file} were} other {The yard file {file} was}} {how, select, deleted {deleted or moved} replaced {replaced} cut {cut short} other {overwritten}} while it was open. What could still be read is in this copy: {rescuedFile}. It has {boards, plural, one {# board} other {# boards}} and {readings, plural, one {# reading} other {# readings}}. {unsaved, select, yes {The rest could not be read, and this change was not saved.} other {The rest could not be read.}} {kind, select, demo {Open the copy.} other {Open the copy, or restore a backup.}}',
  'refusal.yard-partly-gone':
    'What could be read of {file} is in this copy: {rescuedFile}. The rest could not be read. Open the copy, or restore a backup.',
  'refusal.yard-cut-not-rescued':
    '{what, select, changes {The last changes of {file} were} other {The yard file {file} was}} {how, select, deleted {deleted or moved} replaced {replaced} cut {cut short} other {overwritten}} while it was open. Part of what was saved is still in Pintally, but could not be copied to that folder. Do not close Pintally. Check the folder and the disk, then try again.',
  'refusal.demo-not-removed':
    'The demo yard was not removed: its file {file} is in use or protected. Your own yard is open, unchanged.',
  'refusal.yard-damaged': 'Pintally cannot read all of the yard file {file}. It changes nothing in it.',
  'refusal.yard-changes-unreadable':
    'The newest {changes, plural, one {change} other {# changes}} in the yard file {file} cannot be read. Nothing was changed.',
  'refusal.yard-in-use':
    'Another program is using the yard file {file}. Nothing was changed. Close that program and try again.',
  'refusal.yard-owned':
    'Pintally opened {file} {openedAt} {program, select, window {in its own window} other {in a browser}}, on computer {computerName}. Nothing was changed. Close Pintally there, then try again. If you cannot find it, end process {processId}.',
  'refusal.yard-two-names':
    'The yard file {file} has a second name on this disk, a hard link. Two programs could then write to it at once. The file was not changed. Delete the second name, then try again.',
  'refusal.yard-name-taken':
    'Pintally needs the name {name} to open the yard file {file}. Something else has that name. Nothing was changed. Move what is called {name} to another folder, then try again.',
  'refusal.yard-unreadable':
    'Pintally could not use {file}. Nothing was changed. Check that its folder exists, that you may write there, and that the disk is not full.',
  'refusal.yard-sound': 'The yard file is not damaged. It stays where it is. Nothing was changed.',

  // Backups, copies, and restoring.
  'refusal.backup-no-room':
    'Nothing could be saved in {folder}: there is not enough room. Your yard is unchanged. Make room, or choose another folder.',
  'refusal.backup-folder-refused':
    'Nothing could be saved in {folder}. Your yard is unchanged. Check that the disk is there and that you may write to it, or choose another folder.',
  'refusal.backup-folder-not-changed':
    'Backups cannot be saved in {folder}. The backup folder was not changed. Check that the disk is there and that you may write to it, or choose another folder.',
  'refusal.backup-folder-no-folder':
    'That is not a folder. The backup folder was not changed. Choose another folder.',
  'refusal.backup-folder-own':
    'That folder is Pintally’s own. The backup folder was not changed. Choose another folder.',
  'refusal.backup-disk-failed':
    'Nothing could be saved in {folder}: its disk is failing. Your yard is unchanged. Choose a folder on another disk.',
  'refusal.backup-damaged':
    'The backup did not pass its check, so it was deleted. Your yard is unchanged. Restart Pintally; it checks the yard.',
  'refusal.backup-own-not-open': 'Your own yard is not open. No backup was made. Open it, then try again.',
  'refusal.backup-failed':
    'Something went wrong. Your yard is unchanged. Restart Pintally. Settings has the error report.',
  'refusal.disk-silent':
    'The disk or network drive is not responding. Nothing was changed. Check its connection, or choose another.',
  'refusal.path-letters': 'A path cannot have line breaks or control characters. Nothing was changed.',
  'refusal.path-relative': 'Give the full path. Nothing was changed.',
  'refusal.copy-is-folder': 'That is a folder. Nothing was saved. Add a file name.',
  'refusal.copy-no-folder': 'There is no folder {folder}. Nothing was saved. Choose a folder that exists.',
  'refusal.copy-name-reserved':
    'Pintally uses names like that itself. Nothing was saved. Choose another name.',
  'refusal.copy-no-plain-file':
    'What has that name is not a regular file. It was not changed. Choose another name.',
  'refusal.copy-in-use': 'That file is a yard or database in use. It was not changed. Choose another name.',
  'refusal.copy-in-data': 'That folder is Pintally’s own. Nothing was saved. Choose another folder.',
  'refusal.restore-damaged': 'That file is damaged. Your yard is unchanged. Choose another file or backup.',
  'refusal.restore-no-yard': 'That file is not a yard. Nothing was changed. Choose another file.',
  'refusal.restore-newer':
    'A newer Pintally wrote that file. Nothing was changed. Install the newer version to restore it.',
  'refusal.restore-open-yard': 'That is the yard that is open. Nothing was changed. Choose another file.',
  'refusal.restore-own-not-open': 'Your own yard is not open. Nothing was changed. Open it, then restore.',
  'refusal.restore-busy': 'A backup is being restored. Nothing more was changed. Wait until it is done.',
  'refusal.restore-none': 'There is no restore to undo. Nothing was changed.',
  'refusal.restore-file-in-use':
    'Another program is writing to that file. Nothing was changed. Close that program and try again.',
  'refusal.restore-no-room':
    'There is not enough room in {folder}. Nothing was changed. Make room and try again.',
  'refusal.restore-in-use':
    'Another program is reading the yard file. Nothing was changed. Close that program and try again.',
  'refusal.restore-no-plain-file': 'That is not a regular file. Nothing was changed. Choose a yard file.',
  'refusal.picture-unknown':
    'This is not a JPEG, PNG, or WebP picture. It was not saved. Choose another file.',
  'refusal.picture-incomplete':
    'This picture is damaged or not complete. It was not saved. Copy it again from the camera.',
  'refusal.picture-too-large': 'This file is larger than 25 MB. It was not saved. Choose a smaller picture.',
  'refusal.picture-too-many-pixels':
    'This picture has more than 100 megapixels. It was not saved. Choose a smaller picture.',
  'refusal.picture-too-many': 'At most {pictures} pictures fit here. It was not saved. Delete one first.',
  'refusal.picture-there': 'This picture is here already.',
  'refusal.picture-no-room':
    'The disk is full. The picture was not saved. Free some space, then add it again.',
  'refusal.picture-disk':
    'The disk does not let Pintally save or read this picture. Check the folder of the yard file.',
  'refusal.picture-missing':
    'The file of this picture is missing. Everything else is fine. Restore a backup to look for it.',
  'refusal.picture-damaged':
    'A disk error damaged the file of this picture. Everything else is fine. Restore a backup to look for it.',
  'refusal.upload-stopped': 'The upload did not finish. Nothing was changed. Start again.',
  'refusal.download-stopped': 'The download did not finish. Nothing was changed. Start again.',
  'refusal.restore-file-gone':
    'That file cannot be opened. Nothing was changed. Check the path and the disk.',

  // Stacks, boards, places, species.
  'refusal.place-name-taken':
    'There is already a place called {placeName}. Nothing was saved. Choose another name.',
  'refusal.stack-name-taken':
    'There is already a stack called {stackName}. Nothing was saved. Choose another name.',
  'refusal.board-code-taken': 'There is already a board {boardCode}. Nothing was saved. Choose another ID.',
  'refusal.day-to-come': 'That day is in the future. Nothing was saved. Give today or an earlier day.',
  'refusal.read-before-sawn':
    '{boardCode} was probed on {readOn}, before that day. Nothing was saved. Correct the sawing date, or exclude that reading.',
  'refusal.sawn-after-left':
    '{boardCode} left the yard on {leftOn}, before that day. Nothing was saved. Correct the sawing date.',
  'refusal.species-unknown':
    'The species {speciesId} is not in this yard. Board {boardCode} was not saved. Choose a species from the list.',
  'refusal.curve-unknown':
    'There is no resistance curve {curveId}. {undone} Choose a curve from the list, or none.',
  'refusal.species-exists': 'There is already a species {speciesId}. Nothing was saved. Choose another name.',
  'refusal.use-exists': 'There is already a use {useId}. Nothing was saved. Choose another name.',
  'refusal.species-not-saved': 'The species was not saved.',
  'refusal.meter-used':
    '{meterName} was not deleted: readings or checks were taken with it. You can stop using it for typed readings.',
  'refusal.meter-connected': '{meterName} is in use. Nothing was changed. Press Disconnect first.',
  'refusal.meter-name-taken':
    'There is already a meter called {meterName}. Nothing was saved. Choose another name.',
  'refusal.meter-as-before': 'The meter is read as before.',
  'refusal.move-before-sawn': '{boardCode} was sawn on {sawnOn}, after that day. Was its log there?',
  'refusal.here-before-sawn':
    'It was sawn on {sawnOn}, after that day. Nothing was saved. Give the day it came here.',
  'refusal.sawn-after-move':
    '{boardCode} has been in {placeName} since {movedOn}, before that day. Was its log there then?',
  'refusal.move-to-come': 'That day is in the future. Nothing was moved. Give the day the boards were moved.',

  // What is weighed.
  'refusal.weighed-to-come': 'That time is in the future. Nothing was saved. Give the time it was weighed.',
  'refusal.weighed-already':
    '{piece} already has a weight for that time. Nothing was saved. Give another time, or exclude the other weight.',
  'refusal.piece-heavier-than-wet':
    '{weightGrams} is more than {wetGrams}, the wet weight of {piece}. Nothing was saved. Check the number and the piece.',
  'refusal.section-heavier-than-wet':
    '{weightGrams} is more than {wetGrams}, the weight of the section when cut. Nothing was saved. Check the number and the section.',
  'refusal.reading-impossible':
    '{reading} cannot be a reading of {speciesName}. The check was not saved. Correct the reading.',
  'refusal.checks-not-used': 'Your checks cannot be used yet. {why} Readings are corrected as before.',

  // A round and its meter.
  'refusal.stack-empty': '{stackName} has no boards. No round was started. Add its boards first.',
  'refusal.round-finished': 'This round is finished. Nothing was changed. Reopen it, or start a new round.',
  'refusal.round-running':
    'Another round of {stackName} is running. Nothing was changed. Finish that round first.',
  'refusal.round-dated':
    'This round has an earlier date, so the meter’s value was not saved. Type its readings.',
  'refusal.round-before-sawn':
    'No board of {stackName} was sawn yet on {startedOn}. No round was started. Give a later day, or correct the sawing dates.',
  'refusal.round-to-come': 'That day is in the future. No round was started. Give today or an earlier day.',
  'refusal.round-open': 'This round is still running. Nothing was changed. Finish it, then change its date.',
  'refusal.redated-to-come': 'That time is in the future. Nothing was changed. Give an earlier time.',
  'refusal.redated-ends-to-come':
    'The last reading of the round would be in the future. Nothing was changed. Give an earlier time.',
  'refusal.redated-before-sawn':
    '{boardCode} was sawn on {sawnOn}, after that day. Nothing was changed. Give a later day, or correct the sawing date.',
  'refusal.redated-after-left':
    '{boardCode} left the yard on {leftOn}, before that day. Nothing was changed. Give an earlier day, or bring the board back first.',
  'refusal.project-name-taken':
    'There is already a project called {projectName}. Nothing was saved. Choose another name.',
  'refusal.planned-move-empty':
    '{stackName} has no boards. Nothing was moved. Delete the planned move instead.',
  'refusal.sensor-known': 'This sensor is already added as {sensorName}. Nothing was saved.',
  'refusal.sensor-no-place': 'A hygrometer needs a place. Nothing was saved. Choose a place.',
  'refusal.sensor-is-probe':
    'A probe thermometer is in the wood, at no place. Nothing was saved. Leave out the place.',
  'refusal.sensor-while-probing':
    'Pins are in, so {sensorName} is not read now. Pull the pins, then read again.',
  'refusal.sensor-silent-beside':
    '{sensorName} did not answer while the meter is connected. Bring it nearer, or disconnect the meter, and read again.',
  'refusal.sensor-busy.meter':
    'Bluetooth is in use for a meter, so {sensorName} cannot be read. On the Meter page, press Disconnect, then read again.',
  'refusal.sensor-busy.meter-search':
    'Pintally is looking for meters, so {sensorName} cannot be read. On the Meter page, press Stop, then read again.',
  'refusal.sensor-silent': '{sensorName} did not answer. Bring it nearer, check its battery, and read again.',
  'refusal.sensor-later': 'This day is still to come. Nothing was saved. Choose another day.',
  'refusal.air-later': 'This day is still to come. Nothing was saved. Choose another day.',
  'refusal.air-other': '{measuredOn} has {airTempC}, {humidityRhPct} humidity already. Replace it?',
  'refusal.air-no-days': 'No sensor values on these days to change. Nothing was saved. Choose other days.',
  'refusal.air-known': 'This air value for {placeName} on {measuredOn} is already saved.',
  'refusal.planned-move-there': '{name} is in {placeName} already. Nothing was saved. Choose another place.',
  'refusal.page-board-twice':
    'Two lines of the page are of board {boardCode}. Nothing was saved. Put its readings in one line.',
  'refusal.page-empty': 'No reading is typed yet. Nothing was saved.',
  'refusal.page-to-come': 'That time is in the future. Nothing was saved. Give an earlier day or time.',
  'refusal.page-place-later':
    'The boards were probed on {startedOn}. Nothing was saved. Give that day or an earlier one for when they came there.',
  'refusal.page-before-sawn':
    '{boardCode} was sawn on {sawnOn}, after that day. Nothing was saved. Give a later day, or correct the sawing date.',
  'refusal.page-before-cut':
    '{boardCode} was cut from {fromCode} on {cutOn}, after that day. Nothing was saved. Type its readings in the line of {fromCode}.',
  'refusal.page-after-left':
    '{boardCode} left the yard on {leftOn}, before that day. Nothing was saved. Give an earlier day, or bring the board back first.',
  'refusal.page-deeper-than-board':
    '{boardCode} is only {boardThickness} thick: pins that deep reach its other face. Nothing was saved. Correct the depth.',
  'refusal.board-done':
    'Every spot of {boardCode} has its reading. Nothing was saved. Choose a spot to read again, or go to the next board.',
  'refusal.test-block-unknown':
    'What {meterName} should show on that is unknown. Nothing was saved. Use a block with its value in the unit that the meter shows.',
  'refusal.test-block-beyond':
    '{meterName} cannot show that value. Nothing was saved. Use a block within its range.',
  'refusal.check-excluded': 'This check of {meterName} is excluded. Nothing was changed. Include it first.',
  'refusal.check-other-unit':
    '{meterName} gave its values in another unit when it was checked. Nothing was changed. Check it again.',
  'refusal.meter-too-far-off':
    '{meterName} is too far off to be corrected. Nothing was changed. Check its battery, pins, and setting, then check it again.',
  'refusal.no-value': 'The meter shows no value. Nothing was saved. Push the pins in, or type the value.',
  'refusal.no-new-value':
    'No new value for {seconds} s. Nothing was saved. Look at the meter, or type the value.',
  'refusal.meter-unconfirmed':
    'This meter has changed, or is another one. Nothing was saved. Answer what is asked about it, or type the value.',
  'refusal.spot-changed':
    'This spot of {boardCode} has another reading now. Nothing was saved. Look at it, then save again.',
  'refusal.insertion-saved':
    'The pins are still in, and their reading of {boardCode} is saved. Nothing more was saved. Pull the pins for the next spot.',
  'refusal.insertion-maybe-saved':
    'This may be the reading already saved on {boardCode}. Nothing more was saved. Pull the pins for the next spot.',
  'refusal.insertion-elsewhere':
    'The pins went in on {boardCode}. Nothing was saved. Pull the pins, or press Space again to save here.',
  'refusal.meter-elsewhere':
    'Another window is using the meter. Nothing was saved. Press “Use it here” first.',
  'refusal.board-left-stack':
    '{boardCode} is no longer in this stack. Nothing was saved. Choose another board.',
  'refusal.meter-not-found': 'No meter of that name was found. Nothing was changed. Look for meters first.',
  'refusal.simulated-elsewhere':
    'The simulated meter makes its values up. It works only in the demo yard. Nothing was changed.',
  'refusal.meter-other-unit':
    '{meterName} reads in another unit. Nothing was changed. Choose a meter of the same unit.',
  'refusal.meter-keeps-unit':
    '{meterName} has readings in {unit, select, pct {%} other {ohms}}. Nothing was changed. Add another hand meter for {unit, select, pct {ohms} other {%}}.',
  'refusal.meter-file-not-offered':
    '{meterName} does not send the value that this file describes. Nothing was changed.',
  'refusal.meter-sends-percent':
    '{meterName} sends %, not ohms. Nothing was changed. Choose what it is set to.',
  'refusal.typed-other-unit':
    'This was typed in {unit, select, pct {%} other {megohms}}, but the meter shows {unit, select, pct {ohms} other {%}} now. Nothing was saved. Type it again, or choose the other meter.',
  'refusal.typed-off-removed':
    '{meterName} was removed. Nothing was saved. Choose another meter, then save again.',
  'refusal.meter-removed':
    '{meterName} was removed. Nothing was changed. Undo that in History to use it again.',
  'refusal.meter-said':
    'Which meter this is was answered already, or it is no longer connected. Nothing was changed.',
  'refusal.meter-not-connected': 'No meter is connected. Nothing was changed. Connect one first.',
} as const;
