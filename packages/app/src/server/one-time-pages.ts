import type { OpenAPIHono } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { html } from 'hono/html';
import { FIRST_OWNER, Refusal } from '../store/index.ts';
import { away, formFields } from './form-fields.ts';
import type { People } from './people.ts';
import { plainPage } from './plain-page.ts';

const SET_UP = 'The first owner';
const CHOOSE = 'Choose a password';

/** Pages behind an address that opens once: the first owner's account, and a password of one's own. */
export function oneTimePages(app: OpenAPIHono, people: People): void {
  app.get('/set-up/:token', async (c) => {
    const first = (await people.linkOf(c.req.param('token'))) === FIRST_OWNER;
    return first ? own(c, setUpPage()) : shut(c);
  });

  app.post('/set-up/:token', async (c) => {
    const { name, email, next: password } = await formFields(c);
    return answered(
      c,
      (said) => setUpPage(said, name, email),
      async () => {
        await people.setUp(c.req.param('token'), { name, email, password });
        return signedIn(c, people, email, password);
      },
    );
  });

  app.get('/new-password/:token', async (c) => {
    const whose = await people.linkOf(c.req.param('token'));
    return whose === undefined || whose === FIRST_OWNER ? shut(c) : own(c, choosePage());
  });

  app.post('/new-password/:token', async (c) => {
    const { next: password } = await formFields(c);
    return answered(c, choosePage, async () => {
      const { email } = await people.choosePassword(c.req.param('token'), password);
      return signedIn(c, people, email, password);
    });
  });
}

async function signedIn(c: Context, people: People, email: string, password: string): Promise<Response> {
  const answer = await people.signIn(email, password);
  return answer.ok ? away(c, answer.headers, '/') : c.redirect('/sign-in', 303);
}

type Page = ReturnType<typeof plainPage>;

/** A form that is refused is shown again with why, as long as the address opens. */
async function answered(
  c: Context,
  form: (said: string) => Page,
  work: () => Promise<Response>,
): Promise<Response> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof Refusal && error.code === 'link-used') return shut(c);
    if (
      !(error instanceof Error) ||
      !/^(the password has|name has|email is|somebody has)/.test(error.message)
    )
      throw error;
    return own(c, form(error.message), 422);
  }
}

/** The address is the key: nothing on the way may keep the page. */
function own(c: Context, page: Page, status: 200 | 410 | 422 = 200): Response | Promise<Response> {
  c.header('Cache-Control', 'no-store');
  return c.html(page, status);
}

function shut(c: Context): Response | Promise<Response> {
  const said =
    'This address opens once, for a day. It was used, was replaced by a newer one, or has expired.';
  return own(c, plainPage('Nothing here', said, html`<p>Ask an owner for a new one.</p>`), 410);
}

const password = html`<label
  >Password, 12 letters at least
  <input name="next" type="password" autocomplete="new-password" minlength="12" required
/></label>`;

const setUpPage = (said = '', name = '', email = '') =>
  plainPage(
    SET_UP,
    said,
    html`<p>An owner lets others in and sees who did what.</p>
      <form method="post">
        <label>Name <input name="name" autocomplete="name" maxlength="60" required value="${name}" /></label>
        <label
          >E-mail address <input name="email" type="email" autocomplete="username" required value="${email}"
        /></label>
        ${password}
        <button>Make the account</button>
      </form>`,
  );

const choosePage = (said = '') =>
  plainPage(CHOOSE, said, html`<form method="post">${password}<button>${CHOOSE}</button></form>`);
