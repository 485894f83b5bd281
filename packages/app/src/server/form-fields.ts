import type { Context } from 'hono';

type Field = 'email' | 'name' | 'password' | 'next';

/** The fields of a form as text; whatever else was sent counts as empty. */
export async function formFields(c: Context): Promise<Readonly<Record<Field, string>>> {
  const form: Record<string, unknown> = await c.req.parseBody().catch(() => ({}));
  const text = (name: string) => {
    const value = form[name];
    return typeof value === 'string' ? value.slice(0, 200).replaceAll('\0', '') : '';
  };
  return {
    email: text('email').trim(),
    name: text('name').trim(),
    password: text('password'),
    next: text('next'),
  };
}

/** Goes to another page with the cookies of a sign-in or a sign-out. */
export function away(c: Context, headers: Headers, to: string): Response {
  for (const cookie of headers.getSetCookie()) c.header('Set-Cookie', cookie, { append: true });
  return c.redirect(to, 303);
}
