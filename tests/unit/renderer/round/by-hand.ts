import userEvent from '@testing-library/user-event';
import { vi } from 'vitest';

/** Keys at the pace of a quick hand: slower than any label scanner. */
export const byHand = () => userEvent.setup({ delay: 60 });

/** A label scanner types what it reads at once, however slow the test is. */
export async function scan(code: string): Promise<void> {
  const { timeStamp } = new Event('now');
  const clock = vi.spyOn(Event.prototype, 'timeStamp', 'get').mockReturnValue(timeStamp);
  await userEvent.setup({ delay: null }).keyboard(`${code}{Enter}`);
  clock.mockRestore();
}
