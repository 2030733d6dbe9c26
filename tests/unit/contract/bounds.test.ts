import { expect, test } from 'vitest';
import { z } from 'zod';
import { requests } from '../../../shared-core/contract/requests.ts';

/** The part of JSON Schema that tells bounds. */
interface Node {
  type?: string | string[];
  format?: string;
  pattern?: string;
  maxLength?: number;
  minimum?: number;
  exclusiveMinimum?: number;
  maximum?: number;
  exclusiveMaximum?: number;
  maxItems?: number;
  enum?: unknown[];
  const?: unknown;
  anyOf?: Node[];
  oneOf?: Node[];
  allOf?: Node[];
  items?: Node;
  properties?: Record<string, Node>;
  additionalProperties?: boolean | object;
  maxProperties?: number;
  propertyNames?: Node;
}

/** A text of one of these forms is as short as the form is; the letters and digits of a pattern are counted in it. */
const BOUNDED_FORMATS = new Set(['uuid', 'date', 'date-time']);
const BOUNDED_PATTERNS = new Set(['^[A-Z0-9][A-Z0-9-]{0,15}$', '^([0-9a-f]{4}|[0-9a-f]{32})$']);

const isBoundedText = ({ maxLength, format, pattern }: Node): boolean =>
  maxLength !== undefined || BOUNDED_FORMATS.has(format ?? '') || BOUNDED_PATTERNS.has(pattern ?? '');
const isBoundedNumber = ({ minimum, exclusiveMinimum, maximum, exclusiveMaximum }: Node): boolean =>
  [minimum ?? exclusiveMinimum, maximum ?? exclusiveMaximum].every(Number.isFinite);

/** The parts of an input that have no bound. */
function unbounded(node: Node, path: string): string[] {
  const inner = [...(node.anyOf ?? []), ...(node.oneOf ?? []), ...(node.allOf ?? [])];
  const fields = Object.entries(node.properties ?? {});
  const isGiven = node.enum !== undefined || node.const !== undefined;
  const types = [node.type ?? []].flat();
  const isBounded =
    isGiven ||
    types.every(
      (type) =>
        ['null', 'boolean', 'object'].includes(type) ||
        (type === 'string' && isBoundedText(node)) ||
        (['number', 'integer'].includes(type) && isBoundedNumber(node)) ||
        (type === 'array' && node.maxItems !== undefined),
    );
  const isRecord =
    typeof node.additionalProperties === 'object' && Object.keys(node.additionalProperties).length > 0;
  const isBoundedRecord = node.maxProperties !== undefined && isBoundedText(node.propertyNames ?? {});
  return [
    ...(isBounded && (!isRecord || isBoundedRecord) ? [] : [`${path}: ${node.type}`]),
    ...inner.flatMap((each) => unbounded(each, path)),
    ...fields.flatMap(([name, each]) => unbounded(each, `${path}.${name}`)),
    ...(isBoundedRecord ? unbounded(node.additionalProperties as Node, `${path}{}`) : []),
    ...(typeof node.items === 'object' ? unbounded(node.items, `${path}[]`) : []),
  ];
}

test.each(Object.keys(requests) as (keyof typeof requests)[])(
  'every part of what %s is given has a bound',
  (name) => {
    const schema = z.toJSONSchema(requests[name].input, {
      io: 'input',
      unrepresentable: 'any',
      reused: 'inline',
    });
    expect(unbounded(schema as Node, name)).toEqual([]);
  },
);
