// @vitest-environment jsdom
import '../shell/machine.ts';
import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useState } from 'react';
import { afterEach, expect, test } from 'vitest';
import { Dialog } from '../../../../renderer/ui/Dialog.tsx';

afterEach(cleanup);

function ButtonWithDialog() {
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <button type="button" onClick={() => setOpen(true)}>
        Edit
      </button>
      {isOpen && (
        <Dialog title="Edit" onClose={() => setOpen(false)}>
          <button type="button" onClick={() => setOpen(false)}>
            Cancel
          </button>
        </Dialog>
      )}
    </>
  );
}

test('a closed dialog gives the focus back to what had it before', async () => {
  const user = userEvent.setup();
  render(<ButtonWithDialog />);
  await user.tab();
  await user.keyboard('{Enter}');
  expect(document.activeElement?.textContent).toBe('Cancel');
  await user.keyboard('{Enter}');
  expect(screen.queryByRole('dialog')).toBeNull();
  expect(document.activeElement?.textContent).toBe('Edit');
});
