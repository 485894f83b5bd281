import { createRoute, z, type OpenAPIHono } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { html } from 'hono/html';
import type { People } from './people.ts';
import { refusals } from './problem.ts';
import { ROLES } from './role-table.ts';

const SIGN_IN = 'Sign in';
const PASSWORD = 'Change the password';

const meRoute = createRoute({
  method: 'get',
  path: '/api/me',
  summary: 'Who is signed in; served when the records have people',
  responses: {
    200: {
      description: 'The person',
      content: {
        'application/json': {
          schema: z.object({ name: z.string(), email: z.string(), role: z.enum(ROLES) }).openapi('Person'),
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
    const { email, password } = await fields(c);
    const answer = await people.signIn(email, password);
    if (answer.ok) return away(c, answer.headers, '/');
    return c.html(signInPage(refusal(answer.locked)), answer.locked ? 429 : 401);
  });

  app.post('/sign-out', async (c) =>
    away(c, await people.signOut(c.req.raw.headers, c.get('person')!), '/sign-in'),
  );

  app.get('/password', (c) => c.html(passwordPage()));

  app.post('/password', async (c) => {
    const { password, next } = await fields(c);
    const person = c.get('person')!;
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
    const { name, email, role } = c.get('person')!;
    return c.json({ name, email, role }, 200);
  });
}

function refusal(locked: boolean): string {
  return locked
    ? 'Too many wrong passwords. Try again in a quarter of an hour.'
    : 'E-mail address and password do not fit together.';
}

/** The fields of a form as text; whatever else was sent counts as empty. */
async function fields(c: Context): Promise<{ email: string; password: string; next: string }> {
  const form: Record<string, unknown> = await c.req.parseBody().catch(() => ({}));
  const text = (name: string) => {
    const value = form[name];
    return typeof value === 'string' ? value.slice(0, 200) : '';
  };
  return { email: text('email').trim(), password: text('password'), next: text('next') };
}

function away(c: Context, headers: Headers, to: string): Response {
  for (const cookie of headers.getSetCookie()) c.header('Set-Cookie', cookie, { append: true });
  return c.redirect(to, 303);
}

const signInPage = (said = '') =>
  page(
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
  page(
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

function page(title: string, said: string, body: ReturnType<typeof html>) {
  return html`<!doctype html>
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>${title} · Spraywright</title>
        <style>
          body {
            font: 16px/1.5 sans-serif;
            max-width: 24rem;
            margin: 3rem auto;
            padding: 0 1rem;
          }
          label,
          input,
          button {
            display: block;
            width: 100%;
            box-sizing: border-box;
            font: inherit;
          }
          label,
          form {
            margin-bottom: 1rem;
          }
          input,
          button {
            min-height: 44px;
          }
        </style>
      </head>
      <body>
        <h1>${title}</h1>
        ${said === '' ? '' : html`<p role="alert">${said}</p>`} ${body}
      </body>
    </html>`;
}
