import { useEffect, useMemo, useState, type SyntheticEvent } from 'react';
import { shopShape } from '@spraywright/engine/catalogue';
import { read, type ShapeDescription } from '@spraywright/engine/quantity';
import { documentOf, draftOf, type Draft } from '../part-form/part-draft.ts';
import { PartFields } from '../part-form/part-fields.tsx';
import { me } from './people-link.ts';
import type { Got } from './got.ts';
import { ShopEditions } from './shop-editions.tsx';
import { keepShop, shopKept, type ShopKept } from './shop-link.ts';
import { FOLDED, SHOP_PIECES, type ShopPiece } from './shop-pieces.ts';
import { inShopWords, SHOP_WORDS } from './shop-words.ts';
import '../style/office-parts.css';

/** Roles that make quotes. */
const WHO_QUOTES = ['builder', 'owner'];

/** What the shop says of itself: changed by an owner, read by whoever makes quotes. */
export function ShopSheet() {
  const [kept, setKept] = useState<Got<ShopKept>>();
  const [owner, setOwner] = useState(false);
  const [said, setSaid] = useState('');
  useEffect(() => {
    void Promise.all([shopKept(), me()]).then(([shop, i]) => {
      // The server itself refuses whoever is no owner.
      setOwner(!('value' in i) || i.value.role === 'owner');
      setKept(shop);
    });
  }, []);
  return (
    <div className="parts-keeping shop-keeping">
      <h1>The shop</h1>
      <p role="status" className="part-said">
        {kept !== undefined && 'why' in kept ? kept.why : said}
      </p>
      {kept !== undefined && 'value' in kept && (
        <>
          <p>
            {owner
              ? 'A change holds for everything proven and quoted from now on. Quotes that went out stay as they are; the open ones are proven again.'
              : 'Only an owner changes these.'}
          </p>
          <ShopForm
            key={kept.value.edition}
            kept={kept.value}
            owner={owner}
            done={(now) => {
              setSaid(now.edition === kept.value.edition ? 'Nothing was different.' : 'Kept.');
              setKept({ value: now });
            }}
          />
          <ShopEditions key={`changes ${kept.value.edition}`} />
        </>
      )}
    </div>
  );
}

function ShopForm({
  kept,
  owner,
  done,
}: {
  readonly kept: ShopKept;
  readonly owner: boolean;
  readonly done: (now: ShopKept) => void;
}) {
  const [draft, setDraft] = useState<Draft>(() => {
    const whole = read(shopShape, kept.shop);
    return draftOf(shopShape.describe, whole.ok ? whole.value : kept.shop)!;
  });
  const [got, setGot] = useState<Got<ShopKept>>();
  const [busy, setBusy] = useState(false);
  const problems = useMemo(
    () =>
      got !== undefined && 'why' in got
        ? got.problems.map(({ field, message }) => ({ field, message: inShopWords(field, message) }))
        : [],
    [got],
  );
  const refused = useMemo(() => new Map(problems.map((p) => [p.field, p.message])), [problems]);
  const submit = async (event: SyntheticEvent) => {
    event.preventDefault();
    setBusy(true);
    const answer = await keepShop(kept, withIds(documentOf(shopShape.describe, draft)));
    setBusy(false);
    setGot(answer);
    if ('value' in answer) done(answer.value);
  };
  const whole = draft as Readonly<Record<string, Draft>>;
  const fields = (piece: ShopPiece) => (
    <div className="part-grid">
      <PartFields
        shape={only(piece)}
        name=""
        path={piece.of ?? ''}
        draft={piece.of === undefined ? whole : whole[piece.of]}
        change={(next = {}) => setDraft(piece.of === undefined ? next : { ...whole, [piece.of]: next })}
        refused={refused}
        words={SHOP_WORDS}
        hides={(name, beside) => name === 'id' || (name === 'kinds' && beside.per !== 'part')}
      />
    </div>
  );
  return (
    <form className="part-form" onSubmit={(event) => void submit(event)} noValidate>
      <fieldset className="shop-all" disabled={!owner}>
        {SHOP_PIECES.map((piece) => (
          <section key={piece.heading}>
            <h2 className="heading">{piece.heading}</h2>
            {piece.note !== undefined && <p className="shop-note">{piece.note}</p>}
            {fields(piece)}
          </section>
        ))}
        {FOLDED.map((piece) => (
          <details key={piece.heading} open={problems.some((p) => p.field.startsWith(piece.fields[0]!))}>
            <summary>{piece.heading}</summary>
            <p className="shop-note">{piece.note}</p>
            {fields(piece)}
          </details>
        ))}
        {owner && (
          <p className="part-acts part-end">
            <button className="part-button" disabled={busy}>
              Keep the settings
            </button>
          </p>
        )}
      </fieldset>
      {got !== undefined && 'why' in got && (
        <div role="alert" className="part-why">
          <p>Not kept. {problems.length === 0 ? got.why : ''}</p>
          <ul>
            {problems.map((p) => (
              <li key={p.field}>{p.message}</li>
            ))}
          </ul>
        </div>
      )}
    </form>
  );
}

/** The shape of the shop, or of its pricing, with the fields of one piece of the page alone. */
function only({ fields, of }: ShopPiece): ShapeDescription {
  if (of === undefined) return pick(shopShape.describe, fields);
  const pricing = shopShape.describe.fields!.find(({ name }) => name === of)!.shape;
  return withField(pick(pricing, fields), 'floorsByRole', (floors) => ({
    ...floors,
    of: withField(floors.of!, 'role', () => ({ type: 'choice', choices: WHO_QUOTES })),
  }));
}

function pick(shape: ShapeDescription, names: readonly string[]): ShapeDescription {
  const fields = names.flatMap((name) => shape.fields?.filter((field) => field.name === name) ?? []);
  return { ...shape, fields };
}

function withField(
  shape: ShapeDescription,
  name: string,
  change: (field: ShapeDescription) => ShapeDescription,
): ShapeDescription {
  const fields = shape.fields!.map((f) => (f.name === name ? { ...f, shape: change(f.shape) } : f));
  return { ...shape, fields };
}

/** Work and small stuff that were added here get an id from their name. */
function withIds(document: unknown): unknown {
  const shop = document as Readonly<Record<string, unknown>>;
  const named = (rows: unknown) => {
    const taken = new Set<string>();
    return (rows as readonly Readonly<Record<string, unknown>>[]).map((row) => {
      const typed = typeof row.name === 'string' ? row.name.toLowerCase() : '';
      const stem =
        typed
          .replace(/[^a-z0-9]+/g, '-')
          .replace(/^-|-$/g, '')
          .slice(0, 50) || 'one';
      let id = typeof row.id === 'string' ? row.id : stem;
      for (let n = 2; taken.has(id); n++) id = `${stem}-${n}`;
      taken.add(id);
      return { ...row, id };
    });
  };
  return { ...shop, operations: named(shop.operations), consumables: named(shop.consumables) };
}
