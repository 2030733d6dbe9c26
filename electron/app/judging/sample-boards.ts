import { Refusal } from '../../../shared-core/contract/answer.ts';
import type {
  NewSampleCut,
  SampleBoardState,
  SampleCut,
  SampleRecord,
} from '../../../shared-core/contract/sample-board.ts';
import type { Exclusion } from '../../../shared-core/probing/readings/exclusion.ts';
import { massAtMcKg, mcFromMassPct, sampleBoard } from '../../../shared-core/wood/moisture/sample-board.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orRefuse } from '../context.ts';

/** Boards followed by their mass alone, once sections cut beside them told what they would weigh oven-dry. */
export function sampleBoardUseCases(context: AppContext) {
  function state(boardId: number): SampleBoardState {
    const yard = context.yard();
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
      return { ...weight, mcPct: estimate ? mcFromMassPct(weight.kg, estimate.ovenDryKg) : null };
    });
    const newest = cuts.findLast((cut) => cut.estimate !== null)?.estimate ?? null;
    return {
      cuts,
      weights,
      wanted: newest && {
        endUseName: endUse.name,
        minKg: massAtMcKg(newest.ovenDryKg, endUse.minPct),
        maxKg: massAtMcKg(newest.ovenDryKg, endUse.maxPct),
      },
      sentence: sentenceOf({ cuts, weights }),
    };
  }

  function changed(boardId: number): SampleBoardState {
    context.emit('yard.changed', {});
    return state(boardId);
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
    return changed(boardId);
  }

  return {
    'samples.get': ({ boardId }: { boardId: number }): SampleBoardState => state(boardId),

    'samples.cut': (cut: NewSampleCut): SampleBoardState => {
      orRefuse(context.yard().boards.get(cut.boardId), 'board');
      checkPast(cut.at);
      context.yard().samples.cut(cut);
      return changed(cut.boardId);
    },

    'samples.drySection': ({
      sectionId,
      grams,
      at,
    }: {
      sectionId: number;
      grams: number;
      at: string;
    }): SampleBoardState => {
      const section = orRefuse(context.yard().samples.section(sectionId), 'section');
      checkPast(at);
      if (grams > section.wetGrams) {
        throw new Refusal(
          message('refusal.section-heavier-than-wet', { weightGrams: grams, wetGrams: section.wetGrams }),
        );
      }
      context.yard().samples.drySection(sectionId, grams, at);
      return changed(section.boardId);
    },

    'samples.weigh': ({ boardId, kg, at }: { boardId: number; kg: number; at: string }): SampleBoardState => {
      orRefuse(context.yard().boards.get(boardId), 'board');
      checkPast(at);
      context.yard().samples.weigh(boardId, kg, at);
      return changed(boardId);
    },

    'samples.exclude': ({ why, ...record }: SampleRecord & { why: string }): SampleBoardState =>
      exclude(record, { text: why }),
    'samples.include': (record: SampleRecord): SampleBoardState => exclude(record, null),
  };
}

function estimateOf(cut: SampleCut): SampleBoardState['cuts'][number]['estimate'] {
  const sections = cut.sections.flatMap(({ wetGrams, dryGrams }) =>
    dryGrams === null ? [] : [{ wetGrams, dryGrams }],
  );
  // With one section still in the oven the mean of the rest may lean to one end of the board.
  if (cut.excluded !== null || sections.length < cut.sections.length) return null;
  return sampleBoard(cut.boardKg, sections);
}

function sentenceOf({ cuts, weights }: Pick<SampleBoardState, 'cuts' | 'weights'>): string {
  const counting = cuts.filter((cut) => cut.excluded === null);
  const newest = counting.at(-1);
  if (newest === undefined)
    return 'No sections were cut beside it, so its mass does not tell its moisture content.';
  if (newest.estimate === null) {
    const drying = newest.sections.filter((section) => section.dryGrams === null).length;
    return `${drying} of ${newest.sections.length} sections ${drying === 1 ? 'is' : 'are'} still drying. When they are dry, their masses tell what the board would weigh oven-dry.`;
  }
  const last = weights.findLast(
    (weight) =>
      weight.excluded === null && weight.mcPct !== null && Date.parse(weight.at) >= Date.parse(newest.at),
  );
  if (last?.mcPct == null) {
    return `It held ${newest.estimate.mcWhenCutPct.toFixed(1)} % when the sections were cut. Weigh the board again, and its mass alone tells what it holds.`;
  }
  if (last.mcPct < 0) {
    return 'It weighs less than it should oven-dry: the sections were drier than the board, or dried before they were weighed. Cut new ones.';
  }
  return `By its mass it holds ${last.mcPct.toFixed(1)} %, from ${newest.estimate.mcWhenCutPct.toFixed(1)} % when the sections were cut.`;
}
