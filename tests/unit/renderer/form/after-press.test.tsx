// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useState } from 'react';
import { expect, test } from 'vitest';
import { NumberField } from '../../../../renderer/form/Field.tsx';

function Form() {
  const [value, setValue] = useState<number | null>(null);
  return (
    <>
      <NumberField label="Layer" value={value} onValue={setValue} />
      <button type="button">Open the demo yard</button>
    </>
  );
}

test('a field that is left by a press says what is wrong after it, so that the button does not move away', async () => {
  const user = userEvent.setup();
  render(<Form />);
  await user.type(screen.getByLabelText('Layer'), 'oak');
  const button = screen.getByRole('button');
  await user.pointer({ keys: '[MouseLeft>]', target: button });
  expect(document.activeElement).toBe(button);
  expect(screen.queryByRole('alert')).toBeNull();
  await user.pointer({ keys: '[/MouseLeft]', target: button });
  expect((await screen.findByRole('alert')).textContent).toContain('oak');
});
