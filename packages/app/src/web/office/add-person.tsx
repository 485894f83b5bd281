import { useState, type SyntheticEvent } from 'react';
import { addPerson, ROLES, type PasswordLink } from './people-link.ts';

/** Whoever is added is no owner unless that is chosen. */
const USUAL = 'builder';

/** Adds somebody, who chooses a password at a link. */
export function AddPerson(given: {
  /** Nobody is there yet. */
  readonly first: boolean;
  readonly changed: (words: string) => Promise<void>;
  readonly linked: (name: string, link: PasswordLink) => void;
}) {
  const { first, changed, linked } = given;
  const [why, setWhy] = useState('');
  // Held here: a form that is emptied would fall back to the first of the list, an owner.
  const [role, setRole] = useState(USUAL);
  const add = async (event: SyntheticEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = event.currentTarget;
    const values = new FormData(form);
    const text = (name: string) => values.get(name) as string;
    const name = text('name').trim();
    const answer = await addPerson({ name, email: text('email'), role: first ? 'owner' : role });
    if ('why' in answer) return setWhy(answer.why);
    setWhy('');
    form.reset();
    setRole(USUAL);
    linked(name, answer.value.link);
    await changed(`${name} was added.`);
  };
  return (
    <form className="people-add" onSubmit={(event) => void add(event)}>
      <h2 className="heading">{first ? 'Add the first owner' : 'Add somebody'}</h2>
      <label>
        Name
        <input name="name" required maxLength={60} autoComplete="off" />
      </label>
      <label>
        E-mail address
        <input name="email" type="email" required maxLength={200} autoComplete="off" />
      </label>
      {!first && (
        <label>
          Role
          <select name="role" value={role} onChange={({ target }) => setRole(target.value)}>
            {Object.entries(ROLES).map(([value, words]) => (
              <option key={value} value={value}>
                {words}
              </option>
            ))}
          </select>
        </label>
      )}
      <button className="people-button">Add</button>
      {why !== '' && (
        <p role="alert" className="people-why">
          {why}
        </p>
      )}
    </form>
  );
}
