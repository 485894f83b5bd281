import { useId, useState } from 'react';
import { useMe } from '../frame/me.ts';
import { rememberWho, whoIsHere } from './kept-machine.ts';

/** Who writes things down on this device; where people sign in, the records put their names. */
export function WhoWorks() {
  const id = useId();
  const [name, setName] = useState(whoIsHere);
  const me = useMe();
  if (me !== undefined && !me.alone) return <p className="who-works">Written down as {me.name}</p>;
  return (
    <p className="who-works">
      <label htmlFor={id}>Written down by</label>
      <input
        id={id}
        value={name}
        maxLength={60}
        autoComplete="name"
        onChange={({ target }) => {
          setName(target.value);
          rememberWho(target.value.trim());
        }}
      />
    </p>
  );
}
