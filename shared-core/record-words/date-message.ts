import { type Message, message } from '../words/message.ts';

/** When something was: its day and time, or the day alone where nobody gave a time. */
export const dateMessage = (instant: string, isDayOnly: boolean): Message =>
  isDayOnly ? message('common.on-day', { dayOn: instant }) : message('common.at-time', { timeAt: instant });
