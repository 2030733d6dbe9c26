// @vitest-environment jsdom
import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { TemperatureField, useWoodTemp } from '../../../../renderer/form/TemperatureField.tsx';
import { useSettings } from '../../../../renderer/stores/settings.ts';
import { unbroken } from '../../../../renderer/unbroken.ts';
import { usualSettings } from '../../../../shared-core/contract/settings.ts';
import { forgetEverything } from '../shell/machine.ts';

beforeEach(forgetEverything);
afterEach(cleanup);

/** What is answered is shown after "answer", where it is one. */
function Asked() {
  const answer = useWoodTemp({ woodTempC: null, unknown: false });
  return (
    <>
      <TemperatureField answer={answer} />
      <output>answer {String(answer.made)}</output>
    </>
  );
}

function open(units: 'metric' | 'imperial') {
  useSettings.setState({ settings: { ...usualSettings, units } });
  render(<Asked />);
  return userEvent.setup();
}
const field = () => screen.getByLabelText('Wood temperature');

test('a temperature typed in Fahrenheit is answered in Celsius', async () => {
  const user = open('imperial');
  await user.type(field(), '50');
  // 50 °F is 10 °C by definition.
  expect(screen.getByText('answer 10')).toBeTruthy();
});

test('not knowing it is an answer, whatever was typed before', async () => {
  const user = open('metric');
  await user.type(field(), '212');
  await user.click(screen.getByLabelText('I don’t know'));
  expect(screen.getByText('answer null')).toBeTruthy();
  expect(screen.getByText(/Calls are less certain/)).toBeTruthy();
  await user.click(screen.getByLabelText('I don’t know'));
  expect(screen.getByText('answer undefined')).toBeTruthy();
});

// Bounds of what wood can have: common practice, no source.
test.each([
  ['212', 'At most 80°C.'],
  ['-41', 'At least −40°C.'],
])('“%s” is asked for again', async (typed, problem) => {
  const user = open('metric');
  await user.type(field(), `${typed}{Tab}`);
  expect(screen.getByRole('alert').textContent).toBe(unbroken(problem));
  expect(screen.getByText('answer undefined')).toBeTruthy();
});

test('left empty, it is asked for only once it is needed', async () => {
  const user = open('metric');
  await user.type(field(), ' {Tab}');
  expect(screen.queryByRole('alert')).toBeNull();
  expect(screen.getByText('answer undefined')).toBeTruthy();
});
