// @vitest-environment jsdom
import '../shell/machine.ts';
import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useState } from 'react';
import { afterEach, expect, test, vi } from 'vitest';
import { useFocusKept } from '../../../../renderer/app/useFocusKept.ts';
import { Dialog } from '../../../../renderer/ui/Dialog.tsx';

afterEach(cleanup);

/** Its dialog can delete the board, and with it the button. */
function BoardWithDialog() {
  useFocusKept();
  const [isOpen, setOpen] = useState(false);
  const [isThere, setThere] = useState(true);
  return (
    <main>
      <h1 tabIndex={-1}>Boards</h1>
      <p>
        {isThere && (
          <button type="button" onClick={() => setOpen(true)}>
            Edit
          </button>
        )}
        <button type="button">Next board</button>
      </p>
      {isOpen && (
        <Dialog title="Edit" onClose={() => setOpen(false)}>
          <button type="button" onClick={() => setOpen(false)}>
            Cancel
          </button>
          <button
            type="button"
            onClick={() => {
              setThere(false);
              setOpen(false);
            }}
          >
            Delete
          </button>
        </Dialog>
      )}
    </main>
  );
}

async function openByKey() {
  const user = userEvent.setup();
  render(<BoardWithDialog />);
  await user.tab();
  await user.keyboard('{Enter}');
  expect(document.activeElement?.textContent).toBe('Cancel');
  return user;
}

test.each(['{Enter}', '{Escape}'])('closed by %s, it gives the focus back to what had it', async (key) => {
  const user = await openByKey();
  await user.keyboard(key);
  expect(screen.queryByRole('dialog')).toBeNull();
  await vi.waitFor(() => expect(document.activeElement?.textContent).toBe('Edit'));
});

test('where what opened it is gone, what is beside that has the focus', async () => {
  const user = await openByKey();
  await user.tab();
  await user.keyboard('{Enter}');
  await vi.waitFor(() => expect(document.activeElement?.textContent).toBe('Next board'));
});

test('so it has where the dialog was used by mouse', async () => {
  const user = await openByKey();
  await user.click(screen.getByRole('button', { name: 'Delete' }));
  await vi.waitFor(() => expect(document.activeElement?.textContent).toBe('Next board'));
});
