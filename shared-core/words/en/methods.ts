/** The methods page: every formula, prior, limit and source. */
export const methods = {
  'methods.title': 'Methods and sources',
  'methods.lead': 'What Pintally figures, how, and from what. Numbers are those in use now.',
  'methods.find': 'Find a heading',
  'methods.find-hint': 'Any word of a heading or its text.',
  'methods.none': 'No part has “{typedText}”.',
  'methods.contents': 'Contents',
  'methods.print': 'Print',
  'methods.temperature': '{cellTempC}',
  'methods.temperature-step': '{cellStepK}',
  'methods.length': '{cellMm}',
  'methods.distance': '{cellDistanceMm}',
  'methods.source': 'Source: {source}',
  'methods.from-memory': '(from memory)',
  'methods.read': 'Read the methods',

  'methods.emc.title': 'EMC of air',
  'methods.emc.what': 'EMC is the moisture content that wood settles at if it stays in the air long enough.',
  'methods.emc.formula':
    'EMC = 1800/W · [ K h/(1 − K h) + (K1 K h + 2 K1 K2 K² h²)/(1 + K1 K h + K1 K2 K² h²) ]',
  'methods.emc.w': 'W = 349 + 1.29 T + 0.0135 T²; K = 0.805 + 0.000736 T − 0.00000273 T²',
  'methods.emc.k':
    'K1 = 6.27 − 0.00938 T − 0.000303 T²; K2 = 1.91 + 0.0407 T − 0.000293 T²; T in °C, h humidity as a fraction',
  'methods.emc.cold': 'Air colder than {coldestTempC} counts as that cold. The formula ends there.',
  'methods.emc.dew':
    'Dew point and vapor pressure: Magnus form, 610.94 · exp(17.625 T/(243.04 + T)) Pa, over water.',
  'methods.emc.source':
    'Wood Handbook (FPL-GTR-282, 2021), eq. 4-5, checked. Magnus form: Alduchov and Eskridge, J. Applied Meteorology 35, 1996 (from memory).',

  'methods.air.title': 'Air of places',
  'methods.air.stations':
    'Typical years of 1,020 stations (TMY3). A month’s EMC is halfway between two: the mean of its hours’ EMC, and the EMC of its mean air. Both are weighted by saturation vapor pressure. Months are smoothed: half their own, a quarter of each neighbor.',
  'methods.air.region':
    'Where no station is named, a place has the average of its region’s stations. It is as uncertain as they differ.',
  'methods.air.hours': 'Forecasts also carry how single days swing around their month at that station.',
  'methods.air.typed':
    'Monthly averages that you type for outdoor air get the EMC of their hours. It differs from that of the averages, as below. A month may be {sdPoints} off.',
  'methods.air.typed-caption': 'EMC of the hours, above that of the monthly means',
  'methods.air.rh': 'Mean humidity',
  'methods.air.above': 'Points',
  'methods.air.rooms':
    'Rooms are made from the outdoor air, if the yard has a place outdoors. The outdoor vapor pressure is kept. The room is warmed, and people add moisture.',
  'methods.air.room-temperature':
    'Heated: {heatedTempC}. Above {untilTempC} outdoors: {aboveStepK} warmer than outdoors. Air-conditioned: {cooledTempC} at most, humidity {cooledRhPct} at most. Shop, heated now and then: {shopTempC} at least.',
  'methods.air.gain':
    'Moisture gain: {coldGain} grams of water in a cubic meter of air below {coldTempC} outdoors, {warmGain} above {warmTempC}, linear between. A shop has half.',
  'methods.air.room-sd':
    'The gain may be {gainSd, plural, one {# gram} other {# grams}} off and the temperature {tempSdStepK}. The EMC is as uncertain as that makes it.',
  'methods.air.shed': 'An open shed has the outdoor air. It may be {sdPoints} off.',
  'methods.air.unknown':
    'Where the outdoor air is not known, a heated room is assumed to swing between {driestPct} and {dampestPct} over the year, give or take {sdPoints}.',
  'methods.air.source':
    'TMY3: Wilcox and Marion, NREL/TP-581-43156, 2008. Room temperature: ASHRAE 160, from open code. Moisture gain: half of the design values of Kalamees, Vinha and Kurnitski, J. Building Physics 29, 2006 (abstract checked); half is near the mean (from memory). Same shape as the humidity classes of EN ISO 13788. The rest is common practice, no source.',

  'methods.correction.title': 'From the value shown to moisture content',
  'methods.correction.steps':
    'A value is corrected in steps: scale of the meter, temperature, species, then your own oven-dry checks. Each reading opens to its steps.',
  'methods.correction.scale':
    'A value in % means the resistance that its scale stands for. That resistance is looked up on the curve of the board’s species.',
  'methods.correction.usual':
    'If the scale is unknown, coast Douglas-fir is assumed, calibrated at {usualTempC}.',
  'methods.correction.temperature':
    'Three published temperature corrections disagree. Resistance uses James. A value in % uses Pfaff and Garrahan. How far the others lie from it, as a root mean square, adds to the uncertainty.',
  'methods.correction.formulas':
    'M is the value shown, T the wood’s temperature in °C. James, our fit of his figure: MC = M · exp(−0.007735 D + 0.00004858 D²) − 0.03636 D, D = T − 21.1. Pfaff and Garrahan: MC = (M + 0.567 − 0.0260 T + 0.000051 T²)/(0.881 · 1.0056^T). VTT 420: MC = M − 0.125 T.',
  'methods.correction.scale-temperature':
    'Each is MC = gain · M + offset. On a scale that is calibrated at another temperature: MC = gain/gain₀ · (M − offset₀) + offset, those with ₀ at the scale’s temperature.',
  'methods.correction.temperature-caption':
    'Points to add to a reading of {shownPct} on a scale calibrated at {commonTempC}',
  'methods.correction.wood': 'Wood',
  'methods.correction.james': 'James',
  'methods.correction.pfaff': 'Pfaff and Garrahan',
  'methods.correction.vtt': 'VTT 420',
  'methods.correction.range':
    'Corrections are meant for {leastTempC} to {mostTempC}. They are refused below {lowestTempC} and above {highestTempC}.',
  'methods.correction.frozen':
    'Bound water does not freeze. Below freezing, readings are used up to {frozenPct}, with {coldPoints} more uncertainty for each {coldStepK}, {mostPoints} at most. Where one published correction makes a board ready and another does not, the call is Probe again.',
  'methods.correction.uncertainty':
    'The parts of the uncertainty add as squares: meter, species without a curve, scale, temperature, cold, and a value beyond its curve.',
  'methods.correction.wet':
    'Above fiber saturation, {saturationPct}, a meter shows only that wood is wet. Below {leastPct} it shows little.',
  'methods.correction.uncertainty-caption':
    'Standard uncertainty of one reading of {shownPct} at {commonTempC}',
  'methods.correction.case': 'Case',
  'methods.correction.points': 'Points',
  'methods.correction.of-air':
    'If the wood temperature is unknown, it is assumed to be that of the usual air there that month. Two standard deviations: {outdoorsStepK} outdoors, {roomStepK} in a heated room.',
  'methods.correction.with-curve': 'Species with a curve (black walnut)',
  'methods.correction.without-curve': 'Species without a curve (black cherry)',
  'methods.correction.no-temperature': 'Wood temperature not known (black walnut)',
  'methods.correction.checks':
    'Your oven-dry checks of a species give a line by least squares: reading = a · MC + b. The slope a is 1 unless the checks spread {spreadPoints} and a slope predicts left-out checks better. From {leastChecks} checks on, the line replaces the published correction if it predicts better.',
  'methods.correction.learned':
    'Dried pieces and weighed sample boards shift the readings of their meter and their species. The model is hierarchical and normal. Standard deviations known beforehand: {meterPoints} by meter, {speciesPoints} by species, {bothPoints} by both, {boardPoints} from board to board. One common factor on them is learned, too; its prior weighs as much as {priorBoards} boards.',
  'methods.correction.source':
    'W. L. James, FPL-GTR-6, 1988, Figure 5, as digitized in open code. Pfaff and Garrahan, Forest Products Journal 36(3), 1986, from open code. Forsén and Tarvainen, VTT Publications 420, 2000, abstract. Wood Handbook, chapter 13. Bound water: FPL-GTR-6. Left-out checks: Stone, J. Royal Statistical Society B 36, 1974; hierarchy: Gelman and others, Bayesian Data Analysis (both from memory). Hand-held meters: the middle of ±1 to ±3 points at two sigma. Other parts of the uncertainty: our judgment.',

  'methods.curves.title': 'Resistance curves of species',
  'methods.curves.what':
    'Each curve is resistance along the grain over moisture content. Between points: a monotone cubic in the logarithm of resistance. A curve ends where it falls by less than {fallSharePct} for each point. Beyond, it goes on at its last slope, with more uncertainty.',
  'methods.curves.none':
    'A species without a curve gets temperature correction only, and a wider uncertainty.',
  'methods.curves.caption': 'Curves and their sources',
  'methods.curves.curve': 'Curve',
  'methods.curves.range': 'Range',
  'methods.curves.between': '{curveRange}',
  'methods.curves.at': 'Wood at',
  'methods.curves.source-head': 'Source',
  'methods.curves.source':
    'Interpolation: Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5, 1984 (from memory).',

  'methods.depth.title': 'Depth and the profile of a board',
  'methods.depth.parabola':
    'Across a drying board moisture is close to a parabola. Its average is two thirds of the way from shell to core. Pins at 21% of the thickness meet that average.',
  'methods.depth.pins':
    'Bare pins read the wettest layer that they touch. Pins of unknown length are assumed {pinMm} long. In boards up to {thinMm} one depth gives the average.',
  'methods.depth.driven':
    'For the average, pins go in all the way if that is {fromSharePct} to {toSharePct} of the thickness, else to {atSharePct}. Pins longer than {middleSharePct} of the thickness read shell and core.',
  'methods.depth.profile':
    'A reading at depth z is average + g · (1/(n + 1) − |1 − 2 z/thickness|^n), g being core less surface. n is each of {exponents}, weighed by how well it explains the readings. So is each depth that pins of unknown length may have reached.',
  'methods.depth.interval':
    'What readings share, as the meter’s error, stays however many they are. Their scatter shrinks with their number. Intervals are Student’s t, with Welch–Satterthwaite degrees of freedom.',
  'methods.depth.ends': 'Spots stay {clearanceDistanceMm} from the ends where the board is long enough.',
  'methods.depth.scatter':
    'Readings at one depth differ by {dryPoints} in dry wood, and in proportion above. That is known beforehand as well as {degrees} spare readings would tell.',
  'methods.depth.source':
    'Parabola: arithmetic. Steepness of the profile: the drying model. Pin depth: EN 13183-2 and Dry Kiln Operator’s Manual (from memory). Intervals: GUM, JCGM 100:2008, 5.1 and G.4. Profile: Bayesian linear model, as in Gelman and others (from memory). Scatter: common practice, no source.',

  'methods.drying.title': 'Drying model and forecast',
  'methods.drying.law':
    'Moisture moves through the thickness by diffusion, and leaves each face into the air. Diffusivity rises with moisture content and temperature and falls with density. The solver agrees with Crank’s series.',
  'methods.drying.diffusivity-formula':
    'Diffusivity across the grain: D = Db · Dv/((1 − p)(Db + Dv (1 − √p))), p the share of pores. Bound water: Db = 0.000007 · exp(−(9200 − 70 M)/(1.9872 T)) m²/s, T 288.15 K. From {saturationPct} on, D stays. At another temperature D is exp(5280/288.15 − 5280/T) times as much, T in kelvin: it rises about as evaporation does.',
  'methods.drying.vapor-formula':
    'Vapor in the pores: Dv = 0.018 · 0.000022 (T/273)^1.75 · P · dh/dM/(8.314 T · density of the cell wall), P saturation pressure. Humidity over wood: h = exp(−(K2 · K1^M + K3)).',
  'methods.drying.bradley':
    'K1 = 0.839 + 0.0000202 F − 0.00000156 F²; K2 = 3.56 + 0.00392 F − 0.0000445 F²; K3 = 0.0219 + 0.0000164 F; F in °F, 32 at least (Bradley).',
  'methods.drying.exponent-formula':
    'How steeply D rises with moisture is an exponent e, not known: D = D₀ · (D/D₀)^e, D₀ at {anchorPct}.',
  'methods.drying.face-formula':
    'A face loses, in SI units, 0.005 · vapor density of saturated air · (h of the face − h of the air), over the wood’s basic density and times its factors.',
  'methods.drying.unknowns':
    'Five things are not known of a board: how fast it dries inside, how freely its faces dry, its first moisture content, how far its air is from the place’s, and how steeply diffusivity rises.',
  'methods.drying.prior-caption': 'Before any reading: a {boardMm} board of northern red oak',
  'methods.drying.unknown': 'Unknown',
  'methods.drying.middle': 'Middle',
  'methods.drying.low': '1 in 10 below',
  'methods.drying.high': '1 in 10 above',
  'methods.drying.diffusivity': 'Diffusivity, times the published law',
  'methods.drying.surface': 'Surface, times that of an open face',
  'methods.drying.start': 'First moisture content, green, %',
  'methods.drying.emc': 'EMC, points off the place’s months',
  'methods.drying.exponent': 'Share of the published rise with moisture',
  'methods.drying.fit':
    'Readings narrow them by Bayes’ rule. Boards of one stack and log inform each other. They still differ by {spreads} in the five unknowns. The model itself is assumed {modelPoints} off. For dates it is less where rounds agree with it.',
  'methods.drying.places':
    'Readings also show how far a place’s EMC is from that of its months, and how freely boards dry in its moving air. Places of one kind share part of both.',
  'methods.drying.faces-caption': 'How freely a face dries, against an open face',
  'methods.drying.face': 'Face',
  'methods.drying.share': 'Share',
  'methods.drying.face-open': 'Open, on stickers',
  'methods.drying.face-sun': 'In the sun',
  'methods.drying.face-bottom': 'Bottom of the stack',
  'methods.drying.face-bark': 'Under bark',
  'methods.drying.face-sealed': 'Sealed',
  'methods.drying.classes':
    'Species dry by their class, which follows from the botanical name. One of no known class has wider dates. Against published days, lowland oaks and baldcypress stacked in the worst month come out a quarter too fast.',
  'methods.drying.thickness':
    'Twice the thickness takes {timesAsLong} times as long. The law alone would say four times; edges and checks help.',
  'methods.drying.ahead':
    'The pace ahead is uncertain, its logarithm by {paceSd}. So are the seasons, by {seasonSharePct} of the EMC. Single days count less the slower the board follows: within thickness²/(π² D). Before a reading in a room or a kiln, the effect of its air is uncertain, too.',
  'methods.drying.runs':
    'The model runs for {runs} combinations of all that, each weighed by how well it explains the readings. Dates and bands are the 10%, 50%, and 90% points of these runs.',
  'methods.drying.classes-caption': 'By class, before any reading',
  'methods.drying.class': 'Class',
  'methods.drying.class-refractory': 'Refractory: live oak, tanoak, black locust',
  'methods.drying.class-lowland-oak': 'Lowland oaks',
  'methods.drying.class-upland-oak': 'Upland oaks',
  'methods.drying.class-ring-porous': 'Ring-porous: ash, elm, hickory',
  'methods.drying.class-maple': 'Maples',
  'methods.drying.class-dense-hardwood': 'Dense hardwoods: beech, birch, cherry, walnut',
  'methods.drying.class-light-hardwood': 'Light hardwoods: alder, basswood, poplar',
  'methods.drying.class-gum': 'Gums, tupelos, southern magnolia',
  'methods.drying.class-pine': 'Pines',
  'methods.drying.class-softwood': 'Other softwoods',
  'methods.drying.class-wetwood': 'Softwoods with wet pockets: hemlock, fir',
  'methods.drying.class-baldcypress': 'Baldcypress',
  'methods.drying.air-caption': 'How the air moves, against wind outdoors',
  'methods.drying.air': 'Air',
  'methods.drying.pace': 'Pace',
  'methods.drying.pace-sd': 'Spread of its logarithm, before a reading',
  'methods.drying.likely': '“Likely” means 8 chances in 10.',
  'methods.drying.green':
    'Green wood is assumed to hold {greenSharePct} of the most it can: 100 (1.54 − G)/(1.54 G) %.',
  'methods.drying.source':
    'Crank, The Mathematics of Diffusion, 1975. Siau, Transport Processes in Wood, 1984, and Simpson, Wood and Fiber 5, 1973, from open code. Temperature: Simpson’s simulations of red oak (from memory), Skaar 1958 (abstract). Most water: Wood Handbook, eq. 4-3. Pace: published drying days (Rietz and Page, and 18 more species; from memory), Peck 1957, Miceli 1982. Pace ahead: Kennedy and O’Hagan, Bayesian calibration of computer models, 2001; weights: Gelman and others, and Ionides 2008 (all from memory). Thickness, air movement, spreads: common practice, no source.',

  'methods.calls.title': 'Calls',
  'methods.calls.ready':
    'Ready: the average is in the target, and the chance of wetter than target and tolerance is below {harmChancePct}. So is the chance of a shell–core difference {unevenPoints} above its limit. That chance must be below {unevenChancePct} where no pins read the core, or only the plan gives a depth.',
  'methods.calls.profile':
    'Average and core: least squares over three shapes of profile. Before any reading, core less surface is {steepness} ± {steepnessSd} times the board’s distance from its EMC, and {aheadPoints} more. In the two months after a move to drier air it is {movedPoints} more. The air’s weeks and the meter’s error widen that. Where only the shell was read, below the EMC, no gradient is expected: such wood came from drier air.',
  'methods.calls.core-open':
    'Where only the shell was read, the average is estimated from it. It is shown where it likely lies within {widestPoints} and the core is below {wettestPct}. Without the core, Keep drying, Bring in and Too dry need a chance of {sureChancePct}, and the shell on the same side. Otherwise the call is Probe again: read the core. (Common practice, no source.)',
  'methods.calls.history':
    'Where no pins reach a thick board’s core, its history is used: shell and core by the forecast made before the round. No reading of the round is in it. Firewood has no such history, because it dries from its ends as well: its core is read on a fresh split.',
  'methods.calls.history-sd':
    'Real cores are wetter than forecast, so {behindPoints} are added to the difference. Its uncertainty grows by {shellPoints} for the shell’s weather and {gradientSharePct} of the difference. Above {mostPoints}, it is not used.',
  'methods.calls.depth':
    'Where only the plan gives a depth, the pins may be as short as {shortestMm}, or longer and pushed in fully at every spot. A board above {thinMm} is never ready on a core that no pins reached.',
  'methods.calls.spots':
    'No call is made before every spot of the plan is read. Two readings at one spot count as one. Where some are questionable, {enough} others of each planned depth are enough. Too wet is called sooner, from a chance of {surelyChancePct} on.',
  'methods.calls.later-part':
    'A later round of some spots does not replace the call of the last full one. Where the two don’t match, the board is to be probed again: its {intervalChancePct} interval lies outside that of the full round, moved by what the drying model allows within {modelSds} standard deviations.',
  'methods.calls.more':
    'More readings are asked for, up to {mostExtra} at each depth, where the chance that they make the board ready is {worthChancePct} or more. Else the likelier side is called, with its chance if below {sureChancePct}.',
  'methods.calls.unused':
    'Questionable readings are not used. Where they would overturn a good call, the board is to be probed again.',
  'methods.calls.by-forecast':
    'A forecast that disagrees with a call asks for probing once the call is {youngDays} days old. Another place is named where the board is ready {gainDays} days sooner.',
  'methods.calls.old':
    'From readings {oldDays} days old or older, the forecast gives today’s MC. If the call is less than {sureChancePct} sure, it is Probe again.',
  'methods.calls.source':
    'Worth of more readings: Raiffa and Schlaifer, Applied Statistical Decision Theory, 1961 (from memory). Limits: common practice, no source.',
  'methods.calls.others':
    'Bring in: too wet, and by the forecast, or by its lowest EMC, this place is unlikely to dry it to the target. Keep drying: too wet. Too dry: below a lower limit that matters. Probe again: probing can change the call.',
  'methods.calls.half-point':
    'Wood comes within {nearPoints} of its EMC only after very long. Before it goes indoors, stock should be {indoorsLimitPct} or drier, its core {coreLimitPct} (Torgeson, FPL Report 1684, 1956).',
  'methods.calls.caption': 'Targets, tolerances and limits of the built-in uses',
  'methods.calls.use': 'Use',
  'methods.calls.target': 'Target',
  'methods.calls.target-of': '{targetRange}',
  'methods.calls.tolerance': 'Tolerance',
  'methods.calls.shell-core': 'Shell–core, at most',
  'methods.calls.source-head': 'Source',
  'methods.calls.any': 'any',

  'methods.questionable.title': 'Questionable readings',
  'methods.questionable.what':
    'A reading is flagged when it is unlike its board, its stack, its last round, or what wood can do. Flags say why and what to do.',
  'methods.questionable.between':
    'Between rounds a board keeps {paceSharePct} of its difference in pace. The air between rounds may differ by {betweenPoints}.',
  'methods.questionable.first-round':
    'Until a board has a call, its readings are checked against what drying allows since sawing: green wood, all paces of its class. The uncertainty of its places’ air, and of where it was before, is included. Beyond {doubtSds} standard deviations, drier or wetter, or below the lowest EMC of its places, readings are questionable. Over three years after sawing, only too wet is checked. Boards from a kiln are not checked.',
  'methods.questionable.board':
    'One of three readings at a depth is odd beyond {outlierScore} robust standard deviations, one of two beyond {differenceScore}. So is a shell that is wetter by that than the core of a drying board.',
  'methods.questionable.jump':
    'A change since the last round is odd beyond {changeScore} standard deviations of what the drying model expects. After {longestDays} days, or after a move, the bound is the most that diffusion can do.',
  'methods.questionable.round':
    'Rounds of {boards} boards or more are compared. A board is apart from its stack beyond {boardScore} standard deviations; a round is off beyond {roundScore}; a drift counts from {driftPoints} on.',
  'methods.questionable.species':
    'A species is questionable if {mates} boards beside it are of another species, and its readings, corrected as that species, fit {shiftPoints} or more better. Two species may differ {spread} times as much as one.',
  'methods.questionable.slip':
    'A typed value below {leastLimitPct} or above {mostLimitPct} is a slip if 10 or 100 times as much or as little fits the other readings, the last round, what drying allows since sawing, or the air of its places.',
  'methods.questionable.ohm-slip':
    'A typed resistance is a slip if its MC is odd beyond {differenceScore} standard deviations beside others of its depth, and 10, 100, 1,000 or a million times as much or as little fits them.',
  'methods.questionable.rest':
    'A live value is saved once it changes by less than {restPoints} a second, over {windowSeconds} seconds.',
  'methods.questionable.source':
    'First round: Box, J. Royal Statistical Society A 143, 1980. Odd readings: Iglewicz and Hoaglin, How to Detect and Handle Outliers, 1993. Drift: Theil 1950, Sen 1968. Diffusion’s bound: Crank, The Mathematics of Diffusion, 1975 (all from memory). The rest is common practice, no source; the rules were tried on simulated rounds.',

  'methods.shrinkage.title': 'Shrinkage, size and weight',
  'methods.shrinkage.formula':
    'Change = D (M2 − M1)/(3000/S − 30 + M1): D size at M1, S shrinkage from green to oven-dry in %. Between 6% and 14%: D · C · (M2 − M1).',
  'methods.shrinkage.coefficients':
    'The handbook’s coefficients C were checked for hardwoods, and for five softwoods in open code. For other softwoods, change is figured from shrinkage.',
  'methods.shrinkage.rings':
    'Rings: flat {flatDegrees}°, rift {riftDegrees}°, quarter {quarterDegrees}°. Cup assumes a ring radius of {radiusMm} where none is given.',
  'methods.shrinkage.cup':
    'Cup comes from the rings, which shrink more along than across, and from unlike faces: width²/8 times the curvature of a free plate.',
  'methods.shrinkage.weight':
    'Density = 1000 G (1 + MC/100)/(1 − V/100), kg/m³. V is the loss of volume since green, G the basic specific gravity. Green to oven-dry, V is 26.5 G where the species has no figure.',
  'methods.shrinkage.sample-board':
    'Sample board: oven-dry weight = 100 · weight/(100 + MC), MC the mean of its end sections. From then on its weight gives its MC.',
  'methods.shrinkage.board-feet':
    'Board feet: width in inches times whole feet, over 12, to the whole square foot; then times thickness in quarters.',
  'methods.shrinkage.oven':
    'Oven-dry: MC = (weight − dry weight)/dry weight. Dry: ASTM D4442 or EN 13183-1, no change in {astmHours} h or {enHours} h.',
  'methods.shrinkage.source':
    'Wood Handbook (FPL-GTR-190), chapter 13 and eq. 4-9, checked; density, chapter 4 (from memory). ASTM D4442 and EN 13183-1; free plate: Timoshenko and Goodier, Theory of Elasticity; sample boards: Dry Kiln Operator’s Manual; board feet: NHLA rules (all from memory).',

  'methods.sample.title': 'How many boards to probe',
  'methods.sample.none-wet':
    'If all probed boards are ready: the hypergeometric chance that 1 in {oneIn} of the stack is not.',
  'methods.sample.mean':
    'For the stack’s average: n = (t s/e)², less for a small stack. t is Student’s, e the margin, s the spread between boards: {spreadPoints} until they are probed.',
  'methods.sample.next':
    'Next to probe: the board with the largest expected loss by a wrong call, s · L(distance to the limit/s). L is the unit normal loss.',
  'methods.sample.caption': 'Boards to probe, at {certaintyPct} certainty',
  'methods.sample.stack': 'Boards in the stack',
  'methods.sample.for-none-wet': 'At most 1 in {oneIn} not ready',
  'methods.sample.for-mean': 'Average within {marginPoints}',
  'methods.sample.source':
    'Cochran, Sampling Techniques, 3rd edition, 1977, sections 4.1 to 4.6. Stein, Annals of Mathematical Statistics 16, 1945. Raiffa and Schlaifer, Applied Statistical Decision Theory, 1961 (all from memory).',

  'methods.trials.title': 'How often it is right',
  'methods.trials.how':
    'Programs beside the source draw boards, weather, and meters at random, probe them as a person would, and count. Of several cases the hardest is shown.',
  'methods.trials.limits':
    'Drawn boards are no better than what is known of wood. Only the dated records are of real boards.',
  'methods.trials.caption': 'What trials found',
  'methods.trials.what': 'What was counted',
  'methods.trials.found': 'Found',
  'methods.trials.goal': 'Goal',
  'methods.trials.program': 'Program',
  'methods.trials.at-least': 'At least {least}',
  'methods.trials.at-most': 'At most {most}',
  'methods.trials.between': '{least} to {most}',
  'methods.trials.wrong-ready': 'Of 100 boards called Ready, too wet or too uneven for their use',
  'methods.trials.fine-ready': 'Of 100 boards that are fine and near the limit, called Ready',
  'methods.trials.fine-ready-unknown': 'Of 100 such boards, called Ready with the pin depth unknown',
  'methods.trials.interval': 'Of 100 averages, within the interval that holds 90 of them',
  'methods.trials.records':
    'Of 100 dated records of boards, between the 10% and the 90% point of the forecast',
  'methods.trials.faults': 'Of 100 gross faults of readings, flagged',
  'methods.trials.alarms': 'Of 100 sound readings, flagged',
  'methods.trials.settled': 'Of 1,000 values that settled, saved too early',

  'methods.cautions.title': 'Cautions',
  'methods.cautions.pins': 'Pins are sharp. Push them away from your other hand.',
  'methods.cautions.oven':
    'A hot oven, a microwave and resinous wood can start a fire. Never leave them alone.',
  'methods.cautions.structure':
    'A moisture content says nothing about strength. Have wood that carries a load graded by someone qualified.',
  'methods.cautions.insects': 'Air-dried wood is not heat-treated. Insects may live in it.',

  'methods.species.title': 'Sources of species',
  'methods.species.what':
    'A figure marked “from memory” was not checked against its source. Group figures, named “(any)”, are means of their species.',
  'methods.species.caption': 'Species and their sources',
  'methods.species.species': 'Species',
  'methods.species.source-head': 'Sources',

  'methods.memory.title': 'From memory',
  'methods.memory.what':
    'These figures were not checked against their source. They may be off. Your own replace them.',
  'methods.memory.caption': 'Figures from memory',
  'methods.memory.figure': 'Figure',
  'methods.memory.of': 'Of',
  'methods.memory.curves': 'Resistance curves',
  'methods.memory.uses': 'Targets of uses',

  'methods.numbers.title': 'Numbers used',
  'methods.numbers.what': 'Priors and limits, as the program has them.',
  'methods.numbers.caption': 'Priors and limits',
  'methods.numbers.number': 'What',
  'methods.numbers.value': 'Value',
  'methods.numbers.fiber-saturation': 'Fiber saturation, %',
  'methods.numbers.frozen': 'Wet enough to freeze, from %',
  'methods.numbers.most-off': 'Most that a check corrects, points',
  'methods.numbers.most-off-ohms': 'Most that a check corrects in ohms, powers of ten',
  'methods.numbers.least-meter': 'Lowest MC that a pin meter can measure, %',
  'methods.numbers.neutral-temp': 'Temperature of the default scale',
  'methods.numbers.range-least': 'Corrections meant for wood of at least',
  'methods.numbers.range-most': 'Corrections meant for wood of at most',
  'methods.numbers.limit-least': 'Corrections refused below',
  'methods.numbers.limit-most': 'Corrections refused above',
  'methods.numbers.least-for-a-line': 'Fewest checks for a fit',
  'methods.numbers.scatter-degrees': 'Weight of the scatter known beforehand, readings',
  'methods.numbers.scale-unknown': 'Scale not known, share of MC',
  'methods.numbers.compensation-unknown':
    'Not known if the meter corrects for temperature, share of the correction',
  'methods.numbers.unknown-temp': 'Wood temperature unknown, span',
  'methods.numbers.outside': 'Beyond a curve, share of the points beyond',
  'methods.numbers.wet-limit': 'A meter is less sure from, %',
  'methods.numbers.wet-adds': 'By so many points for each point above',
  'methods.numbers.free-adds': 'And for each above fiber saturation',
  'methods.numbers.dry-adds': 'And for each below the lowest that it can measure',
  'methods.numbers.middle-counts': 'Pins read the core from this share of the thickness',
  'methods.numbers.unknown-air': 'Board above the EMC of unknown air, points',
  'methods.numbers.unknown-air-sd': 'Board above the EMC of unknown air, its spread, points',
  'methods.numbers.always-fully-in': 'Chance that pins of unknown length went in fully at every spot',
  'methods.numbers.usual-drying-temp': 'Temperature that the diffusivity is worked out at',
  'methods.numbers.coldest': 'Coldest air of the EMC formula',
  'methods.numbers.dampest': 'Highest humidity of the EMC formula',
  'methods.numbers.above-means-sd': 'Spread of a typed month, points',
  'methods.numbers.model-error': 'Error of the drying model, points',
  'methods.numbers.model-error-degrees': 'Error of the drying model, known as if from so many readings',
  'methods.numbers.diffusivity-median': 'Diffusivity factor where no class is known, middle',
  'methods.numbers.average-gravity': 'Specific gravity where it is not known',
  'methods.numbers.humidity-sd': 'Humidity of a place around its months, its spread, % relative humidity',
  'methods.numbers.day-swings': 'Spread of daily EMC outdoors around its month, points',
  'methods.numbers.wood-emc-sd': 'EMC of one species around the formula, its spread, points',
  'methods.numbers.kind-share': 'Share of a place’s EMC variance that its kind shares',
  'methods.numbers.air-between-boards-sd': 'EMC between boards of one place, its spread, points',
  'methods.numbers.shared-air-sd': 'Error of EMC that all readings share, its spread, points',
  'methods.numbers.surface-kind-share': 'Share of a place’s surface variance that its kind shares',
  'methods.numbers.surface-between-boards-sd':
    'Surface factor between boards of one place, spread of its logarithm',
  'methods.numbers.shared-surface-sd':
    'Error of the surface factor that all readings share, of its logarithm',
  'methods.numbers.diffusivity-sd': 'Diffusivity factor, spread of its logarithm',
  'methods.numbers.surface-median': 'Surface factor, middle',
  'methods.numbers.surface-sd': 'Surface factor, spread of its logarithm',
  'methods.numbers.exponent-mean': 'Exponent of the rise, middle',
  'methods.numbers.exponent-sd': 'Exponent of the rise, spread',
  'methods.numbers.green': 'Green moisture, share of the most it can hold',
  'methods.numbers.green-sd': 'The same, spread of its logarithm',
  'methods.numbers.ahead': 'Pace ahead, spread of its logarithm',
  'methods.numbers.thickness': 'Rise of the diffusivity factor with thickness, exponent',
  'methods.numbers.anchor': 'Moisture content at which all exponents agree, %',
  'methods.numbers.old-after': 'A reading is old after, days',
  'methods.numbers.longest-history': 'Longest history, days',
  'methods.numbers.ring-radius': 'Ring radius assumed',
  'methods.numbers.never-quite': 'Never quite at EMC, points',
  'methods.numbers.dry-enough': 'Dry enough for indoors, %',
  'methods.numbers.dry-enough-core': 'Core dry enough for indoors, %',
  'methods.numbers.end-clearance': 'Distance of spots from the ends',
  'methods.numbers.one-in': 'Boards not ready, at most 1 in',
  'methods.numbers.own-pace': 'Share of its difference in pace that a board keeps',
  'methods.numbers.between-rounds': 'Air between rounds, points',
  'methods.numbers.doubt-sds': 'First round questionable beyond, standard deviations from what drying allows',
  'methods.numbers.harm': 'Chance of too wet for the use, below which a board is ready',
  'methods.numbers.uneven-harm': 'The same for a shell–core difference that was not read',
  'methods.numbers.uneven-by': 'Shell–core difference does harm from so far above its limit, points',
  'methods.numbers.worth-moving': 'A drier place is named if it gets the board this much drier, points',
  'methods.numbers.worth-probing': 'Readings are asked for where they change the call this often',
  'methods.numbers.thin': 'Thickness up to which one depth gives the average',
  'methods.numbers.assumed-pin': 'Pin length where it is unknown',
  'methods.numbers.average-least': 'Pins read the average from this share of the thickness',
  'methods.numbers.widest-estimate': 'Widest likely interval of an estimated average that is shown, points',
  'methods.numbers.wettest-estimate': 'Wettest core with which it is shown, %',
  'methods.numbers.average-most': 'Pins read the average up to this share of the thickness',
  'methods.numbers.core-behind': 'Added to a forecast shell–core difference, points',
  'methods.numbers.shell-sd': 'Shell against the forecast’s, its spread by the weather, points',
  'methods.numbers.gradient-share': 'Error of a forecast shell–core difference, as a part of it',
  'methods.numbers.most-history-sd': 'Most uncertainty with which history is used for a core, points',
  'methods.numbers.steepness': 'Core less surface, times the average above the EMC',
  'methods.numbers.steepness-sd': 'Core less surface, its spread',
  'methods.numbers.shell-ahead': 'Core less surface, points more',
  'methods.numbers.shell-ahead-moved': 'Points more after a move to drier air',
  'methods.numbers.shell-ahead-unknown': 'Points more where a move is not known',
  'methods.numbers.shell-ahead-sd': 'Those points, their spread',
  'methods.numbers.new-here': 'A move counts for so long, days',
  'methods.numbers.entered-at-once': 'Entered within so many days of sawing, it was there from the first',
  'methods.numbers.known-air-sd': 'EMC of a place as it is known, its spread, points',
  'methods.numbers.spell-outdoors': 'EMC of some weeks from its month’s, outdoors, its spread, points',
  'methods.numbers.spell-shed': 'The same in an open shed',
  'methods.numbers.spell-shop': 'The same in a shop',
  'methods.numbers.spell-room': 'The same in a heated room',
  'methods.numbers.meter-sd': 'Hand-held meter, from board to board, points',
  'methods.numbers.species-spread': 'Spread between species without a curve, share of MC',
  'methods.numbers.bias-meter': 'Bias of a meter, spread beforehand, points',
  'methods.numbers.bias-species': 'Bias of a species’ correction, spread beforehand, points',
  'methods.numbers.bias-both': 'Bias of a meter on a species, spread beforehand, points',
  'methods.numbers.bias-board': 'From board to board, spread beforehand, points',
  'methods.numbers.shortest-pins': 'Shortest pins, where only the plan gives a depth',
} as const;
