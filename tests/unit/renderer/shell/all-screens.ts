import { beforeAll } from 'vitest';
import { laterScreens } from '../../../../renderer/app/screens.tsx';

/** As some moments after a start: no screen's code is still on its way. Reading all of it takes long on a busy computer. */
export function bringAllScreens(): void {
  beforeAll(() => Promise.all(laterScreens.map((screen) => screen.load())), 120_000);
}
