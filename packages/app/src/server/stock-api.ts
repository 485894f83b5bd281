import { createRoute, z, type OpenAPIHono } from '@hono/zod-openapi';
import {
  moveStock,
  movedOf,
  movedStock,
  movementsOf,
  STOCK_REASONS,
  type Records,
  type StockMovement,
  type StockReason,
} from '../store/index.ts';
import { tell } from './doings-book.ts';
import { refusals } from './problem.ts';
import { signedName } from './role-guard.ts';

interface StockApi {
  readonly records: Records;
  readonly now: () => string;
}

const json = <T>(schema: T) => ({ 'application/json': { schema } });
const part = z
  .string()
  .regex(/^[a-z0-9][a-z0-9-]{0,63}$/, 'a part number has small letters, digits and hyphens, 64 at most')
  .openapi({ example: 'tip-orifice-6' });
const serial = z
  .string()
  .trim()
  .max(40)
  .default('')
  .openapi({ description: 'Serial number of the machine it was for; empty for none.', example: 'LF-0412-1' });

const movementShape = z
  .object({
    operation: z
      .string()
      .regex(/^[A-Za-z0-9-]{8,64}$/, 'an operation has 8 to 64 letters, digits and hyphens')
      .openapi({ description: 'A name of its own: the movement counts once, however often it arrives.' }),
    part,
    quantity: z.int().min(-100_000).max(100_000).openapi({
      description: 'Pieces, or feet of hose and wire: above 0 into the store, below 0 out of it.',
    }),
    why: z.enum(Object.keys(STOCK_REASONS) as [StockReason, ...StockReason[]]),
    serial,
    note: z.string().trim().max(200).default(''),
  })
  .openapi('StockMovement');

const stockShape = z
  .object({ moved: z.array(z.object({ part: z.string(), quantity: z.int() })) })
  .openapi('MovedStock');

const stockRoute = createRoute({
  method: 'get',
  path: '/api/stock',
  summary: 'What all movements of each part come to; on hand is this and the stock of the catalogue',
  request: {
    query: z.object({
      serial: serial
        .optional()
        .openapi({ description: 'Only what moved for this machine; below 0 is what it has been given.' }),
    }),
  },
  responses: {
    200: {
      description: 'Sums by part; a part that never moved is not among them',
      content: json(stockShape),
    },
    ...refusals('bad-request'),
  },
});

const moveRoute = createRoute({
  method: 'post',
  path: '/api/stock/movements',
  summary: 'Move parts in the store: taken, brought, counted; all or none, each once',
  request: {
    body: {
      required: true,
      content: json(
        z
          .object({
            movements: z.array(movementShape).min(1).max(500),
            by: z.string().trim().max(60).default(''),
          })
          .openapi('StockMovements'),
      ),
    },
  },
  responses: {
    200: { description: 'What all movements come to now; on the disk', content: json(stockShape) },
    ...refusals('not-json', 'foreign-page', 'too-large', 'wrong-type', 'bad-request', 'bad-movement'),
  },
});

const partRoute = createRoute({
  method: 'get',
  path: '/api/stock/{part}/movements',
  summary: 'The movements of one part, the newest first',
  request: {
    params: z.object({ part }),
    query: z.object({ limit: z.coerce.number().int().min(1).max(500).default(100) }),
  },
  responses: {
    200: {
      description: 'Movements; none when the part never moved',
      content: json(
        z
          .object({
            moved: z.int().openapi({ description: 'What all movements of the part come to.' }),
            movements: z.array(movementShape.extend({ by: z.string(), at: z.string() })),
          })
          .openapi('MadeStockMovements'),
      ),
    },
    ...refusals('bad-request'),
  },
});

/** "2 of tip-orifice-6 taken for LF-0412-1", for the book of who did what. */
function movementText({ part: id, quantity, why, serial: machine }: StockMovement): string {
  const count = why === 'counted' && quantity > 0 ? `${quantity} more` : String(Math.abs(quantity));
  const less = why === 'counted' && quantity < 0 ? ' less' : '';
  return `${count}${less} of ${id} ${why.replace('-', ' ')}${machine === '' ? '' : ` for ${machine}`}`;
}

/** What moves in the store: kept as movements that are never changed, so that every figure can be explained. */
export function stockApi(app: OpenAPIHono, { records: { db, save }, now }: StockApi): void {
  app.openapi(stockRoute, async (c) =>
    c.json({ moved: await movedStock(db, c.req.valid('query').serial) }, 200),
  );
  app.openapi(moveRoute, async (c) => {
    const { movements, by } = c.req.valid('json');
    tell(c, movements.map(movementText).join('; '));
    const moved = await save(async (t) => {
      await moveStock(t, movements, { by: signedName(c) ?? by, at: now() });
      return movedStock(t);
    });
    return c.json({ moved }, 200);
  });
  app.openapi(partRoute, async (c) => {
    const { limit } = c.req.valid('query');
    const { part: id } = c.req.valid('param');
    return c.json({ moved: await movedOf(db, id), movements: await movementsOf(db, id, limit) }, 200);
  });
}
