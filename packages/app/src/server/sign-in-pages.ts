import type { OpenAPIHono } from '@hono/zod-openapi';
import { html } from 'hono/html';
import { away, formFields } from './form-fields.ts';
import type { People } from './people.ts';
import { plainPage } from './plain-page.ts';
import { pageAsked } from './role-guard.ts';

const SIGN_IN = 'Sign in';
const PASSWORD = 'Change the password';

/** Sign in, sign out, change the password: plain forms that need no script. */
export function signInPages(app: OpenAPIHono, people: People): void {
  app.get('/sign-in', (c) => c.html(signInPage()));

  app.post('/sign-in', async (c) => {
    const { email, password } = await formFields(c);
    const answer = await people.signIn(email, password);
    if (answer.ok) return away(c, answer.headers, pageAsked(c.req.query('to')));
    return c.html(signInPage(refusal(answer.locked), email), answer.locked ? 429 : 401);
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
      return c.html(passwordPage(refusal(answer.locked, WRONG_NOW)), answer.locked ? 429 : 401);
    } catch (error) {
      if (!(error instanceof Error) || !error.message.startsWith('the password has')) throw error;
      return c.html(passwordPage(error.message), 422);
    }
  });
}

const WRONG = 'E-mail address and password do not fit together.';
const WRONG_NOW = 'The password that you have now was typed wrong; it is still the same.';

function refusal(locked: boolean, wrong = WRONG): string {
  return locked ? 'Too many wrong passwords. Try again in a quarter of an hour.' : wrong;
}

/**
 * A form without an address of its own goes to the page it stands on, with the part behind `#`, which no server sees but
 * every browser carries on: who reads the code on a plate stands before that machine after signing in.
 */
const signInPage = (said = '', email = '') =>
  plainPage(
    SIGN_IN,
    said,
    html`<form method="post">
      <label
        >E-mail address <input name="email" type="email" autocomplete="username" required value="${email}"
      /></label>
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
      <form method="post" action="/sign-out">
        <p>
          See first that the desk says &ldquo;Saved&rdquo;. A change that the records do not have yet stays on
          this device with its prices, and whoever opens the desk here next sees it.
        </p>
        <button>Sign out</button>
      </form>`,
  );
