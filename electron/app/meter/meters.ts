import { setImmediate } from 'node:timers/promises';
import { z } from 'zod';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { MeterOfYard } from '../../../shared-core/contract/meter.ts';
import { descriptionIn, meterFileOf } from '../../../shared-core/contract/meter-file.ts';
import { rowIdSchema } from '../../../shared-core/contract/yard.ts';
import { isRenamed } from '../../../shared-core/gatt/namesakes.ts';
import {
  knownHere,
  type MeterProfile,
  typedUnit,
} from '../../../shared-core/probing/readings/meter-profile.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type MeterRow, NO_RECORD, unitOf } from '../../store/meter-table.ts';
import type { ReadingOwnerRow } from '../../store/reading-table.ts';
import type { Yard, YardReader } from '../../store/yard.ts';
import { type AppContext, orConflict, orRefuse, type QueryContext } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Assessing } from '../judging/assessing.ts';
import { checkIsHere } from '../rounds/moved-away.ts';
import { type MovingReadings, rawIn } from '../rounds/moving-readings.ts';
import { paced } from '../slices.ts';
import { checkCurve } from '../stock/known-curve.ts';
import type { MeterDesk } from './meter-desk.ts';

const KEY = 'typing-meter';
const DELETED = 'deleted-meters';
const savedSchema = z.object({ meterId: rowIdSchema });

/** The meter that typed values are read off; null before one was chosen. */
export const typedFrom = (yard: Pick<YardReader, 'settings'>): number | null =>
  savedSchema.safeParse(yard.settings.get(KEY)).data?.meterId ?? null;

export function typeFrom({ settings }: Yard, meterId: number): void {
  settings.put(KEY, { meterId });
}

/** Ids of the hand meters that a person deleted. The file keeps them, as undoing it needs them. */
const deleted = ({ settings }: Pick<YardReader, 'settings'>): number[] =>
  z.array(rowIdSchema).safeParse(settings.get(DELETED)).data ?? [];

function metersThere(yard: YardReader): MeterRow[] {
  const gone = new Set(deleted(yard));
  // One that another window typed a reading from meanwhile is there again.
  return yard.meters.all().filter(({ id }) => !gone.has(id) || yard.meters.isUsedNow(id));
}

/** The meter that has the name of an earlier one, as where a deleted one came back; undefined where none has. */
export function sameNamed(yard: YardReader): MeterRow | undefined {
  const names = new Set<string>();
  return metersThere(yard).find(({ name }) => names.size === names.add(name.trim().toLowerCase()).size);
}

/** A meter of the yard, with what its values mean. */
const shown = (meter: MeterRow, yard: Pick<YardReader, 'settings'>): MeterOfYard => ({
  id: meter.id,
  version: meter.version,
  kind: meter.kind,
  name: meter.name,
  unit: unitOf(meter),
  profile: meter.profile,
  isTypedFrom: meter.id === typedFrom(yard),
});

export const metersQueries = (context: QueryContext, assessing: Assessing) =>
  ({
    'meters.list': () => {
      const yard = context.yard();
      return metersThere(yard).map((meter) => shown(meter, yard));
    },
    'meters.closed': () => {
      const yard = context.yard();
      return yard.meters.closed().map((meter) => shown(meter, yard));
    },
    'meters.file': ({ meterId }) => {
      const { description, profile } = orRefuse(context.yard().meters.get(meterId), 'meter');
      return meterFileOf(description, profile);
    },
    'meters.use': async ({ meterId }) => {
      const yard = context.yard();
      let earlierReadings = 0;
      for (const some of yard.readings.ofEarlierProfiles(meterId)) {
        earlierReadings += some.length;
        await setImmediate();
        if (context.yard() !== yard) break;
      }
      return { earlierReadings, isUsed: context.yard().meters.isUsed(meterId) };
    },
    'readings.asReadWith': ({ readingId, meterId }) => {
      const yard = context.yard();
      const reading = orRefuse(yard.readings.get(readingId), 'reading');
      const meter = yard.meters.get(meterId);
      const unit = unitOf(meter ?? NO_RECORD);
      const raw = meter ? rawIn(unit, reading) : null;
      if (raw === null) return null;
      const { boardId, woodTempC, takenAt: at } = reading;
      const corrected = assessing.correct({ boardId, value: raw, unit, woodTempC, meterId, at });
      return { raw, unit, corrected };
    },
  }) satisfies Partial<Queries>;

/** What a person tells of meters, and which readings it holds for. */
export function metersCommands(
  context: AppContext,
  moving: MovingReadings,
  desk: Pick<MeterDesk, 'asOffered' | 'checkMayBe' | 'meterId' | 'nameFor' | 'readAsSaved'>,
) {
  function checkScale({ scale }: MeterProfile): void {
    if (scale.kind !== 'species') return;
    checkCurve(scale.curveId, message('refusal.meter-as-before'));
    if (scale.speciesId !== null) orRefuse(context.yard().species.get(scale.speciesId), 'species');
  }
  const hasSpecies = (id: string): boolean => context.yard().species.get(id) !== undefined;
  /** The numbers saved of a meter stay in the unit that they were saved in. */
  function checkUnit(meter: MeterRow, profile: MeterProfile): void {
    const isSent = meter.description !== null;
    const unit = unitOf(meter);
    if (isSent ? profile.scale.kind !== 'ohms' || unit === 'ohm' : typedUnit(profile) === unit) return;
    if (isSent) throw new Refusal(message('refusal.meter-sends-percent', { meterName: meter.name }));
    if (context.yard().meters.isUsed(meter.id))
      throw new Refusal(message('refusal.meter-keeps-unit', { meterName: meter.name, unit }));
  }
  /** Two of one name could not be told apart where one is chosen. */
  function checkName(name: string, ownId: number | null): void {
    const isSame = (other: MeterRow): boolean =>
      other.id !== ownId && other.name.trim().toLowerCase() === name.trim().toLowerCase();
    const same = metersThere(context.yard()).find(isSame);
    if (same) throw new Refusal(message('refusal.meter-name-taken', { meterName: same.name }));
  }
  function remove(meterId: number): void {
    const yard = context.yard();
    yard.settings.put(DELETED, [...deleted(yard), meterId]);
    if (typedFrom(yard) === meterId) yard.settings.put(KEY, null);
  }
  const get = (meterId: number) => orRefuse(context.yard().meters.get(meterId), 'meter');
  /** @throws Refusal for one that was removed, as in another window */
  function getOwned(meterId: number): MeterRow {
    const meter = get(meterId);
    if (context.yard().meters.isClosed(meterId))
      throw new Refusal(message('refusal.meter-removed', { meterName: meter.name }));
    return meter;
  }

  return {
    *'meters.add'({ name, profile, roundId, isTypedFrom }) {
      checkScale(profile);
      checkName(name, null);
      const yard = context.yard();
      const meterId = yard.meters.addTyped(name, profile, context.now());
      if (isTypedFrom || typedFrom(yard) === null) typeFrom(yard, meterId);
      const typed =
        roundId === null
          ? []
          : yield* moving.inRound(roundId, ({ how, meterId: of }) => how === 'typed' && of === null);
      return { ...(yield* moving.toMeter(typed, meterId, roundId)), meterId };
    },

    'meters.edit': ({ id, basedOn, changed: { name, profile } }) => {
      const yard = context.yard();
      const before = getOwned(id);
      if (name !== undefined) checkName(name, id);
      if (profile) {
        checkScale(profile);
        checkUnit(before, profile);
      }
      const current = yard.meters.edit({ id, basedOn, changed: name === undefined ? {} : { name } });
      orConflict(current && shown(current, yard));
      if (profile) yard.meters.setProfile(id, profile, context.now());
      return shown(get(id), yard);
    },

    'meters.useFile': ({ meterId, file }) => {
      const yard = context.yard();
      const before = getOwned(meterId);
      const given = before.kind === 'typed' ? null : descriptionIn(file);
      const description = given ? desk.asOffered(before, given) : before.description;
      const profile = file.profile ? knownHere(file.profile, hasSpecies) : before.profile;
      if (profile) {
        checkScale(profile);
        checkUnit({ ...before, description }, profile);
      }
      yard.meters.setUp(meterId, { description, profile }, context.now());
      context.afterwards(desk.readAsSaved);
      return shown(get(meterId), yard);
    },

    'meters.recognize': ({ meterId, deviceId }) => {
      const { meters, acts } = context.yard();
      const meter = get(meterId);
      desk.checkMayBe(deviceId, meterId);
      // Of a meter that was added and undone, or that another says it is.
      if (meters.find('bluetooth', deviceId)?.id !== meterId) meters.freeAddress('bluetooth', deviceId);
      const name = isRenamed(meter, desk.nameFor(deviceId)) ? { name: desk.nameFor(deviceId) } : {};
      meters.edit({ id: meterId, basedOn: meter.version, changed: { deviceId, closedAt: null, ...name } });
      context.afterwards(desk.readAsSaved);
      return { act: acts.now() };
    },

    'meters.delete': ({ meterId }) => {
      const yard = context.yard();
      const { name: meterName, kind } = get(meterId);
      orRefuse(kind === 'typed' || undefined, 'meter');
      if (yard.meters.isUsed(meterId)) throw new Refusal(message('refusal.meter-used', { meterName }));
      remove(meterId);
      return {};
    },

    'meters.close': ({ meterId: id }) => {
      const { name: meterName, version: basedOn } = getOwned(id);
      if (desk.meterId() === id) throw new Refusal(message('refusal.meter-connected', { meterName }));
      const yard = context.yard();
      yard.meters.edit({ id, basedOn, changed: { closedAt: context.now() } });
      if (typedFrom(yard) === id) yard.settings.put(KEY, null);
      return {};
    },

    'meters.typeFrom': ({ meterId }) => {
      getOwned(meterId);
      typeFrom(context.yard(), meterId);
      return {};
    },

    *'meters.updateEarlier'({ meterId, roundId }) {
      get(meterId);
      const earlier: ReadingOwnerRow[] = [];
      yield* paced(function* (isOver) {
        for (const some of context.yard().readings.ofEarlierProfiles(meterId)) {
          for (const each of some) if (roundId === null || each.roundId === roundId) earlier.push(each);
          if (isOver()) yield { done: 0, total: 1 };
        }
      });
      return yield* moving.toMeter(earlier, meterId, roundId, true);
    },

    *'readings.setMeter'({ readingId, scope, meterId }) {
      const reading = orRefuse(context.yard().readings.get(readingId), 'reading');
      checkIsHere(context, reading);
      get(meterId);
      const { roundId, meterProfileId } = reading;
      const all =
        scope === 'reading'
          ? [reading]
          : yield* moving.inRound(roundId, (each) => each.meterProfileId === meterProfileId);
      return yield* moving.toMeter(all, meterId);
    },
  } satisfies Partial<Commands>;
}
