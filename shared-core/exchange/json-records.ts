/** Why a text is no export: not JSON, not ours, cut off, or with a record that is larger than any. */
export type JsonProblem = 'no-json' | 'cut-off' | 'too-large';

/** No record of a yard is longer, in UTF-16 units. */
export const MOST_RECORD_LENGTH = 1024 * 1024;

/** What a text holds that does not fit. */
export class JsonRefused extends Error {
  override name = 'JsonRefused';
  readonly problem: JsonProblem;
  constructor(problem: JsonProblem) {
    super(problem);
    this.problem = problem;
  }
}

/**
 * Reads a JSON object whose values are scalars, or arrays of objects, as its text comes, so that a file of any size takes
 * no more memory than its largest record.
 *
 * @param onField  called with each scalar of the object
 * @param onArray  called where an array begins
 * @param onRecord  called with each object of an array
 * @throws JsonRefused, from `feed` and `end`; what the callbacks throw
 */
export function createRecordReader({
  onField,
  onArray,
  onRecord,
}: {
  onField(key: string, value: unknown): void;
  onArray(key: string): void;
  onRecord(key: string, record: unknown): void;
}) {
  /** What comes next: the object, a key or its end, a colon, a value, a comma or the end; the same within an array. */
  let expects:
    | 'object'
    | 'key'
    | 'first-key'
    | 'colon'
    | 'value'
    | 'comma'
    | 'item'
    | 'first-item'
    | 'item-comma'
    | 'nothing' = 'object';
  let key = '';
  /** The value that is being read. */
  let part = '';
  let isReading: 'nothing' | 'key' | 'scalar' | 'nested' = 'nothing';
  let depth = 0;
  let isInText = false;
  let isEscaped = false;

  const refuse = (): never => {
    throw new JsonRefused('no-json');
  };

  function parsed(): unknown {
    try {
      return JSON.parse(part);
    } catch {
      return refuse();
    }
  }

  function finish(): void {
    const value = parsed();
    const what = isReading;
    part = '';
    isReading = 'nothing';
    if (what === 'key') {
      key = String(value);
      expects = 'colon';
    } else if (expects === 'value') {
      onField(key, value);
      expects = 'comma';
    } else {
      onRecord(key, value);
      expects = 'item-comma';
    }
  }

  /** A character between values. */
  function between(letter: string): void {
    if (letter === ' ' || letter === '\n' || /[\s\uFEFF]/.test(letter)) return;
    switch (expects) {
      case 'object':
        if (letter !== '{') refuse();
        expects = 'first-key';
        return;
      case 'first-key':
      case 'key':
        if (letter === '}' && expects === 'first-key') expects = 'nothing';
        else if (letter === '"') begin('key', letter);
        else refuse();
        return;
      case 'colon':
        if (letter !== ':') refuse();
        expects = 'value';
        return;
      case 'value':
        if (letter === '[') {
          onArray(key);
          expects = 'first-item';
        } else begin(letter === '{' ? 'nested' : 'scalar', letter);
        return;
      case 'comma':
        if (letter === ',') expects = 'key';
        else if (letter === '}') expects = 'nothing';
        else refuse();
        return;
      case 'first-item':
      case 'item':
        if (letter === ']' && expects === 'first-item') expects = 'comma';
        else if (letter === '{') begin('nested', letter);
        else refuse();
        return;
      case 'item-comma':
        if (letter === ',') expects = 'item';
        else if (letter === ']') expects = 'comma';
        else refuse();
        return;
      default:
        refuse();
    }
  }

  function begin(what: typeof isReading, letter: string): void {
    isReading = what;
    part = letter;
    isInText = letter === '"';
    depth = what === 'nested' ? 1 : 0;
  }

  return {
    feed: (text: string): void => {
      /** Where in `text` the value being read goes on: it is cut out at once, not letter by letter. */
      let from = 0;
      for (let at = 0; at < text.length; at++) {
        const letter = text[at] as string;
        if (isReading === 'nothing') {
          between(letter);
          from = at + 1;
          continue;
        }
        if (isInText) {
          if (isEscaped) isEscaped = false;
          else if (letter === '\\') isEscaped = true;
          else if (letter === '"') {
            isInText = false;
            if (isReading !== 'nested') {
              part += text.slice(from, at + 1);
              from = at + 1;
              finish();
            }
          }
        } else if (letter === '"') {
          if (isReading !== 'nested') refuse();
          isInText = true;
        } else if (isReading === 'nested') {
          if (letter === '{' || letter === '[') depth++;
          else if ((letter === '}' || letter === ']') && --depth === 0) {
            part += text.slice(from, at + 1);
            from = at + 1;
            finish();
          }
        } else if (/[,}\]\s]/.test(letter)) {
          part += text.slice(from, at);
          finish();
          between(letter);
          from = at + 1;
        }
        if (at - from > MOST_RECORD_LENGTH) throw new JsonRefused('too-large');
      }
      if (isReading !== 'nothing') part += text.slice(from);
      if (part.length > MOST_RECORD_LENGTH) throw new JsonRefused('too-large');
    },
    /** The text is over. */
    end: (): void => {
      if (expects !== 'nothing' || isReading !== 'nothing') {
        throw new JsonRefused(expects === 'object' ? 'no-json' : 'cut-off');
      }
    },
  };
}
