import { createRoute, z, type OpenAPIHono } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { asStocked, BUILD_KINDS, buildRecord, proveRig, type Proof, type Rig } from '@spraywright/engine/rig';
import type { BuildPackOptions } from '../documents/build-pack/build-pack-options.ts';
import { buildPackPdf } from '../documents/build-pack/build-pack-papers.ts';
import { framePaper } from '../documents/frame-papers.ts';
import { freightSheetPdf } from '../documents/freight-sheet-pdf.ts';
import type { HandbookOptions } from '../documents/handbook/handbook-options.ts';
import { handbookPage, handbookPdf, platePdf } from '../documents/handbook/handbook-papers.ts';
import { plumbingOnPaper } from '../documents/plumbing-on-paper.ts';
import { entriesOfKinds, movedStock, type Records } from '../store/index.ts';
import { machineAsBuilt } from './as-built.ts';
import type { Shelf } from './shelf.ts';
import { YARD_KINDS, yardRecord } from './yard-record.ts';
import { machineParams } from './machine-shapes.ts';
import { problem, refusals } from './problem.ts';

interface PapersApi {
  readonly shelf: Shelf;
  readonly records: Records;
  /** Origin of the page of a machine, for the plate. */
  readonly originOf: (c: Context) => string;
  readonly now: () => string;
}

/** What every paper of a machine is written from. */
type PaperOptions = HandbookOptions & Pick<BuildPackOptions, 'givenOf'>;

interface Paper {
  readonly name: string;
  readonly type: string;
  readonly summary: string;
  /** Which way the plumbing is drawn. */
  readonly run: 'right' | 'down';
  readonly write: (rig: Rig, proof: Proof, options: PaperOptions) => Promise<Uint8Array> | string;
}

const PAPERS: readonly Paper[] = [
  {
    name: 'handbook.pdf',
    type: 'application/pdf',
    summary: 'The handbook of a machine as it stands',
    run: 'right',
    write: handbookPdf,
  },
  {
    name: 'handbook.html',
    type: 'text/html; charset=utf-8',
    summary: 'The handbook as one page that a telephone keeps without a network',
    run: 'down',
    write: handbookPage,
  },
  {
    name: 'plate.pdf',
    type: 'application/pdf',
    summary: 'The plate of a machine, with a square code of its page',
    run: 'right',
    write: platePdf,
  },
  {
    name: 'build-pack.pdf',
    type: 'application/pdf',
    summary: 'What the shop needs to build a machine; without costs',
    run: 'right',
    write: (rig, proof, options) =>
      buildPackPdf(rig, proof, { ...options, buildDate: options.date, costs: false }),
  },
  {
    name: 'freight.pdf',
    type: 'application/pdf',
    summary: 'What a carrier asks of a machine: size, weight, density, tiedowns and cautions',
    run: 'right',
    write: (_rig, proof, options) => freightSheetPdf(proof, options),
  },
  {
    name: 'frame.pdf',
    type: 'application/pdf',
    summary:
      'The deck of a machine from above: where each part stands, what rests where and what the frame must hold',
    run: 'right',
    write: (_rig, proof, options) => framePaper(proof, 'pdf', options),
  },
  {
    name: 'frame.dxf',
    type: 'image/vnd.dxf',
    summary: 'The deck of a machine from above, in millimetres, for drawing programs',
    run: 'right',
    write: (_rig, proof, options) => framePaper(proof, 'dxf', options),
  },
  {
    name: 'frame.svg',
    type: 'image/svg+xml',
    summary: 'The deck of a machine from above, as a drawing',
    run: 'right',
    write: (_rig, proof, options) => framePaper(proof, 'svg', options),
  },
];

const query = z.object({ units: z.enum(['us', 'metric']).default('us') });

/** The papers of one machine, made of its own rig and parts when they are asked for. */
export function machinePapersApi(app: OpenAPIHono, api: PapersApi): void {
  for (const paper of PAPERS) {
    const route = createRoute({
      method: 'get',
      path: `/api/machines/{serial}/${paper.name}`,
      summary: paper.summary,
      request: { params: machineParams, query },
      responses: {
        200: { description: paper.summary, content: { [paper.type.split(';')[0]!]: { schema: z.any() } } },
        ...refusals('no-such-machine', 'no-such-page', 'bad-request', 'unreadable-rig'),
      },
    });
    app.openapi(route, (c) => {
      const { serial } = c.req.valid('param');
      return written(c, paper, api, serial, c.req.valid('query').units);
    });
  }
}

async function written(
  c: Context,
  { name, type, run, write }: Paper,
  { shelf, records, originOf, now }: PapersApi,
  serial: string,
  units: 'us' | 'metric',
): Promise<Response> {
  const { catalogue: today, shop } = await shelf.current();
  const { rig, catalogue } = await machineAsBuilt(records.db, serial, today);
  const proof = proveRig(rig, catalogue, shop, { units });
  const readings = await entriesOfKinds(records.db, serial, YARD_KINDS);
  const given = new Map((await movedStock(records.db, serial)).map((m) => [m.part, m.quantity]));
  const built = buildRecord(await entriesOfKinds(records.db, serial, BUILD_KINDS));
  if (name.startsWith('frame.') && proof.placement === undefined)
    return problem(c, 'no-such-page', 'the rig has no carrier: there is no frame to draw');
  const body = await write(rig, proof, {
    ...yardRecord(rig, proof, readings, serial, units),
    shop,
    units,
    date: now().slice(0, 10),
    serial,
    address: `${originOf(c)}/machines.html#${encodeURIComponent(serial)}`,
    plumbing: await plumbingOnPaper(rig, proof, units, run),
    partOf: (id) => asStocked(catalogue.parts.get(id) ?? rig.ownParts.get(id)?.part, today),
    built,
    givenOf: (id) => -(given.get(id) ?? 0),
  });
  const shown = name.endsWith('.html') ? 'inline' : 'attachment';
  const dot = name.lastIndexOf('.');
  return c.body(typeof body === 'string' ? body : new Uint8Array(body), 200, {
    'Content-Type': type,
    'Content-Disposition': `${shown}; filename="${name.slice(0, dot)}-${serial}${name.slice(dot)}"`,
  });
}
