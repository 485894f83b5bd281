import type { AttackedShop } from './attack-shop.ts';

interface Schema {
  readonly $ref?: string;
  readonly type?: string | readonly string[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly items?: Schema;
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly allOf?: readonly Schema[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly pattern?: string;
  readonly minimum?: number;
  readonly required?: readonly string[];
}

interface Described {
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
  readonly components: { readonly schemas: Readonly<Record<string, Schema>> };
}
interface Operation {
  readonly parameters?: readonly { readonly name: string; readonly in: string }[];
  readonly requestBody?: { readonly content: Readonly<Record<string, { readonly schema: Schema }>> };
}

/** A route of the description, with what can be filled in. */
export interface Target {
  readonly method: string;
  /** Its address with what stands for `{...}`, and everything in the query, encoded. */
  readonly address: (text: string) => string;
  /** An address of something that is there. */
  readonly known: string;
  /** Whether a field must be sent: an empty body is no fitting one. */
  readonly needsBody: boolean;
  /** A body with the text in every field that takes any text; undefined where the route takes none. */
  readonly body: (text: string) => unknown;
}

/** Values for fields that take no other text: ids, serials, operations, days, colours, sums. */
const FITTING = [
  'cart',
  'CART-1',
  'operation-1',
  'Q-0001',
  '2026-03-03',
  '2026-03-03T09:00:00.000Z',
  '1',
  'a@b.example',
];
const KNOWN: Readonly<Record<string, string>> = { id: 'cart', serial: 'CART-1', part: 'hose-3-8in-800-pvc' };

/** Every route that the server describes, read from its own description: a new one is attacked without being named here. */
export async function targets({ send }: AttackedShop): Promise<readonly Target[]> {
  const described = (await (await send('GET', '/api/openapi.json', { role: 'owner' })).json()) as Described;
  return Object.entries(described.paths).flatMap(([path, operations]) =>
    Object.entries(operations).map(([method, operation]) => {
      const query = (operation.parameters ?? []).filter((p) => p.in === 'query').map((p) => p.name);
      const schema = operation.requestBody?.content['application/json']?.schema;
      return {
        method: method.toUpperCase(),
        known: path.replace(/\{(\w+)\}/g, (_, name: string) => KNOWN[name] ?? '1'),
        address: (text: string) =>
          path.replace(/\{\w+\}/g, encodeURIComponent(text.replace(/[\ud800-\udfff]/g, '\ufffd'))) +
          (query.length === 0 ? '' : `?${new URLSearchParams(query.map((name) => [name, text]))}`),
        needsBody: schema !== undefined && needsField(schema, described.components.schemas),
        body: (text: string) =>
          schema === undefined ? undefined : filled(schema, text, described.components.schemas),
      };
    }),
  );
}

function needsField({ $ref, required = [] }: Schema, named: Readonly<Record<string, Schema>>): boolean {
  return $ref === undefined ? required.length > 0 : needsField(named[$ref.split('/').at(-1)!] ?? {}, named);
}

function filled(schema: Schema, text: string, named: Readonly<Record<string, Schema>>, depth = 0): unknown {
  const again = (inner: Schema) => filled(inner, text, named, depth + 1);
  if (depth > 12) return text;
  if (schema.$ref !== undefined) return again(named[schema.$ref.split('/').at(-1)!] ?? {});
  if (schema.const !== undefined) return schema.const;
  if (schema.enum !== undefined) return schema.enum[0];
  const either = schema.anyOf ?? schema.oneOf;
  if (either !== undefined) return again(either[0] ?? {});
  if (schema.allOf !== undefined) return Object.assign({}, ...schema.allOf.map(again)) as unknown;
  const type = Array.isArray(schema.type) ? (schema.type as string[])[0] : schema.type;
  switch (type) {
    case 'object': {
      const fields = Object.entries(schema.properties ?? {}).map(([name, inner]) => [name, again(inner)]);
      return {
        ...(fields.length === 0 ? { title: text, brief: { customer: text } } : {}),
        ...Object.fromEntries(fields),
      } as unknown;
    }
    case 'array':
      return [again(schema.items ?? {})];
    case 'number':
    case 'integer':
      return schema.minimum ?? 1;
    case 'boolean':
      return true;
    case 'string': {
      const { pattern } = schema;
      if (pattern === undefined || new RegExp(pattern).test(text)) return text;
      return FITTING.find((value) => new RegExp(pattern).test(value)) ?? text;
    }
    default:
      return text;
  }
}
