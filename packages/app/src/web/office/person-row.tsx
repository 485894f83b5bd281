import { useState } from 'react';
import {
  giveRole,
  newLink,
  ROLES,
  signOut,
  takeOut,
  type PasswordLink,
  type PersonKept,
} from './people-link.ts';

/** One person: role, where they are signed in, and what an owner may do about it. */
export function PersonRow(given: {
  readonly person: PersonKept;
  /** Whoever looks. */
  readonly own: boolean;
  readonly changed: (words: string) => Promise<void>;
  readonly linked: (name: string, link: PasswordLink) => void;
}) {
  const { person, own, changed, linked } = given;
  const { id, name, email, role } = person;
  const [leaving, setLeaving] = useState(false);
  const act = async (asked: Promise<object>, done: string) => {
    const answer = await asked;
    await changed('why' in answer ? String(answer.why) : done);
  };
  const link = async () => {
    const answer = await newLink(id);
    if ('why' in answer) return changed(answer.why);
    linked(name, answer.value);
    await changed(`A link for ${name} was made; older ones open no more.`);
  };
  return (
    <li className="person">
      <strong>{name}</strong>
      <span className="person-email">{email}</span>
      <label>
        <span className="for-readers">Role of {name}</span>
        <select
          value={role}
          onChange={(event) => {
            const next = event.target.value;
            void act(giveRole(id, next), `${name} is now ${ROLES[next as keyof typeof ROLES]}.`);
          }}
        >
          {Object.entries(ROLES).map(([value, words]) => (
            <option key={value} value={value}>
              {words}
            </option>
          ))}
        </select>
      </label>
      <span className="person-state">{stateOf(person)}</span>
      <span className="person-acts">
        <a href={`#doings/${encodeURIComponent(email)}`}>What {own ? 'you' : name} did</a>
        <button
          className="people-button"
          aria-label={`New password link for ${name}`}
          onClick={() => void link()}
        >
          New password link
        </button>
        {person.signedIn > 0 && !own && (
          <button
            className="people-button"
            aria-label={`Sign out ${name}`}
            onClick={() => void act(signOut(id), `${name} was signed out everywhere.`)}
          >
            Sign out
          </button>
        )}
        {!own && !leaving && (
          <button className="people-button" aria-label={`Take out ${name}`} onClick={() => setLeaving(true)}>
            Take out
          </button>
        )}
        {leaving && (
          <>
            <button
              className="people-button"
              autoFocus
              onClick={() => void act(takeOut(id), `${name} was taken out; what they did stays in the book.`)}
            >
              Take {name} out for good
            </button>
            <button className="people-button" onClick={() => setLeaving(false)}>
              Keep
            </button>
          </>
        )}
      </span>
    </li>
  );
}

function stateOf({ signedIn, hasPassword }: PersonKept): string {
  if (!hasPassword) return 'no password yet';
  if (signedIn === 0) return 'not signed in';
  return signedIn === 1 ? 'signed in' : `signed in in ${signedIn} browsers`;
}
