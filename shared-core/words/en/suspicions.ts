/** Why a reading is questionable, by its rule, and what to do about it (`….do`). */
export const suspicions = {
  'suspicion.reading-pct': '{rawPct}',
  'suspicion.reading-ohm': '{rawOhm}',

  'suspicion.damaged': 'A disk error changed this reading.',
  'suspicion.damaged.do': 'Probe this spot again, or restore a backup.',

  'suspicion.not-a-reading': '{reading} cannot be the moisture content of this species.',
  'suspicion.not-a-reading.do': 'It is saved, but not used. Check the pins and the spot, then probe again.',

  'suspicion.typing-slip': '{rawPct} was typed, but {rawMeantPct} would fit.',
  'suspicion.typing-slip.do': 'If you meant {rawMeantPct}, use that. If not, probe the spot again.',

  'suspicion.typing-slip.ohm': '{rawOhm} was typed, but {rawMeantOhm} would fit.',
  'suspicion.typing-slip.ohm.do': 'If you meant {rawMeantOhm}, use that. If not, probe the spot again.',

  'suspicion.same-spot': 'This spot has an earlier reading in this round.',
  'suspicion.same-spot.do': 'Exclude the one that is wrong. If both are right, probe another spot.',
  'suspicion.equal-values': 'All {readings} readings are {reading}.',
  'suspicion.equal-values.do': 'Check that the meter is not on hold. Then probe one spot again.',

  'suspicion.dry-too-soon':
    'The {depth, select, shell {shell} average {average} other {core}} reads {readPct}. That is unlikely this soon after sawing. {depth, select, shell {Shell} average {Average} other {Core}} expected: {expectedInterval}.',
  'suspicion.dry-too-soon.later':
    'The {depth, select, shell {shell} average {average} other {core}} reads {readPct}. That is drier than its places should get it. {depth, select, shell {Shell} average {Average} other {Core}} expected: {expectedInterval}.',
  'suspicion.dry-too-soon.pins.do':
    'The pins may have read only the dry shell. Read the core: fresh crosscut or long insulated pins. Check the sawing date and species.',
  'suspicion.dry-too-soon.shell.do':
    'Was the face in the sun? Check the sawing date, the species, and the meter’s setting.',
  'suspicion.dry-too-soon.do': 'Check the sawing date, the species, and the meter’s setting.',
  'suspicion.wet-too-long':
    'The {depth, select, shell {shell} average {average} other {core}} reads {readPct}. By now it should be at most {mostPct}.',
  'suspicion.wet-too-long.do':
    'Was it soaked, or under a leak? Let its faces dry, then probe again. Check the sawing date, the species, the meter’s setting, and where the board has been. If it was stickered later, give that day as its sawing date.',
  'suspicion.wet-too-long.rain.do':
    'Was it in rain, soaked, or under a leak? Let its faces dry, then probe again. Check the sawing date, the species, the meter’s setting, and where the board has been. If it was stickered later, give that day as its sawing date.',
  'suspicion.drier-than-its-air': '{readPct} is drier than its places get: lowest EMC {lowestEmcPct}.',
  'suspicion.drier-than-its-air.do':
    'Check the species, the meter’s setting, and where the board has been. Then probe it again.',

  'suspicion.frozen': 'Frozen at {woodTempC}: above {frozenLimitPct} MC, the water in wood freezes.',
  'suspicion.frozen.do': 'Let it thaw, then probe it again. If the temperature is wrong, correct it.',
  'suspicion.below-freezing': 'The wood is at {woodTempC}. Readings below freezing are less exact.',
  'suspicion.below-freezing.do': 'You can use it. A milder day is more exact.',

  'suspicion.not-settled': '{reading} was saved before the reading settled.',
  'suspicion.not-settled.do': 'Push the pins in again and wait until the value is steady.',

  'suspicion.outside-meter-range.above':
    'The meter showed only that it is above {reading}. The true value is higher.',
  'suspicion.outside-meter-range.above.do': 'An oven-dry check gives the MC.',
  'suspicion.outside-meter-range.low':
    '{reading} is at the low end of the meter’s scale, {end}. The true value may be lower.',
  'suspicion.outside-meter-range.high':
    '{reading} is at the high end of the meter’s scale, {end}. The true value may be higher.',
  'suspicion.outside-meter-range.repeated.do':
    'Other spots agree: this dry or drier. An oven-dry check gives the MC.',
  'suspicion.outside-meter-range.do':
    'Check that both pins are firmly in sound wood. If it repeats, this meter cannot measure this board.',

  'suspicion.outside-curve-range.wet':
    '{mcPct} is above fiber saturation. The wood is wet; the exact MC is unknown.',
  'suspicion.outside-curve-range.wet.do': 'Nothing to do now. For the exact MC, weigh and oven-dry a sample.',
  'suspicion.outside-curve-range.dry': '{mcPct} is below {leastLimitPct}, where pin meters are not reliable.',
  'suspicion.outside-curve-range.dry.do':
    'Treat it as very dry. For the exact MC, weigh and oven-dry a sample.',
  'suspicion.outside-curve-range.beyond': '{mcPct} is beyond the published data for this species.',
  'suspicion.outside-curve-range.beyond.do': 'Use it as a rough figure only.',

  'suspicion.temperature-unknown':
    'Wood temperature unknown, so the reading is not corrected for it. Each {perStepK} shifts a reading by about 1 point.',
  'suspicion.temperature-of-air':
    'Wood temperature unknown. The reading is corrected for the air of {placeName}, about {airTempC}. Each {perStepK} shifts a reading by about 1 point.',
  'suspicion.temperature-of-measured-air':
    'Wood temperature unknown. The reading is corrected for the air measured in {placeName}, {airTempC}. Each {perStepK} shifts a reading by about 1 point.',
  'suspicion.temperature-unknown.do': 'Measure the wood temperature and enter it for the round.',

  'suspicion.temperature-out-of-range':
    'The wood temperature, {woodTempC}, is outside the published range of the correction.',
  'suspicion.temperature-out-of-range.do':
    'Check the temperature entered. If it is right, probe in the shade or on a milder day.',
  'suspicion.temperature-out-of-range.air':
    'The air in {placeName}, {airTempC}, is outside the published range of the correction.',
  'suspicion.temperature-out-of-range.air.do':
    'Enter the temperature of the wood, or correct the air of the place.',

  'suspicion.temperature-unlikely':
    'You entered {woodTempC} for the wood. In that month the air in {placeName} is usually about {airTempC}.',
  'suspicion.temperature-unlikely.measured':
    'You entered {woodTempC} for the wood. The air measured in {placeName} was {airTempC}.',
  'suspicion.temperature-unlikely.probe':
    '{sensorName} measured {woodTempC} in the wood. The air in {placeName} was about {airTempC}.',
  'suspicion.temperature-unlikely.do': 'Measure it again. Then correct or confirm it.',

  'suspicion.near-end': 'The pins were {fromEndDistanceMm} from an end. Ends dry first.',
  'suspicion.near-end.do': 'Probe at least {clearDistanceMm} from both ends.',

  'suspicion.end-grain': 'The pins went into end grain. It dries and wets much faster than the faces.',
  'suspicion.end-grain.do': 'Probe a face. Or probe a fresh crosscut, well in from the end.',

  'suspicion.pins-shallow':
    'The pins were {depthMm} deep. The core of this board is {coreDepthMm} below the face.',
  'suspicion.pins-shallow.do':
    'Drive longer, insulated pins to mid-thickness. Or probe the middle of a fresh crosscut.',
  'suspicion.pins-shallow.surface': 'The pins were {depthMm} deep. They read the surface only.',
  'suspicion.pins-shallow.surface.do': 'Drive the pins deeper and probe again. Or correct the depth.',
  'suspicion.deeper-than-board': 'The pins were {depthMm} deep, but the board is {boardThickness} thick.',
  'suspicion.deeper-than-board.do': 'Correct the depth of the reading, or the board’s thickness.',

  'suspicion.outlier-on-board':
    '{mcPct} is far from the board’s other {depth, select, shell {shell} average {average} other {core}} readings, about {othersPct}.',
  'suspicion.outlier-on-board.low.do':
    'Were the pins fully in, clear of knots and cracks? Probe {besideDistanceMm} away, along the same grain.',
  'suspicion.outlier-on-board.high.do':
    'Look for a knot, pitch, bark, or a wet patch. Probe {besideDistanceMm} away, along the same grain.',
  'suspicion.outlier-on-board.pair':
    'The board’s two {depth, select, shell {shell} average {average} other {core}} readings are {onePct} and {otherPct}. Spots on one board should differ by {allowedPoints} at most.',
  'suspicion.outlier-on-board.pair.do':
    'Take 1 or 2 more {depth, select, shell {shell} average {average} other {core}} readings elsewhere on the board. They will show which one is off.',

  'suspicion.shell-above-core':
    'On average the shell reads {shellPct} and the core {corePct}. A drying board is wetter inside.',
  'suspicion.shell-above-core.do':
    'Rain, dew, or fog on the faces does this. So do core pins that are not deep enough. Let the faces dry for a day, or plane a spot clean. Drive the core pins to mid-thickness and probe again.',

  'suspicion.rained-on':
    'The shell reads {shellPct} and the core {corePct}. The air here cannot make a shell that wet.',
  'suspicion.rained-on.do': 'Let the faces dry, then probe again.',

  'suspicion.surface-wet': 'The shell reads {shellPct} here, over a core of {corePct}. The face looks wet.',
  'suspicion.surface-wet.do': 'Wipe it and let it dry, or plane the spot clean. Then probe again.',

  'suspicion.jump.expected':
    'The {depth, select, shell {shell} average {average} other {core}} went from {beforePct} to {mcPct} in {days, plural, =0 {less than a day} one {# day} other {# days}}. In {placeName} it should be about {expectedPct} by now.',
  'suspicion.jump.wetter':
    'The {depth, select, shell {shell} average {average} other {core}} went from {beforePct} to {mcPct} in {days, plural, =0 {less than a day} one {# day} other {# days}}. The air here cannot add that much.',
  'suspicion.jump.drier':
    'The {depth, select, shell {shell} average {average} other {core}} went from {beforePct} to {mcPct} in {days, plural, =0 {less than a day} one {# day} other {# days}}. Moisture cannot leave a board this thick ({boardThickness}) that fast.',
  'suspicion.jump.do':
    'Check the board ID, the species, and the temperature. Check that the pins are fully in and the face is dry. Run the meter’s own check. Then probe again.',

  'suspicion.apart-from-stack':
    'This board reads {offPoints} {direction, select, higher {higher} other {lower}} than expected from its last round and the rest of the stack.',
  'suspicion.apart-from-stack.do': 'Check the board ID and the species. Then probe it again.',
  'suspicion.apart-from-stack.swapped.do':
    'It may have been mixed up with {otherCode}, which is off the other way. Check both IDs, and the species.',
  'suspicion.apart-from-stack.depth':
    'The {depth, select, shell {shell} average {average} other {core}} reads {offPoints} {direction, select, higher {higher} other {lower}} than expected from its last round and the rest of the stack.',
  'suspicion.apart-from-stack.wet-shell.do':
    'The faces may be wet. Wipe and dry them, or plane a spot clean. Then probe again.',
  'suspicion.apart-from-stack.dry-shell.do': 'Probe the shell again, clear of end grain and cracks.',
  'suspicion.apart-from-stack.wet-core.do':
    'Look for a knot, pitch, or a wet streak. Probe the core again elsewhere.',
  'suspicion.apart-from-stack.dry-core.do':
    'The pins may not have been deep enough. Drive them to mid-thickness and probe again.',

  'suspicion.meter-drift':
    'The readings drifted {direction, select, higher {up} other {down}} by {driftPoints} from the first board to the last.',
  'suspicion.meter-drift.do':
    'Check the battery, clean the pins, and run the meter’s own check. Probe the first board again. If it has changed, probe the round again.',

  'suspicion.round-off':
    'The whole round reads about {offPoints} {direction, select, higher {higher} other {lower}} than expected from the last one.',
  'suspicion.round-off.do':
    'Check the wood temperature entered, the species, and the meter. Correct the entry, or probe a few boards again.',

  'suspicion.species-unlike-stack':
    'As {ownSpecies}, this board’s {depth, select, average {average} other {core}} is at {mcPct}. As {otherSpecies}, like the boards around it, it would be at {otherPct} and fit better.',
  'suspicion.species-unlike-stack.do':
    'Look at the board. If it is {otherSpecies}, change its species. All its readings are then corrected again. If it is {ownSpecies}, confirm that on its page.',
} as const;
