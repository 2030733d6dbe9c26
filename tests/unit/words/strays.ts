/** Finds sentences outside the catalog, and phrases that nobody should read any more. */
import { globSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseSync } from 'oxc-parser';

const root = resolve(import.meta.dirname, '../../..');

export const code = ['renderer/**/*.{ts,tsx}', 'electron/**/*.{ts,tsx}', 'shared-core/**/*.{ts,tsx}'];
export const searched = [...code, 'renderer/**/*.css', 'seeds/*.json', 'tests/**/*.{ts,tsx}', '*.md'];

/** What is found in the files, each with the file's name. */
export function findings(
  patterns: readonly string[],
  find: (source: string, file: string) => string[],
): string[] {
  return globSync(patterns, { cwd: root })
    .sort()
    .flatMap((file) =>
      find(readFileSync(join(root, file), 'utf8'), file).map((found) => `${file}: ${found}`),
    );
}

/** Phrases that our English has outgrown, each beside the better one in the words guide. */
const leftColumn = [
  'it is too wet for',
  'about as dry as the air in',
  'but not with the \\S+ doubtful',
  'with 90 % probability',
  'readings? in doubt',
  'does not lean on',
  'readings? (is|are|was|were) set aside',
  'are left to judge by',
  'nothing was read on',
  'too few sound readings',
  'more pins will not',
  'let it even out',
  'had come to rest',
  'says that the wood is wet',
  'past the end of the published curve',
  "a hand['’]s breadth",
  'ran away by',
  'lead to expect',
  'with 90 % certainty',
  'probed boards: ',
  'can be taken out: ready',
  'its page says why',
  'what it looks like is wrong',
  'hardly before',
  'within the time looked at',
  'by its history it is fit',
  'probing here changes nothing',
  'less than one chance in ten',
  'is taken to dry',
  'made by a model of drying',
  'readings of its own',
  'does not rest on them',
  'middling',
  'nobody said',
  'foreseen',
  'mend what',
  'shown as kept is kept',
  'pintally anew',
  'would not take it',
  'it never did',
  'left empty, nobody knows',
  'leave it empty for now',
  'bay it is filed in',
  'parted by commas',
  'the same as a table',
  'ahead as if it stood',
  'what the use wants',
  'what wood comes to',
  'when it loses no more than',
  'until its mass is constant',
  'read by eye',
  'let itself be connected',
  'more bent than it is',
  'taken for granted',
  'what it rests on',
  'what its end shows',
  'red oak, looked at',
  'the last thing you did once',
].map((phrase) => new RegExp(`\\b${phrase.replaceAll(' ', '[\\s*/]+')}`, 'giu'));

/** Where a source still has one, in sentences, names and comments alike; a comment's line ends count as spaces. */
export const oldPhrasesIn = (source: string, file: string): string[] =>
  file === 'tests/unit/words/strays.ts'
    ? []
    : leftColumn.flatMap((phrase) => [...source.matchAll(phrase)].map(([found]) => found));

interface Node {
  type: string;
  [key: string]: unknown;
}

/** The catalog itself, and SQL that is never edited. */
const NO_SENTENCES = /^(shared-core\/words|electron\/store\/migrations)\//;

/** Files whose words no person reads in the app, with the reason. */
const EXEMPT: Record<string, string> = {
  'electron/data-dir.ts': 'a folder name of macOS',
  'electron/guide/markdown-plugin.ts': 'writes a module',
  'electron/guide/site.ts': 'writes pages',
  'electron/packing/licenses.ts': 'who holds the rights to a package, as licenses have it',
  'electron/packing/licenses-plugin.ts': 'writes a module',
  'electron/launch.ts': 'speaks to a contributor at a terminal',
};

const TWO_WORDS = /\p{L}[,:;.]?\s+\p{L}/u;
const A_WORD = /\p{L}{2}/u;
const SQL =
  /^\s*\(?(SELECT|INSERT|UPDATE|DELETE|CREATE|ALTER|DROP|PRAGMA|WITH|BEGIN|COMMIT|ROLLBACK|ATTACH|DETACH|VACUUM|FROM|WHERE|ORDER BY|JOIN|LEFT JOIN|AND|UNION ALL|WHEN \(SELECT)\b|^\w\.\w+ = /i;
/** Attributes that no person reads. */
const ATTRIBUTES_UNREAD =
  /^(className|id|key|d|viewBox|transform|points|type|name|role|htmlFor|style|href|to|fill|stroke.*|preserveAspectRatio|data-.*|aria-(labelledby|describedby|controls|live))$/;
/** Attributes that a person reads, where one word is enough. */
const ATTRIBUTES_READ =
  /^(label|title|placeholder|alt|hint|heading|aria-label|aria-description|aria-valuetext)$/;
/** Calls whose words go to a log or a database. */
const CALLS_UNREAD =
  /^(console\.\w+|reportFault|log\.note|.*\.(prepare|exec|pragma|querySelector|querySelectorAll|closest|matches|matchMedia)|matchMedia)$/;
/** A programmer's fault, never shown. */
const FAULTS = /^(Error|RangeError|TypeError)$/;

/** The sentences of a source file, one each: literals of two or more words, and any word in JSX. */
export function sentencesIn(source: string, file: string): string[] {
  if (NO_SENTENCES.test(file) || Object.hasOwn(EXEMPT, file)) return [];
  const { program } = parseSync(file, source);
  const found: string[] = [];
  const take = (text: string, least = TWO_WORDS): void => {
    if (least.test(text) && !isNoSentence(text)) found.push(text.trim());
  };
  const visit = (node: Node): void => {
    switch (node.type) {
      case 'ImportDeclaration':
      case 'ExportAllDeclaration':
      case 'TSLiteralType':
        return;
      case 'NewExpression':
        if (FAULTS.test(nameOf(node.callee))) return;
        break;
      case 'CallExpression':
        if (CALLS_UNREAD.test(nameOf(node.callee))) return;
        break;
      case 'JSXAttribute': {
        const name = nameOf(node.name);
        if (ATTRIBUTES_UNREAD.test(name)) return;
        const value = node.value as Node | null;
        if (ATTRIBUTES_READ.test(name) && value?.type === 'Literal') {
          take(String(value.value), A_WORD);
          return;
        }
        break;
      }
      case 'JSXText':
        take(String(node.value), A_WORD);
        return;
      case 'Literal':
        if (typeof node.value === 'string') take(node.value);
        return;
      case 'TemplateLiteral':
        take((node.quasis as { value: { cooked: string } }[]).map(({ value }) => value.cooked).join('{}'));
        break;
    }
    for (const child of Object.values(node)) visitAny(child);
  };
  const visitAny = (value: unknown): void => {
    if (Array.isArray(value)) value.forEach(visitAny);
    else if (typeof value === 'object' && value !== null && 'type' in value) visit(value as Node);
  };
  visit(program as unknown as Node);
  return found;
}

/** SQL, HTTP, CSS and markup text, and the numbers of standards, by which a yard file stores them. */
function isNoSentence(text: string): boolean {
  return (
    SQL.test(text) ||
    /^\s*--|\w_\w+ AS \w/.test(text) ||
    /^HTTP\/1|^[\w-]+-[\w-]+: |^[a-z]+-src |^(max-age|no-store|text\/|application\/)/.test(text) ||
    /^(ASTM|EN) \w+(-\d+)?$/.test(text) ||
    /\b\d*(px|rem|fr|solid|minmax|var\()\b|\(min-width|\(prefers-|^@page /.test(text) ||
    /^\s*<(!doctype|html|svg|script)/i.test(text)
  );
}

function nameOf(node: unknown): string {
  const { type, name, property, object } = node as Node;
  if (type === 'MemberExpression') return `${nameOf(object)}.${nameOf(property)}`;
  if (type === 'JSXNamespacedName') return `${nameOf((node as Node).namespace)}:${nameOf(name)}`;
  return typeof name === 'string' ? name : '';
}
