import { createRoute, z, type OpenAPIHono } from '@hono/zod-openapi';
import { refusals } from './problem.ts';
import { ROLES } from './role-table.ts';

/** Whoever works alone may do everything. */
const ALONE = { name: '', email: '', role: 'owner' } as const;

const meRoute = createRoute({
  method: 'get',
  path: '/api/me',
  summary: 'Who is signed in, and in which role',
  responses: {
    200: {
      description: 'The person',
      content: {
        'application/json': {
          schema: z
            .object({
              name: z.string(),
              email: z.string(),
              role: z.enum(ROLES),
              alone: z.boolean().openapi({ description: 'One person works here without signing in.' }),
            })
            .openapi('Me'),
        },
      },
    },
    ...refusals('sign-in-first'),
  },
});

/** Tells the page who works at it. */
export function meApi(app: OpenAPIHono): void {
  app.openapi(meRoute, (c) => {
    const { name, email, role } = c.get('person') ?? ALONE;
    return c.json({ name, email, role, alone: c.get('person') === undefined }, 200);
  });
}
