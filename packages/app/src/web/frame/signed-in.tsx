import { useMe } from './me.ts';

/** Who is signed in; leads to the change of the password and to the sign-out. */
export function SignedIn({ className }: { readonly className: string }) {
  const me = useMe();
  if (me === undefined || me.alone) return null;
  return (
    <a className={className} href="./password" title={`${me.email}: change the password, or sign out`}>
      {me.name}
    </a>
  );
}
