import { expect, test } from 'vitest';
import { asksToProbeAgain } from '../../../shared-core/probing/suspicions/probe-again.ts';
import { message } from '../../../shared-core/words/message.ts';

const questionable = {
  rule: 'outlier-on-board',
  severity: 'questionable',
  why: message('round-step.choose-spot'),
  whatToDo: message('round-step.choose-spot'),
} as const;
const at = (spotIndex: number, ...suspicions: (typeof questionable)[]) => ({
  spotIndex,
  suspicions,
  excluded: null,
});

test('a questionable reading asks to probe its spot again until that was done, whatever came of it', () => {
  expect(asksToProbeAgain([at(0), at(1, questionable)])).toBe(true);
  expect(asksToProbeAgain([at(0), at(1, questionable), at(1)])).toBe(false);
  expect(asksToProbeAgain([at(0), at(1, questionable), at(1, questionable)])).toBe(false);
});

test('one that is excluded asks for nothing, nor does it confirm another', () => {
  const excluded = { ...at(1, questionable), excluded: { code: 'wet-face' as const } };
  expect(asksToProbeAgain([at(0), excluded])).toBe(false);
  expect(asksToProbeAgain([excluded, at(1, questionable)])).toBe(true);
});

test('nothing is asked where no reading is questionable', () => {
  expect(asksToProbeAgain([])).toBe(false);
  expect(asksToProbeAgain([at(0), at(1)])).toBe(false);
});
