import { spawn, type ChildProcess } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const MAIN = new URL('../src/cli/main.ts', import.meta.url).href;
const ROOT = fileURLToPath(new URL('../../..', import.meta.url));

/** The server in a process of its own, from the sources, on a free port. */
export async function started(
  place: string,
  more: readonly string[] = [],
): Promise<{ process: ChildProcess; address: string; text: string }> {
  const args = ['start', '--port', '0', '--records', place, ...more];
  const command = `import(${JSON.stringify(MAIN)}).then((m) => m.main(${JSON.stringify(args)}))`;
  const child = spawn('node', ['--conditions=source', '--import', 'tsx', '-e', command], {
    cwd: ROOT,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let text = '';
  for await (const chunk of child.stdout) {
    text += String(chunk);
    const found = /Open (https?:\S+)/.exec(text);
    if (found !== null) return { process: child, address: found[1]!, text };
  }
  throw new Error(`the server did not start:\n${text}`);
}
