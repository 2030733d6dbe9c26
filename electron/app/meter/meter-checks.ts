import { Refusal } from '../../../shared-core/contract/answer.ts';
import {
  type CheckedMeter,
  expectedSchemas,
  type MeterCheck,
  type NewTestBlock,
  type QuestionableMeter,
  type TestBlock,
  toleranceSchemas,
} from '../../../shared-core/contract/meter-checks.ts';
import type { ReadingsMoved } from '../../../shared-core/contract/requests/meters.ts';
import { problemOf } from '../../../shared-core/contract/validation.ts';
import { checkState, offBy, rightValue } from '../../../shared-core/probing/readings/meter-check.ts';
import { scaleOf } from '../../../shared-core/probing/readings/meter-profile.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import type { ReadingUnit } from '../../../shared-core/wood/moisture/corrected.ts';
import { message } from '../../../shared-core/words/message.ts';
import type { CheckRow, ReadingSince } from '../../store/meter-check-table.ts';
import {
  correctionNow,
  correctionOf,
  type MeterCorrection,
  toCorrect as toCorrectNow,
} from '../../store/meter-corrections.ts';
import { type MeterRow, unitOf } from '../../store/meter-table.ts';
import type { YardReader } from '../../store/yard.ts';
import { type AppContext, orConflict, orRefuse, type QueryContext } from '../context.ts';
import { dayOf } from '../forecast/judging-board.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { MovingReadings } from '../rounds/moving-readings.ts';
import type { Slices } from '../slices.ts';

const MONTH_DAYS = 30;

/** What a meter shows on a block if it is right; null where nobody can say. */
const rightOn = (block: Pick<NewTestBlock, 'expected' | 'unit'>, meter: MeterRow): number | null => {
  const unit = unitOf(meter);
  return rightValue(block, { unit, scale: scaleOf(unit, meter.profile) });
};

/** What a version of a profile corrects its values by; nothing where it is lost. */
const correctedBy = ({ meters }: YardReader, profileId: number | null): number =>
  (profileId === null ? undefined : meters.version(profileId))?.off ?? 0;

/** What a version of a profile gives its values in; null where it is lost. */
function unitBy({ meters }: YardReader, profileId: number | null): ReadingUnit | null {
  const version = profileId === null ? undefined : meters.version(profileId);
  return version ? unitOf(version) : null;
}

/** Readings in the unit of a check that were taken after it, and before the next one. */
function readingsSince(yard: YardReader, { id, meterId, meterProfileId, at }: CheckRow): ReadingSince[] {
  if (meterId === null) return [];
  const unit = unitBy(yard, meterProfileId);
  return yard.meterChecks
    .readingsSince(id, meterId, at)
    .filter(({ profileId }) => unitBy(yard, profileId) === unit);
}

function judged(row: CheckRow, unit: ReadingUnit, by: number, now: string): MeterCheck {
  const { meterProfileId: _, meterId: __, ...check } = row;
  return {
    ...check,
    isAhead: row.at > now,
    off: offBy(unit, row),
    correctedBy: by,
    state: checkState(unit, row, by),
  };
}

function isDue({ checkEvery }: TestBlock, last: MeterCheck | null, yard: YardReader, now: string): boolean {
  if (checkEvery === 'never') return false;
  if (last === null) return true;
  switch (checkEvery) {
    case 'round':
      return Date.parse(last.at) < Date.parse(yard.meterChecks.lastRoundAt(now) ?? '');
    case 'day':
      return dayOf(last.at) !== dayOf(now);
    case 'month':
      return Date.parse(now) - Date.parse(last.at) > MONTH_DAYS * DAY_MS;
  }
}

/** What a meter would still be corrected by, as its newest check says; null for nothing. */
function toCorrect(
  yard: YardReader,
  meter: MeterRow,
  unit: ReadingUnit,
  now: string,
): CheckedMeter['toCorrect'] {
  const newest = yard.meterChecks.newestOfMeter(meter.id, now);
  if (newest === undefined || unitBy(yard, newest.meterProfileId) !== unit) return null;
  if (checkState(unit, newest, meter.off) !== 'off') return null;
  return { checkId: newest.id, readings: readingsSince(yard, newest).length };
}

export const meterCheckQueries = (context: QueryContext) =>
  ({
    'meterChecks.list': () => {
      const yard = context.yard();
      return yard.meterChecks.blocks().map((block): CheckedMeter => {
        const meter = orRefuse(yard.meters.get(block.meterId), 'meter');
        const unit = unitOf(meter);
        const now = context.now();
        // Of a meter that gave its values in another unit, a check says nothing of the meter as it is.
        const rows = yard.meterChecks
          .ofBlock(block.id)
          .filter(({ meterProfileId }) => unitBy(yard, meterProfileId) === unit);
        const checks = rows.map((row) => judged(row, unit, correctedBy(yard, row.meterProfileId), now));
        const last = checks.find(({ excluded, isAhead }) => excluded === null && !isAhead) ?? null;
        return {
          block,
          meterName: meter.name,
          unit,
          right: rightOn(block, meter),
          checks,
          last,
          isDue: isDue(block, last, yard, now),
          toCorrect: toCorrect(yard, meter, unit, now),
        };
      });
    },

    'meterChecks.ofRound': ({ roundId }) => {
      const yard = context.yard();
      const found = yard.meterChecks.inRound(roundId);
      const checks = found.map(({ checkId }) => orRefuse(yard.meterChecks.check(checkId), 'check'));
      return found.flatMap(({ checkId, profileId, readings }): QuestionableMeter[] => {
        const row = orRefuse(yard.meterChecks.check(checkId), 'check');
        const meter = row.meterId === null ? undefined : yard.meters.get(row.meterId);
        if (meter === undefined) return [];
        const unit = unitBy(yard, profileId);
        if (unit === null || unitBy(yard, row.meterProfileId) !== unit) return [];
        const check = judged(row, unit, correctedBy(yard, profileId), context.now());
        if (check.state === 'right') return [];
        const since = check.state === 'off' && unit === unitOf(meter) ? readingsSince(yard, row) : [];
        const newest = yard.meterChecks.newestOfMeter(meter.id, context.now());
        const [until = null] = [...checks, ...(newest ? [newest] : [])]
          .filter((each) => each.meterId === meter.id && Date.parse(each.at) > Date.parse(row.at))
          .map(({ at }) => at)
          .toSorted((a, b) => Date.parse(a) - Date.parse(b));
        const meterProfileId = profileId;
        const toCorrect = since.length || null;
        return [{ meterName: meter.name, unit, check, meterProfileId, until, readings, toCorrect }];
      });
    },
  }) satisfies Partial<Queries>;

/** Test blocks, checks by them, and what is corrected by a check. */
export function meterCheckCommands(context: AppContext, moving: MovingReadings) {
  const meterOf = (id: number) => orRefuse(context.yard().meters.get(id), 'meter');
  const blockOf = (id: number) => orRefuse(context.yard().meterChecks.block(id), 'test-block');

  function checkedOf(checkId: number) {
    const check = orRefuse(context.yard().meterChecks.check(checkId), 'check');
    return { check, meter: meterOf(orRefuse(check.meterId ?? undefined, 'meter')) };
  }

  /** Its next values, and its readings, are corrected as its checks say now. */
  function* settle(
    meterId: number,
    before: MeterCorrection,
    now: string,
    alsoFrom: string | null = null,
  ): Slices<ReadingsMoved> {
    const yard = context.yard();
    const correction = correctionOf(yard, meterId, now);
    if (
      correctionNow(correction) !== correctionNow(before) ||
      alsoFrom === correction.steps[correction.unit].at(-1)?.at
    )
      yard.meters.setOff(meterId, correctionNow(correction), now);
    return yield* moving.corrected(toCorrectNow(yard, meterId, correction, before, alsoFrom));
  }

  /** @returns what the meter shows on it if it is right */
  function rightOrRefuse(block: Pick<NewTestBlock, 'expected' | 'unit'>, meter: MeterRow): number {
    const right = rightOn(block, meter);
    if (right === null) throw new Refusal(message('refusal.test-block-unknown', { meterName: meter.name }));
    return right;
  }

  /** Values that no block has, or this meter cannot show. */
  function checkBlock(block: Pick<NewTestBlock, 'expected' | 'unit' | 'tolerance'>, meter: MeterRow): void {
    const of = [
      expectedSchemas[block.unit].safeParse(block.expected),
      toleranceSchemas[unitOf(meter)].safeParse(block.tolerance),
    ];
    for (const { error } of of) if (error) throw new Refusal(problemOf(error));
    const right = rightOrRefuse(block, meter);
    const range = meter.description?.range;
    if (range && (right < range.min || right > range.max))
      throw new Refusal(message('refusal.test-block-beyond', { meterName: meter.name }));
  }

  return {
    'testBlocks.add': (block) => {
      checkBlock(block, meterOf(block.meterId));
      return blockOf(context.yard().meterChecks.addBlock(block));
    },

    'testBlocks.edit': (edit) => {
      const before = blockOf(edit.id);
      checkBlock({ ...before, ...edit.changed }, meterOf(before.meterId));
      orConflict(context.yard().meterChecks.editBlock(edit));
      return blockOf(edit.id);
    },

    'testBlocks.close': ({ id, basedOn }) => {
      blockOf(id);
      const { acts, meterChecks } = context.yard();
      orConflict(meterChecks.editBlock({ id, basedOn, changed: { closedAt: context.now() } }));
      return { act: acts.now() };
    },

    'meterChecks.add': ({ blockId, shown, tempC }) => {
      const block = orRefuse(
        context
          .yard()
          .meterChecks.blocks()
          .find(({ id }) => id === blockId),
        'test-block',
      );
      const meter = meterOf(block.meterId);
      const right = rightOrRefuse(block, meter);
      const { tolerance } = block;
      const yard = context.yard();
      const id = yard.meterChecks.addCheck(
        { blockId, right, tolerance, shown, tempC, at: context.now() },
        meter.id,
      );
      return judged(orRefuse(yard.meterChecks.check(id), 'check'), unitOf(meter), meter.off, context.now());
    },

    *'meterChecks.correct'({ checkId }) {
      const yard = context.yard();
      const { check, meter } = checkedOf(checkId);
      const unit = unitOf(meter);
      if (unitBy(yard, check.meterProfileId) !== unit)
        throw new Refusal(message('refusal.check-other-unit', { meterName: meter.name }));
      const state = checkState(unit, check, 0);
      if (state === 'too-far')
        throw new Refusal(message('refusal.meter-too-far-off', { meterName: meter.name }));
      if (check.excluded !== null)
        throw new Refusal(message('refusal.check-excluded', { meterName: meter.name }));
      const now = context.now();
      const before = correctionOf(yard, meter.id, now);
      yard.meterChecks.correctBy(checkId, true, now);
      return { ...(yield* settle(meter.id, before, now, check.at)), checkId };
    },

    *'meterChecks.exclude'({ checkId, why }) {
      const { check, meter } = checkedOf(checkId);
      const now = context.now();
      const before = correctionOf(context.yard(), meter.id, now);
      context.yard().meterChecks.excludeCheck(check.id, why, now);
      return yield* settle(meter.id, before, now);
    },

    *'meterChecks.include'({ checkId }) {
      const { check, meter } = checkedOf(checkId);
      const { meterChecks } = context.yard();
      const now = context.now();
      const before = correctionOf(context.yard(), meter.id, now);
      meterChecks.excludeCheck(check.id, null, now);
      if (meterChecks.isCorrecting(check.id)) meterChecks.correctBy(check.id, false, now);
      return yield* settle(meter.id, before, now);
    },
  } satisfies Partial<Commands>;
}
