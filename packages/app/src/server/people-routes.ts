import { createRoute, z } from '@hono/zod-openapi';
import { refusals } from './problem.ts';
import { ROLES } from './role-table.ts';

const json = <T>(schema: T) => ({ 'application/json': { schema } });
const role = z.enum(ROLES);
const CHANGE = ['not-json', 'foreign-page', 'too-large', 'wrong-type', 'bad-request'] as const;

const personShape = z
  .object({ id: z.string(), name: z.string(), email: z.string(), role: z.string() })
  .openapi('Person');

const linkShape = z
  .object({
    path: z.string().openapi({ description: 'Opens once: the person chooses a password there.' }),
    expiresAt: z.string(),
  })
  .openapi('OneTimeLink');

const params = z.object({ id: z.string().max(64) });
const person = { 200: { description: 'The person', content: json(personShape) } };

export const peopleRoute = createRoute({
  method: 'get',
  path: '/api/people',
  summary: 'Who may sign in',
  responses: {
    200: {
      description: 'Everybody',
      content: json(
        z.object({
          people: z.array(
            personShape.extend({
              signedIn: z.int().openapi({ description: 'Browsers where they are signed in.' }),
              hasPassword: z.boolean(),
            }),
          ),
        }),
      ),
    },
  },
});

export const addRoute = createRoute({
  method: 'post',
  path: '/api/people',
  summary: 'Add somebody, who chooses a password at a link; the first is an owner',
  request: {
    body: {
      required: true,
      content: json(
        z
          .object({
            name: z.string().trim().min(1).max(60),
            email: z
              .string()
              .trim()
              .max(200)
              .regex(/^[^\s@]+@[^\s@]+$/, 'an address such as dana@shop.example was expected'),
            role,
          })
          .openapi('NewPerson'),
      ),
    },
  },
  responses: {
    201: {
      description: 'The person and the link',
      content: json(z.object({ person: personShape, link: linkShape })),
    },
    ...refusals(...CHANGE, 'person-exists', 'last-owner'),
  },
});

export const roleRoute = createRoute({
  method: 'post',
  path: '/api/people/{id}/role',
  summary: 'Give somebody another role, from the next request on',
  request: { params, body: { required: true, content: json(z.object({ role })) } },
  responses: { ...person, ...refusals(...CHANGE, 'no-such-person', 'last-owner') },
});

export const linkRoute = createRoute({
  method: 'post',
  path: '/api/people/{id}/password-link',
  summary: 'Make a link at which somebody chooses a new password; older links open no more',
  request: { params },
  responses: {
    200: { description: 'The link', content: json(linkShape) },
    ...refusals('foreign-page', 'no-such-person'),
  },
});

export const outRoute = createRoute({
  method: 'post',
  path: '/api/people/{id}/sign-out',
  summary: 'Sign somebody out everywhere',
  request: { params },
  responses: { ...person, ...refusals('foreign-page', 'no-such-person') },
});

export const removeRoute = createRoute({
  method: 'delete',
  path: '/api/people/{id}',
  summary: 'Take somebody out; what they did stays in the book',
  request: { params },
  responses: { ...person, ...refusals('foreign-page', 'no-such-person', 'last-owner') },
});
