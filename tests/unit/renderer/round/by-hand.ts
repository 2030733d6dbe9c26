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

/** What happens from now on happens so much later, by its own time. */
export function passTime(ms: number) {
  const timeOf = Object.getOwnPropertyDescriptor(Event.prototype, 'timeStamp')!.get!;
  return vi.spyOn(Event.prototype, 'timeStamp', 'get').mockImplementation(function (this: Event) {
    return timeOf.call(this) + ms;
  });
}
