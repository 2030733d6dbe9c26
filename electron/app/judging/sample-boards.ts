import { Refusal } from '../../../shared-core/contract/answer.ts';
import { givenGramsSchema } from '../../../shared-core/contract/oven-checks.ts';
import {
  givenBoardKgSchema,
  type SampleBoardState,
  type SampleCut,
  type SampleRecord,
} from '../../../shared-core/contract/sample-board.ts';
import type { Exclusion } from '../../../shared-core/probing/readings/exclusion.ts';
import { massAtMcKg, mcFromMassPct, sampleBoard } from '../../../shared-core/wood/moisture/sample-board.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import type { YardReader } from '../../store/yard.ts';
import { type AppContext, orRefuse, type QueryContext } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Judging } from './judging.ts';
import type { Learning } from './learning.ts';

/** A board followed by its weight alone, once sections cut beside it gave what it would weigh oven-dry. */
export function sampleBoardState(yard: YardReader, boardId: number): SampleBoardState {
  const board = orRefuse(yard.boards.get(boardId), 'board');
  const endUse = orRefuse(
    yard.endUses.get(orRefuse(yard.stacks.get(board.stackId), 'stack').endUseId),
    'use',
  );
  const cuts = yard.samples.cuts(boardId).map((cut) => ({ ...cut, estimate: estimateOf(cut) }));
  /** The estimate that held at that instant. */
  const estimateAt = (at: string) =>
    cuts.findLast((cut) => cut.estimate !== null && Date.parse(cut.at) <= Date.parse(at))?.estimate;
  const weights = yard.samples.weights(boardId).map((weight) => {
    const estimate = estimateAt(weight.at);
    const isPossible = givenBoardKgSchema.safeParse(weight.kg).success;
    return { ...weight, mcPct: estimate && isPossible ? mcFromMassPct(weight.kg, estimate.ovenDryKg) : null };
  });
  const newest = cuts.findLast((cut) => cut.estimate !== null)?.estimate ?? null;
  return {
    boardId,
    cuts,
    weights,
    target: newest && {
      endUseName: endUse.name,
      minKg: massAtMcKg(newest.ovenDryKg, endUse.minPct),
      maxKg: massAtMcKg(newest.ovenDryKg, endUse.maxPct),
    },
    status: statusOf({ cuts, weights }),
  };
}

export const sampleBoardQueries = (context: QueryContext) =>
  ({
    'samples.get': ({ boardId }) => sampleBoardState(context.yard(), boardId),
  }) satisfies Partial<Queries>;

export function sampleBoardCommands(context: AppContext, judging: Judging, learning: Learning) {
  /** The board as it is after a change; boards are judged again where that teaches something else of the meters. */
  function state(boardId: number): SampleBoardState {
    learning.forget();
    if (context.yard().readings.roundsOfBoard(boardId).length > 0) judging.judgeAgain([boardId]);
    return sampleBoardState(context.yard(), boardId);
  }

  function checkPast(at: string): void {
    if (Date.parse(at) > Date.parse(context.now())) {
      throw new Refusal(message('refusal.weighed-to-come'));
    }
  }

  function exclude(record: SampleRecord, why: Exclusion | null): SampleBoardState {
    const boardId = orRefuse(context.yard().samples.boardOf(record), record.what);
    const what = record.what === 'cut' ? 'sampleCut' : 'sampleWeight';
    context.yard().amendments.exclude(what, record.id, why, context.now());
    return state(boardId);
  }

  return {
    'samples.cut': (cut) => {
      orRefuse(context.yard().boards.get(cut.boardId), 'board');
      checkPast(cut.at);
      context.yard().samples.cut(cut);
      return state(cut.boardId);
    },

    'samples.drySection': ({ sectionId, grams, at }) => {
      const section = orRefuse(context.yard().samples.section(sectionId), 'section');
      checkPast(at);
      if (grams > section.wetGrams) {
        throw new Refusal(
          message('refusal.section-heavier-than-wet', { weightGrams: grams, wetGrams: section.wetGrams }),
        );
      }
      context.yard().samples.drySection(sectionId, grams, at);
      return state(section.boardId);
    },

    'samples.weigh': ({ boardId, kg, at }) => {
      orRefuse(context.yard().boards.get(boardId), 'board');
      checkPast(at);
      context.yard().samples.weigh(boardId, kg, at);
      return state(boardId);
    },

    'samples.exclude': ({ why, ...record }) => exclude(record, why),
    'samples.include': (record) => exclude(record, null),
  } satisfies Partial<Commands>;
}

function estimateOf(cut: SampleCut): SampleBoardState['cuts'][number]['estimate'] {
  const sections = cut.sections.flatMap(({ wetGrams, dryGrams }) =>
    dryGrams === null ? [] : [{ wetGrams, dryGrams }],
  );
  const isPossible =
    givenBoardKgSchema.safeParse(cut.boardKg).success &&
    sections.every(
      ({ wetGrams, dryGrams }) => dryGrams <= wetGrams && givenGramsSchema.safeParse(dryGrams).success,
    );
  // An earlier Pintally saved weights that are refused now.
  if (!isPossible) return null;
  // With one section still in the oven the mean of the rest may lean to one end of the board.
  if (cut.excluded !== null || sections.length < cut.sections.length) return null;
  return sampleBoard(cut.boardKg, sections);
}

function statusOf({ cuts, weights }: Pick<SampleBoardState, 'cuts' | 'weights'>): Message {
  const newest = cuts.findLast((cut) => cut.excluded === null);
  if (newest === undefined) return message('weights.no-sections');
  if (newest.estimate === null) {
    const drying = newest.sections.filter((section) => section.dryGrams === null).length;
    if (drying === 0) return message('weights.impossible');
    return message('weights.sections-drying', { drying, sections: newest.sections.length });
  }
  const last = weights.findLast(
    (weight) =>
      weight.excluded === null && weight.mcPct !== null && Date.parse(weight.at) >= Date.parse(newest.at),
  );
  const { mcWhenCutPct } = newest.estimate;
  if (last?.mcPct == null) return message('weights.weigh-now', { mcWhenCutPct });
  return last.mcPct < 0
    ? message('weights.below-oven-dry')
    : message('weights.mc-now', { mcPct: last.mcPct, mcWhenCutPct });
}
