import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { StackRow } from '../../../shared-core/contract/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import type { SensorRow } from '../../store/air-sensor-table.ts';
import type { YardReader } from '../../store/yard.ts';
import { type AppContext, orRefuse, refusingDuplicates } from '../context.ts';

type PlaceRecord = NonNullable<ReturnType<YardReader['places']['get']>>;

/**
 * A stack that boards can come to.
 * @throws Refusal where it is closed, or not there
 */
export function openStack({ yard }: Pick<AppContext, 'yard'>, id: number): StackRow {
  const stack = orRefuse(yard().stacks.get(id), 'stack');
  if (stack.closedAt === null) return stack;
  throw new Refusal(message('refusal.stack-closed', { stackName: stack.name }));
}

/** The same of a place. */
export function openPlace({ yard }: Pick<AppContext, 'yard'>, id: number): PlaceRecord {
  const place = orRefuse(yard().places.get(id), 'place');
  if (place.closedAt === null) return place;
  throw new Refusal(message('refusal.place-closed', { placeName: place.name }));
}

/** @throws Refusal for a sensor that is not there, or was removed */
export function openSensor({ yard }: Pick<AppContext, 'yard'>, id: number): SensorRow {
  const row = yard().airSensors.get(id);
  return orRefuse(row?.closedAt === null ? row : undefined, 'sensor');
}

/** @throws Refusal where one is not there, or left the yard */
export function checkInYard({ yard }: Pick<AppContext, 'yard'>, boardIds: readonly number[]): void {
  const { boards } = yard();
  orRefuse(boards.versionsOf(boardIds).length === boardIds.length || undefined, 'board');
  const [gone] = boards.archivedOf(boardIds);
  if (gone) throw new Refusal(message('refusal.board-archived', { boardCode: gone.code }));
}

/**
 * A place is in the lists again.
 * @param name  null: its own
 * @throws Refusal where another has its name
 */
export function reopenPlace({ yard }: AppContext, id: number, name: string | null = null): void {
  const { places } = yard();
  const { version, name: ownName } = orRefuse(places.get(id), 'place');
  const placeName = name ?? ownName;
  refusingDuplicates(message('refusal.place-name-taken', { placeName }), () =>
    places.edit({ id, basedOn: version, changed: { name: placeName, closedAt: null } }),
  );
}

/** A stack is in the lists again, and its place with it. @param name, @throws as of `reopenPlace` */
export function reopenStack(context: AppContext, id: number, name: string | null = null): void {
  const { places, stacks } = context.yard();
  const { version, name: ownName, placeId } = orRefuse(stacks.get(id), 'stack');
  const stackName = name ?? ownName;
  refusingDuplicates(message('refusal.stack-name-taken', { stackName }), () =>
    stacks.edit({ id, basedOn: version, changed: { name: stackName, closedAt: null } }),
  );
  if (places.get(placeId)?.closedAt != null) reopenPlace(context, placeId);
}

/** Where boards came back to the yard, the closed stacks and places that they are in are open again. */
export function reopenThoseInUse(context: AppContext): void {
  const { places, stacks } = context.yard();
  for (const id of stacks.closedInUse()) reopenStack(context, id);
  for (const id of places.closedInUse()) reopenPlace(context, id);
}
