import { useNavigation } from './navigation.ts';

/** A key as it was pressed; its time tells a label scanner from a hand. */
type HeldKey = Pick<KeyboardEvent, 'key' | 'timeStamp'>;

/** Keys pressed since a round began to open. */
interface Held {
  keys: HeldKey[];
  /** Something was pressed that is no part of a value: what the person meant by all of it nobody can tell. */
  isMixed: boolean;
  stop: () => void;
}
let held: Held | null = null;

const isWithValue = (key: string): boolean => /^[\d.,]$/.test(key) || key === 'Enter';
const isControl = (target: EventTarget | null): boolean =>
  target instanceof Element && target.closest('a, button, summary') !== null;

function hold(event: KeyboardEvent): void {
  const { key, timeStamp, target } = event;
  if (held === null || event.ctrlKey || event.altKey || event.metaKey) return;
  const { keys } = held;
  const isPress = key === 'Enter' || key === ' ';
  // Tab leads to what can be pressed meanwhile: the person may go elsewhere.
  if (isPress && isControl(target)) return;
  const isOfRound = key.length === 1 || /^(Enter|Backspace|Delete|Home|End|Page(Up|Down)|Arrow.+)$/.test(key);
  if (!isOfRound) return;
  event.preventDefault();
  event.stopPropagation();
  if (event.repeat) return;
  const last = keys.at(-1)?.key;
  if (key === 'Backspace') {
    if (last !== undefined && last !== 'Enter') keys.pop();
    else if (last === 'Enter') held.isMixed = true;
  } else if (!isWithValue(key)) held.isMixed = true;
  // The press that opens the round may bounce.
  else if (key !== 'Enter' || last !== undefined) keys.push({ key, timeStamp });
}

/**
 * From now on, what is typed is held until the round's own keys are there: a value typed meanwhile is whole, or nothing
 * of it is used. It ends with `giveHeldKeys`, with `dropHeldKeys`, and where the person goes elsewhere.
 */
export function holdKeys(): void {
  if (held !== null) return;
  addEventListener('keydown', hold, true);
  const unfollow = useNavigation.subscribe(({ route }) => {
    if (route.name !== 'round') dropHeldKeys();
  });
  held = {
    keys: [],
    isMixed: false,
    stop: () => {
      removeEventListener('keydown', hold, true);
      unfollow();
    },
  };
}

/** Whether keys are held now. */
export const isHolding = (): boolean => held !== null;

/** No round opens after all. */
export function dropHeldKeys(): void {
  held?.stop();
  held = null;
}

/**
 * Presses the held keys again, one after another as the screen follows; what is typed meanwhile waits behind them.
 *
 * @param refuse  told where nothing of them is used
 * @returns stops it
 */
export function giveHeldKeys(refuse: () => void): () => void {
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const next = () => {
    const given = held?.isMixed ? undefined : held?.keys.shift();
    if (given === undefined) {
      if (held?.isMixed) refuse();
      dropHeldKeys();
      return;
    }
    const press = new KeyboardEvent('keydown', { key: given.key, bubbles: true, cancelable: true });
    Object.defineProperty(press, 'timeStamp', { value: given.timeStamp });
    // Past `hold`, which hears what comes from anywhere in the page.
    removeEventListener('keydown', hold, true);
    document.body.dispatchEvent(press);
    addEventListener('keydown', hold, true);
    waiting = setTimeout(next);
  };
  next();
  return () => {
    clearTimeout(waiting);
    dropHeldKeys();
  };
}
