import { createRoute, z, type OpenAPIHono } from '@hono/zod-openapi';
import { html } from 'hono/html';
import { away, formFields } from './form-fields.ts';
import type { People } from './people.ts';
import { plainPage } from './plain-page.ts';
import { refusals } from './problem.ts';
import { ROLES } from './role-table.ts';

const SIGN_IN = 'Sign in';
const PASSWORD = 'Change the password';

/** Whoever works alone may do everything. */
const ALONE = { name: '', email: '', role: 'owner' } as const;

const meRoute = createRoute({
  method: 'get',
  path: '/api/me',
  summary: 'Who is signed in; served when the records have people',
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

/** Sign in, sign out, change the password: plain forms that need no script. */
export function signInPages(app: OpenAPIHono, people: People): void {
  app.get('/sign-in', (c) => c.html(signInPage()));

  app.post('/sign-in', async (c) => {
    const { email, password } = await formFields(c);
    const answer = await people.signIn(email, password);
    if (answer.ok) return away(c, answer.headers, '/');
    return c.html(signInPage(refusal(answer.locked)), answer.locked ? 429 : 401);
  });

  app.post('/sign-out', async (c) =>
    away(c, await people.signOut(c.req.raw.headers, c.get('person')!), '/sign-in'),
  );

  app.get('/password', (c) => c.html(passwordPage()));

  app.post('/password', async (c) => {
    const { password, next } = await formFields(c);
    const person = c.get('person');
    if (person === undefined) return c.redirect('/', 303);
    try {
      const answer = await people.changePassword(c.req.raw.headers, person, password, next);
      if (answer.ok) return away(c, answer.headers, '/');
      return c.html(passwordPage(refusal(answer.locked)), answer.locked ? 429 : 401);
    } catch (error) {
      if (!(error instanceof Error) || !error.message.startsWith('the password has')) throw error;
      return c.html(passwordPage(error.message), 422);
    }
  });

  app.openapi(meRoute, (c) => {
    const { name, email, role } = c.get('person') ?? ALONE;
    return c.json({ name, email, role, alone: c.get('person') === undefined }, 200);
  });
}

function refusal(locked: boolean): string {
  return locked
    ? 'Too many wrong passwords. Try again in a quarter of an hour.'
    : 'E-mail address and password do not fit together.';
}

const signInPage = (said = '') =>
  plainPage(
    SIGN_IN,
    said,
    html`<form method="post" action="/sign-in">
      <label>E-mail address <input name="email" type="email" autocomplete="username" required /></label>
      <label
        >Password <input name="password" type="password" autocomplete="current-password" required
      /></label>
      <button>${SIGN_IN}</button>
    </form>`,
  );

const passwordPage = (said = '') =>
  plainPage(
    PASSWORD,
    said,
    html`<form method="post" action="/password">
        <label
          >Password now <input name="password" type="password" autocomplete="current-password" required
        /></label>
        <label
          >New password, 12 letters at least
          <input name="next" type="password" autocomplete="new-password" minlength="12" required
        /></label>
        <button>${PASSWORD}</button>
      </form>
      <form method="post" action="/sign-out"><button>Sign out</button></form>`,
  );
