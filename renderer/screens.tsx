import type { ReactNode } from 'react';
import { ButtonLink } from './parts/Button.tsx';
import { EmptyState, Screen } from './parts/Screen.tsx';
import { MeterScreen } from './screens/meter/MeterScreen.tsx';
import { RoundScreen } from './screens/round/RoundScreen.tsx';
import { RoundStartScreen } from './screens/round/RoundStartScreen.tsx';
import { hrefOf, type Route } from './stores/navigation.ts';

/** Which screen stands at which place. One line each; a new screen is a route in `navigation.ts` and a line here. */
export function screenAt(route: Route): ReactNode {
  switch (route.name) {
    case 'meter':
      return <MeterScreen />;
    case 'round-start':
      return <RoundStartScreen stackId={route.stackId} />;
    case 'round':
      return <RoundScreen id={route.id} />;
    default:
      return <NowhereScreen />;
  }
}

function NowhereScreen() {
  return (
    <Screen title="Nothing at this address">
      <EmptyState sentence="There is no such place in Pintally. The address may be mistyped, or what it led to may belong to another yard.">
        <ButtonLink kind="main" href={hrefOf({ name: 'stacks' })}>
          Go to the stacks
        </ButtonLink>
      </EmptyState>
    </Screen>
  );
}
