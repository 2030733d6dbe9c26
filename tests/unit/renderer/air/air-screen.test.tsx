// @vitest-environment jsdom
import '../parts/drawing-room.ts';
import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { AirScreen } from '../../../../renderer/screens/air/AirScreen.tsx';
import { builtInEndUses } from '../../../../shared-core/wood/species/catalogue.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';

function open(more: Parameters<typeof playMachine>[0] = {}) {
  const machine = playMachine({
    'endUses.list': () => builtInEndUses.map((endUse) => ({ ...endUse, builtIn: true })),
    'endUses.save': (endUse) => endUse,
    ...more,
  });
  render(
    <main>
      <AirScreen />
    </main>,
  );
  return { machine, user: userEvent.setup() };
}

const region = (name: string) => within(screen.getByRole('region', { name }));
async function type(part: ReturnType<typeof region>, label: string, text: string) {
  const user = userEvent.setup();
  await user.clear(part.getByLabelText(label));
  await user.type(part.getByLabelText(label), text);
}

beforeEach(forgetEverything);
afterEach(cleanup);

describe('From air to wood', () => {
  // Wood Handbook (FPL-GTR-282), Table 4-2, at 70, 50 and 90 °F (from memory); printed to 0.1.
  test.each([
    ['21.1', '65', '12.0'],
    ['10', '80', '16.4'],
    ['32.2', '75', '13.9'],
  ])('air of %s °C and %s %% RH brings wood to %s %% MC', async (temp, rh, emc) => {
    open();
    const air = region('What this air does to wood');
    await type(air, 'Temperature of the air', temp);
    await type(air, 'Relative humidity', rh);
    expect(air.getByText(`${emc} % MC`)).toBeTruthy();
  });

  test('it says the dew point: 9.3 °C for air of 20 °C and 50 %', () => {
    open();
    // The usual psychrometric table (from memory): 9.3 °C.
    expect(region('What this air does to wood').getByText('9.3 °C')).toBeTruthy();
  });

  test('what lies outside the formula is said beside the field, and nothing is computed', async () => {
    open();
    const air = region('What this air does to wood');
    await type(air, 'Relative humidity', '100');
    expect(air.getByText('This must be 1 to 99 %.')).toBeTruthy();
    expect(air.queryByText(/Wood comes to/)).toBeNull();
    await type(air, 'Temperature of the air', '75');
    expect(air.getByText('This must be −20 °C to 60 °C.')).toBeTruthy();
    await expectNoBarriers();
  });

  test('the drawing marks the humidity given; a damper one lies further right and higher', async () => {
    open();
    const mark = () => {
      const dot = screen.getByRole('img', { name: /What wood comes to/ }).querySelector('circle')!;
      return { x: Number(dot.getAttribute('cx')), y: Number(dot.getAttribute('cy')) };
    };
    const before = mark();
    await type(region('What this air does to wood'), 'Relative humidity', '80');
    expect(mark().x).toBeGreaterThan(before.x);
    expect(mark().y).toBeLessThan(before.y);
  });
});

describe('From wood to air', () => {
  test('a wanted MC gives the humidity that the same table names for it', async () => {
    open();
    const air = region('What air a moisture content needs');
    await type(air, 'Temperature of the air', '21.1');
    await type(air, 'Wanted moisture content', '12.0');
    expect(air.getByText('65 % RH')).toBeTruthy();
  });

  test('more than air can give is refused with what it can', async () => {
    open();
    const air = region('What air a moisture content needs');
    await type(air, 'Wanted moisture content', '35');
    expect(air.getByText(/^Air brings wood to 0 to 2\d\.\d % MC\.$/)).toBeTruthy();
    expect(air.queryByText(/Keep the air at/)).toBeNull();
  });
});

describe('My room', () => {
  test('its driest and dampest air become a range, which is kept as a use of one’s own', async () => {
    const { machine, user } = open();
    const room = region('My room’s humidity');
    await type(room, 'Temperature of the room', '21.1');
    // Table 4-2 at 70 °F (from memory): 6.2 % at 30 % RH, 9.2 % at 50 % RH.
    expect(room.getByText('6.2 to 9.2 % MC')).toBeTruthy();
    await user.click(await room.findByRole('button', { name: 'Keep it as a use' }));
    await user.type(screen.getByLabelText('Name'), 'My living room');
    await user.click(screen.getByRole('button', { name: 'Add the use' }));
    expect(machine.inputsOf('endUses.save')).toEqual([
      {
        id: 'my-living-room',
        name: 'My living room',
        minPct: 6.2,
        maxPct: 9.2,
        maxShellCorePct: 2,
        note: 'Set by a room of 21 °C and 30 % to 50 % relative humidity.',
      },
    ]);
  });

  test('a driest that is damper than the dampest is said to be turned round', async () => {
    open();
    const room = region('My room’s humidity');
    await type(room, 'Humidity at its driest', '60');
    expect(room.getByText('The dampest must not lie below the driest.')).toBeTruthy();
    expect(room.queryByRole('button', { name: 'Keep it as a use' })).toBeNull();
  });
});

test('the page can be used by everyone, and leads to the places over the year', async () => {
  open();
  expect(screen.getByRole('link', { name: 'Your places over the year' }).getAttribute('href')).toBe(
    '#/places',
  );
  await expectNoBarriers();
});
