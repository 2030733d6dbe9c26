// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { cleanup, render, screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useState } from 'react';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { TextField } from '../../../../renderer/form/Field.tsx';
import { FormDialog } from '../../../../renderer/form/FormDialog.tsx';
import { followAddress, go, useNavigation } from '../../../../renderer/stores/navigation.ts';
import { forgetEverything } from '../shell/machine.ts';

let follow: () => void;
beforeEach(() => {
  forgetEverything();
  location.hash = '#/boards/1';
  useNavigation.setState({ route: { name: 'board', id: 1 } });
  follow = followAddress();
});
afterEach(() => {
  follow();
  cleanup();
});

/** Closed by what a screen knows, as every form is; saving it leads elsewhere. */
function Form() {
  const [isOpen, setOpen] = useState(true);
  return (
    isOpen && (
      <FormDialog
        title="Edit"
        saveWords="Save"
        onSave={async () => {
          await new Promise((answered) => setTimeout(answered, 5));
          go({ name: 'places' });
        }}
        onClose={() => setOpen(false)}
      >
        <TextField label="Note" value="" onValue={() => undefined} />
      </FormDialog>
    )
  );
}

async function open() {
  // What was set before the test is followed by now.
  await new Promise((passed) => setTimeout(passed, 20));
  render(<Form />);
  return userEvent.setup();
}

const leave = () => {
  location.hash = '#/stacks';
};
const routeName = () => useNavigation.getState().route.name;

test('a form with something typed stays when a person goes back, and says how to save or discard it', async () => {
  const user = await open();
  await user.type(screen.getByLabelText('Note'), 'W');
  leave();
  expect(await screen.findByText('What you typed is not saved yet. Save it, or press Cancel.')).toBeTruthy();
  expect(location.hash).toBe('#/boards/1');
  expect(routeName()).toBe('board');
});

test('a form in which nothing was typed is left at once', async () => {
  await open();
  leave();
  await waitFor(() => expect(routeName()).toBe('stacks'));
});

test('Escape loses nothing typed unless it is pressed again', async () => {
  const user = await open();
  await user.type(screen.getByLabelText('Note'), 'W');
  await user.keyboard('{Escape}');
  const said = 'What you typed is not saved yet. Save it, or press Escape again to discard it.';
  expect(screen.getByText(said)).toBeTruthy();
  // What is typed after that is protected once more.
  await user.type(screen.getByLabelText('Note'), 'a');
  await user.keyboard('{Escape}');
  expect(screen.getByText(said)).toBeTruthy();
  await user.keyboard('{Escape}');
  expect(screen.queryByRole('dialog')).toBeNull();
});

test('Escape closes a form in which nothing was typed', async () => {
  const user = await open();
  await user.keyboard('{Escape}');
  expect(screen.queryByRole('dialog')).toBeNull();
});

test('a form that was saved can be left', async () => {
  const user = await open();
  await user.type(screen.getByLabelText('Note'), 'W');
  await user.click(screen.getByRole('button', { name: 'Save' }));
  await waitFor(() => expect(routeName()).toBe('places'));
});

test('an address that changed before anyone followed it is where the window goes', () => {
  follow();
  location.hash = '#/places';
  follow = followAddress();
  expect(routeName()).toBe('places');
});
