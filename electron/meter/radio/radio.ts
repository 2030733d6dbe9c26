import type { ToRadio } from '../radio-messages.ts';

type Order<Type extends ToRadio['type']> = Extract<ToRadio, { type: Type }>;

/**
 * A way to the air that the radio process can take. Orders are obeyed one by one as they come; what came of them is
 * sent as `FromRadio` messages, and none of these throws for what happens on the air.
 */
export interface Radio {
  /** Looks for the adapter. From then on the app gets every change of it. */
  start(): void;
  /** Whether the app gets every meter that is heard. */
  scan(on: boolean): void;
  /** Whether sensors are listened for beside a connection; until the next one is made. */
  overhear(on: boolean): void;
  /** Sends the meters heard since the last time. Called every so often. */
  sendFound(): void;
  connect(order: Order<'connect'>): Promise<void>;
  /** Passes on what the meter advertises, each packet once, without connecting. */
  listen(order: Order<'listen'>): Promise<void>;
  /** Lasts as long as anything is read again and again. */
  watch(order: Order<'watch'>): Promise<void>;
  prove(attempt: number): Promise<void>;
  /** Reads another device once, beside the meter's connection. */
  visit(order: Order<'visit'>): Promise<void>;
  endVisit(): Promise<void>;
  /** Leaves the meter politely, as far as it lets us. */
  disconnect(): Promise<void>;
  /** Hangs up without asking the meter for anything: this process ends. */
  hangUp(): Promise<void>;
}
