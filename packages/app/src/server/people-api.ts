import type { OpenAPIHono } from '@hono/zod-openapi';
import {
  addPerson,
  endSessions,
  keptPeople,
  makeLink,
  personOf,
  Refusal,
  removePerson,
  setRole,
  type OneTimeLink,
  type Records,
} from '../store/index.ts';
import { tell } from './doings-book.ts';
import { newPersonId, type People } from './people.ts';
import { addRoute, linkRoute, outRoute, peopleRoute, removeRoute, roleRoute } from './people-routes.ts';

interface PeopleApi {
  readonly records: Records;
  readonly people: People;
  readonly now: () => string;
}

/** The people of the shop, for an owner; the first of all is made by whoever works here alone. */
export function peopleApi(app: OpenAPIHono, { records, people, now }: PeopleApi): void {
  const { db, save } = records;

  app.openapi(peopleRoute, async (c) => c.json({ people: await keptPeople(db, now()) }, 200));

  app.openapi(addRoute, async (c) => {
    const asked = c.req.valid('json');
    if (asked.role !== 'owner' && !(await people.anybody()))
      throw new Refusal('last-owner', `role is '${asked.role}'; the first person of all is an owner`);
    const person = { ...asked, id: newPersonId(), email: asked.email.toLowerCase() };
    tell(c, `${person.name}, ${person.role}`);
    const made = await save(async (t) => {
      await addPerson(t, person, now());
      return { id: person.id, link: await makeLink(t, person.id, Date.parse(now())) };
    });
    return c.json({ person, link: linkTo(made.link) }, 201);
  });

  app.openapi(roleRoute, async (c) => {
    const { id } = c.req.valid('param');
    const { role } = c.req.valid('json');
    const before = await personOf(db, id);
    tell(c, `${before.name}: ${before.role}, now ${role}`);
    return c.json(await save((t) => setRole(t, id, role, now())), 200);
  });

  app.openapi(linkRoute, async (c) => {
    const { id } = c.req.valid('param');
    tell(c, (await personOf(db, id)).name);
    return c.json(linkTo(await save((t) => makeLink(t, id, Date.parse(now())))), 200);
  });

  app.openapi(outRoute, async (c) => {
    const { id } = c.req.valid('param');
    tell(c, (await personOf(db, id)).name);
    return c.json(await save((t) => endSessions(t, id)), 200);
  });

  app.openapi(removeRoute, async (c) => {
    const { id } = c.req.valid('param');
    const { name, role } = await personOf(db, id);
    tell(c, `${name}, ${role}`);
    return c.json(await save((t) => removePerson(t, id)), 200);
  });
}

const linkTo = ({ token, expiresAt }: OneTimeLink) => ({ path: `/new-password/${token}`, expiresAt });
