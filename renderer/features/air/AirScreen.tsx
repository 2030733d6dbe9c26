import { hrefOf } from '../../stores/navigation.ts';
import { ButtonLink } from '../../ui/Button.tsx';
import { Screen, Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { AirAndWood } from './AirAndWood.tsx';
import { RoomTarget } from './RoomTarget.tsx';

/** The EMC of any air, the humidity for any target, and the target for a room. */
export function AirScreen() {
  const { say } = useWords();
  return (
    <Screen
      title={say('nav.air')}
      lead={say('air.lead')}
      actions={<ButtonLink href={hrefOf({ name: 'places' })}>{say('air.places')}</ButtonLink>}
    >
      <AirAndWood />
      <Sheet title={say('air.room')}>
        <RoomTarget />
      </Sheet>
    </Screen>
  );
}
