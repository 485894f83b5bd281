import { useCallback, useEffect, useState } from 'react';
import { momentText } from '../frame/moment.ts';
import { AddPerson } from './add-person.tsx';
import { PersonRow } from './person-row.tsx';
import type { Me } from '../frame/me.ts';
import { ShownAddress } from './shown-address.tsx';
import { everybody, me, type PasswordLink, type PersonKept } from './people-link.ts';
import '../style/office-people.css';

interface Shown {
  readonly people: readonly PersonKept[];
  readonly me: Me;
}

/** Who may sign in and as what; for an owner. */
export function PeopleSheet() {
  const [shown, setShown] = useState<Shown | { readonly why: string }>();
  const [said, setSaid] = useState('');
  const [link, setLink] = useState<{ readonly name: string; readonly link: PasswordLink }>();
  const load = useCallback(async () => {
    const [i, all] = await Promise.all([me(), everybody()]);
    // A first owner who has just been made must sign in before anything is shown.
    if ('why' in i || 'why' in all)
      return setShown({ why: 'why' in i ? i.why : 'why' in all ? all.why : '' });
    setShown({ people: all.value.people, me: i.value });
  }, []);
  useEffect(() => void load(), [load]);
  const changed = async (words: string) => {
    setSaid(words);
    await load();
  };
  const linked = (name: string, made: PasswordLink) => setLink({ name, link: made });
  return (
    <div className="people">
      <h1>People</h1>
      <p className="people-said" role="status">
        {shown !== undefined && 'why' in shown && link === undefined ? shown.why : said}
      </p>
      {shown !== undefined && 'people' in shown && (
        <>
          <p>
            {shown.people.length === 0
              ? 'One person works here without signing in. Once somebody is added, everybody signs in; the first is an owner.'
              : 'Owners do everything here. Builders change jobs and see quotes. Shop hands and support read jobs and write down what is done to machines.'}
          </p>
          {shown.people.length > 0 && (
            <ul className="people-list">
              {shown.people.map((person) => (
                <PersonRow
                  key={person.id}
                  person={person}
                  own={person.email === shown.me.email}
                  changed={changed}
                  linked={linked}
                />
              ))}
            </ul>
          )}
          <AddPerson first={shown.people.length === 0} changed={changed} linked={linked} />
          {!shown.me.alone && (
            <p>
              You are {shown.me.name}. <a href="/password">Change your password or sign out</a>
            </p>
          )}
        </>
      )}
      {link !== undefined && <LinkShown key={link.link.path} {...link} />}
    </div>
  );
}

/** The link once it is made: it is shown now and never again. */
function LinkShown({ name, link }: { readonly name: string; readonly link: PasswordLink }) {
  const address = new URL(link.path, location.origin).href;
  return (
    <section className="people-link" aria-labelledby="people-link-heading">
      <h2 className="heading" id="people-link-heading">
        Link for {name}
      </h2>
      <p>
        Give this address to {name} alone. It opens once, until {momentText(link.expiresAt)}, to choose a
        password, and is not shown again.
      </p>
      <ShownAddress address={address} name={`Address for ${name}`} button="people-button" />{' '}
      <a href={address}>Open it here</a>
    </section>
  );
}
