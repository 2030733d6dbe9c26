import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import type { PlaceAirTyped } from './PlaceAirFields.tsx';
import { type AirKnown, type AirOfPlace, monthFields, monthsOf, roomMade } from './place-air.ts';

/** What can be done about air that was made from other air: its months can be edited, or made again from the air of now. */
export function RoomAirActions({
  room,
  known: { outdoors },
  set,
}: {
  room: AirOfPlace;
  known: AirKnown;
  set: PlaceAirTyped['set'];
}) {
  const { say } = useWords();
  const { air, airSource } = room;
  const now = airSource?.kind === 'room' ? roomMade(airSource.room, outdoors) : null;
  const isOld = outdoors !== null && now !== null && JSON.stringify(now.air) !== JSON.stringify(air);
  return (
    <p className="row">
      <Button onClick={() => set({ way: 'own', ...monthFields(monthsOf(air)) })}>
        {say('places.edit-months')}
      </Button>
      {isOld && (
        <Button onClick={() => set({ isRenewed: true })}>
          {say('places.renew-air', { outdoorsName: outdoors.name })}
        </Button>
      )}
    </p>
  );
}
