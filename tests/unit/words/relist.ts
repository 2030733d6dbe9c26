/** Writes both lists anew: `npx node tests/unit/words/relist.ts`. It refuses to let either grow. */
import { writeFileSync } from 'node:fs';
import {
  type Counts,
  code,
  countsOf,
  listed,
  oldPhrasesIn,
  phraseList,
  searched,
  sentenceList,
  sentencesIn,
} from './strays.ts';

const total = (counts: Counts): number => Object.values(counts).reduce((sum, count) => sum + count, 0);

function relist(list: string, found: Counts): void {
  const [before, now] = [total(listed(list)), total(found)];
  if (now > before) {
    console.error(`${list}: ${now} found, ${before} allowed. Nothing was written.`);
    process.exitCode = 1;
    return;
  }
  writeFileSync(list, `${JSON.stringify(found, null, 2)}\n`);
  console.log(`${list}: ${before} → ${now}`);
}

relist(sentenceList, countsOf(code, sentencesIn));
relist(phraseList, countsOf(searched, oldPhrasesIn));
