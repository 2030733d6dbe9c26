/**
 * Rounds over invented stacks, with known faults put in, for measuring the rules of suspicion.
 *
 * The boards dry by the drying model, with diffusivity, surface, EMC and the law's exponent drawn from the prior of
 * `history-fit.ts`, shared by a stack but for its within-group spread; the weather changes from day to day. To these are added the noise levels
 * below (ours, of no particular meter or yard), all one standard deviation:
 * - spots of one board and depth: 0.5 % MC or 4 % of it, the greater; two thirds of its variance stays with the
 *   spot from round to round, one third is new with each insertion of the pins;
 * - calibration of the meter 0.5 % MC for all boards, and of each board against its curve 0.5 % MC;
 * - the entered wood temperature, 1 °C; the meter's display is rounded to 0.1.
 *
 * Every fourth stack is mixed: one to four of its boards are of another species, rightly entered. They dry by their own
 * specific gravity and at their own pace. A species is entered for a board and not for a round, so that a wrong one is
 * wrong in the last round as well. *Wrong species*: one board is entered as another species than it is, the stack's or in
 * a mixed stack perhaps the other one. *Odd board*: one board is of another species than the rest, and was entered as if
 * it were not.
 */
import { judgeBoard } from '../../shared-core/probing/calls/call.ts';
import type { BoardEvidence, PlaceFacts } from '../../shared-core/probing/readings/evidence.ts';
import { PAIRS } from '../../shared-core/probing/readings/plan-basis.ts';
import type { Reading } from '../../shared-core/probing/readings/reading.ts';
import { planSpots } from '../../shared-core/probing/readings/spots.ts';
import { DAY_S } from '../../shared-core/time.ts';
import { priorDiffusivity, priorPace, withinGroupSd } from '../../shared-core/wood/drying/history-fit.ts';
import { dryingGrid } from '../../shared-core/wood/drying/model/drying-grid.ts';
import { simulateDrying } from '../../shared-core/wood/drying/model/drying-model.ts';
import type { AirSegment } from '../../shared-core/wood/drying/model/drying-run.ts';
import { parabolicStart } from '../../shared-core/wood/drying/model/parabolic-start.ts';
import { WoodTables } from '../../shared-core/wood/drying/model/wood-tables.ts';
import type { MeterScale } from '../../shared-core/wood/moisture/corrected.ts';
import { correctReading } from '../../shared-core/wood/moisture/correction.ts';
import { builtInEndUses, builtInSpecies } from '../../shared-core/wood/species/built-in.ts';
import { dryingClassOf } from '../../shared-core/wood/species/drying-class.ts';
import type { Species } from '../../shared-core/wood/species/species.ts';

const BOARDS = 10;
const SCALE: MeterScale = { kind: 'species', speciesId: null, curveId: 'douglas-fir-coast', tempC: 20 };
export const METER_RANGE_PCT = { min: 4, max: 80 };

export const FAULTS = [
  'end grain',
  'surface wet',
  'shallow pins',
  'wrong species',
  'odd board',
  'wrong temperature',
  'meter drift',
  'swapped boards',
  'typing slip',
  'knot or pitch',
] as const;
export type Fault = (typeof FAULTS)[number];

/** One board of a round: what is known of it, what each reading should be, and by how much the fault moved it, % MC. */
export type BoardCase = { evidence: BoardEvidence; soundPct: number[]; offByPct: number[] };
export type RoundCase = { fault: Fault | null; boards: BoardCase[] };

export type Random = { uniform: () => number; normal: () => number };

/** mulberry32, a public-domain generator, and normal deviates by Box and Muller. */
export function randomFrom(seed: number): Random {
  let state = seed >>> 0;
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296;
  };
  return {
    uniform,
    normal: () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform()),
  };
}

const allSpecies = builtInSpecies.filter(
  (species) => species.curveId !== null && species.basicSpecificGravity !== null,
);
const tablesOf = new Map(
  allSpecies.map((species) => [species.id, new WoodTables(species.basicSpecificGravity!)]),
);
/** What a stack's boards share of a spread, one standard deviation. */
const shared = (sd: number, own: number): number => Math.sqrt(sd ** 2 - own ** 2);

const PLACES: { kind: PlaceFacts['kind']; emcPct: number; wander: number; tempC: number; tempSd: number }[] =
  [
    { kind: 'outdoors', emcPct: 14, wander: 2, tempC: 12, tempSd: 5 },
    { kind: 'open-shed', emcPct: 13, wander: 1.5, tempC: 15, tempSd: 4 },
    { kind: 'shop', emcPct: 9, wander: 0.7, tempC: 18, tempSd: 3 },
    { kind: 'heated-room', emcPct: 7, wander: 0.5, tempC: 20, tempSd: 2 },
  ];

/** Share of the stacks that hold more than one species. */
const MIXED = 0.25;
/** How much the paces of two species of one stack differ beyond their specific gravities: sd of the diffusivity's logarithm. */
const WOOD_PACE = 0.4;

/** A board as it truly is: MC at the depth of each planned spot in both rounds, differences along the board included. */
type TrueBoard = { species: Species; spotsPct: [number[], number[]]; offsetPct: number };

const pick = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random.uniform() * list.length)]!;

/** Air of some days, its EMC wandering about the place's, in stretches of three days. */
function weather(random: Random, place: (typeof PLACES)[number], days: number): AirSegment[] {
  const segments: AirSegment[] = [];
  let off = random.normal() * place.wander;
  for (let day = 0; day < days; day += 3) {
    const next = 0.6 * off + 0.8 * place.wander * random.normal();
    segments.push({
      durationS: 3 * DAY_S,
      emcStartPct: Math.max(3, place.emcPct + off),
      emcEndPct: Math.max(3, place.emcPct + next),
      tempC: place.tempC,
    });
    off = next;
  }
  return segments;
}

/** What the meter shows of wood at this MC and temperature: the correction, turned round by bisection. */
function shownFor(mcPct: number, species: Species, woodTempC: number): number {
  let [low, high] = [0.5, 100];
  for (let pass = 0; pass < 18; pass += 1) {
    const shown = (low + high) / 2;
    const mc = correctReading({ value: shown, unit: 'pct', woodTempC, species, scale: SCALE }).mcPct;
    if (mc !== null && mc < mcPct) low = shown;
    else high = shown;
  }
  return Math.round(low * 10) / 10;
}

/** One round over a stack that was probed once before, sound except for the fault. */
export function makeRound(random: Random, fault: Fault | null): RoundCase {
  const air = pick(random, PLACES);
  const place: PlaceFacts = {
    name: 'the place',
    kind: air.kind,
    emcPct: air.emcPct,
    month: 5,
    airTempC: air.tempC,
  };
  const species = pick(random, allSpecies);
  const thicknessMm = pick(random, [27, 34, 52]);
  const lengthMm = 2400 + Math.round(random.uniform() * 1600);
  const { plan } = planSpots({ lengthMm, thicknessMm, planBasis: PAIRS });
  const since = 6 + 3 * Math.floor(random.uniform() * 8);
  const before = 15 + 3 * Math.floor(random.uniform() * 60);
  const segments = weather(random, air, before + since);
  const grid = dryingGrid(thicknessMm, true, 16);
  const startPct = 26 + 20 * random.uniform();
  const scatter = (mc: number) => Math.max(0.5, 0.04 * mc);

  const pace = {
    diffusivity: shared(priorPace.diffusivity.logSd, withinGroupSd.logDiffusivity) * random.normal(),
    surface: shared(priorPace.surface.logSd, withinGroupSd.logSurface) * random.normal(),
    emc: random.normal(),
    exponent:
      priorPace.exponent.mean + shared(priorPace.exponent.sd, withinGroupSd.exponent) * random.normal(),
  };
  const guestSpecies = pick(random, allSpecies);
  const guestPace = WOOD_PACE * random.normal();
  const guests = random.uniform() < MIXED ? 1 + Math.floor(4 * random.uniform()) : 0;
  const firstGuest = Math.floor(random.uniform() * BOARDS);
  const speciesOf = (index: number) =>
    (index - firstGuest + BOARDS) % BOARDS < guests ? guestSpecies : species;

  const grow = (species: Species, ownPace: number): TrueBoard => {
    const start = Math.min(58, Math.max(20, startPct + 4 * random.normal()));
    const face =
      priorPace.surface.median * Math.exp(pace.surface + withinGroupSd.logSurface * random.normal());
    const { depthPct } = simulateDrying({
      grid,
      tables: tablesOf.get(species.id)!.with(pace.exponent + withinGroupSd.exponent * random.normal()),
      startPct: parabolicStart(grid, start, 0.95),
      segments,
      diffusivityFactor:
        priorDiffusivity(dryingClassOf(species)).median *
        Math.exp(pace.diffusivity + ownPace + withinGroupSd.logDiffusivity * random.normal()),
      faceFactors: [face, face],
      emcOffsetPct: pace.emc + withinGroupSd.emcOffsetPct * random.normal(),
      tolerancePct: 0.05,
      observeS: [before * DAY_S, (before + since) * DAY_S],
      depthFractions: plan.map(({ spot }) => spot.depthMm! / thicknessMm),
    });
    const places = plan.map(() => Math.sqrt(2 / 3) * random.normal());
    const round = (when: number) =>
      plan.map((_, spot) => {
        const mc = depthPct[spot]![when]!;
        return mc + scatter(mc) * (places[spot]! + Math.sqrt(1 / 3) * random.normal());
      });
    return { species, spotsPct: [round(0), round(1)], offsetPct: 0.5 * random.normal() };
  };
  const boards = Array.from({ length: BOARDS }, (_, index) => {
    const own = speciesOf(index);
    return grow(own, own === species ? 0 : guestPace);
  });

  const typed = fault === 'typing slip' || random.uniform() < 0.5;
  const meterOffset = 0.5 * random.normal();
  const soundPct = (board: TrueBoard, when: 0 | 1) =>
    board.spotsPct[when].map((mc) => mc + board.offsetPct + meterOffset);
  const judged = (
    values: number[],
    boardIndex: number,
    when: 0 | 1,
    entered: { species: Species; tempC: number },
  ) => evidenceOf(values, { boardIndex, when, entered });

  function evidenceOf(
    shown: number[],
    {
      boardIndex,
      when,
      entered,
    }: { boardIndex: number; when: 0 | 1; entered: { species: Species; tempC: number } },
  ): BoardEvidence {
    const takenAt = new Date(Date.UTC(2026, 3, 1) + when * since * DAY_S * 1000).toISOString();
    return {
      board: { thicknessMm, lengthMm },
      species: entered.species,
      endUse: builtInEndUses[0]!,
      place,
      readings: shown.map(
        (raw, index): Reading => ({
          id: boardIndex * 100 + index + 1,
          roundId: when + 1,
          boardId: boardIndex + 1,
          spotIndex: index,
          spot: plan[index]!.spot,
          depthFrom: 'pins',
          raw,
          unit: 'pct',
          how: typed ? 'typed' : 'settled',
          settled: typed ? null : true,
          woodTempC: entered.tempC,
          meterId: 1,
          meterProfileId: 1,
          takenAt,
          excluded: null,
        }),
      ),
      meters: { 1: { scale: SCALE, range: METER_RANGE_PCT } },
      typedBasis: { scale: SCALE, range: METER_RANGE_PCT },
      previous: null,
    };
  }

  // Frozen wood is refused outright: these rounds are walked on mild days.
  const mild = () => Math.max(3, air.tempC + air.tempSd * random.normal());
  const trueTempC = [mild(), mild()] as const;
  const tempC = trueTempC.map((each) => Math.round(each + random.normal())) as [number, number];
  // What the round truly is, then what the fault makes of it.
  const hit = Math.floor(random.uniform() * BOARDS);
  const place2 = random.uniform() < 0.5 ? 0 : 2;
  const everywhere = random.uniform() < 0.5;
  const atFault = (spot: number) => everywhere || spot === place2 || spot === place2 + 1;
  const enteredSpeciesIds = boards.map((board) => board.species);
  if (fault === 'wrong species' || fault === 'odd board') {
    // Most species read alike to a point or so. This is the worst mistake of eight, so that there are gross ones to find.
    const own = boards[hit]!.species;
    const shownNow = shownFor(soundPct(boards[hit]!, 1)[1]!, own, trueTempC[1]);
    const mcAs = (each: Species) =>
      correctReading({ value: shownNow, unit: 'pct', woodTempC: tempC[1], species: each, scale: SCALE })
        .mcPct ?? 0;
    const other = Array.from({ length: 8 }, () => pick(random, allSpecies)).reduce((worst, each) =>
      Math.abs(mcAs(each) - mcAs(own)) > Math.abs(mcAs(worst) - mcAs(own)) ? each : worst,
    );
    if (fault === 'wrong species') enteredSpeciesIds[hit] = other;
    else boards[hit] = grow(other, WOOD_PACE * random.normal());
  }
  const faultless = boards.map((board) => soundPct(board, 1));
  const probed = [...boards];
  const faulty = faultless.map((values) => [...values]);
  let enteredTempC = tempC[1];

  if (fault === 'end grain') {
    const spot = Math.floor(random.uniform() * plan.length);
    faulty[hit]![spot] = air.emcPct + 0.15 * (faultless[hit]![spot]! - air.emcPct) + 0.5 * random.normal();
  } else if (fault === 'surface wet') {
    const by = 2 + 8 * random.uniform();
    for (const spot of [0, 2]) if (atFault(spot)) faulty[hit]![spot]! += by;
  } else if (fault === 'shallow pins') {
    for (const spot of [1, 3])
      if (atFault(spot)) faulty[hit]![spot] = faultless[hit]![spot - 1]! + 0.3 * random.normal();
  } else if (fault === 'knot or pitch') {
    const spot = Math.floor(random.uniform() * plan.length);
    faulty[hit]![spot]! += (random.uniform() < 0.3 ? -1 : 1) * (1.5 + 6 * random.uniform());
  } else if (fault === 'meter drift') {
    const by = (random.uniform() < 0.5 ? -1 : 1) * (2 + 5 * random.uniform());
    faulty.forEach((values, index) => {
      values.forEach((_, spot) => {
        values[spot]! += (by * index) / (BOARDS - 1);
      });
    });
  } else if (fault === 'swapped boards') {
    const other = (hit + 1 + Math.floor(random.uniform() * (BOARDS - 1))) % BOARDS;
    [faulty[hit], faulty[other]] = [faulty[other]!, faulty[hit]!];
    [probed[hit], probed[other]] = [boards[other]!, boards[hit]!];
  } else if (fault === 'wrong temperature') {
    const by = (random.uniform() < 0.5 ? -1 : 1) * (15 + 20 * random.uniform());
    enteredTempC = Math.max(1, Math.min(45, tempC[1] + by));
  }
  const shown = faulty.map((values, index) =>
    values.map((mc) => shownFor(Math.max(3, mc), probed[index]!.species, trueTempC[1])),
  );
  if (fault === 'typing slip') {
    const spot = Math.floor(random.uniform() * plan.length);
    const value = shown[hit]![spot]!;
    shown[hit]![spot] = Number((random.uniform() < 0.5 ? value * 10 : value / 10).toFixed(2));
  }

  return {
    fault,
    boards: shown.map((values, index) => {
      const board = boards[index]!;
      const enteredSpecies = enteredSpeciesIds[index]!;
      const evidence = judged(values, index, 1, { species: enteredSpecies, tempC: enteredTempC });
      const soundShown = faultless[index]!.map((mc) => shownFor(mc, board.species, trueTempC[1]));
      const sound = judged(soundShown, index, 1, { species: board.species, tempC: tempC[1] });
      const shownBefore = soundPct(board, 0).map((mc) => shownFor(mc, board.species, trueTempC[0]));
      const before = judged(shownBefore, index, 0, {
        species: enteredSpecies,
        tempC: tempC[0],
      });
      // A last round without any usable reading is none, as in the app.
      const { estimate } = judgeBoard(before);
      const previous: BoardEvidence['previous'] =
        estimate === null ? null : { estimate, takenAt: before.readings[0]!.takenAt, moved: false };
      return {
        evidence: { ...evidence, previous },
        soundPct: sound.readings.map((reading) => readAs(reading, sound)),
        offByPct: evidence.readings.map(
          (reading, spot) => readAs(reading, evidence) - readAs(sound.readings[spot]!, sound),
        ),
      };
    }),
  };
}

/** The corrected value, or the raw one where it is refused. */
function readAs(reading: Reading, { species }: BoardEvidence): number {
  const { raw, woodTempC } = reading;
  return correctReading({ value: raw, unit: 'pct', woodTempC, species, scale: SCALE }).mcPct ?? raw;
}
