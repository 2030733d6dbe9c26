/**
 * How often the 90 % interval of a board's average holds the true one, where meters are better or worse than Pintally
 * takes them to be. Run it with
 *
 *     node tests/bench/coverage.bench.ts [boards for each figure, 6000] [seed, 11]
 *
 * A board has two shell and two core readings. What a meter shows of it is off by an error of that meter on that species
 * and one of that board (normal, together with the true standard deviation of the column), by the scatter between spots, by the wood's temperature as one of the three
 * published corrections has it (each a third of the time), and by the species where it has no curve (7 % of the MC). The
 * profile is a power between 1.6 and 2.6 of the distance from the middle, where Pintally takes a parabola.
 *
 * Goal: never below 85 % where the true standard deviation is 1.0 points.
 */

import { judgeBoard } from '../../shared-core/probing/calls/call.ts';
import type { BoardEvidence } from '../../shared-core/probing/readings/evidence.ts';
import type { Reading } from '../../shared-core/probing/readings/reading.ts';
import { USUAL_METER_SD_PCT } from '../../shared-core/wood/moisture/correction-uncertainty.ts';
import { type KnownMoisture, learnedBias, PRIOR_SD_PCT } from '../../shared-core/wood/moisture/meter-bias.ts';
import { USUAL_SCALE } from '../../shared-core/wood/moisture/scale.ts';
import { spotScatterPct } from '../../shared-core/wood/moisture/spot-scatter.ts';
import { atWoodTempPct, james, pfaffGarrahan, vtt } from '../../shared-core/wood/moisture/temperature.ts';
import { evidence, plainSpecies, reading } from '../unit/probing/a-board.ts';
import { figure } from './figure.ts';
import { type Random, randomFrom } from './rounds-with-faults.ts';

const boards = Number(process.argv[2] ?? 6000);
const seed = Number(process.argv[3] ?? 11);
const TRUE_METER_SD = [0.5, 0.75, 1, 1.25];
const GOAL = { atSd: 1, least: 0.85 };
const LAWS = [pfaffGarrahan, james, vtt];
const SPECIES_SPREAD = 0.07;

const SETTINGS = [
  { name: 'mild, curve', tempC: [15, 27], hasCurve: true, checks: 0 },
  { name: 'cold to hot, curve', tempC: [-8, 40], hasCurve: true, checks: 0 },
  { name: 'mild, no curve', tempC: [15, 27], hasCurve: false, checks: 0 },
  { name: 'curve, 2 checks', tempC: [15, 27], hasCurve: true, checks: 2 },
  { name: 'curve, 8 checks', tempC: [15, 27], hasCurve: true, checks: 8 },
  { name: 'no curve, 4 checks', tempC: [15, 27], hasCurve: false, checks: 4 },
] as const;
type Setting = (typeof SETTINGS)[number];

const within = (random: Random, [from, to]: readonly [number, number]) =>
  from + (to - from) * random.uniform();

/** So many boards are read with each meter. */
const BOARDS_PER_METER = 5;
/** Part of a meter's variance that is from board to board. */
const BOARD_PART = (PRIOR_SD_PCT.board / USUAL_METER_SD_PCT) ** 2;

/** A meter on a species as it truly is, and what its oven-dry checks taught of it. */
function makeMeter(random: Random, meterSdPct: number, { hasCurve, checks }: Setting) {
  const offPct = meterSdPct * Math.sqrt(1 - BOARD_PART) * random.normal();
  const share = hasCurve ? 0 : SPECIES_SPREAD * random.normal();
  const boardSdPct = meterSdPct * Math.sqrt(BOARD_PART);
  const whose = {
    meterId: null,
    speciesId: plainSpecies.id,
    meterScale: 1,
    speciesShare: hasCurve ? 0 : SPECIES_SPREAD,
    scaleShare: 0,
  };
  const known = Array.from({ length: checks }, (_, n): KnownMoisture => {
    const mcPct = within(random, [7, 15]);
    const sdPct = Math.hypot(spotScatterPct(mcPct) / Math.SQRT2, 0.2);
    const errorPct = Math.hypot(boardSdPct, sdPct) * random.normal();
    return {
      ...whose,
      boardId: `piece ${n}`,
      mcPct,
      offPct: offPct + share * mcPct + errorPct,
      sdPct,
      shared: null,
    };
  });
  return { offPct, share, boardSdPct, learned: learnedBias(whose, known) };
}
type Meter = ReturnType<typeof makeMeter>;

/** One board as it is and as it is read. */
function readBoard(random: Random, meter: Meter, { tempC }: Setting) {
  const thicknessMm = within(random, [22, 54]);
  const shellPct = within(random, [6.5, 16]);
  const corePct = shellPct + within(random, [0, 0.4]) * shellPct;
  const power = within(random, [1.6, 2.6]);
  const mcAt = (depthMm: number) =>
    corePct - (corePct - shellPct) * Math.abs(1 - (2 * depthMm) / thicknessMm) ** power;
  const averagePct = corePct - (corePct - shellPct) / (power + 1);
  const woodTempC = within(random, tempC);
  const law = LAWS[Math.floor(3 * random.uniform())]!;
  const meterPct = meter.offPct + meter.boardSdPct * random.normal();
  const show = (depthMm: number): number => {
    const mcPct = mcAt(depthMm);
    const read = mcPct * (1 + meter.share) + meterPct + spotScatterPct(mcPct) * random.normal();
    return Math.round(10 * atWoodTempPct(law, read, USUAL_SCALE.tempC, woodTempC)) / 10;
  };
  const readings = [3, 3, thicknessMm / 2, thicknessMm / 2].map((depthMm, index): Reading => {
    const depth = index < 2 ? 'shell' : 'core';
    return reading(index + 1, depth, show(depthMm), {
      woodTempC,
      depthFrom: 'pins',
      spot: { depth, depthMm, fromEndMm: 1000, face: 'face' },
    });
  });
  return { averagePct, readings, thicknessMm };
}

function coverage(meterSdPct: number, setting: Setting): { covered: number; half: number } {
  const random = randomFrom(seed + Math.round(1000 * meterSdPct));
  let covered = 0;
  let counted = 0;
  let half = 0;
  let meter = makeMeter(random, meterSdPct, setting);
  for (let n = 0; n < boards; n += 1) {
    if (n % BOARDS_PER_METER === 0) meter = makeMeter(random, meterSdPct, setting);
    const { averagePct, readings, thicknessMm } = readBoard(random, meter, setting);
    const facts: Partial<BoardEvidence> = {
      board: { thicknessMm, lengthMm: 3000 },
      species: setting.hasCurve ? plainSpecies : { ...plainSpecies, curveId: null },
      typedBasis: {
        scale: { kind: 'usual' },
        compensatesTemp: false,
        range: { min: 3, max: 60 },
        learned: meter.learned,
      },
    };
    const { estimate } = judgeBoard(evidence(readings, facts));
    if (estimate === null) continue;
    counted += 1;
    half += (estimate.highPct - estimate.lowPct) / 2;
    if (averagePct >= estimate.lowPct && averagePct <= estimate.highPct) covered += 1;
  }
  return { covered: covered / counted, half: half / counted };
}

console.log(`${boards} boards for each figure; seed ${seed}`);
console.log(
  `coverage of the 90 % interval (its mean half-width, points), by the meter's true standard deviation`,
);
console.log(''.padEnd(22) + TRUE_METER_SD.map((sd) => sd.toFixed(2).padStart(14)).join(''));
const atGoalsSd: { name: string; covered: number }[] = [];
for (const setting of SETTINGS) {
  const row = TRUE_METER_SD.map((sd) => {
    const { covered, half } = coverage(sd, setting);
    if (sd === GOAL.atSd) atGoalsSd.push({ name: setting.name, covered });
    return `${(100 * covered).toFixed(1)} (${half.toFixed(2)})`.padStart(14);
  });
  console.log(setting.name.padEnd(22) + row.join(''));
}
for (const { name, covered } of atGoalsSd)
  figure({
    what: `90 % interval holds the average: ${name}`,
    value: 100 * covered,
    unit: '%',
    goal: { least: 100 * GOAL.least },
  });
