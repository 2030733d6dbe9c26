import type { Sensor, SensorKind } from '../../../shared-core/contract/air.ts';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { message } from '../../../shared-core/words/message.ts';
import type { SensorRow } from '../../store/air-sensor-table.ts';
import type { YardReader } from '../../store/yard.ts';
import { type AppContext, orConflict, type QueryContext } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Judging } from '../judging/judging.ts';
import { startOfDay } from '../stock/board-days.ts';
import { openPlace, openSensor } from '../stock/open-ones.ts';
import type { SensorDesk } from './sensor-desk.ts';

type Reads = Pick<YardReader, 'airSensors' | 'airLogs'>;

function sensorOf(
  { airSensors, airLogs }: Reads,
  { closedAt: _, ...row }: SensorRow,
  newestOf: SensorDesk['newestOf'],
  now: string,
): Sensor {
  const stay = airSensors.stay(row.id);
  return {
    ...row,
    placeId: stay?.placeId ?? null,
    since: stay?.since ?? null,
    last: newestOf(row.id) ?? airLogs.newestOf(row.id, now) ?? null,
  };
}

export const sensorQueries = (context: QueryContext, { newestOf }: Pick<SensorDesk, 'newestOf'>) =>
  ({
    'sensors.list': () => {
      const yard = context.yard();
      return yard.airSensors.list().map((row) => sensorOf(yard, row, newestOf, context.now()));
    },
  }) satisfies Partial<Queries>;

export function sensorCommands(
  context: AppContext,
  { newestOf, check }: Pick<SensorDesk, 'newestOf' | 'check'>,
  judging: Pick<Judging, 'judgeAgain'>,
) {
  const asShown = (row: SensorRow): Sensor => sensorOf(context.yard(), row, newestOf, context.now());
  const rowOf = (id: number): SensorRow => openSensor(context, id);
  const get = (id: number): Sensor => asShown(rowOf(id));
  /** @throws Refusal where it cannot be there */
  function placeFor(kind: SensorKind, placeId: number): void {
    openPlace(context, placeId);
    if (kind === 'probe') throw new Refusal(message('refusal.sensor-is-probe'));
  }
  /** From then on it is there, also where it was elsewhere later. */
  function place(sensorId: number, placeId: number | null, since: string): void {
    const { airSensors } = context.yard();
    const later = airSensors.staysFrom(sensorId, since);
    for (const { id, version } of later.filter((stay) => stay.placeId !== placeId))
      airSensors.editStay({ id, basedOn: version, changed: { placeId } });
    if (later[0]?.since !== since) airSensors.addStay({ sensorId, placeId, since });
  }
  return {
    'sensors.add': ({ placeId, deviceId, ...sensor }) => {
      const { airSensors } = context.yard();
      const known = airSensors.find(deviceId);
      if (known?.closedAt === null)
        throw new Refusal(message('refusal.sensor-known', { sensorName: known.name }));
      if (sensor.kind === 'air' && placeId === null) throw new Refusal(message('refusal.sensor-no-place'));
      if (placeId !== null) placeFor(sensor.kind, placeId);
      // One that was removed is itself again.
      if (known)
        airSensors.edit({ id: known.id, basedOn: known.version, changed: { ...sensor, closedAt: null } });
      const id = known?.id ?? airSensors.add({ ...sensor, deviceId, closedAt: null });
      if ((airSensors.stay(id)?.placeId ?? null) !== placeId) place(id, placeId, context.now());
      context.afterwards(check);
      return get(id);
    },
    'sensors.edit': (edit) => {
      rowOf(edit.id);
      const before = context.yard().airSensors.edit(edit);
      orConflict(before && asShown(before));
      return get(edit.id);
    },
    'sensors.move': ({ id, placeId, sinceOn }) => {
      const { kind } = rowOf(id);
      if (placeId !== null) placeFor(kind, placeId);
      const sinceMs = startOfDay(sinceOn);
      if (sinceMs > Date.parse(context.now())) throw new Refusal(message('refusal.sensor-later'));
      const { airSensors, moves } = context.yard();
      const stays = airSensors.staysFrom(id, '');
      place(id, placeId, new Date(sinceMs).toISOString());
      // What was logged since then counts at another place.
      const places = new Set([placeId, ...stays.map((stay) => stay.placeId)].filter((each) => each !== null));
      judging.judgeAgain([...new Set([...places].flatMap((each) => moves.boardsEverAt(each)))]);
      return get(id);
    },
    'sensors.remove': ({ id, basedOn }) => {
      rowOf(id);
      const { acts, airSensors } = context.yard();
      const before = airSensors.edit({ id, basedOn, changed: { closedAt: context.now() } });
      orConflict(before && asShown(before));
      return { act: acts.now() };
    },
  } satisfies Partial<Commands>;
}
