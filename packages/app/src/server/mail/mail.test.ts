import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { createServer, type Server } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { mailBy } from './mail.ts';

const folder = mkdtempSync(join(tmpdir(), 'letters-'));
afterAll(() => rmSync(folder, { recursive: true }));

const options = {
  from: () => Promise.resolve({ name: 'Larkspur Ford Rigworks', address: 'quotes@shop.example' }),
  outbox: join(folder, 'outbox'),
  now: () => '2026-03-03T09:00:00.000Z',
};
const letter = {
  to: 'kim@parks.example',
  subject: 'Quote Q-0412 B',
  text: 'Read it here.',
  files: [{ name: 'Q-0412-B.pdf', bytes: new TextEncoder().encode('%PDF-1.3') }],
};

describe('Without a mail server', () => {
  it('lays letters into the outbox, for the eyes of their owner alone, and says so', async () => {
    const posted = await mailBy({ ...options, server: undefined })(letter);
    const [file] = readdirSync(options.outbox);
    expect(posted).toEqual({ is: 'kept', file });
    const text = readFileSync(join(options.outbox, file!), 'utf8');
    // RFC 5322: fields by lines that end with CR LF.
    expect(text).toMatch(/^From: Larkspur Ford Rigworks <quotes@shop\.example>\r\n/m);
    expect(text).toMatch(/^To: kim@parks\.example\r\n/m);
    expect(text).toMatch(/^Date: Tue, 03 Mar 2026 09:00:00 \+0000\r\n/m);
    expect(text).toContain(Buffer.from('%PDF-1.3').toString('base64'));
    expect(statSync(join(options.outbox, file!)).mode & 0o077).toBe(0);
  });
});

describe('With a mail server', () => {
  let server: Server;
  afterEach(() => server.close());

  /** Speaks as much of RFC 5321 as a letter needs, and keeps what it hears. */
  const listening = async (heard: string[], refuses = false): Promise<number> => {
    server = createServer((socket) => {
      let inData = false;
      socket.write('220 mail.example\r\n');
      socket.on('data', (data) => {
        const text = data.toString('utf8');
        heard.push(text);
        if (inData) {
          if (!text.endsWith('\r\n.\r\n')) return;
          inData = false;
          socket.write('250 kept\r\n');
        } else if (text.startsWith('DATA')) {
          inData = true;
          socket.write('354 go on\r\n');
        } else if (refuses && text.startsWith('RCPT')) socket.write('550 no such mailbox\r\n');
        else socket.write('250 ok\r\n');
      });
      socket.on('error', () => undefined);
    });
    await new Promise<void>((then) => server.listen(0, '127.0.0.1', then));
    return (server.address() as { port: number }).port;
  };

  it('sends them', async () => {
    const heard: string[] = [];
    const port = await listening(heard);
    const posted = await mailBy({ ...options, server: `smtp://127.0.0.1:${port}` })(letter);
    expect(posted).toEqual({ is: 'sent' });
    expect(heard.join('')).toMatch(/RCPT TO:<kim@parks\.example>[^]*Subject: Quote Q-0412 B/);
  });

  it('says why one was refused', async () => {
    const port = await listening([], true);
    const posted = await mailBy({ ...options, server: `smtp://127.0.0.1:${port}` })(letter);
    expect(posted).toMatchObject({ is: 'failed', why: expect.stringContaining('550') as string });
  });
});
