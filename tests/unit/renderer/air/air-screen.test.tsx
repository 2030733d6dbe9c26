// @vitest-environment jsdom
import { usualSettings } from '../../../../shared-core/contract/settings.ts';
import '../ui/drawing-room.ts';
import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { AirScreen } from '../../../../renderer/features/air/AirScreen.tsx';
import { useSettings } from '../../../../renderer/stores/settings.ts';
import { unbroken } from '../../../../renderer/unbroken.ts';
import { builtInEndUses } from '../../../../shared-core/wood/species/built-in.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';

function open(more: Parameters<typeof playMachine>[0] = {}) {
  const machine = playMachine({
    'endUses.list': () => builtInEndUses.map((endUse) => ({ ...endUse, version: 1, builtIn: true })),
    'endUses.add': (endUse) => ({ ...endUse, version: 1, builtIn: false }),
    ...more,
  });
  render(
    <main>
      <AirScreen />
    </main>,
  );
  return { machine, user: userEvent.setup() };
}

const setTemp = (temp: string) => type(screen, 'Air temperature', temp);
const region = (name: string) => within(screen.getByRole('region', { name }));
async function type(part: Pick<typeof screen, 'getByLabelText'>, label: string, text: string) {
  const user = userEvent.setup();
  await user.clear(part.getByLabelText(label));
  await user.type(part.getByLabelText(label), text);
}

beforeEach(forgetEverything);
afterEach(cleanup);

describe('From air to wood', () => {
  // Wood Handbook (FPL-GTR-282), Table 4-2, at 70, 50 and 90 °F (the last two from memory); printed to 0.1.
  test.each([
    ['21.1', '65', '12.0'],
    ['10', '80', '16.4'],
    ['32.2', '75', '13.9'],
  ])('the EMC of air at %s °C and %s %% RH is %s %%', async (temp, rh, emc) => {
    open();
    const air = region('EMC of this air');
    await setTemp(temp);
    await type(air, 'Relative humidity', rh);
    expect(air.getByText(`${emc}%`)).toBeTruthy();
  });

  test('the dew point is shown: 9 °C for air at 20 °C and 50 %', () => {
    open();
    // The usual psychrometric table (from memory): 9.3 °C, shown to a whole degree.
    expect(region('EMC of this air').getByText('9°C')).toBeTruthy();
  });

  test('a value outside the formula gets a sentence at its field, and nothing is computed', async () => {
    open();
    const air = region('EMC of this air');
    await type(air, 'Relative humidity', '100');
    await userEvent.tab();
    expect(air.getByText('At most 99%.')).toBeTruthy();
    expect(air.queryByText('EMC')).toBeNull();
    await setTemp('75');
    await userEvent.tab();
    expect(screen.getByText('At most 60°C.')).toBeTruthy();
    expect(screen.queryByRole('img', { name: /^EMC at/ })).toBeNull();
    await expectNoBarriers();
  });

  test('the drawing marks the humidity given; a damper one lies further right and higher', async () => {
    open();
    const mark = () => {
      const dot = screen.getByRole('img', { name: /^EMC at/ }).querySelector('circle')!;
      return { x: Number(dot.getAttribute('cx')), y: Number(dot.getAttribute('cy')) };
    };
    const before = mark();
    await type(region('EMC of this air'), 'Relative humidity', '80');
    expect(mark().x).toBeGreaterThan(before.x);
    expect(mark().y).toBeLessThan(before.y);
  });
});

describe('From wood to air', () => {
  test('a target gives the humidity that the same table has for it', async () => {
    open();
    const air = region('Humidity for a target');
    await setTemp('21.1');
    await type(air, 'Target MC', '12.0');
    expect(air.getByText('65%')).toBeTruthy();
  });

  test('a target that no air can give is refused with those it can', async () => {
    open();
    const air = region('Humidity for a target');
    await type(air, 'Target MC', '35');
    expect(
      air.getByText(/^At most 2\d\.\d%\. Wood gets no wetter in air at this temperature\./),
    ).toBeTruthy();
    expect(air.queryByText(/Humidity to hold/)).toBeNull();
  });
});

test('one temperature is for both, and there is no other field for it', async () => {
  open();
  expect(screen.getAllByLabelText('Air temperature')).toHaveLength(1);
  await setTemp('32.2');
  // As above: 13.9 % at 90 °F and 75 % RH.
  await type(region('EMC of this air'), 'Relative humidity', '75');
  await type(region('Humidity for a target'), 'Target MC', '13.9');
  expect(region('EMC of this air').getByText('13.9%')).toBeTruthy();
  expect(region('Humidity for a target').getByText('75%')).toBeTruthy();
  expect(screen.getByRole('img', { name: 'EMC at 32°C' })).toBeTruthy();
});

test('the drawing names both axes', () => {
  open();
  const drawing = within(screen.getByRole('img', { name: 'EMC at 20°C' }));
  expect(drawing.getByText('Relative humidity')).toBeTruthy();
  expect(drawing.getByText('EMC')).toBeTruthy();
});

describe('My room', () => {
  test('its driest and dampest air make a target, which is saved as a use', async () => {
    const { machine, user } = open();
    const room = region('Target for your room');
    await type(room, 'Room temperature', '21.1');
    // Table 4-2 at 70 °F: 6.2 % at 30 % RH, 9.2 % at 50 % RH.
    expect(room.getByText(unbroken('6.2–9.2%'))).toBeTruthy();
    await user.click(await room.findByRole('button', { name: 'Save as a use' }));
    await user.type(screen.getByLabelText('Name'), 'My living room');
    await user.click(screen.getByRole('button', { name: 'Add' }));
    expect(machine.inputsOf('endUses.add')).toEqual([
      {
        id: 'my-living-room',
        name: 'My living room',
        minPct: 6.2,
        maxPct: 9.2,
        tolerancePoints: 2,
        minIsAdvice: false,
        maxShellCorePct: 2,
        cautions: [],
        note: '',
        source: 'A room at 21°C, 30% to 50% humidity.',
      },
    ]);
  });

  test('a lowest humidity above the highest is refused', async () => {
    open();
    const room = region('Target for your room');
    await type(room, 'Lowest humidity', '60');
    expect(room.getByText('The highest humidity is below the lowest. Swap them.')).toBeTruthy();
    expect(room.queryByRole('button', { name: 'Save as a use' })).toBeNull();
  });
});

test('in inch mode every temperature is in °F', async () => {
  useSettings.setState({
    settings: { ...usualSettings, units: 'imperial' },
  });
  const { user } = open();
  expect(screen.getByRole('img', { name: 'EMC at 68°F' })).toBeTruthy();
  await user.click(await screen.findByRole('button', { name: 'Save as a use' }));
  expect(screen.getByLabelText('Sources')).toHaveProperty('value', 'A room at 68°F, 30% to 50% humidity.');
  expect(document.body.textContent).not.toContain('°C');
});

test('it has the name by which the way to it is called', () => {
  open();
  expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Air');
  expect(document.title).toContain('Air');
});

test('the page can be used by everyone, and leads to the places over the year', async () => {
  open();
  expect(screen.getByRole('link', { name: 'EMC of your places' }).getAttribute('href')).toBe('#/places');
  await expectNoBarriers();
});
