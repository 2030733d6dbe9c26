import type { SampleBoardState, SampleRecord, SampleSection } from '../contract/sample-board.ts';
import type { Exclusion } from '../probing/readings/exclusion.ts';
import type { Words } from '../words/words.ts';

/** What was weighed: a cut, one of its sections, or the board since. */
export interface SampleRow {
  key: string;
  what: string;
  at: string;
  weight: string;
  /** Null where it is not known yet. */
  mc?: string | null;
  /** As the question names it. */
  name: string;
  excluded: Exclusion | null;
  /** Of a section there is none: it is excluded with its cut. */
  record?: SampleRecord;
  section?: SampleSection;
}

/** The cuts with their sections, and the board's weights since. */
export const sampleRows = ({ cuts, weights }: SampleBoardState, words: Words): SampleRow[] => [
  ...cuts.flatMap((cut) => [cutRow(cut, words), ...sectionRows(cut, words)]),
  ...weights.map(
    ({ id, at, kg, mcPct, excluded }): SampleRow => ({
      key: `weight ${id}`,
      what: words.say('weights.weight'),
      at,
      weight: words.formats.weight(kg),
      mc: mcPct === null ? null : words.formats.mc(mcPct),
      name: words.formats.weight(kg),
      excluded,
      record: { what: 'weight', id },
    }),
  ),
];

type Cut = SampleBoardState['cuts'][number];

function cutRow({ id, at, boardKg, estimate, excluded }: Cut, { say, formats }: Words): SampleRow {
  const estimateText = ({
    mcWhenCutPct: mcPct,
    standardErrorPct: errorPoints,
  }: NonNullable<typeof estimate>) =>
    errorPoints === null ? formats.mc(mcPct) : say('weights.mc-error', { mcPct, errorPoints });
  return {
    key: `cut ${id}`,
    what: say('weights.cut'),
    at,
    weight: say('weights.sections-cut', { boardKg }),
    mc: estimate && estimateText(estimate),
    name: say('weights.cut-name', { cutOn: at }),
    excluded,
    record: { what: 'cut', id },
  };
}

const sectionRows = ({ at, excluded, sections }: Cut, { say }: Words): SampleRow[] =>
  sections.map((section, index) => {
    const { id, wetGrams, dryGrams } = section;
    const dry = dryGrams === null ? say('weights.in-oven') : say('weights.dry', { dryGrams });
    const number = index + 1;
    return {
      key: `section ${id}`,
      what: say('weights.section', { number }),
      at,
      weight: `${say('weights.wet', { wetGrams })}, ${dry}`,
      name: say('weights.section-of-cut', { number, cutName: say('weights.cut-name', { cutOn: at }) }),
      excluded,
      section,
    };
  });
