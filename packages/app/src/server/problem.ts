import type { Context } from 'hono';
import { z } from '@hono/zod-openapi';
import { formatPath, type Path } from '@spraywright/engine/quantity';
import { PROBLEMS, type ProblemCode } from './problems.ts';

/** One field that was refused. */
export interface FieldRefusal {
  readonly field: string;
  readonly code: string;
  readonly message: string;
}

const PROBLEM_TYPE = 'application/problem+json';

/** How every refusal is answered: RFC 9457, with our code, and the fields where single fields are at fault. */
const problemShape = z
  .object({
    type: z.string().openapi({ example: '/api/problems#stale-version' }),
    code: z.string().openapi({ example: 'stale-version' }),
    title: z.string(),
    status: z.int(),
    detail: z.string(),
    problems: z
      .array(
        z.object({
          field: z.string(),
          code: z.string(),
          message: z.string(),
          line: z.int().optional().openapi({ description: 'Line of a table, from 1.' }),
          column: z.int().optional().openapi({ description: 'Column of a table, from 1.' }),
        }),
      )
      .optional(),
    more: z.int().optional().openapi({ description: 'How many more there are than `problems` names.' }),
  })
  .openapi('Problem');

/** Answers with a problem; `more` goes into it beside the usual members. */
export function problem(c: Context, code: ProblemCode, detail: string, more: object = {}): Response {
  const { status, title } = PROBLEMS[code];
  const body = { ...more, type: `/api/problems#${code}`, code, title, status, detail };
  return c.body(JSON.stringify(body), status, { 'Content-Type': PROBLEM_TYPE });
}

/** Refused fields as a problem: the first says in one sentence what is wrong. */
export function fieldProblem(c: Context, code: ProblemCode, problems: readonly FieldRefusal[]): Response {
  return problem(c, code, problems[0]?.message ?? PROBLEMS[code].title, { problems });
}

/** Thrown where fields are refused away from the route itself. */
export class RefusedFields extends Error {
  readonly code: ProblemCode;
  readonly problems: readonly FieldRefusal[];

  constructor(code: ProblemCode, problems: readonly FieldRefusal[]) {
    super(problems[0]?.message ?? PROBLEMS[code].title);
    this.code = code;
    this.problems = problems;
  }
}

/** What a reader of the engine refused, by the names of the fields. */
export function refusedFields(
  code: ProblemCode,
  problems: readonly { readonly path: Path; readonly code: string; readonly message: string }[],
): RefusedFields {
  return new RefusedFields(
    code,
    problems.map(({ path, code: why, message }) => ({ field: formatPath(path), code: why, message })),
  );
}

/** The refusals of a route, for its description. */
export function refusals(...codes: ProblemCode[]) {
  return Object.fromEntries(
    codes.map((code) => [
      PROBLEMS[code].status,
      {
        description: codes
          .filter((other) => PROBLEMS[other].status === PROBLEMS[code].status)
          .map((other) => `${other}: ${PROBLEMS[other].title}`)
          .join('; '),
        content: { [PROBLEM_TYPE]: { schema: problemShape } },
      },
    ]),
  );
}
