// @vitest-environment jsdom
import { act, cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useState } from 'react';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { z } from 'zod';
import { DateField } from '../../../../renderer/form/DateField.tsx';
import { NumberField } from '../../../../renderer/form/Field.tsx';
import {
  BoardLengthField,
  LengthField,
  TempField,
  ThicknessField,
  WeightField,
} from '../../../../renderer/form/MeasureFields.tsx';
import { useDraft } from '../../../../renderer/form/useDraft.ts';
import { useSettings } from '../../../../renderer/stores/settings.ts';
import { usualSettings } from '../../../../shared-core/contract/settings.ts';
import { forgetEverything } from '../shell/machine.ts';
import { shownDay, typeDay } from './type-day.ts';

beforeEach(forgetEverything);
afterEach(cleanup);

const schema = z.object({
  widthMm: z.number().min(10).max(3000).nullable(),
  boardKg: z.number().positive(),
  layer: z.number().int().max(500),
});

function Form({ onRead }: { onRead: (made: unknown) => void }) {
  const { field, read } = useDraft(schema, { widthMm: null, boardKg: null, layer: null });
  const save = () => {
    try {
      onRead(read());
    } catch {
      onRead('refused');
    }
  };
  return (
    <>
      <LengthField label="Width" {...field('widthMm')} />
      <WeightField label="Weight" {...field('boardKg')} />
      <NumberField label="Layer" {...field('layer')} />
      <button type="button" onClick={save}>
        Save
      </button>
    </>
  );
}

test('a field says what the contract would refuse once it was left, in the person’s units', async () => {
  useSettings.setState({ settings: { ...usualSettings, units: 'imperial' } });
  const user = userEvent.setup();
  render(<Form onRead={() => undefined} />);
  await user.type(screen.getByLabelText('Width'), '200');
  expect(screen.queryByRole('alert')).toBeNull();
  await user.tab();
  expect(screen.getByRole('alert').textContent).toBe('At most 118\u00A01/8\u00A0in.');
  expect(screen.getByLabelText('Width').getAttribute('aria-invalid')).toBe('true');
});

// What cannot be read while it is typed is often half a number: "1/" of "1/2".
test.each(['-3', '1e309', '7 ft 99 in'])('“%s” is refused at its field once that was left', async (typed) => {
  useSettings.setState({ settings: { ...usualSettings, units: 'imperial' } });
  const user = userEvent.setup();
  render(<Form onRead={() => undefined} />);
  await user.type(screen.getByLabelText('Width'), typed);
  expect(screen.queryByRole('alert')).toBeNull();
  await user.tab();
  expect(screen.getByRole('alert').textContent).toBe(
    `“${typed}” is not a length. Type it like 1\u00A01/16\u00A0in or 5/4.`,
  );
});

test('what could mean two numbers is asked for again, never guessed at', async () => {
  const made: unknown[] = [];
  const user = userEvent.setup();
  render(<Form onRead={(each) => made.push(each)} />);
  await user.type(screen.getByLabelText('Width'), '1,200');
  await user.type(screen.getByLabelText('Weight'), '1,200');
  await user.click(screen.getByRole('button', { name: 'Save' }));
  const problems = screen.getAllByRole('alert').map((each) => each.textContent);
  expect(problems.slice(0, 2)).toEqual(
    Array.from({ length: 2 }, () => '“1,200” could mean two different numbers. Type 1200 or 1.2.'),
  );
  expect(made).toEqual(['refused']);
});

test('a field says what a size is that was typed otherwise than the page shows it', async () => {
  useSettings.setState({ settings: { ...usualSettings, units: 'imperial' } });
  const user = userEvent.setup();
  render(<Form onRead={() => undefined} />);
  await user.type(screen.getByLabelText('Width'), '8½');
  expect(screen.getByLabelText('Width').getAttribute('aria-describedby')).toBeTruthy();
  expect(screen.getByText('That is 8 1/2 in.')).toBeTruthy();
  await user.clear(screen.getByLabelText('Width'));
  await user.type(screen.getByLabelText('Width'), '8 1/2');
  expect(screen.queryByText(/^That is/)).toBeNull();
});

test('a field shows the person’s own decimal mark', () => {
  vi.spyOn(navigator, 'language', 'get').mockReturnValue('de-DE');
  render(
    <>
      <BoardLengthField label="Length" value={2440} onValue={() => undefined} />
      <WeightField label="Weight" value={12.5} onValue={() => undefined} />
    </>,
  );
  expect(screen.getByLabelText<HTMLInputElement>('Length').value).toBe('2,44');
  expect(screen.getByLabelText<HTMLInputElement>('Weight').value).toBe('12,5');
  vi.restoreAllMocks();
});

test('what cannot be read is named when the form is saved from its field', async () => {
  const made: unknown[] = [];
  const user = userEvent.setup();
  render(<Form onRead={(each) => made.push(each)} />);
  await user.type(screen.getByLabelText('Weight'), 'twelve');
  act(() => screen.getByRole('button', { name: 'Save' }).click());
  expect(screen.getAllByRole('alert')[0]!.textContent).toBe('“twelve” is not a number. Type it in digits.');
  expect(made).toEqual(['refused']);
});

test('what was typed is saved in SI, what is blank and may be is null', async () => {
  const made: unknown[] = [];
  const user = userEvent.setup();
  render(<Form onRead={(each) => made.push(each)} />);
  await user.type(screen.getByLabelText('Weight'), '12,5');
  await user.type(screen.getByLabelText('Layer'), '3');
  await user.click(screen.getByRole('button', { name: 'Save' }));
  expect(made).toEqual([{ widthMm: null, boardKg: 12.5, layer: 3 }]);
});

test('saving shows every problem, and gives no record', async () => {
  const made: unknown[] = [];
  const user = userEvent.setup();
  render(<Form onRead={(each) => made.push(each)} />);
  await user.type(screen.getByLabelText('Layer'), '2.5');
  await user.click(screen.getByRole('button', { name: 'Save' }));
  expect(made).toEqual(['refused']);
  expect(screen.getAllByRole('alert').map((each) => each.textContent)).toEqual([
    'Fill this in.',
    'Type a whole number.',
  ]);
});

test('a value that nobody typed over keeps what it was, whatever its field rounds to', async () => {
  const values: (number | null)[] = [];
  const user = userEvent.setup();
  useSettings.setState({ settings: { ...usualSettings, units: 'imperial' } });
  render(<TempField label="Temperature" value={21.123} onValue={(value) => values.push(value)} />);
  expect(screen.getByLabelText<HTMLInputElement>('Temperature').value).toBe('70');
  await user.click(screen.getByLabelText('Temperature'));
  await user.tab();
  expect(values).toEqual([]);
});

function Day() {
  const [day, setDay] = useState<string | null>(null);
  return <DateField label="Sawn on" value={day} onValue={setDay} />;
}

test('a year of two digits is of this century once the day was left', async () => {
  const user = userEvent.setup();
  render(<Day />);
  await typeDay(user, 'Sawn on', '26-05-20');
  // To the button of the calendar.
  await user.tab();
  expect(shownDay('Sawn on')).toBe('2026-05-20');
});

test('a thickness typed by its name in the trade keeps that name', async () => {
  const typed: unknown[] = [];
  const user = userEvent.setup();
  render(
    <ThicknessField
      label="Thickness"
      value={null}
      quarters={null}
      onThickness={(mm, quarters) => typed.push([mm, quarters])}
    />,
  );
  await user.click(screen.getByLabelText('Thickness'));
  await user.paste('8/4');
  expect(typed).toEqual([[50.8, 8]]);
});
