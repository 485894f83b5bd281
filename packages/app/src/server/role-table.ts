/** What people do in a shop, and may do here. */
export const ROLES = ['owner', 'builder', 'shop-hand', 'support'] as const;
export type Role = (typeof ROLES)[number];

const EVERYBODY: readonly Role[] = ROLES;
const OWNER: readonly Role[] = ['owner'];
/** Who sells and designs: they change jobs and see quotes. */
const SELLERS: readonly Role[] = ['owner', 'builder'];

/** Who works in the shop: they move stock and begin machines too. */
const HANDS: readonly Role[] = ['owner', 'builder', 'shop-hand'];

/**
 * Every route with the roles that may ask it; `null` is for whoever is not signed in yet. A route that is missing here is
 * refused to all, and fails a test.
 */
export const ROLE_TABLE: Readonly<Record<string, readonly Role[] | null>> = {
  'GET /sign-in': null,
  'POST /sign-in': null,
  'GET /set-up/:token': null,
  'POST /set-up/:token': null,
  'GET /new-password/:token': null,
  'POST /new-password/:token': null,
  'POST /sign-out': EVERYBODY,
  'GET /password': EVERYBODY,
  'POST /password': EVERYBODY,
  'GET /api/me': EVERYBODY,
  'GET /api/people': OWNER,
  'POST /api/people': OWNER,
  'POST /api/people/:id/role': OWNER,
  'POST /api/people/:id/password-link': OWNER,
  'POST /api/people/:id/sign-out': OWNER,
  'DELETE /api/people/:id': OWNER,
  'GET /api/jobs': EVERYBODY,
  'POST /api/jobs': SELLERS,
  'GET /api/jobs/:id': EVERYBODY,
  'GET /api/jobs/:id/edits': EVERYBODY,
  'POST /api/jobs/:id/edits': SELLERS,
  'POST /api/quote.pdf': SELLERS,
  'GET /api/jobs/:id/quote.pdf': SELLERS,
  'GET /api/parts': EVERYBODY,
  'POST /api/parts': SELLERS,
  'GET /api/parts.csv': EVERYBODY,
  'POST /api/parts/table': SELLERS,
  'GET /api/parts/:id': EVERYBODY,
  'PUT /api/parts/:id': SELLERS,
  'GET /api/parts/:id/uses': EVERYBODY,
  'POST /api/parts/:id/standing': SELLERS,
  'GET /api/shop': EVERYBODY,
  'PUT /api/shop': OWNER,
  'GET /api/stock': EVERYBODY,
  'POST /api/stock/movements': HANDS,
  'GET /api/stock/:part/movements': EVERYBODY,
  'GET /api/doings': OWNER,
  'GET /api/machines': EVERYBODY,
  'POST /api/machines': HANDS,
  'GET /api/machines/:serial': EVERYBODY,
  'POST /api/machines/:serial/entries': EVERYBODY,
  'GET /api/machines/:serial/entries': EVERYBODY,
  'POST /api/machines/:serial/substitutions': HANDS,
  'GET /api/machines/:serial/handbook.pdf': EVERYBODY,
  'GET /api/machines/:serial/handbook.html': EVERYBODY,
  'GET /api/machines/:serial/plate.pdf': EVERYBODY,
  'GET /api/machines/:serial/build-pack.pdf': HANDS,
  'GET /api/recall': EVERYBODY,
  'GET /api/recall.csv': EVERYBODY,
  'GET /api/standing': EVERYBODY,
  'POST /api/jobs/:id/marks': HANDS,
  'GET /api/calendar': EVERYBODY,
  'GET /api/quotes': SELLERS,
  'POST /api/quotes': SELLERS,
  'GET /api/quotes/:number': SELLERS,
  'POST /api/quotes/:number/revisions': SELLERS,
  'GET /api/quotes/:number/revisions/:revision': SELLERS,
  'GET /api/quotes/:number/revisions/:revision/quote.pdf': SELLERS,
  'GET /api/quotes/:number/changes': SELLERS,
  'POST /api/quotes/:number/revisions/:revision/links': SELLERS,
  'GET /api/quotes/:number/story': SELLERS,
  'POST /api/quotes/:number/links/:link/revoke': SELLERS,
  'POST /api/quotes/:number/answers': SELLERS,
  'POST /api/quotes/:number/withdraw': SELLERS,
  'GET /q/:token': null,
  'GET /q/:token/quote.pdf': null,
  'POST /q/:token/accept': null,
  'POST /q/:token/decline': null,
  'POST /q/:token/ask': null,
  'GET /api/openapi.json': EVERYBODY,
  'GET /api/problems': null,
  'ALL /api/*': EVERYBODY,
  'GET /start.json': EVERYBODY,
  'GET /*': EVERYBODY,
};
