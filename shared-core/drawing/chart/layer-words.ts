import type { Layer } from './description.ts';
import type { Plot } from './layer-boxes.ts';
import { LINE_PX, type Spot, type Word, type WordPlacer } from './place-words.ts';

/** Whether it must be explained: the words beside some layers do that, where they have room. */
export function needsLegend(layer: Layer, words: readonly Word[]): layer is Layer & { name: string } {
  const isMissing = (text: string) => words.every((word) => word.text !== text);
  if (layer.name === null) return false;
  if (layer.kind === 'marks') return layer.values.some(({ word }) => isMissing(word));
  if (layer.kind === 'level') return isMissing(layer.word);
  return layer.kind !== 'target' || isMissing(layer.name);
}

/**
 * Puts a layer's words beside it.
 * @param rules  where marks have theirs: there is often room right of one
 */
export function placeLayerWords(
  layer: Layer,
  { x, y, left, right, laneY }: Plot,
  rules: readonly number[],
  place: WordPlacer['place'],
) {
  if (layer.kind === 'target' && layer.name !== null) {
    const [middle, above] = [y.at((layer.low + layer.high) / 2) + 4, y.at(layer.high) - 4];
    const isTall = y.at(layer.low) - y.at(layer.high) > LINE_PX;
    const lines = [isTall ? middle : above, y.at(layer.low) + LINE_PX];
    place({ text: layer.name }, alongLines(lines, left, right, rules));
  } else if (layer.kind === 'level') {
    const at = y.at(layer.y);
    const from = x.at(Math.max(layer.from ?? x.from, x.from));
    place({ text: layer.word }, alongLines([at + LINE_PX, at - 5], from, right, rules).toReversed());
  } else if (layer.kind === 'interval') {
    const at = x.at(Math.min(Math.max(layer.likely ?? layer.from, x.from), x.to));
    const below = laneY + LINE_PX + 4;
    place({ text: layer.text }, [
      { x: at, y: below, anchor: 'middle' },
      { x: at + 6, y: below, anchor: 'start' },
      { x: at - 6, y: below, anchor: 'end' },
      { x: right, y: below, anchor: 'end' },
      { x: left + 6, y: below, anchor: 'start' },
    ]);
  } else if (layer.kind === 'points') {
    for (const { x: at, y: value, word, isName } of layer.values) {
      if (word === undefined) continue;
      const [across, down] = [x.at(at), y.at(value)];
      place({ text: word, isName }, [
        { x: across, y: down + LINE_PX + 4, anchor: 'middle' },
        { x: across + 9, y: down + LINE_PX, anchor: 'start' },
        { x: across - 9, y: down + LINE_PX, anchor: 'end' },
        { x: across, y: down - 10, anchor: 'middle' },
        { x: across - 9, y: down - 8, anchor: 'end' },
      ]);
    }
  }
}

/** Spots on lines of text from one end to the other: at the left, right of each rule, between, and at the right. */
function alongLines(lines: readonly number[], left: number, right: number, rules: readonly number[]): Spot[] {
  const between = [0.25, 0.5, 0.75].map((part) => left + part * (right - left));
  const starts = [left, ...rules.filter((at) => at > left && at < right), ...between];
  return lines.flatMap((y) => [
    ...starts.map((at) => ({ x: at + 6, y, anchor: 'start' as const })),
    { x: right - 4, y, anchor: 'end' as const },
  ]);
}
