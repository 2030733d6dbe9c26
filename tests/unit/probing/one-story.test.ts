/** Whatever is stated of a board, on its page and in every list, never contradicts itself. */
import { expect, test } from 'vitest';
import { readyWords } from '../../../shared-core/history-chart/ready-words.ts';
import { callHere, isTooWetForIndoors } from '../../../shared-core/probing/calls/call-here.ts';
import { THIN_MM } from '../../../shared-core/probing/calls/decide.ts';
import {
  type Judgement,
  type JudgementFacts,
  judge,
  judgementSchema,
  readyOf,
} from '../../../shared-core/probing/calls/judgement.ts';
import { driestIn } from '../../../shared-core/probing/calls/ready-in.ts';
import { ifMoved } from '../../../shared-core/probing/plan/if-moved.ts';
import { depthRead } from '../../../shared-core/probing/readings/depth-read.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import { modelErrorPct } from '../../../shared-core/wood/drying/history-fit.ts';
import { mostWaterPct } from '../../../shared-core/wood/moisture/most-water.ts';
import type { Fact, Message } from '../../../shared-core/words/message.ts';
import { randomFrom } from '../../faults/random.ts';
import { englishWords, expectWhole, inEnglish } from '../words/in-english.ts';
import { dayOf, nowMs, onDay, randomFacts } from './a-judged-board.ts';
import { type ReadBoard, randomRead } from './a-read-board.ts';

const BOARDS = 10_000;

/** What a person reads of one board. */
const messagesOf = ({ reasons, next }: Judgement): Message[] => [...reasons, ...(next.why ? [next.why] : [])];
const codesOf = (judgement: Judgement): string[] => messagesOf(judgement).map(({ code }) => code);
/** What a person reads of it, the call first. */
const told = (judgement: Judgement): string[] => messagesOf(judgement).map((each) => inEnglish(each));
const says = (judgement: Judgement, ...codes: RegExp[]): boolean =>
  codesOf(judgement).some((code) => codes.some((each) => each.test(code)));
const here = ({ places }: Judgement) => places[0]?.ready ?? null;
const placeOf = ({ places }: JudgementFacts, id: number | null) =>
  places.find(({ placeId }) => placeId === id);
const lowestOf = (given: JudgementFacts, id: number | null) => placeOf(given, id)?.lowestEmc?.emcPct ?? null;
const likelyMsOf = ({ places, forecast }: JudgementFacts, id: number | null): number =>
  forecast!.places[places.findIndex(({ placeId }) => placeId === id)]!.reach.likelyMs!;
const isToCome = (kind: string | undefined): boolean => kind === 'likely' || kind === 'any-day';
const all = (judgement: Judgement, name: string): Fact[] =>
  messagesOf(judgement).flatMap(({ facts: given }) => given?.[name] ?? []);
/** To the driest place, or back under cover: not where it is ready first. */
const isSecondBest = ({ due, why }: Judgement['next']): boolean =>
  due === 'move-back' || why?.code === 'next-step.driest-place';
/** By its forecast, or by readings that are not a week old. */
const isWet = ({ forecast, found: read }: JudgementFacts): boolean =>
  (forecast !== null && isTooWetForIndoors(forecast.now.average.median, forecast.now.core.median)) ||
  (read !== null &&
    (forecast === null || nowMs - Date.parse(read.at) < 7 * DAY_MS) &&
    isTooWetForIndoors(read.averagePct ?? 0, read.corePct));
const tooWet = [/^call\.(probably-)?too-wet$/];
const wontDoHere = [/^call\.place-too-/, /^call\.last-gain$/];

/** Each holds for every board. */
const invariants: Record<string, (judgement: Judgement, given: JudgementFacts) => boolean> = {
  'it is to be moved now if, and only if, the call is Bring in, or its room may check it': ({ call, next }) =>
    (call === 'bring-in') === (next.step === 'move' && next.due !== 'move-back'),
  'moving and waiting are never said together': (judgement) =>
    judgement.next.step !== 'wait' ||
    (judgement.call !== 'bring-in' && !says(judgement, /^next-step\.no-place/)),
  'only a board called Ready gets its label': ({ call, next }) => next.step !== 'label' || call === 'ready',
  'Ready has no reason of being too wet': (judgement) =>
    judgement.call !== 'ready' || !says(judgement, ...tooWet, ...wontDoHere),
  'too wet is never Ready, and in the target never Bring in': ({ call }, { found: read, target }) =>
    read?.averagePct == null || read.averagePct > target.maxPct ? call !== 'ready' : call !== 'bring-in',
  '"Now" is said of no board but one called Ready': ({ call, places }) =>
    call === 'ready' || places.every(({ ready }) => ready?.kind !== 'now'),
  'a board called Ready is so now, or is to be probed because that is in doubt': (judgement, { forecast }) =>
    judgement.call !== 'ready' ||
    forecast === null ||
    here(judgement)?.kind === 'now' ||
    (here(judgement) === null && judgement.next.due === 'may-not-be-ready'),
  'Bring in names no day here': (judgement) =>
    judgement.call !== 'bring-in' || !isToCome(here(judgement)?.kind),
  'a board to be probed again has no day anywhere': ({ call, places, bestPlaceId }) =>
    call !== 'probe-again' || (bestPlaceId === null && places.every(({ ready }) => ready === null)),
  'that the place may dry it is said of none that is called unlikely, and that it can of none': (judgement) =>
    !says(judgement, /^call\.place-dries-to/) ||
    ((here(judgement) === null || isToCome(here(judgement)?.kind)) &&
      !told(judgement).join(' ').includes(' can dry it ')),
  'no place is said for sure not to dry it': (judgement) =>
    told(judgement).every((sentence) => !/(won’t|will not|cannot) (dry|reach|come)/.test(sentence)),
  'the limits for bringing in are said of a board that is to come in, and of no other': (judgement) =>
    says(judgement, /^call\.dry-enough-to-bring-in$/) === (judgement.call === 'bring-in'),
  'the number of the board comes before what its place does to it': ({ reasons }) =>
    !/^call\.place-/.test(reasons[0]?.code ?? ''),
  'a day is named only where the air can do it': ({ places }, given) =>
    places.every(({ placeId, ready }) => {
      if (!isToCome(ready?.kind)) return true;
      const lowest = lowestOf(given, placeId);
      const isHere = placeId === given.places[0].placeId;
      return (
        lowest === null ||
        lowest <= given.target.maxPct ||
        given.forecast!.now.average.median <= given.target.maxPct ||
        (isHere && given.forecast!.now.probabilityReady >= 0.5)
      );
    }),
  'a day is named only where the forecast has one': ({ places }, given) =>
    places.every(({ placeId, ready }) => ready?.kind !== 'likely' || likelyMsOf(given, placeId) !== null),
  'days are in order, and none is over': ({ places }) =>
    places.every(({ ready }) => {
      if (ready?.kind !== 'likely') return true;
      const { from, likely, to } = ready.when;
      return from <= likely && (to === null || likely <= to) && likely > dayOf(onDay(0));
    }),
  'no day is called likely whose late end is open': ({ places }) =>
    places.every(({ ready }) => {
      if (ready?.kind !== 'likely') return true;
      const isLikely = /^Likely /.test(readyWords({ ready, lowestEmcPct: null }, englishWords) ?? '');
      return isLikely === (ready.when.to !== null);
    }),
  'the place of the next step is the one that is named beside the day': ({ next, bestPlaceId }) =>
    next.step !== 'move' || next.placeId === bestPlaceId || (bestPlaceId === null && isSecondBest(next)),
  'where no place gets it there, the next step is the driest by a point, or says that none is': (
    { next, places },
    given,
  ) => {
    if (next.step !== 'move' || next.due === 'move-back' || given.forecast === null) return true;
    const allowed = given.places.flatMap(({ kind, placeId }, index) =>
      kind === 'heated-room' && isWet(given)
        ? []
        : [{ placeId, driestPct: driestIn(given.forecast!.places[index]!) }],
    );
    const hereIn = driestIn(given.forecast.places[0]!);
    const least = Math.min(...allowed.map(({ driestPct }) => driestPct));
    if (places.slice(1).some(({ ready }) => isToCome(ready?.kind)) && next.why === null) return true;
    return next.placeId === null
      ? next.due === 'add-place' && least > hereIn - 1
      : least === allowed.find(({ placeId }) => placeId === next.placeId)?.driestPct && least <= hereIn - 1;
  },
  'a board that may check in its heated room goes back under cover, and no other does': (
    { call, next },
    given,
  ) => {
    const isToGo =
      call === 'keep-drying' && given.mayCheck && given.places[0].kind === 'heated-room' && isWet(given);
    return isToGo === (next.due === 'move-back');
  },
  'under cover is no heated room': ({ next }, given) =>
    next.step !== 'move' || next.due !== 'move-back' || placeOf(given, next.placeId)?.kind !== 'heated-room',
  'no board is to be brought in from the driest heated room': ({ call, next }, given) =>
    call !== 'bring-in' ||
    given.forecast === null ||
    given.places[0].kind !== 'heated-room' ||
    (next.step === 'move' && next.placeId !== null),
  'a place that takes a board out of its target is not offered': ({ bestPlaceId, next }, given) => {
    if (given.forecast === null || given.forecast.now.average.median > given.target.maxPct) return true;
    const offered = [bestPlaceId, next.step === 'move' ? next.placeId : null];
    return given.places.every(
      ({ placeId }, index) =>
        !offered.includes(placeId) ||
        given.forecast!.places[index]!.band.average.every(
          ({ median }) => median <= given.target.maxPct + 0.5,
        ),
    );
  },
  'the form of a move says of each place what the page says': ({ places, average }, given) => {
    const [{ placeId }] = given.places;
    const { places: inForm } = ifMoved(
      [{ placeId, judgement: { places, average }, corePct: null }],
      given.places,
    );
    return places.every(
      ({ placeId, ready }) => inForm.find((each) => each.placeId === placeId)?.ready === ready,
    );
  },
  'a board too dry by its readings and not by its forecast has no day': (
    { call, places },
    { forecast, target },
  ) =>
    call !== 'too-dry' ||
    forecast === null ||
    forecast.now.average.median < target.minPct ||
    places.every(({ ready }) => ready === null),
  'a place is a remedy only if it is drier than the top of the target': ({ bestPlaceId }, given) => {
    const lowest = lowestOf(given, bestPlaceId);
    const isDryAlready = given.forecast !== null && given.forecast.now.average.median <= given.target.maxPct;
    return bestPlaceId === null || lowest === null || lowest <= given.target.maxPct || isDryAlready;
  },
  'another place is named only where it comes a week sooner': (judgement, given) => {
    const { bestPlaceId } = judgement;
    if (bestPlaceId === null || !isToCome(here(judgement)?.kind)) return true;
    return likelyMsOf(given, bestPlaceId) + 7 * DAY_MS <= likelyMsOf(given, given.places[0].placeId);
  },
  'a board that may check is sent to no heated room': ({ bestPlaceId, next }, given) =>
    !isWet(given) ||
    [bestPlaceId, next.step === 'move' ? next.placeId : null].every(
      (id) => placeOf(given, id)?.kind !== 'heated-room',
    ),
  '"Won’t get there here" is said of no board with a day here': (judgement) =>
    !isToCome(here(judgement)?.kind) || !says(judgement, ...wontDoHere),
  '"Can get there here" is said of no board that is to be moved': (judgement) =>
    judgement.call !== 'bring-in' || !says(judgement, /^call\.place-dries-to/),
  'waiting is advised only where it gains something, or before a move': (judgement) =>
    judgement.next.step !== 'wait' ||
    judgement.next.due === 'move-later' ||
    judgement.next.why?.code === 'next-step.driest-place' ||
    judgement.next.why?.code === 'next-step.no-forecast' ||
    judgement.next.why?.code.startsWith('forecast.none') ||
    !says(judgement, ...wontDoHere),
  'waiting says when to probe again, or why no forecast can': ({ next }) =>
    next.step !== 'wait' ||
    next.why?.code.startsWith('forecast.none') === true ||
    (next.why !== null && /probe it (again|next)/i.test(inEnglish(next.why))),
  'it is to dry on before a move only while it may check indoors, and can’t get there': (judgement, given) =>
    judgement.next.due !== 'move-later' ||
    (says(judgement, ...wontDoHere) && !isToCome(here(judgement)?.kind) && isWet(given)),
  'no reading is asked for where readings won’t help': (judgement) =>
    judgement.next.step !== 'probe' || !says(judgement, /^call\.more-will-not-help$/),
  'the next reading is never asked for in the past': ({ next }) =>
    next.step !== 'wait' || next.probeMs === null || next.probeMs > nowMs,
  'the lowest EMC here is one number': (judgement) =>
    all(judgement, 'emcPct').every((emcPct) => emcPct === judgement.lowestEmc?.emcPct),
  'the lowest EMC against the target decides what is said of the place': (judgement, { target }) => {
    const emcPct = judgement.lowestEmc?.emcPct;
    if (emcPct === undefined) return !says(judgement, /^call\.place-(dries|too-damp)/);
    return emcPct <= target.maxPct
      ? !says(judgement, /^call\.place-too-damp/)
      : !says(judgement, /^call\.place-dries-to/);
  },
  'the average is one number, with its day': (judgement, { found: read }) =>
    judgement.average === null ||
    judgement.average.readOn === null ||
    (judgement.average.readOn === read?.at &&
      all(judgement, 'averagePct').every((averagePct) => averagePct === judgement.average?.averagePct)),
  'no sentence comes twice': (judgement) => new Set(codesOf(judgement)).size === codesOf(judgement).length,
  'the reason of the call is given, or how many spots are read': ({ reasons }, { found: read }) =>
    (read === null) === (reasons.length === 0),
  'a board without a call is to be probed': ({ call, next }) => call !== null || next.due === 'first-round',
  'the day in lists is one of those on its page': (judgement) => {
    const listed = readyOf(judgement);
    return (
      listed === null ||
      judgement.places.some(({ ready }) => ready?.kind === 'likely' && ready.when === listed.when)
    );
  },
  'what was read three months ago or more is no reason for a call of today': (judgement, given) => {
    const { forecast, found: read } = given;
    if (forecast === null || read === null || nowMs - Date.parse(read.at) < 90 * DAY_MS) return true;
    return (
      !says(judgement, ...tooWet) &&
      (read.call === null ||
        says(judgement, /^call\.(last-read|read-long-ago)$/) ||
        read.call === 'probe-again')
    );
  },
  'until a forecast says more, the round and the lists have the same call': (judgement, given) =>
    given.forecast !== null ||
    given.found === null ||
    judgement.call ===
      callHere(given.found, {
        placeName: given.places[0].name,
        lowestEmc: given.places[0].lowestEmc,
        target: given.target,
        averagePct: given.found.averagePct ?? 0,
        corePct: given.found.corePct,
        getsThere: null,
      }).call,
};

test(`${BOARDS} boards: no two statements contradict each other`, () => {
  const random = randomFrom(1105);
  const broken = new Map<string, string>();
  const kinds = new Set<string>();
  for (let board = 0; board < BOARDS; board += 1) {
    const given = randomFacts(random);
    const judgement = judge(given);
    kinds.add(`${judgement.call} ${judgement.next.step} ${judgement.next.due} ${here(judgement)?.kind}`);
    for (const [name, holds] of Object.entries(invariants)) {
      if (!broken.has(name) && !holds(judgement, given))
        broken.set(name, JSON.stringify({ board, judgement, given }));
    }
    if (board % 100 === 0) {
      expectWhole(messagesOf(judgement));
      expect(judgementSchema.parse(judgement)).toEqual(judgement);
    }
  }
  expect(Object.fromEntries(broken)).toEqual({});
  // Not one kind of board over and over.
  expect(kinds.size).toBeGreaterThan(30);
});

/** Each holds for every board that was read, whatever the readings. */
const ofReadBoards: Record<string, (board: ReadBoard) => boolean> = {
  'an average that was not read is never below both the shell and the air': ({ given, assessment }) => {
    const { estimate } = assessment;
    if (estimate === null || estimate.averageIs === 'read') return true;
    return estimate.averagePct > Math.min(estimate.shellPct!, given.place.emcPct!) - 0.3;
  },
  'a shell below its air leaves the average near the shell': ({ given, assessment }) => {
    const { estimate } = assessment;
    if (estimate?.averageIs !== 'estimated' || estimate.shellPct! > given.place.emcPct! - 4) return true;
    return Math.abs(estimate.averagePct - estimate.shellPct!) < 0.5;
  },
  'only what is within the target is said to be': ({ given, judgement }) =>
    judgement.reasons
      .filter(({ code }) => /average-in-target|within-target/.test(code))
      .every(({ facts: of }) => {
        const averagePct = of!.averagePct as number;
        return averagePct >= given.endUse.minPct && averagePct <= given.endUse.maxPct;
      }),
  'what nothing tells of the inside is not Ready, for any use': ({ given, assessment, judgement }) =>
    judgement.call !== 'ready' ||
    assessment.estimate!.inCore > 0 ||
    (given.board.thicknessMm <= THIN_MM && assessment.estimate!.averageIs === 'read'),
  'no sentence names an average that was not read': ({ found: { averageIs }, judgement }) =>
    averageIs === 'read' || all(judgement, 'averagePct').length === 0,
  'where the core decides, it is asked for first': ({ assessment, judgement }) =>
    !says(judgement, /^call\.core-(not-reached|depth-unknown)$/) ||
    (/^call\.core-/.test(judgement.reasons[0]!.code) && assessment.estimate!.inCore === 0),
  'more of the same is never asked for where the core is not read': ({ assessment, judgement }) =>
    assessment.estimate?.averageIs === 'read' || !says(judgement, /^call\.(too-close|more-will-not-help)$/),
  'page, list and label have one average, and it is the one of the sentences': ({ finding, judgement }) =>
    judgement.average?.readOn == null ||
    (judgement.average.averagePct === finding.averagePct &&
      all(judgement, 'averagePct').every((averagePct) => averagePct === finding.averagePct)),
  'an average that is unknown by the readings is the forecast’s, or none': ({
    found: { averageIs },
    ...board
  }) =>
    averageIs !== 'unknown' ||
    (board.finding.averagePct === null &&
      board.judgement.average?.averagePct === board.forecast?.now.average.median),
  'an average lies within what its average spots read': ({ given, assessment, finding }) => {
    const pcts = assessment.readings.flatMap((each) =>
      each.counts && depthRead(each, given.board.thicknessMm) === 'average' ? [each.corrected.mcPct!] : [],
    );
    if (pcts.length === 0 || finding.averagePct === null) return true;
    return finding.averagePct > Math.min(...pcts) - 1e-6 && finding.averagePct < Math.max(...pcts) + 1e-6;
  },
  'nothing is wetter than the wood can be': ({ given, forecast }) =>
    forecast === null ||
    forecast.now.core.high <= mostWaterPct(given.species.basicSpecificGravity!) + 3 * modelErrorPct,
};

test('300 boards read with any pins: no average that nothing shows, one on all pages, and the core asked for', () => {
  const random = randomFrom(1711);
  const broken = new Map<string, string>();
  const kinds = new Set<string>();
  for (let board = 0; board < 300; board += 1) {
    const each = randomRead(random, board % 15 === 0);
    kinds.add(`${each.judgement.call} ${each.found.averageIs}`);
    for (const [name, holds] of Object.entries(ofReadBoards)) {
      if (!broken.has(name) && !holds(each))
        broken.set(name, JSON.stringify({ board, ...each, forecast: null }));
    }
  }
  expect(Object.fromEntries(broken)).toEqual({});
  expect(kinds.size).toBeGreaterThan(7);
});
